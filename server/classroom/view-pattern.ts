import { classPatternOf, patternOf, type Pattern } from '../../shared/exercise/pattern.ts';
import type { Verdict } from '../../shared/exercise/verdict.ts';
import type { StudentId } from '../../shared/protocol/ids.ts';
import { countedAnswers, isRight } from './round.ts';
import type { ClassState, Round } from './state.ts';

/** What comes again in several rounds of a class. */
export interface Patterns {
  readonly ofClass: Pattern | null;
  /** Of those who answered. */
  readonly ofStudents: ReadonlyMap<StudentId, Pattern | null>;
}

/** While a round is open each answer makes a new view, and the rounds before it are the same objects still. */
const lately = new WeakMap<Round, { readonly rounds: readonly Round[]; readonly patterns: Patterns }>();

/** From the revealed rounds; what the teacher accepted is right. */
export function patternsIn(state: ClassState): Patterns {
  const rounds = state.rounds.filter((round) => round.phase === 'revealed' && !round.voided);
  const [first] = rounds;
  const known = first && lately.get(first);
  if (known?.rounds.length === rounds.length && known.rounds.every((round, index) => round === rounds[index]))
    return known.patterns;
  const patterns = patternsOf(rounds);
  if (first) lately.set(first, { rounds, patterns });
  return patterns;
}

function patternsOf(rounds: readonly Round[]): Patterns {
  const byStudent = new Map<StudentId, Verdict[]>();
  const byRound = rounds.map((round) =>
    [...countedAnswers(round)].map(([id, answer]): Verdict => {
      const verdict: Verdict = isRight(answer) ? { kind: 'right' } : answer.verdict;
      const verdicts = byStudent.get(id);
      if (verdicts) verdicts.push(verdict);
      else byStudent.set(id, [verdict]);
      return verdict;
    }),
  );
  return {
    ofClass: classPatternOf(byRound),
    ofStudents: new Map([...byStudent].map(([id, verdicts]) => [id, patternOf(verdicts)])),
  };
}
