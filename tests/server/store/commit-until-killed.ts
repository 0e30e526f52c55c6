import { writeSync } from 'node:fs';
import { openStore } from '../../../server/store/sqlite/open-store.ts';
import { known } from '../../../shared/lib/assert.ts';
import { answer, classId, fillStore, round, student } from './samples.ts';

/**
 * Commits answers without end, several at a time, and says each one's student on a line once it is acknowledged; why
 * one could not be kept, on the other channel, and ends.
 */
const store = openStore({ path: known(process.argv.at(-1), 'path of the store') });
await fillStore(store);
await store.classes.commit(classId, [{ kind: 'round', round: round('r1') }]);

let next = 0;
async function keepCommitting(): Promise<never> {
  for (;;) {
    next += 1;
    const id = `student-${String(next)}`;
    await store.classes.commit(classId, [{ kind: 'student', student: student(id) }, answer('r1', id)]);
    writeSync(1, `${id}\n`);
  }
}
await Promise.all(Array.from({ length: 7 }, keepCommitting)).catch((error: unknown) => {
  writeSync(2, error instanceof Error ? error.message : String(error));
  process.exit(3);
});
