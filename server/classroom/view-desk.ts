import { answerOf } from '../../shared/exercise/answer.ts';
import type { Pattern } from '../../shared/exercise/pattern.ts';
import { perObject } from '../../shared/lib/per-object.ts';
import type { StudentId, Time } from '../../shared/protocol/ids.ts';
import type {
  DeskAnswerView,
  DeskRoundView,
  DeskStudentView,
  DeskView,
} from '../../shared/protocol/views.ts';
import {
  countedAnswers,
  currentRound,
  joinedStudents,
  levelsOfRound,
  roundDeadline,
  shareOf,
} from './round.ts';
import type { ClassState, PlacedAnswer, Round, Student } from './state.ts';
import { showView, type Presence } from './view-common.ts';
import { patternsIn } from './view-pattern.ts';
import { scoreView } from './view-score.ts';

/** What the class's teacher may know: all of it. */
export function deskView(state: ClassState, presence: Presence, now: Time): DeskView {
  const joined = joinedStudents(state);
  const patterns = patternsIn(state);
  const round = currentRound(state);
  const presenceOf = (id: StudentId) =>
    !joined.has(id) ? 'absent' : presence.students.has(id) ? 'here' : 'away';
  return {
    classId: state.id,
    group: state.group,
    groupId: state.groupId,
    school: state.school,
    code: state.code,
    instrument: state.instrument,
    naming: state.naming,
    settings: state.settings,
    now,
    closed: state.closedAt !== null,
    boards: presence.boards,
    plan: state.plan,
    cursor: state.cursor,
    stage: round ? 'round' : 'rest',
    show: showView(state),
    turn: state.turn,
    rounds: state.rounds.map((round): DeskRoundView => {
      const { id, number, exercise, harder, planIndex, phase, voided, openedAt } = round;
      const deadline = phase === 'open' ? roundDeadline(state, round) : null;
      const share = shareOf(countedAnswers(round).values());
      const shares = levelsOfRound(round).map((level) => level.share);
      return { id, number, exercise, harder, planIndex, phase, voided, openedAt, deadline, share, shares };
    }),
    students: [...state.students.values()].map((student) => {
      const pattern = patterns.ofStudents.get(student.id) ?? null;
      return studentView(student, round, pattern, presenceOf(student.id));
    }),
    asking: [...state.seats.values()]
      .filter((seat) => seat.status === 'asking')
      .map(({ id, name, reason }) => ({
        seatId: id,
        name,
        reason: reason === 'move' || reason === 'refused' ? reason : 'new',
      })),
    pattern: patterns.ofClass,
    score: scoreView(state),
  };
}

function studentView(
  student: Student,
  round: Round | undefined,
  pattern: Pattern | null,
  presence: DeskStudentView['presence'],
): DeskStudentView {
  const answer = round?.answers.get(student.id);
  const late = round?.late.get(student.id);
  return {
    ...student,
    presence,
    answer: answer ? answerView(answer) : null,
    late: late ? { ...answerView(late), counted: late.counted } : null,
    pattern,
  };
}

/** Asked for again with each answer of anybody. */
const answerView = perObject((answer: PlacedAnswer): DeskAnswerView => {
  const { done, by, verdict, accepted } = answer;
  return { ...answerOf(answer), done, by, verdict, accepted };
});
