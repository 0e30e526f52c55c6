import { failure, success, type Result } from '../lib/result.ts';
import { shuffled } from '../lib/random.ts';
import { stringNumbers, type FretRange, type InstrumentId, type StringNumber } from '../theory/fretboard.ts';
import { parseInstrument } from '../theory/instrument-id.ts';
import { formatNoteName, pitchClassOf, type NoteName } from '../theory/pitch.ts';
import { checkExercise } from './check.ts';
import type { Exercise } from './exercise.ts';
import type { Candidate, Ground } from './ladder-ground.ts';
import { candidatesFor, type Rung, type Third } from './ladder.ts';
import { slipsApart } from './likely.ts';

export { rungs, type Rung, type Third } from './ladder.ts';

export interface Wish {
  readonly instrument: InstrumentId;
  readonly rung: Rung;
  /** Which triads; both without it. The other rungs don't ask. */
  readonly third?: Third;
  /** Empty: every usual root. */
  readonly roots: readonly NoteName[];
  /** Empty: every string. */
  readonly rootStrings: readonly StringNumber[];
  /** Where the roots may lie; null for the whole neck. */
  readonly range: FretRange | null;
  /** 1 to 20. */
  readonly count: number;
  /** The same seed makes the same exercises. */
  readonly seed: number;
}

const most = 20;

/** Exercises that can be asked and whose likely slips land apart, varied; or why there are none. */
export function generate(wish: Wish): Result<readonly Exercise[], string> {
  const ground = groundOf(wish);
  if (!ground.ok) return ground;
  const pool = new Set(shuffled(candidatesFor(wish.rung, ground.value, wish.third), wish.seed));
  const hardest = Math.max(...[...pool].map((candidate) => candidate.hardness));
  const chosen: Candidate[] = [];
  while (chosen.length < wish.count) {
    const level = wish.count === 1 ? hardest : (hardest * chosen.length) / (wish.count - 1);
    const next = nextOf(pool, chosen, level);
    if (!next) return failure(nothingThere(wish));
    chosen.push(next);
  }
  return success(chosen.map(({ exercise }) => exercise));
}

/** Where the wish looks, or what is wrong with it. */
function groundOf({ instrument: id, roots, rootStrings, range, count }: Wish): Result<Ground, string> {
  if (!Number.isInteger(count) || count < 1 || count > most)
    return failure(`Ask for 1 to ${String(most)} exercises.`);
  const parsed = parseInstrument(id);
  if (!parsed.ok) return parsed;
  const instrument = parsed.value;
  const all = stringNumbers(instrument);
  const unknown = rootStrings.find((string) => !all.includes(string));
  if (unknown !== undefined) return failure(`This instrument has no string ${String(unknown)}.`);
  if (range && range.low < 0) return failure('Frets are counted from the nut, which is 0.');
  if (range && range.low > range.high) return failure('The lowest fret lies above the highest.');
  if (range && range.high > instrument.fretCount)
    return failure(`The neck ends at fret ${String(instrument.fretCount)}.`);
  return success({
    instrument,
    strings: rootStrings.length > 0 ? [...new Set(rootStrings)] : all,
    roots: [...new Map(roots.map((root) => [formatNoteName(root), root])).values()],
    range,
  });
}

function nothingThere({ rung, roots, range }: Wish): string {
  if (rung === 'natural-notes' && roots.length > 0 && roots.every((root) => root.alteration !== 0))
    return 'The first step asks notes without accidentals only. Choose such a root, or the next step.';
  return `Nothing of this kind fits there. Choose more roots${range ? ', more frets' : ''} or other strings.`;
}

/**
 * Of two that vary as well the one whose slips lie further apart is taken; one in three comes as it comes, or some
 * would never be asked.
 */
function compared(chosen: readonly Candidate[]): number {
  return chosen.length % 3 === 1 ? 1 : 2;
}

/** The next one: as unlike those before as can be, not harder than `level`, and such that answers tell slips apart. */
function nextOf(pool: Set<Candidate>, chosen: readonly Candidate[], level: number): Candidate | undefined {
  const penaltyOf = penaltyAfter(chosen, level);
  const ranked = [...pool]
    .map((candidate) => ({ candidate, penalty: penaltyOf(candidate) }))
    .sort((a, b) => a.penalty - b.penalty);
  let best: { readonly candidate: Candidate; readonly apart: number } | undefined;
  let limit = Infinity;
  let left = compared(chosen);
  for (const { candidate, penalty } of ranked) {
    if (penalty > limit || left === 0 || best?.apart === 1) break;
    if (!checkExercise(candidate.exercise).ok) {
      pool.delete(candidate);
      continue;
    }
    const apart = slipsApart(candidate.exercise);
    if (!best || apart > best.apart) best = { candidate, apart };
    limit = Math.min(limit, penalty + penalties.little);
    left -= 1;
  }
  return best?.candidate;
}

/** What variety is worth; the first two outweigh all else. */
const penalties = {
  sameRoot: 1e6,
  sameExercise: 1e4,
  sameString: 4,
  sameFlavour: 4,
  usedRoot: 2,
  hard: 2,
  little: 1,
};

/** How little a candidate adds to what is chosen, and how far it lies above the level. */
function penaltyAfter(chosen: readonly Candidate[], level: number): (candidate: Candidate) => number {
  const last = chosen.at(-1);
  const exercises = tally(chosen, (one) => one);
  const strings = tally(chosen, (one) => one.exercise.rootString);
  const flavours = tally(chosen, (one) => one.flavour);
  const roots = tally(chosen, soundOf);
  return (one) =>
    (last && soundOf(last) === soundOf(one) ? penalties.sameRoot : 0) +
    penalties.sameExercise * exercises(one) +
    penalties.sameString * strings(one) +
    penalties.sameFlavour * flavours(one) +
    penalties.usedRoot * roots(one) +
    penalties.hard * Math.max(0, one.hardness - level);
}

/** C♯ and D♭ are one root to the ear. */
function soundOf({ exercise }: Candidate): number {
  return pitchClassOf(exercise.root);
}

/** How often something of a candidate was chosen already. */
function tally(chosen: readonly Candidate[], part: (one: Candidate) => unknown): (one: Candidate) => number {
  const uses = new Map<unknown, number>();
  for (const one of chosen) uses.set(part(one), (uses.get(part(one)) ?? 0) + 1);
  return (one) => uses.get(part(one)) ?? 0;
}
