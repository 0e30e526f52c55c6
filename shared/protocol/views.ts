import type { Answer } from '../exercise/answer.ts';
import type { Exercise } from '../exercise/exercise.ts';
import type { Input } from '../exercise/input.ts';
import type { Level, Levelled } from '../exercise/levels.ts';
import type { Pattern } from '../exercise/pattern.ts';
import type { KeyNote, SlipVerdict, Verdict } from '../exercise/verdict.ts';
import type { Wordings } from '../exercise/wording.ts';
import type { PlannedExercise } from '../plans/plan.ts';
import type { InstrumentId, Place, StringNumber } from '../theory/fretboard.ts';
import type { NoteNaming } from '../theory/naming.ts';
import type { ClassSettings } from './commands.ts';
import type { ClassCode, ClassId, PlanId, RoundId, SeatId, SendId, StudentId, Time } from './ids.ts';

/** What each screen may know. Nothing else leaves the server (SPEC "VIEW"). */

/** What a round asks, in words; all that a Stand or Board holds before the reveal. */
export interface TaskView {
  /** In every naming: each reader takes their own. */
  readonly wording: Wordings;
  readonly instrument: InstrumentId;
  readonly input: Input;
  /** Set only where the exercise states a fret range. */
  readonly range: { readonly low: number; readonly high: number } | null;
}

/** A chart on Board and Stands without a question. */
export type ShowView =
  | {
      readonly kind: 'chart';
      readonly wording: Wordings;
      readonly instrument: InstrumentId;
      readonly notes: readonly KeyNote[];
      /** Strings that the chord leaves silent. */
      readonly silent: readonly StringNumber[];
      /** Where it is one of several that are walked through. */
      readonly step: { readonly number: number; readonly of: number } | null;
    }
  | { readonly kind: 'taps'; readonly places: readonly Place[] };

/** The answer key, sent from the reveal on. */
export interface RevealView {
  readonly exercise: Exercise;
  readonly notes: readonly KeyNote[];
}

/** What a level asked, and its answer key. */
export interface RevealedLevel {
  readonly task: TaskView;
  readonly reveal: RevealView;
}

/** The part of a Stand's view that all Stands of a class share: built and encoded once. */
export interface StandSharedView {
  readonly classId: ClassId;
  readonly group: string;
  readonly school: string;
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  readonly here: number;
  readonly next: { readonly number: number; readonly of: number } | null;
  readonly stage: StandStage;
  /** Where the class's end lists individuals: asks for an alias. */
  readonly wantsAlias: boolean;
}

export type StandStage =
  | { readonly kind: 'rest' }
  | { readonly kind: 'show'; readonly show: ShowView }
  | {
      readonly kind: 'open' | 'held';
      readonly roundId: RoundId;
      /** The first level. */
      readonly task: TaskView;
      /** The second and third, where there are any. */
      readonly harder: readonly TaskView[];
      readonly seconds: number | null;
    }
  | ({
      readonly kind: 'revealed';
      readonly roundId: RoundId;
      readonly harder: readonly RevealedLevel[];
    } & RevealedLevel)
  | { readonly kind: 'over' };

/** The part that is one student's own. */
export interface StandOwnView {
  readonly seat: 'asking' | 'in' | 'gone';
  /** Why the seat is not in: a name the register doesn't know, or one that another device holds. */
  readonly reason: 'new' | 'move' | 'moved' | 'refused' | 'left' | null;
  readonly name: string;
  readonly alias: string | null;
  /** Whether this Stand may listen: `wait` while it is somebody else's turn. */
  readonly playing: 'off' | 'on' | 'turn' | 'wait';
  /** The current round's answer as the server holds it. */
  readonly answer: OwnAnswerView | null;
  /** The student's own time is up, though the round may go on for others. */
  readonly timeUp: boolean;
  /** The student's own time for the current round, in seconds; null without a limit. */
  readonly seconds: number | null;
  /** From the reveal on. */
  readonly verdict: Verdict | null;
  readonly accepted: boolean;
}

export interface OwnAnswerView extends Answer {
  readonly roundId: RoundId;
  readonly sendId: SendId;
  readonly done: boolean;
  readonly late: boolean;
}

/** The charts of a class, for whoever has their link: what was revealed, and nothing of anybody (SPEC CHARTS-PAGE). */
export interface ChartsView {
  /** Of its plan. */
  readonly title: string | null;
  readonly openedAt: Time;
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  /** In the order in which they were first asked, each once. */
  readonly exercises: readonly Levelled[];
}

