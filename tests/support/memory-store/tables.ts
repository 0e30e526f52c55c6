import type { ClassHead, PlacedAnswer, RoundHead, Seat, Student } from '../../../server/classroom/state.ts';
import type { Group, NewClass, SettingKey, StoredPlan, Teacher } from '../../../server/store/store.ts';
import type {
  ClassId,
  GroupId,
  PlanId,
  RoundId,
  SeatId,
  StudentId,
  TeacherId,
  Time,
} from '../../../shared/protocol/ids.ts';

export type KeptTeacher = Teacher & { readonly passphraseHash: string };
export type KeptClass = Omit<NewClass, 'settings' | 'plan' | 'closedAt'> & ClassHead;
export interface KeptAnswer {
  readonly roundId: RoundId;
  readonly studentId: StudentId;
  readonly late: boolean;
  readonly answer: PlacedAnswer;
}

/** All that the store in memory holds; what stands in a map is never changed, only replaced. */
export class Tables {
  teachers = new Map<TeacherId, KeptTeacher>();
  sessions = new Map<string, { readonly teacherId: TeacherId; readonly expiresAt: Time }>();
  invitations = new Map<string, Time>();
  settings = new Map<SettingKey, string>();
  groups = new Map<GroupId, Group>();
  students = new Map<StudentId, { readonly groupId: GroupId; readonly student: Student }>();
  plans = new Map<PlanId, StoredPlan>();
  classes = new Map<ClassId, KeptClass>();
  seats = new Map<SeatId, { readonly classId: ClassId; readonly seat: Seat }>();
  rounds = new Map<RoundId, { readonly classId: ClassId; readonly round: RoundHead }>();
  answers = new Map<string, KeptAnswer>();
}

/** Keeps the tables while no store is open on them. */
export class Memory {
  tables = new Tables();

  /** All of it, or nothing where it throws. */
  together<T>(work: (draft: Tables) => T): T {
    const draft = new Tables();
    Object.assign(
      draft,
      Object.fromEntries(
        Object.entries(this.tables).map(([name, rows]) => [name, new Map(rows as Map<unknown, unknown>)]),
      ),
    );
    const result = work(draft);
    this.tables = draft;
    return result;
  }
}

/** Deletes the rows that fit. */
export function drop<Key, Row>(rows: Map<Key, Row>, fits: (row: Row, key: Key) => boolean): void {
  for (const [key, row] of rows) if (fits(row, key)) rows.delete(key);
}

export function answerKey({ roundId, studentId, late }: Omit<KeptAnswer, 'answer'>): string {
  return JSON.stringify([roundId, studentId, late]);
}

export function need(holds: boolean, what: string): void {
  if (!holds) throw new Error(`${what} is not in the store.`);
}
