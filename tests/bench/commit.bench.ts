import { afterAll, bench, describe } from 'vitest';
import type { SendId, StudentId } from '../../shared/protocol/ids.ts';
import { connect } from '../../server/store/sqlite/connect.ts';
import { answer, classId, fillStore, placed, round, student } from '../server/store/samples.ts';
import { tempPlace } from '../server/store/temp-place.ts';

/**
 * Durable answers, the same number in every run: the store against the least that SQLite needs for the same rows,
 * with the same settings, on the same disk. Only the ratios mean anything.
 */
const answers = 200;
const students = Array.from({ length: answers }, (_, n) => `student-${String(n)}` as StudentId);
let sent = 0;

const where = tempPlace();
const store = await where.open();
await fillStore(store);
await store.classes.commit(classId, [
  ...students.map((id) => ({ kind: 'student' as const, student: student(id) })),
  { kind: 'round', round: round('r1') },
]);

const rawPlace = tempPlace();
const raw = connect(rawPlace.path);
raw.exec(`create table answers (round_id text, student_id text, late integer, send_id text, seen text, places text,
  besides text, done integer, at integer, given_by text, verdict text, accepted integer, counted integer,
  primary key (round_id, student_id, late))`);
const insert = raw.prepare('insert or replace into answers values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)');

afterAll(async () => {
  await store.close();
  raw.close();
  await where.remove();
  await rawPlace.remove();
});

function insertRaw(studentId: StudentId): void {
  const one = placed({ sendId: nextSend() });
  const [seen, places, verdict] = [one.seen, one.places, one.verdict].map((value) => JSON.stringify(value));
  insert.run('r1', studentId, 0, one.sendId, seen, places, null, 0, one.at, one.by, verdict, 0, 1);
}

function nextSend(): SendId {
  sent += 1;
  return `send-${String(sent)}` as SendId;
}

describe(`${String(answers)} durable answers`, () => {
  bench('the store, all arriving in one moment', async () => {
    await Promise.all(
      students.map((id) => store.classes.commit(classId, [answer('r1', id, { sendId: nextSend() })])),
    );
  });

  bench('the driver alone, one transaction for all', () => {
    raw.transaction(() => students.forEach(insertRaw))();
  });

  bench('the driver alone, one transaction each', () => {
    students.forEach(insertRaw);
  });

  bench('the store, one after another', async () => {
    for (const id of students) {
      await store.classes.commit(classId, [answer('r1', id, { sendId: nextSend() })]);
    }
  });
});
