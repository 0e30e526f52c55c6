import { fingeringsOf } from './fingering.ts';
import type { Instrument } from './fretboard.ts';
import { hands, type Hand } from './hand.ts';
import type { LayoutShape } from './layout.ts';

/** Fingerings of one shape to choose from; those after them are hardly ever used. */
const mostFingerings = 3;

/**
 * The shapes with a finger for each fretted note and what it costs the hand, to be laid out in a row:
 * `fingeredShapes(standardGuitar, shapesOnString(standardGuitar, chord, string))`. Fingers that a shape has are kept;
 * one whose fingers are left open (0) comes once for each of its best fingerings, or not at all where no hand can.
 */
export function fingeredShapes<Shape extends LayoutShape>(
  instrument: Instrument,
  shapes: readonly Shape[],
  hand: Hand = hands.usual,
): readonly (Shape & { readonly cost: number })[] {
  return shapes.flatMap((shape) => {
    const found = fingeringsOf(
      instrument,
      shape.notes.map(({ place }) => place),
      hand,
    );
    const fingerings = found.ok ? found.value : [];
    if (shape.notes.every(({ place, finger }) => finger > 0 || place.fret === 0))
      return [{ ...shape, cost: shape.cost ?? fingerings[0]?.cost ?? 0 }];
    return fingerings.slice(0, mostFingerings).map(({ fingers, cost }) => ({
      ...shape,
      cost,
      notes: shape.notes.map((note) => ({
        ...note,
        finger: fingers.find(({ place }) => place.string === note.place.string)?.finger ?? 0,
      })),
    }));
  });
}
