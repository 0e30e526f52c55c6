import { holds, samePlace, type Place } from '../theory/fretboard.ts';
import type { Hypothesis } from './hypotheses.ts';
import type { Target } from './targets.ts';
import type { Correction, PlaceMark } from './verdict.ts';

/** An answer held against a right one. */
export interface Comparison {
  readonly marks: readonly PlaceMark[];
  readonly corrections: readonly Correction[];
  readonly missing: readonly Place[];
}

/** First as the cause moved its notes, then string by string, then what is left over of a single note (SPEC SLIP-4). */
export function compare(
  target: Target,
  places: readonly Place[],
  moved: Hypothesis['moved'] = [],
): Comparison {
  const marks = places.map((spot) => ({ place: spot, right: holds(target.accepted, spot) }));
  let open = target.notes
    .filter((note) => !note.optional && !holds(places, note.place))
    .map((note) => note.place);
  const corrections: Correction[] = [];
  const correct = (from: Place, to: Place | undefined): boolean => {
    if (!to) return false;
    corrections.push({ from, to });
    open = open.filter((spot) => !samePlace(spot, to));
    return true;
  };
  const astray: Place[] = [];
  for (const { place: from, right } of marks) {
    if (right) continue;
    const meant = moved.find(({ to }) => samePlace(to, from))?.from;
    // What it stands for is there already: nothing to correct it to.
    if (meant && holds(places, meant)) continue;
    if (!correct(from, meant ?? nearestOn(open, from))) astray.push(from);
  }
  const [from] = astray;
  if (from && astray.length === 1 && open.length === 1) correct(from, open[0]);
  return { marks, corrections, missing: open };
}

/** Of these places, the one on the same string that is fewest frets away. */
function nearestOn(spots: readonly Place[], from: Place): Place | undefined {
  return spots
    .filter((spot) => spot.string === from.string)
    .sort((a, b) => Math.abs(a.fret - from.fret) - Math.abs(b.fret - from.fret))[0];
}
