import type {
  BuildExercise,
  Exercise,
  FindExercise,
  Finger,
  NameExercise,
  ScaleExercise,
} from '../exercise/exercise.ts';
import { known } from '../lib/assert.ts';
import type { Fret, FretRange, StringNumber } from '../theory/fretboard.ts';
import { parseNoteName, type NoteName } from '../theory/pitch.ts';
import type { FormId } from '../theory/tables/forms.ts';
import type { StackedFamily } from '../theory/families.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { ToneSetId } from '../theory/tone-sets.ts';
import type { Part } from './plan.ts';
import type { ReadyExercise } from './ready-plan.ts';

/** Short words for the exercises of the ready plans: strings and frets as plain numbers, notes as text. */

const note = (text: string): NoteName => known(parseNoteName(text), text);

/** `frets(0, 5)` is the range from the open string to fret 5. */
export const frets = (low: number, high: number): FretRange => ({ low: low as Fret, high: high as Fret });

const onString = (root: string, string: number, range: FretRange | null) => ({
  instrument: 'guitar' as const,
  root: note(root),
  rootString: string as StringNumber,
  strictness: 'string' as const,
  range,
});

/** The root at the one fret. */
const atFret = (root: string, string: number, fret: number) => ({
  ...onString(root, string, frets(fret, fret)),
  strictness: 'place' as const,
});

/** `find('C', 2)`: C on string 2, at any fret. */
export const find = (root: string, string: number): FindExercise => ({
  kind: 'find',
  ...onString(root, string, null),
});

/** `name('D', 2, 3)`: which note string 2 has at fret 3. */
export const name = (root: string, string: number, fret: number): NameExercise => ({
  kind: 'name',
  ...atFret(root, string, fret),
  place: { string: string as StringNumber, fret: fret as Fret },
  wanted: 'note',
});

/** `form('C', 'A', 'minor', 2, 10)`: A minor in the C form, its root on string 2, fret 10. */
export const form = (
  id: FormId,
  root: string,
  quality: ChordQuality,
  string: number,
  fret: number,
): BuildExercise => ({
  kind: 'build',
  ...atFret(root, string, fret),
  quality,
  voicing: { kind: 'form', form: id, full: false },
});

/** `stacked('drop-2', [4, 3, 2, 1], 'A', 'm7', 2, 10)`: Am7 in drop-2 on these strings, its root on string 2, fret 10. */
export const stacked = (
  family: StackedFamily,
  strings: readonly number[],
  root: string,
  quality: ChordQuality,
  string: number,
  fret: number,
): BuildExercise => ({
  kind: 'build',
  ...atFret(root, string, fret),
  quality,
  voicing: { kind: 'family', family, strings: strings as readonly StringNumber[] },
});

/** `position('major', 'D', 2, 3, 2)`: the position in which finger 2 takes the D of string 2, fret 3. */
export const position = (
  scale: ToneSetId,
  root: string,
  string: number,
  fret: number,
  rootFinger: Finger,
): ScaleExercise => ({
  kind: 'scale',
  ...atFret(root, string, fret),
  scale,
  coverage: 'every-pitch',
  rootFinger,
});

/** `between('major', 'D', 2, frets(2, 8))`: every note of it on all strings in these frets. */
export const between = (scale: ToneSetId, root: string, string: number, range: FretRange): ScaleExercise => ({
  kind: 'scale',
  ...onString(root, string, range),
  strictness: 'range',
  scale,
  coverage: 'every-pitch',
  rootFinger: 1,
});

/** `along('major', 'D', 2, frets(3, 15))`: the scale along that string alone. */
export const along = (scale: ToneSetId, root: string, string: number, range: FretRange): ScaleExercise => ({
  ...between(scale, root, string, range),
  oneString: true,
});

/** An exercise with the seconds that it is given; null leaves the hold to the teacher. */
export type Timed = readonly [exercise: Exercise, seconds: number | null];

/** The exercises of a lesson, part by part. */
export function inParts(parts: Readonly<Record<Part, readonly Timed[]>>): readonly ReadyExercise[] {
  const order: readonly Part[] = ['warm-up', 'new', 'check'];
  return order.flatMap((part) => parts[part].map(([exercise, seconds]) => ({ part, exercise, seconds })));
}
