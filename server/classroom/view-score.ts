import type { Exercise } from '../../shared/exercise/exercise.ts';
import { levelName } from '../../shared/exercise/levels.ts';
import { scoreKeyOf } from '../../shared/exercise/score.ts';
import { wordingOf } from '../../shared/exercise/wording.ts';
import type { ScoreView, Share } from '../../shared/protocol/views.ts';
import { countedAnswers, isRight, levelsOfRound } from './round.ts';
import type { ClassState, PlacedAnswer, Round, Student } from './state.ts';

interface Counted {
  readonly student: Student;
  readonly answer: PlacedAnswer;
}

/** The class against its own last time; teams and, at the end and only if wanted, individuals by alias. */
export function scoreView(state: ClassState): ScoreView {
  const rounds = state.rounds.filter((round) => round.phase === 'revealed' && !round.voided);
  const levels = rounds.flatMap(levelsMet);
  const rows = levels.map(({ level, exercise, share, isOneOfMany }) => ({
    title: (isOneOfMany ? `${levelName(level)}: ` : '') + wordingOf(exercise, state.naming).title,
    now: share,
    before: state.lastTime.get(scoreKeyOf(exercise)) ?? null,
  }));
  const counted = rounds.flatMap((round) =>
    [...countedAnswers(round)].flatMap(([id, answer]): Counted[] => {
      const student = state.students.get(id);
      return student ? [{ student, answer }] : [];
    }),
  );
  const compared = rows.filter((row) => row.before !== null);
  const wantsRanking = state.settings.ranking && state.closedAt !== null;
  return {
    // Like is held against like: kinds that the class meets for the first time wait for their next time.
    now: sum((compared.length > 0 ? compared : rows).map((row) => row.now)),
    before: compared.length > 0 ? sum(lastTimes(state, levels)) : null,
    rows,
    teams:
      state.settings.score === 'teams'
        ? byShare(counted, ({ team }) => team).map(({ name, share }) => ({ team: name, share }))
        : [],
    ranking: wantsRanking
      ? byShare(counted, ({ alias }) => alias).map(({ name, share }) => ({ alias: name, share }))
      : [],
  };
}

/** The levels that somebody answered, each with its own exercise; the first where nobody did. */
function levelsMet(round: Round) {
  const levels = levelsOfRound(round);
  const answered = levels.filter(({ answers }) => answers.length > 0);
  return (answered.length > 0 ? answered : levels.slice(0, 1)).map((level) => ({
    ...level,
    isOneOfMany: levels.length > 1,
  }));
}

/** One earlier share for each kind of exercise that today met, however often it was asked. */
function lastTimes(state: ClassState, levels: readonly { readonly exercise: Exercise }[]): readonly Share[] {
  const keys = new Set(levels.map(({ exercise }) => scoreKeyOf(exercise)));
  return [...keys].flatMap((key) => state.lastTime.get(key) ?? []);
}

function sum(shares: readonly Share[]): Share {
  return {
    right: shares.reduce((total, share) => total + share.right, 0),
    of: shares.reduce((total, share) => total + share.of, 0),
  };
}

function byShare(counted: readonly Counted[], nameOf: (student: Student) => string | null) {
  const groups = new Map<string, Counted[]>();
  for (const entry of counted) {
    const name = nameOf(entry.student);
    if (name !== null) groups.set(name, [...(groups.get(name) ?? []), entry]);
  }
  return [...groups]
    .map(([name, entries]) => ({
      name,
      share: { right: entries.filter(({ answer }) => isRight(answer)).length, of: entries.length },
    }))
    .sort((a, b) => b.share.right / b.share.of - a.share.right / a.share.of || a.name.localeCompare(b.name));
}
