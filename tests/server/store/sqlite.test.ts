import { readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Store } from '../../../server/store/store.ts';
import type { SendId } from '../../../shared/protocol/ids.ts';
import { describeStore } from '../../support/store-contract.ts';
import { answer, classId, fillStore, round, student } from './samples.ts';
import { tempPlace, type TempPlace } from './temp-place.ts';
import { transactionsInLog } from './wal.ts';

describeStore('SQLite store', async () => tempPlace());

describe('SQLite store on disk', () => {
  let where: TempPlace;
  let store: Store;

  beforeEach(async () => {
    where = tempPlace();
    store = await where.open();
    await fillStore(store);
    await store.classes.commit(classId, [
      { kind: 'student', student: student('a') },
      { kind: 'round', round: round('r1') },
    ]);
  });
  afterEach(async () => {
    await store.close();
    await where.remove();
  });

  const send = (n: number) =>
    store.classes.commit(classId, [answer('r1', 'a', { sendId: `s${String(n)}` as SendId })]);

  it('takes all calls of one moment into one transaction', async () => {
    const before = transactionsInLog(where.path);
    await Promise.all(Array.from({ length: 100 }, (_, n) => send(n)));
    expect(transactionsInLog(where.path) - before).toBe(1);
  });

  it('lets a single call wait for nobody', async () => {
    const before = transactionsInLog(where.path);
    for (let n = 0; n < 5; n += 1) await send(n);
    expect(transactionsInLog(where.path) - before).toBe(5);
  });

  it('takes all but the bad calls of one moment into one transaction', async () => {
    const before = transactionsInLog(where.path);
    const bad = [1, 2, 3].map(() => store.classes.commit(classId, [answer('r1', 'nobody')]));
    const results = await Promise.allSettled([send(1), ...bad, send(2)]);
    expect(results.filter(({ status }) => status === 'rejected')).toHaveLength(3);
    expect(transactionsInLog(where.path) - before).toBe(1);
  });

  it('does not acknowledge before the log holds it', async () => {
    const before = transactionsInLog(where.path);
    const sent = send(1);
    expect(transactionsInLog(where.path)).toBe(before);
    await sent;
    expect(transactionsInLog(where.path)).toBe(before + 1);
  });

  it('leaves one file behind when it is closed', async () => {
    await store.close();
    expect(readdirSync(dirname(where.path))).toEqual(['rootcall.db']);
  });
});
