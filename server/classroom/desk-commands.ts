import { answerOf, type Answer } from '../../shared/exercise/answer.ts';
import { checkChart } from '../../shared/exercise/chart.ts';
import { checkExercise } from '../../shared/exercise/check.ts';
import type { Levelled } from '../../shared/exercise/levels.ts';
import { assertNever } from '../../shared/lib/assert.ts';
import { failure, success } from '../../shared/lib/result.ts';
import type { DeskCommand } from '../../shared/protocol/commands.ts';
import { nameKey } from '../../shared/protocol/name-key.ts';
import type { RoundId, SeatId, SendId, StudentId, Time } from '../../shared/protocol/ids.ts';
import type { Place } from '../../shared/theory/fretboard.ts';
import { reduce } from './reduce.ts';
import { currentRound, headOf, isOnGroupNeck, joinedStudents, roundDeadline, roundHead } from './round.ts';
import type { Change, ClassHead, ClassState, Plan, Round, RoundHead, Seat } from './state.ts';
import { admitNew, answerFor, matchRegister, type Decision } from './student-commands.ts';
import { usePlan } from './use-plan.ts';

/** What a decision may need from outside; ids are fresh and random. */
export interface DeskContext {
  readonly now: Time;
  readonly newId: () => string;
  /** The stored plan, where the command names one. */
  readonly plan?: Plan | undefined;
}

/** What the teacher asks, as changes, or why not. */
export function decideForDesk(state: ClassState, command: DeskCommand, context: DeskContext): Decision {
  if (state.closedAt !== null && command.kind !== 'accept' && command.kind !== 'count-late')
    return failure('class-closed');
  switch (command.kind) {
    case 'use-plan':
      if (command.planId !== null && !context.plan) return failure('not-found');
      return success(usePlan(state, context.plan ?? null));
    case 'select':
      if (!state.plan || command.index >= state.plan.exercises.length) return failure('plan-ended');
      return head(state, { cursor: command.index });
    case 'ask-planned': {
      const planned = state.plan?.exercises[state.cursor];
      if (!planned) return failure('plan-ended');
      return ask(state, planned, state.cursor, command.seconds ?? planned.seconds, context);
    }
    case 'ask':
      return ask(state, { harder: [], ...command }, null, command.seconds, context);
    case 'ask-again': {
      const last = state.rounds.at(-1);
      return last ? ask(state, last, last.planIndex, last.seconds, context) : failure('no-round');
    }
    case 'hold':
      return hold(state, context.now);
    case 'reveal': {
      const round = currentRound(state);
      if (!round) return failure('no-round');
      if (round.phase === 'open') return failure('round-not-held');
      if (round.phase === 'revealed') return failure('round-revealed');
      return changeRound(round, { phase: 'revealed', revealedAt: context.now });
    }
    case 'next': {
      const round = currentRound(state);
      if (round?.phase === 'open') return failure('round-open');
      const steps = round?.planIndex === state.cursor ? 1 : 0;
      return head(state, { cursor: state.cursor + steps, stage: 'rest', show: null });
    }
    case 'void': {
      const round = currentRound(state);
      return round ? changeRound(round, { voided: true }) : failure('no-round');
    }
    case 'undo':
      return undo(state);
    case 'show-charts': {
      const { charts } = command;
      if (!charts.every((chart) => checkChart(chart).ok)) return failure('exercise-refused');
      return show(state, { kind: 'charts', charts, at: 0 });
    }
    case 'show-step': {
      const shown = state.show;
      if (shown?.kind !== 'charts' || command.at >= shown.charts.length) return failure('walk-ended');
      return head(state, { show: { ...shown, at: command.at } });
    }
    case 'show-taps':
      return showTaps(state, command.places);
    case 'show-nothing':
      return head(state, { show: null });
    case 'admit':
      return admit(state, command.seatId, context.newId() as StudentId);
    case 'admit-new':
      return admitNewOnes(state, context);
    case 'refuse': {
      const seat = state.seats.get(command.seatId);
      if (!seat) return failure('not-found');
      return success([{ kind: 'seat', seat: { ...seat, status: 'gone', reason: 'refused' } }]);
    }
    case 'remove': {
      if (!state.students.has(command.studentId)) return failure('student-unknown');
      const seats = [...state.seats.values()].filter(
        (seat) => seat.studentId === command.studentId && seat.status !== 'gone',
      );
      const gone = seats.map((seat): Change => ({
        kind: 'seat',
        seat: { ...seat, status: 'gone', reason: 'refused' },
      }));
      return success(state.turn === command.studentId ? [...gone, headChange(state, { turn: null })] : gone);
    }
    case 'set-student': {
      const student = state.students.get(command.studentId);
      if (!student) return failure('student-unknown');
      const { name = student.name, team = student.team, moreTime = student.moreTime } = command;
      const isTaken = [...state.students.values()].some(
        (other) => other.id !== student.id && nameKey(other.name) === nameKey(name),
      );
      if (command.name !== undefined && isTaken) return failure('name-taken');
      return success([{ kind: 'student', student: { ...student, name, team, moreTime } }]);
    }
    case 'give-turn': {
      const { studentId } = command;
      if (studentId !== null && state.settings.playing !== 'turns') return failure('no-turns');
      if (studentId !== null && !state.students.has(studentId)) return failure('student-unknown');
      return head(state, { turn: studentId });
    }
    case 'enter':
      return enter(state, command.studentId, answerOf(command), context);
    case 'accept':
      return changeAnswer(state, command.roundId, command.studentId, { accepted: command.accepted });
    case 'count-late':
      return countLate(state, command.roundId, command.studentId, command.counted);
    case 'set-class': {
      const { settings } = command;
      return head(state, { settings, turn: settings.playing === 'turns' ? state.turn : null });
    }
    case 'close': {
      const held = hold(state, context.now);
      const closed = headChange(state, { stage: 'rest', show: null, turn: null, closedAt: context.now });
      return success([...(held.ok ? held.value : []), closed]);
    }
    default:
      return assertNever(command);
  }
}

