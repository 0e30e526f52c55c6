import type { FindExercise } from '../../../shared/exercise/exercise.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import type {
  ClassCode,
  ClassId,
  GroupId,
  PlanId,
  RoundId,
  SeatId,
  SendId,
  StudentId,
  TeacherId,
  Time,
} from '../../../shared/protocol/ids.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import type {
  Change,
  ClassHead,
  PlacedAnswer,
  Plan,
  RoundHead,
  Seat,
  Student,
} from '../../../server/classroom/state.ts';
import type { Group, NewClass, Store, StoredPlan } from '../../../server/store/store.ts';

/** Small whole things to keep, each with what a test cares about filled in. */

export const time = (ms: number) => (1_700_000_000_000 + ms) as Time;
export const teacherId = 'teacher-1' as TeacherId;
export const groupId = 'group-1' as GroupId;
export const classId = 'class-1' as ClassId;

export const teacher = {
  id: teacherId,
  name: 'Edda Lindqvist',
  passphraseHash: 'hash-1',
  createdAt: time(0),
};

export function group(fields: Partial<Group> = {}): Group {
  return {
    id: groupId,
    teacherId,
    name: 'Thursday Strings',
    school: 'Alderwick Community Music School',
    instrument: 'guitar',
    naming: 'english',
    language: 'en',
    purgeAt: null,
    createdAt: time(1),
    ...fields,
  };
}

export function student(id: string, fields: Partial<Student> = {}): Student {
  return {
    id: id as StudentId,
    name: `Student ${id}`,
    seatNumber: null,
    alias: null,
    team: null,
    moreTime: 1,
    ...fields,
  };
}

/** Find D on string 2. */
export function find(rootString = 2): FindExercise {
  return {
    kind: 'find',
    instrument: 'guitar',
    root: { letter: 'D', alteration: 0 },
    rootString: place(rootString, 0).string,
    strictness: 'string',
    range: null,
  };
}

export const plan: Plan = {
  id: 'plan-1' as PlanId,
  title: 'Roots on string 2',
  exercises: [
    { id: 'one', part: 'warm-up', exercise: find(2), harder: [find(3), find(4)], seconds: 30 },
    { id: 'two', part: 'new', exercise: find(3), harder: [], seconds: null },
  ],
};

export const storedPlan: StoredPlan = {
  ...plan,
  aim: 'Every D on the neck.',
  points: ['Say it aloud.', 'Then without looking.'],
  groupId,
  revision: 1,
  updatedAt: time(5),
};

export function newClass(fields: Partial<NewClass> = {}): NewClass {
  return {
    id: classId,
    groupId,
    code: 'BCDFHJ' as ClassCode,
    openedAt: time(1000),
    settings: { autoAdmit: false, score: 'class', ranking: false },
    plan: null,
    ...fields,
  };
}

export function head(fields: Partial<ClassHead> = {}): ClassHead {
  const { settings } = newClass();
  return {
    settings,
    plan: null,
    cursor: 0,
    stage: 'rest',
    show: null,
    turn: null,
    closedAt: null,
    ...fields,
  };
}

export function seat(id: string, fields: Partial<Seat> = {}): Seat {
  return {
    id: id as SeatId,
    tokenHash: `token of ${id}`,
    name: `Student ${id}`,
    studentId: null,
    status: 'asking',
    reason: 'new',
    joinedAt: time(1100),
    ...fields,
  };
}

export function round(id: string, fields: Partial<RoundHead> = {}): RoundHead {
  return {
    id: id as RoundId,
    number: 1,
    exercise: find(),
    harder: [],
    planIndex: null,
    seconds: null,
    phase: 'revealed',
    voided: false,
    openedAt: time(2000),
    heldAt: time(3000),
    revealedAt: time(3500),
    ...fields,
  };
}

export const right: Verdict = { kind: 'right' };
export const slip: Verdict = {
  kind: 'slip',
  cause: 'low-string-map',
  marks: [{ place: place(2, 10), right: false }],
  corrections: [{ from: place(2, 10), to: place(2, 3) }],
  missing: [],
};

export function placed(fields: Partial<PlacedAnswer> = {}): PlacedAnswer {
  const sendId = 'send-1' as SendId;
  return {
    sendId,
    seen: [sendId],
    places: [place(2, 10)],
    done: false,
    at: time(2500),
    by: 'student',
    verdict: slip,
    accepted: false,
    counted: true,
    ...fields,
  };
}

export function answer(
  roundId: string,
  studentId: string,
  fields: Partial<PlacedAnswer> = {},
  late = false,
): Change {
  return {
    kind: 'answer',
    roundId: roundId as RoundId,
    studentId: studentId as StudentId,
    late,
    answer: placed({ counted: !late, ...fields }),
  };
}

/** A teacher with one group and one open class. */
export async function fillStore(store: Store): Promise<void> {
  await store.teachers.create(teacher);
  await store.groups.create(group());
  await store.classes.create(newClass());
}
