import type { Answer } from '../../shared/exercise/answer.ts';
import type { Chart } from '../../shared/exercise/chart.ts';
import type { Levelled } from '../../shared/exercise/levels.ts';
import type { Verdict } from '../../shared/exercise/verdict.ts';
import type { PlanContent } from '../../shared/plans/plan.ts';
import type { ClassSettings } from '../../shared/protocol/commands.ts';
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
} from '../../shared/protocol/ids.ts';
import type { Share } from '../../shared/protocol/views.ts';
import type { InstrumentId, Place } from '../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';

/** A student on the register of a group. */
export interface Student {
  readonly id: StudentId;
  readonly name: string;
  readonly seatNumber: number | null;
  readonly alias: string | null;
  readonly team: string | null;
  /** Factor on every time limit; 1 is the usual time. */
  readonly moreTime: number;
}

/** One device's place in a class; a device is known by its resume token, kept only as a hash. */
export interface Seat {
  readonly id: SeatId;
  readonly tokenHash: string;
  readonly name: string;
  /** Set where the name is on the register. */
  readonly studentId: StudentId | null;
  readonly status: 'asking' | 'in' | 'gone';
  /** Why it asks (`new`, `move`, `refused`: sent away before) or is gone (`moved`, `refused`, `left`). */
  readonly reason: 'new' | 'move' | 'moved' | 'refused' | 'left' | null;
  readonly joinedAt: Time;
}

export interface PlacedAnswer extends Answer {
  readonly sendId: SendId;
  /** Sends seen so far, newest last: a resend of any of them changes nothing. */
  readonly seen: readonly SendId[];
  readonly done: boolean;
  readonly at: Time;
  readonly by: 'student' | 'teacher';
  readonly verdict: Verdict;
  /** The teacher counts it as right after all. */
  readonly accepted: boolean;
  /** False only for a late answer that the teacher has not let count. */
  readonly counted: boolean;
}

export interface Round extends Levelled {
  readonly id: RoundId;
  readonly number: number;
  readonly planIndex: number | null;
  readonly seconds: number | null;
  readonly phase: 'open' | 'held' | 'revealed';
  readonly voided: boolean;
  readonly openedAt: Time;
  readonly heldAt: Time | null;
  readonly revealedAt: Time | null;
  readonly answers: ReadonlyMap<StudentId, PlacedAnswer>;
  /** Arrived after the hold; an answer in time, if there was one, stays in `answers`. */
  readonly late: ReadonlyMap<StudentId, PlacedAnswer>;
}

export type RoundHead = Omit<Round, 'answers' | 'late'>;

/** What was asked in a class, without anybody's answer or name. */
export interface Asked extends Pick<ClassState, 'plan' | 'openedAt' | 'instrument' | 'naming' | 'stage'> {
  readonly rounds: readonly RoundHead[];
}

export interface Plan extends Pick<PlanContent, 'title' | 'exercises'> {
  readonly id: PlanId;
}

export type Show =
  /** Charts in their order, of which one is on the stage. */
  | { readonly kind: 'charts'; readonly charts: readonly Chart[]; readonly at: number }
  | { readonly kind: 'taps'; readonly places: readonly Place[] };

/** What may change of the class itself. */
export interface ClassHead {
  readonly settings: ClassSettings;
  /** A copy, taken when the class took the plan up: later edits don't change a running class. */
  readonly plan: Plan | null;
  /** Index in the plan of the exercise that Ask would ask. */
  readonly cursor: number;
  readonly stage: 'rest' | 'round';
  readonly show: Show | null;
  /** Whose turn it is to play, where playing goes by turns. */
  readonly turn: StudentId | null;
  readonly closedAt: Time | null;
}

export interface ClassState extends ClassHead {
  readonly id: ClassId;
  readonly groupId: GroupId;
  readonly teacherId: TeacherId;
  readonly code: ClassCode;
  readonly group: string;
  readonly school: string;
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  readonly openedAt: Time;
  readonly students: ReadonlyMap<StudentId, Student>;
  readonly seats: ReadonlyMap<SeatId, Seat>;
  readonly rounds: readonly Round[];
  /** The group's share right when it last met each kind of exercise in an earlier class, by score key. */
  readonly lastTime: ReadonlyMap<string, Share>;
}

/**
 * A step that the store keeps and the state takes in. Every one says how something is now, not what was done
 * to it, so that taking one in twice changes nothing.
 */
export type Change =
  | { readonly kind: 'class'; readonly head: ClassHead }
  | { readonly kind: 'student'; readonly student: Student }
  | { readonly kind: 'seat'; readonly seat: Seat }
  | { readonly kind: 'round'; readonly round: RoundHead }
  | {
      readonly kind: 'answer';
      readonly roundId: RoundId;
      readonly studentId: StudentId;
      readonly late: boolean;
      readonly answer: PlacedAnswer;
    };
