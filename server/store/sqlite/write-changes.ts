import type { Database as Connection } from 'better-sqlite3';
import { answerOf } from '../../../shared/exercise/answer.ts';
import { assertNever } from '../../../shared/lib/assert.ts';
import type { ClassId, GroupId } from '../../../shared/protocol/ids.ts';
import type { Change, Student } from '../../classroom/state.ts';
import { StoreError } from '../store-error.ts';
import { toJson, toJsonOrNull } from './json.ts';
import { flag } from './tables.ts';

/** Writes changes into the running transaction. Statements are prepared once: every answer comes through here. */
export interface ChangeWriter {
  changes(classId: ClassId, changes: readonly Change[]): void;
  student(groupId: GroupId, student: Student): void;
}

export function changeWriter(connection: Connection): ChangeWriter {
  const groupOf = connection.prepare<[ClassId], GroupId>('select group_id from classes where id = ?').pluck();
  const saveClass = connection.prepare(
    'update classes set settings = ?, plan = ?, cursor = ?, stage = ?, show = ?, turn = ?, closed_at = ? where id = ?',
  );
  const saveStudent = connection.prepare(
    upsert('students', ['id'], ['group_id', 'name', 'seat_number', 'alias', 'team', 'more_time']),
  );
  const saveSeat = connection.prepare(
    upsert(
      'seats',
      ['id'],
      ['class_id', 'token_hash', 'name', 'student_id', 'status', 'reason', 'joined_at'],
    ),
  );
  const saveRound = connection.prepare(
    upsert(
      'rounds',
      ['id'],
      [
        'class_id',
        'number',
        'exercise',
        'harder',
        'plan_index',
        'seconds',
        'phase',
        'voided',
        'opened_at',
        'held_at',
        'revealed_at',
      ],
    ),
  );
  const saveAnswer = connection.prepare(
    upsert(
      'answers',
      ['round_id', 'student_id', 'late'],
      ['send_id', 'seen', 'places', 'besides', 'done', 'at', 'given_by', 'verdict', 'accepted', 'counted'],
    ),
  );

  function student(groupId: GroupId, { id, name, seatNumber, alias, team, moreTime }: Student): void {
    saveStudent.run(id, groupId, name, seatNumber, alias, team, moreTime);
  }

  function write(classId: ClassId, groupId: GroupId, change: Change): void {
    switch (change.kind) {
      case 'class': {
        const { settings, plan, cursor, stage, show, turn, closedAt } = change.head;
        saveClass.run(
          toJson(settings),
          toJsonOrNull(plan),
          cursor,
          stage,
          toJsonOrNull(show),
          turn,
          closedAt,
          classId,
        );
        return;
      }
      case 'student':
        student(groupId, change.student);
        return;
      case 'seat': {
        const { id, tokenHash, name, studentId, status, reason, joinedAt } = change.seat;
        saveSeat.run(id, classId, tokenHash, name, studentId, status, reason, joinedAt);
        return;
      }
      case 'round': {
        const {
          id,
          number,
          exercise,
          harder,
          planIndex,
          seconds,
          phase,
          voided,
          openedAt,
          heldAt,
          revealedAt,
        } = change.round;
        saveRound.run(
          id,
          classId,
          number,
          toJson(exercise),
          toJson(harder),
          planIndex,
          seconds,
          phase,
          flag(voided),
          openedAt,
          heldAt,
          revealedAt,
        );
        return;
      }
      case 'answer': {
        const { sendId, seen, done, at, by, verdict, accepted, counted } = change.answer;
        const { places, ...besides } = answerOf(change.answer);
        saveAnswer.run(
          change.roundId,
          change.studentId,
          flag(change.late),
          sendId,
          toJson(seen),
          toJson(places),
          Object.keys(besides).length > 0 ? toJson(besides) : null,
          flag(done),
          at,
          by,
          toJson(verdict),
          flag(accepted),
          flag(counted),
        );
        return;
      }
      default:
        assertNever(change);
    }
  }

  return {
    student,
    changes(classId, changes) {
      const groupId = groupOf.get(classId);
      if (groupId === undefined) throw new StoreError('The class is not in the store any more.');
      for (const change of changes) write(classId, groupId, change);
    },
  };
}

/** SQL that writes a row whole: a new one, or over the one with the same key. */
function upsert(table: string, key: readonly string[], columns: readonly string[]): string {
  const all = [...key, ...columns];
  return `insert into ${table} (${all.join(', ')}) values (${all.map(() => '?').join(', ')})
    on conflict (${key.join(', ')}) do update set ${columns.map((name) => `${name} = excluded.${name}`).join(', ')}`;
}
