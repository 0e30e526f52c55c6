import { isEmpty } from '../../../shared/exercise/answer.ts';
import type { RoundId, StudentId } from '../../../shared/protocol/ids.ts';
import { answerKey, drop, need, type Tables } from './tables.ts';

export function mergeInMemory(tables: Tables, from: StudentId, into: StudentId): void {
  need(tables.students.has(into), 'The student');
  const both = [from, into];
  for (const roundId of new Set([...tables.answers.values()].map((kept) => kept.roundId)))
    mergeRound(tables, roundId, from, into);
  const inClass = [...tables.seats.values()].filter(
    ({ seat }) => seat.status === 'in' && seat.studentId !== null && both.includes(seat.studentId),
  );
  for (const { classId, seat } of inClass) {
    const isLater = inClass.some(
      (other) =>
        other.classId === classId &&
        (other.seat.joinedAt > seat.joinedAt ||
          (other.seat.joinedAt === seat.joinedAt && other.seat.id > seat.id)),
    );
    if (isLater) tables.seats.set(seat.id, { classId, seat: { ...seat, status: 'gone', reason: 'moved' } });
  }
  for (const [id, { classId, seat }] of tables.seats)
    if (seat.studentId === from) tables.seats.set(id, { classId, seat: { ...seat, studentId: into } });
  moveTurn(tables, from, into);
  tables.students.delete(from);
}

/** Whose turn it was goes along; null where the student is gone. */
export function moveTurn(tables: Tables, from: StudentId, into: StudentId | null): void {
  for (const [id, one] of tables.classes)
    if (one.turn === from) tables.classes.set(id, { ...one, turn: into });
}

function mergeRound(tables: Tables, roundId: RoundId, from: StudentId, into: StudentId): void {
  const [winner, ...losers] = [into, from]
    .map((studentId) => {
      const held = [...tables.answers.values()].filter(
        (kept) => kept.roundId === roundId && kept.studentId === studentId,
      );
      const counted = held.filter(({ answer }) => answer.counted && !isEmpty(answer));
      const latest = (of: typeof held) => Math.max(-1, ...of.map(({ answer }) => answer.at));
      return { studentId, held, countedAt: latest(counted), at: latest(held) };
    })
    .filter(({ held }) => held.length > 0)
    .sort((a, b) => b.countedAt - a.countedAt || b.at - a.at);
  for (const { studentId } of losers)
    drop(tables.answers, (kept) => kept.roundId === roundId && kept.studentId === studentId);
  if (winner?.studentId !== from) return;
  for (const kept of winner.held) {
    tables.answers.delete(answerKey(kept));
    tables.answers.set(answerKey({ ...kept, studentId: into }), { ...kept, studentId: into });
  }
}
