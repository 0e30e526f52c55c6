import { slipCauses } from './slip-names.ts';
import type { SlipCause, Verdict } from './verdict.ts';

export { patternText } from './pattern-words.ts';

/** The same cause in several rounds: one wrong answer is a slip, this is a pattern (SPEC PATTERN). */
export interface Pattern {
  readonly cause: SlipCause;
  /** Rounds in which it came. */
  readonly rounds: number;
  /** Rounds that were answered. */
  readonly of: number;
}

const saysOnlyWhat: ReadonlySet<SlipCause> = new Set<SlipCause>([
  'missing-tone',
  'extra-tone',
  'other-place',
  'other-name',
  'one-fret-off',
  'untapped',
]);

/** Whether the cause says why it happened: `saysWhy('short-step')`, and not `saysWhy('missing-tone')`. */
export function saysWhy(cause: SlipCause): boolean {
  return !saysOnlyWhat.has(cause);
}

/** How clearly one round shows a cause. */
type Sign = 'clear' | 'possible' | 'none';

/** What one student's counted verdicts of the revealed rounds repeat, oldest first; null where nothing does. */
export function patternOf(verdicts: readonly Verdict[]): Pattern | null {
  return commonest(verdicts.length, (cause) => verdicts.map((verdict) => signOf(verdict, cause)));
}

/** What the class repeats: for each revealed round the verdicts of all who answered. */
export function classPatternOf(rounds: readonly (readonly Verdict[])[]): Pattern | null {
  const answered = rounds.filter((verdicts) => verdicts.length > 0);
  return commonest(answered.length, (cause) => answered.map((verdicts) => classSignOf(verdicts, cause)));
}

function signOf(verdict: Verdict, cause: SlipCause): Sign {
  if (verdict.kind === 'slip') return verdict.cause === cause ? 'clear' : 'none';
  return verdict.kind === 'unclear' && verdict.causes.includes(cause) ? 'possible' : 'none';
}

/** Fewer students, or a smaller share of those who answered, are not the class. */
const fewestStudents = 2;
const leastShare = 1 / 4;

function classSignOf(verdicts: readonly Verdict[], cause: SlipCause): Sign {
  const signs = verdicts.map((verdict) => signOf(verdict, cause)).filter((sign) => sign !== 'none');
  if (signs.length < Math.max(fewestStudents, verdicts.length * leastShare)) return 'none';
  return signs.includes('clear') ? 'clear' : 'possible';
}

/** The cause with the most rounds, if they are enough and one of them is clear; of equals the one that came last. */
function commonest(of: number, signsOf: (cause: SlipCause) => readonly Sign[]): Pattern | null {
  const found = slipCauses.flatMap((cause) => {
    const signs = signsOf(cause);
    const rounds = signs.filter((sign) => sign !== 'none').length;
    const last = signs.findLastIndex((sign) => sign !== 'none');
    const isEnough = rounds >= (saysWhy(cause) ? 2 : 3) && signs.includes('clear');
    return isEnough ? [{ cause, rounds, last }] : [];
  });
  const [first] = found.sort((a, b) => b.rounds - a.rounds || b.last - a.last);
  return first ? { cause: first.cause, rounds: first.rounds, of } : null;
}