/** A share of answers: `right` of `of`. */
export interface Share {
  readonly right: number;
  readonly of: number;
}

export interface ScoreRowView {
  readonly title: string;
  readonly now: Share;
  /** Null where the class meets this kind of exercise for the first time. */
  readonly before: Share | null;
}

export interface ScoreView {
  readonly now: Share;
  readonly before: Share | null;
  readonly rows: readonly ScoreRowView[];
  readonly teams: readonly { readonly team: string; readonly share: Share }[];
  /** Filled at the end of a class, and only if the teacher turned it on. */
  readonly ranking: readonly { readonly alias: string; readonly share: Share }[];
}

export interface BoardView {
  readonly group: string;
  readonly school: string;
  readonly code: ClassCode;
  /** Where students go, chosen at the Desk: shown as text and QR. */
  readonly address: string;
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  readonly here: number;
  readonly next: { readonly number: number; readonly of: number } | null;
  readonly stage: BoardStage;
}

/** A level with what was found of it. */
export interface CountedLevel extends RevealedLevel {
  readonly share: Share;
}

export type BoardStage =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'show'; readonly show: ShowView }
  | {
      readonly kind: 'open' | 'held';
      readonly task: TaskView;
      readonly harder: readonly TaskView[];
      readonly rootString: number | null;
      readonly seconds: number | null;
      readonly done: number;
      readonly of: number;
    }
  | ({
      readonly kind: 'revealed';
      /** The second and third level, counted apart. */
      readonly harder: readonly CountedLevel[];
      /** The slip to know, with one anonymous answer that shows it. */
      readonly slip: {
        readonly count: number;
        readonly level: Level;
        readonly example: SlipVerdict;
      } | null;
    } & CountedLevel)
  | { readonly kind: 'score'; readonly score: ScoreView }
  | { readonly kind: 'over'; readonly score: ScoreView };

export interface DeskAnswerView extends Answer {
  readonly done: boolean;
  readonly by: 'student' | 'teacher';
  readonly verdict: Verdict;
  /** Counted as right after all. */
  readonly accepted: boolean;
}

export interface DeskStudentView {
  readonly id: StudentId;
  readonly name: string;
  readonly seatNumber: number | null;
  readonly alias: string | null;
  readonly team: string | null;
  readonly moreTime: number;
  /** `here`: a device is connected · `away`: was here, is out of touch · `absent`: on the register only. */
  readonly presence: 'here' | 'away' | 'absent';
  readonly answer: DeskAnswerView | null;
  /** The same slip in several rounds of this class. */
  readonly pattern: Pattern | null;
  /** Arrived after the hold; counts only if the teacher says so. */
  readonly late: (DeskAnswerView & { readonly counted: boolean }) | null;
}

export interface DeskRoundView extends Levelled {
  readonly id: RoundId;
  readonly number: number;
  readonly planIndex: number | null;
  readonly phase: 'open' | 'held' | 'revealed';
  readonly voided: boolean;
  readonly openedAt: Time;
  readonly deadline: Time | null;
  readonly share: Share;
  /** Of each level apart. */
  readonly shares: readonly Share[];
}

export interface DeskPlanView {
  readonly id: PlanId;
  readonly title: string;
  readonly exercises: readonly PlannedExercise[];
}

export interface DeskView {
  readonly classId: ClassId;
  readonly group: string;
  readonly groupId: string;
  readonly school: string;
  readonly code: ClassCode;
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  readonly settings: ClassSettings;
  readonly now: Time;
  readonly closed: boolean;
  readonly boards: number;
  readonly plan: DeskPlanView | null;
  /** Index in the plan of the exercise that Ask would ask. */
  readonly cursor: number;
  /** `rest`: nothing is on the Stands · `round`: the last round is. */
  readonly stage: 'rest' | 'round';
  readonly show: ShowView | null;
  /** Whose turn it is to play. */
  readonly turn: StudentId | null;
  readonly rounds: readonly DeskRoundView[];
  readonly students: readonly DeskStudentView[];
  /** Who waits for the teacher's nod. */
  readonly asking: readonly {
    readonly seatId: SeatId;
    readonly name: string;
    /** `refused`: the name or the device was sent away before. */
    readonly reason: 'new' | 'move' | 'refused';
  }[];
  /** The same slip in several rounds, of the class as a whole. */
  readonly pattern: Pattern | null;
  readonly score: ScoreView;
}
