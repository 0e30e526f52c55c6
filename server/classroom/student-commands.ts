import { answerOf, type Answer } from '../../shared/exercise/answer.ts';
import { judge } from '../../shared/exercise/judge.ts';
import { levelOf, levelsOf } from '../../shared/exercise/levels.ts';
import { assertNever } from '../../shared/lib/assert.ts';
import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { StandCommand } from '../../shared/protocol/commands.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { SeatId, StudentId, Time } from '../../shared/protocol/ids.ts';
import { nameKey } from '../../shared/protocol/name-key.ts';
import { misfitOf } from './fitting.ts';
import { deadlineFor, graceAfterHold, joinedStudents } from './round.ts';
import type { Change, ClassState, PlacedAnswer, Round, Seat, Student } from './state.ts';

export type Decision = Result<readonly Change[], ErrorCode>;

/** Enough sends to recognise any resend that is still on its way. */
const seenSends = 64;

export interface Joining {
  readonly name: string;
  readonly seatId: SeatId;
  readonly tokenHash: string;
  /** What the store keeps of the token that the device had before. */
  readonly tokenBefore: string | null;
  /** Used if the name is new on the register. */
  readonly newStudentId: StudentId;
  readonly now: Time;
}

/** Somebody gives the code and a name or seat number. */
export function join(state: ClassState, joining: Joining): Decision {
  if (state.closedAt !== null) return failure('class-closed');
  if (state.settings.locked) return failure('class-locked');
  const { name, seatId, tokenHash, now } = joining;
  const student = matchRegister(state, name);
  const reason = whyAsking(state, joining, student);
  const seat: Seat = {
    id: seatId,
    tokenHash,
    name,
    studentId: student?.id ?? null,
    status: reason || !student ? 'asking' : 'in',
    reason,
    joinedAt: now,
  };
  if (reason || student) return success([{ kind: 'seat', seat }]);
  return success(admitNew(seat, joining.newStudentId));
}

/** Why it takes the teacher's nod; null where it takes none. */
function whyAsking(
  state: ClassState,
  joining: Joining,
  student: Student | undefined,
): 'refused' | 'move' | 'new' | null {
  if (wasRefused(state, joining, student)) return 'refused';
  if (student) return joinedStudents(state).has(student.id) ? 'move' : null;
  return state.settings.autoAdmit ? null : 'new';
}

/** Who was sent away stays so for this class: by device, by name, and by place on the register. */
function wasRefused(
  state: ClassState,
  { name, tokenBefore }: Joining,
  student: Student | undefined,
): boolean {
  return [...state.seats.values()].some(
    (seat) =>
      seat.reason === 'refused' &&
      (seat.tokenHash === tokenBefore ||
        (student !== undefined && seat.studentId === student.id) ||
        nameKey(seat.name) === nameKey(name)),
  );
}

/** Puts a new name on the register and lets its seat in. */
export function admitNew(seat: Seat, studentId: StudentId): readonly Change[] {
  const student: Student = {
    id: studentId,
    name: seat.name,
    seatNumber: null,
    alias: null,
    team: null,
    moreTime: 1,
  };
  return [
    { kind: 'student', student },
    { kind: 'seat', seat: { ...seat, studentId, status: 'in', reason: null } },
  ];
}

/** A name on the register, or a seat number. */
export function matchRegister(state: Pick<ClassState, 'students'>, typed: string): Student | undefined {
  const wanted = nameKey(typed);
  const students = [...state.students.values()];
  if (/^\d{1,3}$/.test(wanted)) return students.find((student) => student.seatNumber === Number(wanted));
  return students.find((student) => nameKey(student.name) === wanted);
}

/** What a student's own device asks. */
export function decideForStudent(
  state: ClassState,
  seatId: SeatId,
  command: StandCommand,
  now: Time,
): Decision {
  const seat = state.seats.get(seatId);
  if (!seat || seat.status === 'gone') return failure('seat-unknown');
  if (command.kind === 'leave')
    // Leaving does not undo having been sent away.
    return success([
      {
        kind: 'seat',
        seat: { ...seat, status: 'gone', reason: seat.reason === 'refused' ? 'refused' : 'left' },
      },
    ]);
  const student = seat.status === 'in' && seat.studentId ? state.students.get(seat.studentId) : undefined;
  if (!student) return failure('not-admitted');
  switch (command.kind) {
    case 'set-alias':
      return success([{ kind: 'student', student: { ...student, alias: command.alias } }]);
    case 'place':
      return placeAnswer(state, student, command, now);
    default:
      return assertNever(command);
  }
}

function placeAnswer(
  state: ClassState,
  student: Student,
  command: StandCommand & { kind: 'place' },
  now: Time,
): Decision {
  const round = state.rounds.find(({ id }) => id === command.roundId);
  if (!round) return failure('round-unknown');
  const before = round.answers.get(student.id);
  const beforeLate = round.late.get(student.id);
  if (before?.seen.includes(command.sendId) || beforeLate?.seen.includes(command.sendId)) return success([]);
  if (round.voided) return failure('round-voided');
  const late = !isInTime(state, round, student, now);
  const answer = answerFor(round, command, now, 'student', late ? beforeLate : before);
  if (!answer.ok) return answer;
  const value: PlacedAnswer = { ...answer.value, counted: !late };
  return success([{ kind: 'answer', roundId: round.id, studentId: student.id, late, answer: value }]);
}

/** Whether a send that was taken in, or repeated, is kept as late. */
export function isLateSend(
  state: ClassState,
  seatId: SeatId,
  roundId: Round['id'],
  sendId: PlacedAnswer['sendId'],
): boolean {
  const studentId = state.seats.get(seatId)?.studentId;
  const round = state.rounds.find(({ id }) => id === roundId);
  return Boolean(studentId && round?.late.get(studentId)?.seen.includes(sendId));
}

function isInTime(state: ClassState, round: Round, student: Student, now: Time): boolean {
  if (state.closedAt !== null) return false;
  const deadline = deadlineFor(round, student.moreTime);
  if (deadline !== null && now > deadline + graceAfterHold) return false;
  if (round.phase === 'open') return true;
  return round.phase === 'held' && round.heldAt !== null && now <= round.heldAt + graceAfterHold;
}

/** Judges what was placed; shared by the student's own sends and those that the teacher enters. */
export function answerFor(
  round: Round,
  sent: Answer & Pick<PlacedAnswer, 'sendId' | 'done'>,
  now: Time,
  by: PlacedAnswer['by'],
  before: PlacedAnswer | undefined,
): Result<PlacedAnswer, ErrorCode> {
  const given = answerOf(sent);
  const exercise = levelsOf(round)[levelOf(given) - 1];
  if (!exercise) return failure('level-unknown');
  const misfit = misfitOf(exercise, given);
  if (misfit) return failure(misfit);
  return success({
    sendId: sent.sendId,
    seen: [...(before?.seen ?? []), sent.sendId].slice(-seenSends),
    ...given,
    done: sent.done,
    at: now,
    by,
    verdict: judge(exercise, given),
    accepted: false,
    counted: true,
  });
}

/** Whether a student's device must stop taking changes for the round. */
export function isTimeUp(round: Round, student: Student, now: Time): boolean {
  const deadline = deadlineFor(round, student.moreTime);
  return round.phase !== 'open' || (deadline !== null && now >= deadline);
}
