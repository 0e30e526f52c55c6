import type { GroupStore, PlanStore } from '../../../server/store/store.ts';
import type { Student } from '../../../server/classroom/state.ts';
import { nameKey } from '../../../shared/protocol/name-key.ts';
import type { GroupId, StudentId } from '../../../shared/protocol/ids.ts';
import { mergeInMemory, moveTurn } from './merge.ts';
import { drop, need, type Memory, type Tables } from './tables.ts';

export function memoryGroups(memory: Memory): GroupStore {
  return {
    async create(group) {
      need(memory.tables.teachers.has(group.teacherId), 'The teacher');
      memory.together(({ groups }) => groups.set(group.id, group));
    },
    byId: async (id) => memory.tables.groups.get(id),
    ofTeacher: async (teacherId) =>
      [...memory.tables.groups.values()]
        .filter((group) => group.teacherId === teacherId)
        .sort((a, b) => a.createdAt - b.createdAt || (a.id < b.id ? -1 : 1)),
    async update(id, fields) {
      memory.together(({ groups }) => {
        const group = groups.get(id);
        if (group) groups.set(id, { ...group, ...fields });
      });
    },
    async remove(id) {
      memory.together((tables) => removeGroup(tables, id));
    },
    async purge(now) {
      return memory.together((tables) => {
        const due = [...tables.groups.values()].filter(({ purgeAt }) => purgeAt !== null && purgeAt <= now);
        for (const { id } of due) removeGroup(tables, id);
        return due.map(({ id }) => id);
      });
    },
    students: async (id) => registerOf(memory.tables, id),
    studentGroup: async (id) => memory.tables.students.get(id)?.groupId,
    async saveStudent(groupId, student) {
      need(memory.tables.groups.has(groupId), 'The group');
      memory.together(({ students }) => students.set(student.id, { groupId, student }));
    },
    async mergeStudents(from, into) {
      memory.together((tables) => mergeInMemory(tables, from, into));
    },
    async removeStudent(id) {
      memory.together((tables) => removeStudent(tables, id));
    },
  };
}

export function memoryPlans(memory: Memory): PlanStore {
  return {
    ofGroup: async (groupId) =>
      [...memory.tables.plans.values()]
        .filter((plan) => plan.groupId === groupId)
        .sort((a, b) => (a.title < b.title || (a.title === b.title && a.id < b.id) ? -1 : 1)),
    byId: async (id) => memory.tables.plans.get(id),
    async save(plan) {
      need(memory.tables.groups.has(plan.groupId), 'The group');
      const held = memory.tables.plans.get(plan.id)?.revision ?? 0;
      if (held !== plan.revision - 1) return 'changed';
      memory.together(({ plans }) => plans.set(plan.id, plan));
      return 'saved';
    },
    async remove(id) {
      memory.together(({ plans }) => plans.delete(id));
    },
  };
}

const names = new Intl.Collator('en');

/** By seat number, those without one last and by name. */
export function registerOf(tables: Tables, id: GroupId): readonly Student[] {
  const last = Number.MAX_VALUE;
  return [...tables.students.values()]
    .filter(({ groupId }) => groupId === id)
    .map(({ student }) => student)
    .sort(
      (a, b) =>
        (a.seatNumber ?? last) - (b.seatNumber ?? last) ||
        names.compare(a.name, b.name) ||
        (a.id < b.id ? -1 : 1),
    );
}

function removeGroup(tables: Tables, id: GroupId): void {
  tables.groups.delete(id);
  drop(tables.students, ({ groupId }) => groupId === id);
  drop(tables.plans, ({ groupId }) => groupId === id);
  drop(tables.classes, ({ groupId }) => groupId === id);
  drop(tables.seats, ({ classId }) => !tables.classes.has(classId));
  drop(tables.rounds, ({ classId }) => !tables.classes.has(classId));
  drop(tables.answers, ({ roundId }) => !tables.rounds.has(roundId));
}

function removeStudent(tables: Tables, id: StudentId): void {
  const kept = tables.students.get(id);
  if (!kept) return;
  const isOfGroup = (seat: { readonly classId: Parameters<typeof tables.classes.get>[0] }) =>
    tables.classes.get(seat.classId)?.groupId === kept.groupId;
  tables.students.delete(id);
  moveTurn(tables, id, null);
  drop(tables.answers, ({ studentId }) => studentId === id);
  drop(tables.seats, (row) =>
    row.seat.studentId === null
      ? isOfGroup(row) && nameKey(row.seat.name) === nameKey(kept.student.name)
      : row.seat.studentId === id,
  );
}
