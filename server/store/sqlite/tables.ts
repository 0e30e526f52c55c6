import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import type { Part } from '../../../shared/plans/plan.ts';
import type { ClassSettings } from '../../../shared/protocol/commands.ts';
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
import type { InstrumentId, Place } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import type { PlacedAnswer, Plan, Round, Seat, Show } from '../../classroom/state.ts';
import type { SettingKey } from '../store.ts';
import type { Json } from './json.ts';

/** The columns as they are on disk (`../migrations/`). */
export interface Tables {
  teachers: {
    id: TeacherId;
    name: string;
    /** The name without regard to case. */
    name_key: string;
    passphrase_hash: string;
    created_at: Time;
  };
  sessions: { token_hash: string; teacher_id: TeacherId; expires_at: Time };
  invitations: { token_hash: string; expires_at: Time };
  /** What a teacher chose for the whole server. */
  settings: { key: SettingKey; value: string };
  groups: {
    id: GroupId;
    teacher_id: TeacherId;
    name: string;
    school: string;
    instrument: InstrumentId;
    naming: NoteNaming;
    language: string;
    purge_at: Time | null;
    created_at: Time;
  };
  students: {
    id: StudentId;
    group_id: GroupId;
    name: string;
    seat_number: number | null;
    alias: string | null;
    team: string | null;
    more_time: number;
  };
  plans: {
    id: PlanId;
    group_id: GroupId;
    title: string;
    aim: string;
    points: Json<readonly string[]>;
    /** Counts the times it was saved. */
    revision: number;
    updated_at: Time;
  };
  exercises: {
    plan_id: PlanId;
    position: number;
    id: string;
    part: Part;
    exercise: Json<Exercise>;
    harder: Json<readonly Exercise[]>;
    seconds: number | null;
  };
  classes: {
    id: ClassId;
    group_id: GroupId;
    code: ClassCode;
    opened_at: Time;
    closed_at: Time | null;
    settings: Json<ClassSettings>;
    plan: Json<Plan> | null;
    cursor: number;
    stage: 'rest' | 'round';
    show: Json<Show> | null;
    turn: StudentId | null;
  };
  rounds: {
    id: RoundId;
    class_id: ClassId;
    number: number;
    exercise: Json<Exercise>;
    harder: Json<readonly Exercise[]>;
    plan_index: number | null;
    seconds: number | null;
    phase: Round['phase'];
    voided: Flag;
    opened_at: Time;
    held_at: Time | null;
    revealed_at: Time | null;
  };
  answers: {
    round_id: RoundId;
    student_id: StudentId;
    late: Flag;
    send_id: SendId;
    seen: Json<readonly SendId[]>;
    places: Json<readonly Place[]>;
    /** What the answer carries besides places; null where that is nothing. */
    besides: Json<Omit<Answer, 'places'>> | null;
    done: Flag;
    at: Time;
    given_by: PlacedAnswer['by'];
    verdict: Json<Verdict>;
    accepted: Flag;
    counted: Flag;
  };
  seats: {
    id: SeatId;
    class_id: ClassId;
    token_hash: string;
    name: string;
    student_id: StudentId | null;
    status: Seat['status'];
    reason: Seat['reason'];
    joined_at: Time;
  };
  /** A view: the one answer of each student that counts in a round. */
  counted_answers: { round_id: RoundId; student_id: StudentId; is_right: Flag };
}

export type Flag = 0 | 1;

export function flag(value: boolean): Flag {
  return value ? 1 : 0;
}
