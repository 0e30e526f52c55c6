import { list, placeText } from '../../../../shared/exercise/phrases.ts';
import type { Place } from '../../../../shared/theory/fretboard.ts';

/** "string 6, frets 4 and 5; string 5, open", from the lowest string. */
export function byString(places: readonly Place[]): string {
  const strings = [...new Set(places.map(({ string }) => string))].toSorted((a, b) => b - a);
  return strings
    .map((string) => {
      const own = places.filter((place) => place.string === string).toSorted((a, b) => a.fret - b.fret);
      const [first] = own;
      if (first && own.length === 1) return placeText(first);
      return `string ${String(string)}, frets ${list(own.map(({ fret }) => fret))}`;
    })
    .join('; ');
}
