import { samePlace, type Place } from './fretboard.ts';

/** Where something lies as seen from its root place. */
export type Lies = 'towards-nut' | 'around' | 'towards-bridge';

/** By how many frets the middle of it is away; within half a fret it lies around the root: `liesBy(-1)` is towards the nut. */
export function liesBy(frets: number): Lies {
  if (Math.abs(frets) <= 0.5) return 'around';
  return frets < 0 ? 'towards-nut' : 'towards-bridge';
}

/** By the mean of the other places: `liesFrom(place(2, 5), [place(2, 5), place(3, 4)])` is towards the nut. */
export function liesFrom(root: Place, places: readonly Place[]): Lies {
  const others = places.filter((spot) => !samePlace(spot, root));
  const away = others.reduce((sum, spot) => sum + spot.fret - root.fret, 0);
  return liesBy(away / Math.max(1, others.length));
}
