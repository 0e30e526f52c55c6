import type {
  BuildExercise,
  FindExercise,
  NameExercise,
  ScaleExercise,
} from '../../shared/exercise/exercise.ts';
import { known } from '../../shared/lib/assert.ts';
import { place, type Fret, type Place, type StringNumber } from '../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../shared/theory/pitch.ts';

/** Exercises and answers as short words for tests. */

const two = 2 as StringNumber;

export const find = (root: string, fields: Partial<FindExercise> = {}): FindExercise => ({
  kind: 'find',
  instrument: 'guitar',
  root: known(parseNoteName(root), root),
  rootString: two,
  strictness: 'string',
  range: null,
  ...fields,
});

export const build = (
  root: string,
  quality: BuildExercise['quality'],
  fields: Partial<BuildExercise> = {},
): BuildExercise => ({
  ...find(root),
  kind: 'build',
  quality,
  voicing: { kind: 'form', form: 'triad-321', full: false },
  ...fields,
});

/** Name the note at this fret of string 2; `root` is that note. */
export const name = (root: string, fret: number, fields: Partial<NameExercise> = {}): NameExercise => ({
  ...find(root),
  kind: 'name',
  place: place(2, fret),
  wanted: 'note',
  strictness: 'place',
  range: { low: fret as Fret, high: fret as Fret },
  ...fields,
});

/** The position round a root at this fret of string 2. */
export const scale = (
  root: string,
  id: ScaleExercise['scale'],
  rootFinger: 1 | 2,
  fret: number,
): ScaleExercise => ({
  ...find(root),
  kind: 'scale',
  scale: id,
  rootFinger,
  coverage: 'every-pitch',
  strictness: 'place',
  range: { low: fret as Fret, high: fret as Fret },
});

/** `places([2, 5])` is string 2, fret 5. */
export const places = (...pairs: readonly (readonly [number, number])[]): Place[] =>
  pairs.map(([s, f]) => place(s, f));