/** Holds the round once everybody's time is up; nothing to do otherwise. */
export function decideTimeUp(state: ClassState, now: Time): readonly Change[] {
  const round = currentRound(state);
  if (round?.phase !== 'open') return [];
  const deadline = roundDeadline(state, round);
  if (deadline === null || now < deadline) return [];
  return [{ kind: 'round', round: { ...roundHead(round), phase: 'held', heldAt: deadline } }];
}

function head(state: ClassState, fields: Partial<ClassHead>): Decision {
  return success([headChange(state, fields)]);
}

function headChange(state: ClassState, fields: Partial<ClassHead>): Change {
  return { kind: 'class', head: { ...headOf(state), ...fields } };
}

function changeRound(round: Round, fields: Partial<RoundHead>): Decision {
  return success([{ kind: 'round', round: { ...roundHead(round), ...fields } }]);
}

function ask(
  state: ClassState,
  { exercise, harder }: Levelled,
  planIndex: number | null,
  seconds: number | null,
  context: DeskContext,
): Decision {
  if (currentRound(state)?.phase === 'open') return failure('round-open');
  if (![exercise, ...harder].every((level) => checkExercise(level).ok)) return failure('exercise-refused');
  const round: RoundHead = {
    id: context.newId() as RoundId,
    number: (state.rounds.at(-1)?.number ?? 0) + 1,
    exercise,
    harder,
    planIndex,
    seconds,
    phase: 'open',
    voided: false,
    openedAt: context.now,
    heldAt: null,
    revealedAt: null,
  };
  return success([
    { kind: 'round', round },
    { kind: 'class', head: { ...headOf(state), stage: 'round', show: null } },
  ]);
}

function hold(state: ClassState, now: Time): Decision {
  const round = currentRound(state);
  if (!round) return failure('no-round');
  if (round.phase !== 'open') return failure('round-held');
  return changeRound(round, { phase: 'held', heldAt: now });
}

