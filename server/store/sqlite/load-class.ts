import type { ClassId, RoundId, StudentId } from '../../../shared/protocol/ids.ts';
import type { Asked, ClassState, PlacedAnswer, Round, RoundHead, Seat } from '../../classroom/state.ts';
import { query, type Database } from './database.ts';
import { fromJson, fromJsonOrNull } from './json.ts';
import { readLastTime } from './last-time.ts';
import { readStudents } from './students.ts';

/** Rebuilds the whole state of a class; runs inside one transaction. */
export function loadClass(database: Database, id: ClassId): ClassState | undefined {
  const head = database.first(
    query
      .selectFrom('classes')
      .innerJoin('groups', 'groups.id', 'classes.group_id')
      .select([
        'classes.id',
        'group_id as groupId',
        'teacher_id as teacherId',
        'code',
        'groups.name as group',
        'school',
        'instrument',
        'naming',
        'opened_at as openedAt',
        'closed_at as closedAt',
        'settings',
        'plan',
        'cursor',
        'stage',
        'show',
        'turn',
      ])
      .where('classes.id', '=', id),
  );
  if (!head) return undefined;
  return {
    ...head,
    settings: fromJson(head.settings),
    plan: fromJsonOrNull(head.plan),
    show: fromJsonOrNull(head.show),
    students: new Map(readStudents(database, head.groupId).map((student) => [student.id, student])),
    seats: new Map(readSeats(database, id).map((seat) => [seat.id, seat])),
    rounds: readRounds(database, id),
    lastTime: readLastTime(database, head.groupId, head.openedAt),
  };
}

/** What was asked in a class, without answers and people. */
export function readAsked(database: Database, id: ClassId): Asked | undefined {
  const head = database.first(
    query
      .selectFrom('classes')
      .innerJoin('groups', 'groups.id', 'classes.group_id')
      .select(['opened_at as openedAt', 'instrument', 'naming', 'plan', 'stage'])
      .where('classes.id', '=', id),
  );
  return head && { ...head, plan: fromJsonOrNull(head.plan), rounds: readRoundHeads(database, id) };
}

function readSeats(database: Database, id: ClassId): readonly Seat[] {
  return database.all(
    query
      .selectFrom('seats')
      .select([
        'id',
        'token_hash as tokenHash',
        'name',
        'student_id as studentId',
        'status',
        'reason',
        'joined_at as joinedAt',
      ])
      .where('class_id', '=', id)
      .orderBy('joined_at')
      .orderBy('id'),
  );
}

function readRounds(database: Database, id: ClassId): readonly Round[] {
  const answers = readAnswers(database, id);
  return readRoundHeads(database, id).map((round) => ({
    ...round,
    answers: answers.get(round.id)?.inTime ?? new Map(),
    late: answers.get(round.id)?.late ?? new Map(),
  }));
}

function readRoundHeads(database: Database, id: ClassId): readonly RoundHead[] {
  const rounds = database.all(
    query
      .selectFrom('rounds')
      .select([
        'id',
        'number',
        'exercise',
        'harder',
        'plan_index as planIndex',
        'seconds',
        'phase',
        'voided',
        'opened_at as openedAt',
        'held_at as heldAt',
        'revealed_at as revealedAt',
      ])
      .where('class_id', '=', id)
      .orderBy('number'),
  );
  return rounds.map((round) => ({
    ...round,
    exercise: fromJson(round.exercise),
    harder: fromJson(round.harder),
    voided: round.voided === 1,
  }));
}

interface AnswersOfRound {
  readonly inTime: Map<StudentId, PlacedAnswer>;
  readonly late: Map<StudentId, PlacedAnswer>;
}

function readAnswers(database: Database, id: ClassId): ReadonlyMap<RoundId, AnswersOfRound> {
  const rows = database.all(
    query
      .selectFrom('answers')
      .innerJoin('rounds', 'rounds.id', 'answers.round_id')
      .selectAll('answers')
      .where('class_id', '=', id)
      .orderBy('round_id')
      .orderBy('at')
      .orderBy('student_id'),
  );
  const byRound = new Map<RoundId, AnswersOfRound>();
  for (const row of rows) {
    const ofRound = byRound.get(row.round_id) ?? { inTime: new Map(), late: new Map() };
    byRound.set(row.round_id, ofRound);
    (row.late === 1 ? ofRound.late : ofRound.inTime).set(row.student_id, {
      sendId: row.send_id,
      seen: fromJson(row.seen),
      places: fromJson(row.places),
      ...fromJsonOrNull(row.besides),
      done: row.done === 1,
      at: row.at,
      by: row.given_by,
      verdict: fromJson(row.verdict),
      accepted: row.accepted === 1,
      counted: row.counted === 1,
    });
  }
  return byRound;
}
