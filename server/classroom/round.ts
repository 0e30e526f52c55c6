import { isEmpty } from '../../shared/exercise/answer.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import { exerciseAt, levelOf, levelsUpTo, type Level } from '../../shared/exercise/levels.ts';
import { commonestSlip } from '../../shared/exercise/score.ts';
import type { SlipVerdict } from '../../shared/exercise/verdict.ts';
import { known } from '../../shared/lib/assert.ts';
import { perObject } from '../../shared/lib/per-object.ts';
import type { StudentId, Time } from '../../shared/protocol/ids.ts';
import type { Share } from '../../shared/protocol/views.ts';
import { instrumentById, isOnNeck, type Place } from '../../shared/theory/fretboard.ts';
import type { ClassHead, ClassState, PlacedAnswer, Round, RoundHead } from './state.ts';

/**
 * What was placed just before the hold may still be on its way: for this long after it an answer counts as in
 * time, unless the reveal came first. Milliseconds.
 */
export const graceAfterHold = 1500;

/** The round on the stage: the last one, unless it was voided or the stage was cleared. */
export function currentRound<T extends RoundHead>(
  state: Pick<ClassState, 'stage'> & { readonly rounds: readonly T[] },
): T | undefined {
  const last = state.rounds.at(-1);
  return state.stage === 'round' && last && !last.voided ? last : undefined;
}

export function headOf(state: ClassState): ClassHead {
  const { settings, plan, cursor, stage, show, turn, closedAt } = state;
  return { settings, plan, cursor, stage, show, turn, closedAt };
}

export function roundHead(round: Round): RoundHead {
  const { answers: _answers, late: _late, ...head } = round;
  return head;
}

/** When a student's time is up, or null without a time limit. */
export function deadlineFor(round: Round, moreTime: number): Time | null {
  return round.seconds === null ? null : ((round.openedAt + round.seconds * 1000 * moreTime) as Time);
}

/** Students with a device in the class. */
export function joinedStudents(state: ClassState): ReadonlySet<StudentId> {
  const joined = new Set<StudentId>();
  for (const seat of state.seats.values())
    if (seat.status === 'in' && seat.studentId) joined.add(seat.studentId);
  return joined;
}

/** When the whole round is over by the clock: the latest deadline of those who joined; null without a limit. */
export function roundDeadline(state: ClassState, round: Round): Time | null {
  const factors = [...joinedStudents(state)].map((id) => state.students.get(id)?.moreTime ?? 1);
  return deadlineFor(round, Math.max(1, ...factors));
}

/** The next instant after `now` at which time runs out for somebody. */
export function nextDeadline(state: ClassState, now: Time): Time | null {
  const round = currentRound(state);
  // Without a limit nobody's time runs out; asked for at every answer.
  if (round?.phase !== 'open' || round.seconds === null) return null;
  const factors = new Set([
    1,
    ...[...joinedStudents(state)].map((id) => state.students.get(id)?.moreTime ?? 1),
  ]);
  const deadlines = [...factors].map((factor) => deadlineFor(round, factor)).filter((time) => time !== null);
  const coming = deadlines.filter((time) => time > now);
  const whole = roundDeadline(state, round);
  if (coming.length === 0) return whole;
  return Math.min(...coming) as Time;
}

/** The answer that counts for each student, if it holds anything: a late one only where the teacher lets it. */
export const countedAnswers: (round: Round) => ReadonlyMap<StudentId, PlacedAnswer> = perObject((round) => {
  const counted = new Map<StudentId, PlacedAnswer>();
  for (const [studentId, answer] of [...round.answers, ...round.late]) {
    if (!answer.counted) continue;
    // Everything taken back is no answer.
    if (!isEmpty(answer)) counted.set(studentId, answer);
    else counted.delete(studentId);
  }
  return counted;
});

export function isRight(answer: PlacedAnswer): boolean {
  return answer.accepted || answer.verdict.kind === 'right';
}

export function shareOf(answers: Iterable<PlacedAnswer>): Share {
  let right = 0;
  let of = 0;
  for (const answer of answers) {
    of += 1;
    if (isRight(answer)) right += 1;
  }
  return { right, of };
}

/** Whether the place exists on the group's instrument. */
export function isOnGroupNeck(state: ClassState, place: Place): boolean {
  return isOnNeck(known(instrumentById(state.instrument), 'instrument of a group'), place);
}

/** One level of a round, and the answers to it that count. */
export interface LevelOfRound {
  readonly level: Level;
  readonly exercise: Exercise;
  readonly answers: readonly PlacedAnswer[];
  readonly share: Share;
}

/** Levels are asked together and counted apart (SPEC LEVEL-4). */
export const levelsOfRound: (round: Round) => readonly LevelOfRound[] = perObject((round) => {
  const counted = [...countedAnswers(round).values()];
  return levelsUpTo(round.harder.length + 1).map((level) => {
    const answers = counted.filter((answer) => levelOf(answer) === level);
    return { level, exercise: exerciseAt(round, level), answers, share: shareOf(answers) };
  });
});

/** The commonest slip of a level's answers that count: its verdicts, of tapped answers first (SPEC TURN-6); none where nobody slipped. */
export function commonestSlipOf({ answers }: LevelOfRound): readonly SlipVerdict[] {
  const slipped = answers.filter((answer) => !isRight(answer));
  const tappedFirst = slipped.sort((a, b) => Number(Boolean(a.heard)) - Number(Boolean(b.heard)));
  return commonestSlip(tappedFirst.map((answer) => answer.verdict));
}
