import { answerOf } from '../../shared/exercise/answer.ts';
import type { SeatId, StudentId, Time } from '../../shared/protocol/ids.ts';
import type {
  OwnAnswerView,
  StandOwnView,
  StandSharedView,
  StandStage,
} from '../../shared/protocol/views.ts';
import { currentRound } from './round.ts';
import type { ClassState, PlacedAnswer, Round } from './state.ts';
import { isTimeUp } from './student-commands.ts';
import { hereCount, nextView, revealedLevel, showView, taskView, type Presence } from './view-common.ts';

/** What all Stands of the class may know: before the reveal neither the answer nor what others gave. */
export function standSharedView(state: ClassState, presence: Presence): StandSharedView {
  return {
    classId: state.id,
    group: state.group,
    school: state.school,
    instrument: state.instrument,
    naming: state.naming,
    here: hereCount(state, presence),
    next: nextView(state),
    stage: stage(state),
    wantsAlias: state.settings.ranking,
  };
}

function stage(state: ClassState): StandStage {
  if (state.closedAt !== null) return { kind: 'over' };
  const show = showView(state);
  if (show) return { kind: 'show', show };
  const round = currentRound(state);
  if (!round) return { kind: 'rest' };
  const { id: roundId, phase, exercise, harder, seconds } = round;
  if (phase === 'revealed')
    return { kind: phase, roundId, ...revealedLevel(exercise), harder: harder.map(revealedLevel) };
  return { kind: phase, roundId, task: taskView(exercise), harder: harder.map(taskView), seconds };
}

/** What one student may know of themselves. */
export function standOwnView(state: ClassState, seatId: SeatId, now: Time): StandOwnView {
  const seat = state.seats.get(seatId);
  const student = seat?.status === 'in' && seat.studentId ? state.students.get(seat.studentId) : undefined;
  const nothing = {
    alias: null,
    playing: 'off',
    answer: null,
    timeUp: false,
    seconds: null,
    verdict: null,
    accepted: false,
  } as const;
  if (!student)
    return { seat: seat?.status ?? 'gone', reason: seat?.reason ?? null, name: seat?.name ?? '', ...nothing };
  const { name, alias } = student;
  const own = { seat: 'in', reason: null, name, alias, playing: playingFor(state, student.id) } as const;
  const round = currentRound(state);
  if (!round) return { ...nothing, ...own };
  const inTime = round.answers.get(student.id);
  const late = round.late.get(student.id);
  const counts = late?.counted ? late : inTime;
  const revealed = round.phase === 'revealed' ? (counts ?? late) : undefined;
  return {
    ...own,
    answer: answerView(round, counts, false) ?? answerView(round, late, true),
    timeUp: isTimeUp(round, student, now),
    seconds: round.seconds === null ? null : round.seconds * student.moreTime,
    verdict: revealed?.verdict ?? null,
    accepted: revealed?.accepted ?? false,
  };
}

function playingFor({ settings, turn }: ClassState, student: StudentId): StandOwnView['playing'] {
  if (settings.playing !== 'turns') return settings.playing ?? 'off';
  return turn === student ? 'turn' : 'wait';
}

function answerView(round: Round, answer: PlacedAnswer | undefined, late: boolean): OwnAnswerView | null {
  return answer
    ? { roundId: round.id, sendId: answer.sendId, ...answerOf(answer), done: answer.done, late }
    : null;
}
