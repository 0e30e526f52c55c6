import { beforeEach, describe, expect, it } from 'vitest';
import { countedAnswers, shareOf } from '../../../../server/classroom/round.ts';
import { scoreKeyOf } from '../../../../shared/exercise/score.ts';
import { known } from '../../../../shared/lib/assert.ts';
import type { ClassCode, ClassId, GroupId } from '../../../../shared/protocol/ids.ts';
import type { StoreAt } from '../../../support/store-contract.ts';
import {
  answer,
  classId,
  fillStore,
  find,
  group,
  groupId,
  newClass,
  right,
  round,
  slip,
  student,
  time,
} from '../samples.ts';

/** What a class is compared with. */
export function describeLastTime(at: StoreAt): void {
  describe('last time', () => {
    const now = 'class-now' as ClassId;
    const key = scoreKeyOf(find(2));

    beforeEach(async () => {
      await fillStore(at.store);
      for (const id of ['a', 'b', 'c']) await at.store.groups.saveStudent(groupId, student(id));
      await addClass(now, 50_000);
    });

    async function addClass(id: ClassId, openedAt: number, inGroup = groupId): Promise<void> {
      const code = `CODE${id}` as ClassCode;
      await at.store.classes.create(newClass({ id, groupId: inGroup, code, openedAt: time(openedAt) }));
    }

    async function lastTime() {
      return Object.fromEntries((await at.load(now)).lastTime);
    }

    it('is empty where the group has met nothing of the kind', async () => {
      await at.store.classes.commit(now, [{ kind: 'round', round: round('r1') }, answer('r1', 'a')]);
      expect(await lastTime()).toEqual({});
    });

    it('counts accepted answers, and a late one in the place of the one in time only where it counts', async () => {
      await at.store.classes.commit(classId, [
        { kind: 'round', round: round('r1') },
        answer('r1', 'a', { verdict: slip, accepted: true }),
        answer('r1', 'b', { verdict: slip }),
        answer('r1', 'b', { verdict: right, counted: true }, true),
        answer('r1', 'c', { verdict: slip }),
        answer('r1', 'c', { verdict: right, counted: false }, true),
      ]);
      expect(await lastTime()).toEqual({ [key]: { right: 2, of: 3 } });
      await at.store.classes.commit(classId, [answer('r1', 'c', { verdict: right, counted: true }, true)]);
      expect(await lastTime()).toEqual({ [key]: { right: 3, of: 3 } });
    });

    it('ANSWER-5: does not count what was taken back whole, and counts what was named without a place', async () => {
      const named = { kind: 'degree', degree: '5' } as const;
      await at.store.classes.commit(classId, [
        { kind: 'round', round: round('r1') },
        answer('r1', 'a', { places: [], verdict: slip }),
        answer('r1', 'b', { places: [], named, verdict: right }),
        answer('r1', 'c', { verdict: right }),
        answer('r1', 'c', { places: [], verdict: slip, counted: true }, true),
      ]);
      expect(await lastTime()).toEqual({ [key]: { right: 1, of: 1 } });
      const state = await at.load();
      expect(shareOf(countedAnswers(known(state.rounds[0], 'round')).values())).toEqual({ right: 1, of: 1 });
    });

    it('adds up the rounds of one class, without those voided or not revealed', async () => {
      await at.store.classes.commit(classId, [
        { kind: 'round', round: round('r1') },
        answer('r1', 'a', { verdict: right }),
        { kind: 'round', round: round('r2', { number: 2 }) },
        answer('r2', 'a'),
        { kind: 'round', round: round('r3', { number: 3, voided: true }) },
        answer('r3', 'a', { verdict: right }),
        { kind: 'round', round: round('r4', { number: 4, phase: 'held' }) },
        answer('r4', 'a', { verdict: right }),
        { kind: 'round', round: round('r5', { number: 5, exercise: find(3) }) },
        answer('r5', 'a', { verdict: right }),
      ]);
      expect(await lastTime()).toEqual({
        [key]: { right: 1, of: 2 },
        [scoreKeyOf(find(3))]: { right: 1, of: 1 },
      });
    });

    it('LEVEL-4: counts each level by its own exercise', async () => {
      await at.store.classes.commit(classId, [
        { kind: 'round', round: round('r1', { harder: [find(3), find(4)] }) },
        answer('r1', 'a', { verdict: right }),
        answer('r1', 'b', { verdict: right }),
        answer('r1', 'b', { level: 2, verdict: slip, counted: true }, true),
        answer('r1', 'c', { level: 3, verdict: right }),
      ]);
      expect(await lastTime()).toEqual({
        [key]: { right: 1, of: 1 },
        [scoreKeyOf(find(3))]: { right: 0, of: 1 },
        [scoreKeyOf(find(4))]: { right: 1, of: 1 },
      });
    });

    it('takes each kind from the latest earlier class of the same group that met it', async () => {
      const second = 'class-2' as ClassId;
      const later = 'class-3' as ClassId;
      const strangers = 'group-2' as GroupId;
      const elsewhere = 'class-4' as ClassId;
      await at.store.groups.create(group({ id: strangers }));
      await at.store.groups.saveStudent(strangers, student('x'));
      await addClass(second, 20_000);
      await addClass(later, 60_000);
      await addClass(elsewhere, 30_000, strangers);
      await at.store.classes.commit(classId, [
        { kind: 'round', round: round('r1') },
        answer('r1', 'a', { verdict: right }),
        { kind: 'round', round: round('r2', { number: 2, exercise: find(3) }) },
        answer('r2', 'a', { verdict: right }),
      ]);
      await at.store.classes.commit(second, [
        { kind: 'round', round: round('r3') },
        answer('r3', 'a'),
        answer('r3', 'b'),
      ]);
      await at.store.classes.commit(later, [{ kind: 'round', round: round('r4') }, answer('r4', 'c')]);
      await at.store.classes.commit(elsewhere, [{ kind: 'round', round: round('r5') }, answer('r5', 'x')]);
      expect(await lastTime()).toEqual({
        [key]: { right: 0, of: 2 },
        [scoreKeyOf(find(3))]: { right: 1, of: 1 },
      });
    });
  });
}
