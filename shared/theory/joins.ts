import { holds, stringNumbers, type Instrument, type Place, type StringNumber } from './fretboard.ts';
import type { Position } from './position.ts';

/** From the last note of one position along the string to the next that only the other one has. */
export interface Slide {
  readonly string: StringNumber;
  readonly from: Place;
  readonly to: Place;
}

export interface Join {
  /** Places of both positions, where the hand can change over without a slide. */
  readonly shared: readonly Place[];
  readonly slides: readonly Slide[];
}

/**
 * How to get from one position or pattern into another, on each string: from the D form of the minor pentatonic towards
 * the bridge into the C form every string has a place of both, and a slide from there to the next note. A string on
 * which the other one goes no further has no slide.
 */
export function joinOf(instrument: Instrument, a: Position, b: Position): Join {
  const [own, other] = [placesOf(a), placesOf(b)];
  const way = Math.sign(middle(other) - middle(own));
  const slides = stringNumbers(instrument).flatMap((string) => {
    const ahead = (places: readonly Place[]) =>
      places.filter((spot) => spot.string === string).sort((one, next) => way * (one.fret - next.fret));
    const from = ahead(own).at(-1);
    const to = from && ahead(other).find((spot) => way * (spot.fret - from.fret) > 0);
    return from && to ? [{ string, from, to }] : [];
  });
  return { shared: own.filter((spot) => holds(other, spot)), slides };
}

function placesOf({ notes }: Position): readonly Place[] {
  return notes.map((note) => note.place);
}

function middle(places: readonly Place[]): number {
  return places.reduce((sum, spot) => sum + spot.fret, 0) / places.length;
}