/** Brings the last voided round back; else opens a held round again, without its time limit. */
function undo(state: ClassState): Decision {
  const last = state.rounds.at(-1);
  if (last && !last.voided && last.phase === 'held' && state.stage === 'round') {
    return changeRound(last, { phase: 'open', heldAt: null, seconds: null });
  }
  const voided = state.rounds.findLast((round) => round.voided);
  if (!voided) return failure('nothing-to-undo');
  // An open round that others have followed can't go on: its answers stand as they are.
  const phase = voided.phase === 'open' && voided !== last ? 'held' : voided.phase;
  return changeRound(voided, { voided: false, phase });
}

function show(state: ClassState, shown: ClassHead['show']): Decision {
  if (currentRound(state)?.phase === 'open') return failure('round-open');
  return head(state, { show: shown });
}

function showTaps(state: ClassState, places: readonly Place[]): Decision {
  return places.every((place) => isOnGroupNeck(state, place))
    ? show(state, { kind: 'taps', places })
    : failure('off-the-neck');
}

function admit(state: ClassState, seatId: SeatId, newStudentId: StudentId): Decision {
  const seat = state.seats.get(seatId);
  if (seat?.status !== 'asking') return failure('not-found');
  if (seat.studentId === null) {
    const student = matchRegister(state, seat.name);
    if (!student) return success(admitNew(seat, newStudentId));
    // The name came on the register meanwhile: the same question as for any taken name.
    const taken = joinedStudents(state).has(student.id);
    const linked: Seat = {
      ...seat,
      studentId: student.id,
      status: taken ? 'asking' : 'in',
      reason: taken ? 'move' : null,
    };
    return success([{ kind: 'seat', seat: linked }]);
  }
  const others = [...state.seats.values()].filter(
    (other) => other.studentId === seat.studentId && other.status === 'in',
  );
  return success([
    ...others.map((other): Change => ({ kind: 'seat', seat: { ...other, status: 'gone', reason: 'moved' } })),
    { kind: 'seat', seat: { ...seat, status: 'in', reason: null } },
  ]);
}

/** One after another, since two of them may have typed the same name. */
function admitNewOnes(state: ClassState, context: DeskContext): Decision {
  const changes: Change[] = [];
  for (const seat of state.seats.values()) {
    if (seat.status !== 'asking' || seat.reason !== 'new') continue;
    const admitted = admit(reduce(state, changes), seat.id, context.newId() as StudentId);
    if (admitted.ok) changes.push(...admitted.value);
  }
  return success(changes);
}

function enter(state: ClassState, studentId: StudentId, answer: Answer, context: DeskContext): Decision {
  const round = currentRound(state);
  if (!round) return failure('no-round');
  if (!state.students.has(studentId)) return failure('student-unknown');
  const sent = { ...answer, sendId: context.newId() as SendId, done: true };
  const entered = answerFor(round, sent, context.now, 'teacher', round.answers.get(studentId));
  if (!entered.ok) return entered;
  return success([{ kind: 'answer', roundId: round.id, studentId, late: false, answer: entered.value }]);
}

function changeAnswer(
  state: ClassState,
  roundId: RoundId,
  studentId: StudentId,
  fields: { readonly accepted: boolean },
): Decision {
  const round = state.rounds.find(({ id }) => id === roundId);
  if (!round) return failure('round-unknown');
  const changes = [round.answers, round.late].flatMap((answers, index): Change[] => {
    const answer = answers.get(studentId);
    return answer
      ? [{ kind: 'answer', roundId, studentId, late: index === 1, answer: { ...answer, ...fields } }]
      : [];
  });
  return changes.length > 0 ? success(changes) : failure('not-found');
}

function countLate(state: ClassState, roundId: RoundId, studentId: StudentId, counted: boolean): Decision {
  const answer = state.rounds.find(({ id }) => id === roundId)?.late.get(studentId);
  if (!answer) return failure('not-found');
  return success([{ kind: 'answer', roundId, studentId, late: true, answer: { ...answer, counted } }]);
}
