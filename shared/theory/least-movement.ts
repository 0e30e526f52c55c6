import { known } from '../lib/assert.ts';
import { perObject } from '../lib/per-object.ts';
import { fretDistance, type Instrument, type Place } from './fretboard.ts';

/** What a hand holds: a place and its finger (0 for an open string, or where the finger is left open); lower cost is easier. */
export interface Fingered {
  readonly fingers: readonly { readonly place: Place; readonly finger: number }[];
  readonly cost: number;
}

/** One candidate for each chord, by its index, and what the row comes to. */
export interface Movement {
  readonly chosen: readonly number[];
  /** Millimetres. */
  readonly travel: number;
  readonly cost: number;
}

/** Millimetres from string to string: on a guitar about 7 at the nut and 10 at the bridge (common practice, no source). */
export const stringSpacingMm = 8;

/** What lifting a finger, or putting one down that was up, counts for: less than a string's width (our decision). */
export const liftMm = 5;

/** Travel is added up in whole micrometres, so that no order of adding decides between equal ways. */
const perMm = 1000;

interface Step {
  readonly travel: number;
  readonly cost: number;
  readonly frets: number;
  /** The candidate, in the order of `ranked`, before this one. */
  readonly from: number;
}

/**
 * One candidate for each chord, so that the hand travels least over the whole row; among equal ways the lower summed
 * cost, then the lower frets. Exact: for each candidate the best way to it is kept, and no other can be part of the
 * best whole. The order of the candidates doesn't matter. Undefined where a chord has none:
 * `leastMovement([[a, b], [c]], (from, to) => travelBetween(guitar, from, to))?.chosen` is `[1, 0]` where b is nearer c.
 */
export function leastMovement<Candidate extends Fingered>(
  candidates: readonly (readonly Candidate[])[],
  travel: (from: Candidate, to: Candidate) => number,
): Movement | undefined {
  if (candidates.some((some) => some.length === 0)) return undefined;
  const columns = candidates.map(ranked);
  const rows: (readonly Step[])[] = [];
  for (const [index, column] of columns.entries()) {
    const before = columns[index - 1];
    const steps = rows[index - 1];
    rows.push(
      column.map(({ candidate, cost, frets }): Step => {
        if (!before || !steps) return { travel: 0, cost, frets, from: -1 };
        const ways = steps.map((step, from): Step => {
          const way = Math.round(perMm * travel(known(before[from], 'candidate').candidate, candidate));
          return { travel: step.travel + way, cost: step.cost + cost, frets: step.frets + frets, from };
        });
        return known(ways[indexOfBest(ways)], 'best way');
      }),
    );
  }
  return traced(columns, rows);
}

/** Goes back from the best end. */
function traced(columns: readonly (readonly Ranked[])[], rows: readonly (readonly Step[])[]): Movement {
  const last = rows.at(-1) ?? [];
  let at = indexOfBest(last);
  const end = last[at];
  const chosen: number[] = [];
  for (let index = rows.length - 1; index >= 0; index -= 1) {
    chosen.unshift(known(columns[index]?.[at], 'chosen candidate').index);
    at = rows[index]?.[at]?.from ?? -1;
  }
  return { chosen, travel: (end?.travel ?? 0) / perMm, cost: (end?.cost ?? 0) / perMm };
}

/** The first of the best. */
function indexOfBest(steps: readonly Step[]): number {
  let best = 0;
  for (const [index, step] of steps.entries()) {
    const least = steps[best];
    if (least && (step.travel - least.travel || step.cost - least.cost || step.frets - least.frets) < 0)
      best = index;
  }
  return best;
}

interface Ranked<Candidate = unknown> {
  readonly candidate: Candidate;
  readonly index: number;
  readonly cost: number;
  readonly frets: number;
}

/** In an order of their own, so that what is equal in everything else is chosen by what it is, not by where it stood. */
function ranked<Candidate extends Fingered>(candidates: readonly Candidate[]): readonly Ranked<Candidate>[] {
  return candidates
    .map((candidate, index) => ({
      candidate,
      index,
      cost: Math.round(perMm * candidate.cost),
      frets: candidate.fingers.reduce((sum, { place }) => sum + place.fret, 0),
      written: candidate.fingers
        .map(({ place, finger }) => [place.string, place.fret, finger].join('.'))
        .sort()
        .join(' '),
    }))
    .sort(
      (a, b) =>
        a.cost - b.cost || a.frets - b.frets || (a.written < b.written ? -1 : Number(a.written > b.written)),
    );
}

/**
 * Millimetres that the fingers move from one fingering to the next; the same back again. A finger in both counts its
 * way along the string and across; one that stays counts nothing; one lifted or put down counts `liftMm`. A finger that
 * bars counts by its tip, on the string farthest from string 1. Where no finger is in both, the hand's way along the
 * neck counts too; an open string needs no finger, and a chord of open strings alone leaves the hand free.
 */
export function travelBetween(instrument: Instrument, a: Fingered, b: Fingered): number {
  const micrometres = fretMicrometres(instrument);
  const along = (low: number, high: number) =>
    Math.abs(known(micrometres[low], 'fret') - known(micrometres[high], 'fret'));
  const [from, to] = [heldBy(a), heldBy(b)];
  let total = 0;
  let isShared = false;
  for (const finger of fingerNumbers) {
    const [tip, next] = [from.tips[finger], to.tips[finger]];
    if (tip && next) {
      isShared = true;
      total += along(tip.fret, next.fret) + perMm * stringSpacingMm * Math.abs(tip.string - next.string);
    } else if (tip ?? next) total += perMm * liftMm;
  }
  if (!isShared && from.fret !== undefined && to.fret !== undefined) total += along(from.fret, to.fret);
  return total / perMm;
}

const fingerNumbers = [1, 2, 3, 4] as const;

interface Held {
  /** Where each finger's tip is, by its number. */
  readonly tips: readonly (Place | undefined)[];
  /** The fret under the first finger, used or not; undefined where nothing is fretted. */
  readonly fret: number | undefined;
}

const heldBy = perObject(({ fingers }: Fingered): Held => {
  const tips: (Place | undefined)[] = [];
  const fretted = fingers.filter(({ place }) => place.fret > 0);
  for (const { place, finger } of fretted)
    if (finger > 0 && place.string > (tips[finger]?.string ?? 0)) tips[finger] = place;
  const frets = fretted.map(({ place, finger }) => Math.max(1, place.fret - Math.max(0, finger - 1)));
  return { tips, fret: frets.length > 0 ? Math.min(...frets) : undefined };
});

/** From the nut to each fret, in whole micrometres: ways there and back, or by a stop between, come out equal. */
const fretMicrometres = perObject((instrument: Instrument) =>
  Array.from({ length: instrument.fretCount + 1 }, (_, fret) =>
    Math.round(perMm * fretDistance(instrument.scaleLengthMm, fret)),
  ),
);
