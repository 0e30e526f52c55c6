import { failure, success, type Result } from '../lib/result.ts';
import type { NumberedChord } from '../theory/applied-chord.ts';
import { familyIds, type Family } from '../theory/families.ts';
import { fingeredShapes } from '../theory/fingered-shapes.ts';
import { stringNumbers, type FretRange, type Instrument, type StringNumber } from '../theory/fretboard.ts';
import { layoutAnywhere, layoutOnString, type CommonTones, type LayoutShape } from '../theory/layout.ts';
import type { NoteNaming } from '../theory/naming.ts';
import type { ShapeNote } from '../theory/shape.ts';
import { everyString } from '../theory/root-places.ts';
import { shapesOnString } from '../theory/shapes.ts';
import { voicingsOf } from '../theory/playable.ts';
import { checkExercise } from './check.ts';
import type { BuildExercise } from './exercise.ts';
import { builtAt, isKeyOf, voicingOf } from './proposals.ts';

/** How a progression is to lie on the neck. */
export interface RowWish {
  readonly instrument: Instrument;
  readonly chords: readonly NumberedChord[];
  /** Every root on this string; null where the hand is to move least, whatever string that takes. */
  readonly rootString: StringNumber | null;
  /** What the shapes are; another family where a chord has none of it. */
  readonly family: Family;
  /** Where the hand stays, if it can. */
  readonly range: FretRange;
  readonly naming: NoteNaming;
}

/** One chord of the row: an exercise whose key is its chart. */
export interface RowChord {
  readonly chord: NumberedChord;
  readonly exercise: BuildExercise;
  /** The root, its place and finger. */
  readonly root: ShapeNote;
  readonly common: CommonTones;
}

/** For each root; more would hardly be chosen. */
const mostEasiest = 6;

interface Candidate extends LayoutShape {
  readonly exercise: BuildExercise;
}

/** The progression on the neck, the hand moving as little as can be; the failure names the chord that has no shape. */
export function progressionRow(wish: RowWish): Result<readonly RowChord[], string> {
  const { instrument, chords, rootString, naming } = wish;
  const shapesOf = (chord: NumberedChord) => candidatesFor(wish, chord);
  const laid = rootString
    ? layoutOnString(instrument, chords, rootString, shapesOf, naming)
    : layoutAnywhere(instrument, chords, shapesOf, naming);
  if (!laid.ok) return failure(laid.error);
  return success(
    laid.value.map(({ chord, shape, root, common }) => ({ chord, exercise: shape.exercise, root, common })),
  );
}

/** The first that has any: the family inside the range, any family inside it, then on the whole neck. */
function candidatesFor(wish: RowWish, chord: NumberedChord): readonly Candidate[] {
  const { range, family } = wish;
  const isInside = ({ notes }: Candidate) =>
    notes.every(({ place: { fret } }) => fret >= range.low && fret <= range.high);
  const ofFamily = chord.bass ? [] : plainShapes(wish, chord, [family]);
  const inside = ofFamily.filter(isInside);
  if (inside.length > 0) return inside;
  const ofFamilies = chord.bass ? [] : plainShapes(wish, chord, familyIds);
  const all = ofFamilies.length > 0 ? ofFamilies : easiestShapes(wish, chord);
  return [all.filter(isInside), ofFamily, all].find((some) => some.length > 0) ?? [];
}

function plainShapes(
  { instrument, rootString }: RowWish,
  chord: NumberedChord,
  families: readonly Family[],
): readonly Candidate[] {
  const strings = rootString ? [rootString] : stringNumbers(instrument);
  const shapes = strings.flatMap((string) => shapesOnString(instrument, chord, string, families));
  return fingeredShapes(instrument, shapes).flatMap((shape) => {
    const at = { instrument, root: chord.root, place: shape.rootPlace };
    const exercise = builtAt(at, chord.quality, voicingOf(shape));
    return checkExercise(exercise).ok && isKeyOf(exercise, shape.notes) ? [{ ...shape, exercise }] : [];
  });
}

/** What a hand holds most easily round each root: a bass of its own makes shapes that no family has. */
function easiestShapes({ instrument, rootString }: RowWish, chord: NumberedChord): readonly Candidate[] {
  const { root, quality, bass } = chord;
  const roots = everyString(instrument, root).flat();
  return roots
    .filter(({ string }) => rootString === null || string === rootString)
    .flatMap((rootPlace) =>
      voicingsOf(instrument, chord, { rootPlace, most: mostEasiest }).flatMap(({ notes, cost }) => {
        const strings = notes.map(({ place }) => place.string);
        const plain = builtAt({ instrument, root, place: rootPlace }, quality, { kind: 'strings', strings });
        const exercise = bass ? { ...plain, bass } : plain;
        return checkExercise(exercise).ok && isKeyOf(exercise, notes)
          ? [{ notes, cost, rootPlace, exercise }]
          : [];
      }),
    );
}
