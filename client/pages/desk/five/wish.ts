import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { generate, type Rung, type Third, type Wish } from '../../../../shared/exercise/generate.ts';
import { mostHarder } from '../../../../shared/exercise/levels.ts';
import type { Result } from '../../../../shared/lib/result.ts';
import type { Part, PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { Fret, FretRange, InstrumentId, StringNumber } from '../../../../shared/theory/fretboard.ts';
import { formatNoteName, type NoteName } from '../../../../shared/theory/pitch.ts';
import { usualRoots } from '../maker/words.ts';

/** The ladder, easiest first, as a teacher reads it. */
export const rungWords: Readonly<Record<Rung, string>> = {
  'natural-notes': 'Natural notes',
  'all-notes': 'All notes',
  'name-places': 'Name the place',
  triads: 'Triads',
  sevenths: 'Sevenths',
  pentatonics: 'Pentatonics',
  'two-positions': 'Two positions joined',
  'full-scales': 'Full scales',
};

export const thirdWords: Readonly<Record<Third, string>> = {
  both: 'Major and minor',
  major: 'Major',
  minor: 'Minor',
};

export type RootsWanted = 'all' | 'natural' | 'own';

export const rootsWords: Readonly<Record<RootsWanted, string>> = {
  all: 'All',
  natural: 'Natural',
  own: 'My choice',
};

/** What the panel's fields hold. */
export interface FiveFields {
  readonly rung: Rung;
  /** Of triads. */
  readonly third: Third;
  readonly rootStrings: readonly StringNumber[];
  readonly roots: RootsWanted;
  readonly own: readonly NoteName[];
  readonly range: FretRange;
  /** Whether the roots stay inside the range. */
  readonly narrow: boolean;
  readonly count: number;
}

export const firstFields: FiveFields = {
  rung: 'natural-notes',
  third: 'both',
  rootStrings: [2 as StringNumber],
  roots: 'all',
  own: [],
  range: { low: 0 as Fret, high: 12 as Fret },
  narrow: false,
  count: 5,
};

const naturals = usualRoots.filter(({ alteration }) => alteration === 0);

export function wishOf(fields: FiveFields, instrument: InstrumentId, seed: number): Wish {
  const roots: Readonly<Record<RootsWanted, readonly NoteName[]>> = {
    all: [],
    natural: naturals,
    own: fields.own,
  };
  return {
    instrument,
    rung: fields.rung,
    third: fields.third,
    roots: roots[fields.roots],
    rootStrings: fields.rootStrings,
    range: fields.narrow ? fields.range : null,
    count: fields.count,
    seed,
  };
}

/** What the fields lack before anything can be made. */
export function lackOf({ rootStrings, roots, own }: FiveFields): string | null {
  if (rootStrings.length === 0) return 'Choose at least one string.';
  return roots === 'own' && own.length === 0 ? 'Choose at least one root.' : null;
}

/** The exercises of a part that so many made ones can become a harder level of; empty where they can't. */
export function harderFor(
  existing: readonly PlannedExercise[],
  part: Part,
  count: number,
): readonly PlannedExercise[] {
  const there = existing.filter((one) => one.part === part);
  const fits = there.length === count && there.every(({ harder }) => harder.length < mostHarder);
  return fits ? there : [];
}

/** The roots with one more, or without it. */
export function toggledRoot(own: readonly NoteName[], root: NoteName): readonly NoteName[] {
  const text = formatNoteName(root);
  const others = own.filter((one) => formatNoteName(one) !== text);
  return others.length < own.length ? others : [...own, root];
}

/** Most exercises that can be made at once. */
const most = 20;

/** One more exercise of the same wish that is not in the list yet; undefined where there is none. */
export function another(wish: Wish, list: readonly Exercise[]): Exercise | undefined {
  const listed = new Set(list.map((exercise) => JSON.stringify(exercise)));
  const made: Result<readonly Exercise[], string> = generate({
    ...wish,
    count: Math.min(most, list.length + 1),
  });
  return made.ok ? made.value.find((exercise) => !listed.has(JSON.stringify(exercise))) : undefined;
}

/** A fresh seed: the server never sees it, what was made is what counts. */
export function newSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}
