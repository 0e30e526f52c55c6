import { beforeEach, describe, expect, it } from 'vitest';
import type { ClassId, SendId, StudentId } from '../../../../shared/protocol/ids.ts';
import type { StoreAt } from '../../../support/store-contract.ts';
import { answer, classId, fillStore, head, right, round, student } from '../samples.ts';

/** The promise that a commit makes. */
export function describeCommit(at: StoreAt): void {
  describe('commit', () => {
    beforeEach(async () => {
      await fillStore(at.store);
      await at.store.classes.commit(classId, [
        { kind: 'student', student: student('a') },
        { kind: 'round', round: round('r1') },
      ]);
    });

    it('keeps calls of one moment in their order', async () => {
      const sends = Array.from({ length: 50 }, (_, n) => `send ${String(n)}` as SendId);
      const done: SendId[] = [];
      await Promise.all(
        sends.map(async (sendId) => {
          await at.store.classes.commit(classId, [answer('r1', 'a', { sendId })]);
          done.push(sendId);
        }),
      );
      expect(done).toEqual(sends);
      expect((await at.load()).rounds[0]?.answers.get('a' as StudentId)?.sendId).toBe('send 49');
    });

    it('refuses a bad call whole, and none of the calls around it', async () => {
      const good = (id: string) =>
        at.store.classes.commit(classId, [
          { kind: 'student', student: student(id) },
          answer('r1', id, { verdict: right }),
        ]);
      const bad = [
        at.store.classes.commit(classId, [
          { kind: 'student', student: student('x') },
          answer('r1', 'nobody'),
        ]),
        at.store.classes.commit(classId, [answer('no-round', 'a')]),
        at.store.classes.commit('no-class' as ClassId, [{ kind: 'class', head: head({ cursor: 9 }) }]),
        at.store.classes.commit(classId, [{ kind: 'round', round: round('r9', { number: 1 }) }]),
      ];
      const results = await Promise.allSettled([good('b'), ...bad, good('c')]);
      expect(results.map(({ status }) => status)).toEqual([
        'fulfilled',
        'rejected',
        'rejected',
        'rejected',
        'rejected',
        'fulfilled',
      ]);
      await at.reopen();
      const state = await at.load();
      expect([...state.students.keys()]).toEqual(['a', 'b', 'c']);
      expect([...(state.rounds[0]?.answers.keys() ?? [])]).toEqual(['b', 'c']);
      expect(state.rounds).toHaveLength(1);
      expect(state.cursor).toBe(0);
    });

    it('keeps what waits when the store is closed, and takes nothing afterwards', async () => {
      const waiting = at.store.classes.commit(classId, [answer('r1', 'a', { verdict: right })]);
      const closing = at.store.close();
      await Promise.all([waiting, closing]);
      await expect(at.store.classes.commit(classId, [answer('r1', 'a')])).rejects.toThrow('closed');
      await at.reopen();
      expect((await at.load()).rounds[0]?.answers.get('a' as StudentId)?.verdict).toEqual(right);
    });
  });
}
