import { beforeEach, describe, expect, it } from 'vitest';
import type {
  ClassCode,
  ClassId,
  GroupId,
  PlanId,
  StudentId,
  TeacherId,
} from '../../../../shared/protocol/ids.ts';
import type { StoreAt } from '../../../support/store-contract.ts';
import {
  answer,
  classId,
  fillStore,
  find,
  group,
  groupId,
  head,
  newClass,
  plan,
  round,
  seat,
  storedPlan,
  student,
  teacher,
  teacherId,
  time,
} from '../samples.ts';

/** Groups, their registers and plans. */
export function describeGroups(at: StoreAt): void {
  describe('groups', () => {
    beforeEach(async () => {
      await at.store.teachers.create(teacher);
    });

    it('keeps a group, changes the fields given and lists those of the teacher', async () => {
      await at.store.groups.create(group());
      await at.store.groups.create(
        group({ id: 'group-2' as GroupId, name: 'Monday Strings', createdAt: time(2) }),
      );
      await at.store.groups.update(groupId, { naming: 'german', purgeAt: time(9) });
      await at.store.groups.update(groupId, {});
      await at.reopen();
      const changed = group({ naming: 'german', purgeAt: time(9) });
      expect(await at.store.groups.byId(groupId)).toEqual(changed);
      expect((await at.store.groups.ofTeacher(teacherId)).map(({ id }) => id)).toEqual([groupId, 'group-2']);
      expect(await at.store.groups.ofTeacher('nobody' as TeacherId)).toEqual([]);
      await at.store.groups.update(groupId, { purgeAt: null });
      expect((await at.store.groups.byId(groupId))?.purgeAt).toBeNull();
      expect((await at.store.groups.byId('group-2' as GroupId))?.naming).toBe('english');
    });

    it('keeps the register in order of seat number, then name', async () => {
      await at.store.groups.create(group());
      const register = [
        student('d', { name: 'Zora', seatNumber: 2, team: 'Reeds', alias: 'Heron', moreTime: 1.25 }),
        student('a', { name: 'Émile', seatNumber: 11 }),
        student('c', { name: 'elif' }),
        student('b', { name: 'Óscar' }),
      ];
      for (const one of [...register].reverse()) await at.store.groups.saveStudent(groupId, one);
      await at.reopen();
      expect(await at.store.groups.students(groupId)).toEqual(register);
      expect(await at.store.groups.studentGroup('a' as StudentId)).toBe(groupId);
      expect(await at.store.groups.studentGroup('x' as StudentId)).toBeUndefined();

      await at.store.groups.saveStudent(groupId, student('a', { name: 'Emilia', seatNumber: 1 }));
      expect((await at.store.groups.students(groupId)).map(({ name: its }) => its)).toEqual([
        'Emilia',
        'Zora',
        'elif',
        'Óscar',
      ]);
      await expect(at.store.groups.saveStudent('gone' as GroupId, student('z'))).rejects.toThrow();
    });

    it('removes a group with everything of it, and nothing else', async () => {
      const other = 'group-2' as GroupId;
      const otherClass = 'class-2' as ClassId;
      for (const [id, theClass, code, mark] of [
        [groupId, classId, 'BCDFHJ', 'a'],
        [other, otherClass, 'KLMPRS', 'b'],
      ] as const) {
        await at.store.groups.create(group({ id }));
        await at.store.groups.saveStudent(id, student(mark));
        await at.store.plans.save({ ...storedPlan, id: `plan-${mark}` as PlanId, groupId: id });
        await at.store.classes.create(newClass({ id: theClass, groupId: id, code: code as ClassCode }));
        await at.store.classes.commit(theClass, [
          { kind: 'seat', seat: seat(mark, { studentId: mark as StudentId }) },
          { kind: 'round', round: round(`round-${mark}`) },
          answer(`round-${mark}`, mark),
        ]);
      }
      const kept = await at.load(otherClass);
      await at.store.groups.remove(groupId);
      await at.reopen();
      expect(await at.store.groups.byId(groupId)).toBeUndefined();
      expect(await at.store.groups.students(groupId)).toEqual([]);
      expect(await at.store.groups.studentGroup('a' as StudentId)).toBeUndefined();
      expect(await at.store.plans.byId('plan-a' as PlanId)).toBeUndefined();
      expect(await at.store.classes.load(classId)).toBeUndefined();
      expect(await at.store.classes.bySeatToken('token of a')).toBeUndefined();
      expect(await at.store.classes.byCode('BCDFHJ' as ClassCode)).toBeUndefined();
      expect(await at.load(otherClass)).toEqual(kept);
      expect(await at.store.plans.ofGroup(other)).toHaveLength(1);
    });

    it('purges the groups whose day has come', async () => {
      await at.store.groups.create(group({ purgeAt: time(100) }));
      await at.store.groups.create(group({ id: 'later' as GroupId, purgeAt: time(101) }));
      await at.store.groups.create(group({ id: 'never' as GroupId, purgeAt: null }));
      expect(await at.store.groups.purge(time(99))).toEqual([]);
      expect(await at.store.groups.purge(time(100))).toEqual([groupId]);
      expect(await at.store.groups.purge(time(100))).toEqual([]);
      const left = (await at.store.groups.ofTeacher(teacherId)).map(({ id }) => id);
      expect(left).toEqual(['later', 'never']);
    });
  });
  describe('plans', () => {
    it('keeps exercises in order, replaces them whole and removes the plan', async () => {
      await fillStore(at.store);
      await at.store.plans.save(storedPlan);
      await at.reopen();
      expect(await at.store.plans.byId(storedPlan.id)).toEqual(storedPlan);
      const edited = {
        ...storedPlan,
        title: 'Another order',
        updatedAt: time(6),
        exercises: [...storedPlan.exercises]
          .reverse()
          .concat({ id: 'three', part: 'check', exercise: find(1), harder: [], seconds: 90 }),
        revision: 2,
      };
      await at.store.plans.save(edited);
      await at.store.plans.save({ ...storedPlan, id: 'empty' as PlanId, title: 'Blank', exercises: [] });
      expect(await at.store.plans.byId(storedPlan.id)).toEqual(edited);
      expect(
        (await at.store.plans.ofGroup(groupId)).map(({ id, exercises }) => [id, exercises.length]),
      ).toEqual([
        [storedPlan.id, 3],
        ['empty', 0],
      ]);
      await at.store.plans.remove(storedPlan.id);
      expect(await at.store.plans.byId(storedPlan.id)).toBeUndefined();
      expect(await at.store.plans.ofGroup(groupId)).toHaveLength(1);
    });

    it('leaves the copy that a running class took', async () => {
      await fillStore(at.store);
      await at.store.plans.save(storedPlan);
      await at.store.classes.commit(classId, [{ kind: 'class', head: head({ plan, cursor: 1 }) }]);
      await at.store.plans.remove(storedPlan.id);
      expect(await at.load()).toMatchObject({ plan, cursor: 1 });
    });
  });
}
