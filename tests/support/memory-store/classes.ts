import { countedAnswers, roundHead, shareOf } from '../../../server/classroom/round.ts';
import type { Change, ClassState, PlacedAnswer, Round } from '../../../server/classroom/state.ts';
import type { ClassStore, ClassSummary } from '../../../server/store/store.ts';
import { StoreError } from '../../../server/store/store-error.ts';
import { exerciseFor } from '../../../shared/exercise/levels.ts';
import { scoreKeyOf } from '../../../shared/exercise/score.ts';
import { assertNever } from '../../../shared/lib/assert.ts';
import type { ClassId, RoundId, StudentId } from '../../../shared/protocol/ids.ts';
import type { Share } from '../../../shared/protocol/views.ts';
import { registerOf } from './groups.ts';
import { answerKey, need, type KeptClass, type Memory, type Tables } from './tables.ts';

export function memoryClasses(memory: Memory, isClosed: () => boolean): ClassStore {
  const all = () => [...memory.tables.classes.values()];
  return {
    async create({ settings, plan, closedAt = null, ...fixed }) {
      need(memory.tables.groups.has(fixed.groupId), 'The group');
      const isTaken = all().some((one) => one.code === fixed.code && one.closedAt === null);
      if (closedAt === null && isTaken) return 'code-taken';
      const head = { settings, plan, cursor: 0, stage: 'rest', show: null, turn: null, closedAt } as const;
      memory.together(({ classes }) => classes.set(fixed.id, { ...fixed, ...head }));
      return 'created';
    },
    asked: async (id) => {
      const state = load(memory.tables, id);
      if (!state) return undefined;
      const { plan, openedAt, instrument, naming, stage, rounds } = state;
      return { plan, openedAt, instrument, naming, stage, rounds: rounds.map(roundHead) };
    },
    load: async (id) => load(memory.tables, id),
    open: async () =>
      all()
        .filter(({ closedAt }) => closedAt === null)
        .sort((a, b) => a.openedAt - b.openedAt || (a.id < b.id ? -1 : 1))
        .map(({ id }) => id),
    byCode: async (code) =>
      all()
        .filter((one) => one.code === code)
        .sort(
          (a, b) => Number(a.closedAt !== null) - Number(b.closedAt !== null) || b.openedAt - a.openedAt,
        )[0]?.id,
    bySeatToken: async (tokenHash) =>
      [...memory.tables.seats.values()].find(({ seat }) => seat.tokenHash === tokenHash)?.classId,
    ofGroup: async (groupId) =>
      all()
        .filter((one) => one.groupId === groupId)
        .sort((a, b) => b.openedAt - a.openedAt || (a.id < b.id ? -1 : 1))
        .map((one) => summaryOf(memory.tables, one)),
    async commit(id, changes) {
      if (isClosed()) throw new StoreError('The store is closed.');
      memory.together((draft) => {
        for (const change of changes) take(draft, id, change);
      });
    },
  };
}

function take(tables: Tables, classId: ClassId, change: Change): void {
  const one = tables.classes.get(classId);
  if (!one) throw new StoreError('The class is not in the store any more.');
  switch (change.kind) {
    case 'class':
      need(change.head.turn === null || tables.students.has(change.head.turn), 'The student');
      tables.classes.set(classId, { ...one, ...change.head });
      return;
    case 'student':
      tables.students.set(change.student.id, { groupId: one.groupId, student: change.student });
      return;
    case 'seat': {
      const { seat } = change;
      need(seat.studentId === null || tables.students.has(seat.studentId), 'The student');
      tables.seats.set(seat.id, { classId, seat });
      return;
    }
    case 'round': {
      const { round } = change;
      for (const other of tables.rounds.values()) {
        const isTaken = other.classId === classId && other.round.number === round.number;
        if (isTaken && other.round.id !== round.id) throw new Error('The number of the round is taken.');
      }
      tables.rounds.set(round.id, { classId, round });
      return;
    }
    case 'answer': {
      const { kind: _, ...kept } = change;
      need(tables.rounds.has(kept.roundId), 'The round');
      need(tables.students.has(kept.studentId), 'The student');
      tables.answers.set(answerKey(kept), kept);
      return;
    }
    default:
      assertNever(change);
  }
}

function load(tables: Tables, id: ClassId): ClassState | undefined {
  const one = tables.classes.get(id);
  const group = one && tables.groups.get(one.groupId);
  if (!group) return undefined;
  const seats = [...tables.seats.values()]
    .flatMap(({ classId, seat }) => (classId === id ? [seat] : []))
    .sort((a, b) => a.joinedAt - b.joinedAt || (a.id < b.id ? -1 : 1));
  const { teacherId, name, school, instrument, naming } = group;
  return {
    ...one,
    ...{ teacherId, group: name, school, instrument, naming },
    students: new Map(registerOf(tables, group.id).map((student) => [student.id, student])),
    seats: new Map(seats.map((seat) => [seat.id, seat])),
    rounds: roundsOf(tables, id),
    lastTime: lastTime(tables, one),
  };
}

function roundsOf(tables: Tables, id: ClassId): readonly Round[] {
  return [...tables.rounds.values()]
    .flatMap(({ classId, round }) => (classId === id ? [round] : []))
    .sort((a, b) => a.number - b.number)
    .map((round) => ({
      ...round,
      answers: answersOf(tables, round.id, false),
      late: answersOf(tables, round.id, true),
    }));
}

function answersOf(tables: Tables, id: RoundId, late: boolean): ReadonlyMap<StudentId, PlacedAnswer> {
  return new Map(
    [...tables.answers.values()]
      .filter((kept) => kept.roundId === id && kept.late === late)
      .sort((a, b) => a.answer.at - b.answer.at || (a.studentId < b.studentId ? -1 : 1))
      .map(({ studentId, answer }) => [studentId, answer]),
  );
}

function counting(tables: Tables, id: ClassId): readonly Round[] {
  return roundsOf(tables, id).filter(({ phase, voided }) => phase === 'revealed' && !voided);
}

function summaryOf(tables: Tables, { id, code, openedAt, closedAt }: KeptClass): ClassSummary {
  const answers = counting(tables, id).flatMap((round) => [...countedAnswers(round).values()]);
  const rounds = roundsOf(tables, id).filter(({ voided }) => !voided).length;
  return { id, code, openedAt, closedAt, rounds, share: shareOf(answers) };
}

function lastTime(tables: Tables, now: KeptClass): ReadonlyMap<string, Share> {
  const found = new Map<string, Share>();
  const earlier = [...tables.classes.values()]
    .filter(({ groupId, openedAt }) => groupId === now.groupId && openedAt < now.openedAt)
    .sort((a, b) => a.openedAt - b.openedAt || (a.id < b.id ? 1 : -1));
  // The latest comes last and stays.
  for (const { id } of earlier) {
    const ofClass = new Map<string, PlacedAnswer[]>();
    for (const round of counting(tables, id)) {
      for (const answer of countedAnswers(round).values()) {
        const key = scoreKeyOf(exerciseFor(round, answer));
        ofClass.set(key, [...(ofClass.get(key) ?? []), answer]);
      }
    }
    for (const [key, answers] of ofClass) found.set(key, shareOf(answers));
  }
  return found;
}
