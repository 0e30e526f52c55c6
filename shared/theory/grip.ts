import type { Instrument } from './fretboard.ts';
import { between, fretWires, pairReaches, type Finger, type Hand, type Reach } from './hand.ts';

/** Index 0 is string 1: its fret, 0 for open, `silent` where it doesn't sound. */
export type Frets = readonly number[];
export const silent = -1;

/** A finger on one string, or laid over several: a barre. */
export interface Press {
  readonly finger: Finger;
  readonly fret: number;
  /** The string with the largest number under it, and that with the smallest. */
  readonly low: number;
  readonly high: number;
  /** Places that sound by it. */
  readonly count: number;
}

/** Fingers that hold all fretted places, from the lowest fret to the highest. */
export interface Grip {
  readonly presses: readonly Press[];
  readonly cost: number;
}

type Lay = Omit<Press, 'finger'>;
export const fingerCount = 4;

/**
 * Costs in millimetres, fitted to the 2,040 sound fingerings of chords-db 0.5.1 (of all that a hand could do, which one
 * is printed?) and rounded; one millimetre of span, or beyond one finger a fret, is 1.
 */
const costs = {
  /** Times the finger's number: fewer fingers, and the stronger ones. */
  finger: 7,
  /** A barre takes strength, as much as the little finger alone. */
  barre: 28,
  /** For each string more, of a barre that isn't the index's: the other fingers bend. */
  bentBarre: 28,
  /** A string that the barre has to keep silent. */
  mutedUnderBarre: 21,
  /** The index on a higher string than another finger on its fret: the hand turns. */
  turnedIndex: 28,
} as const;

/** The string, if any, that sounds before the fret between these strings, where a barre would stop it. */
export function stringUnder(frets: Frets, fret: number, low: number, high: number): number | undefined {
  for (let string = low - 1; string > high; string -= 1) {
    const sounding = frets[string - 1] ?? silent;
    if (sounding !== silent && sounding < fret) return string;
  }
  return undefined;
}

/** What fingers have to hold, from the lowest fret on, and from the largest string number. */
function spotsOf(frets: Frets): readonly { readonly fret: number; readonly string: number }[] {
  const spots: { readonly fret: number; readonly string: number }[] = [];
  for (let string = frets.length; string >= 1; string -= 1) {
    const fret = frets[string - 1] ?? silent;
    if (fret > 0) spots.push({ fret, string });
  }
  return spots.sort((a, b) => a.fret - b.fret || b.string - a.string);
}

/** Every way to share the fretted places out to at most so many presses, from the lowest fret and string on. */
export function layings(frets: Frets, most = fingerCount, isFree = stringUnder): readonly (readonly Lay[])[] {
  let found: (readonly Lay[])[] = [[]];
  for (const { fret, string } of spotsOf(frets)) {
    const next: (readonly Lay[])[] = [];
    for (const lays of found) {
      const last = lays.at(-1);
      if (last?.fret === fret && isFree(frets, fret, last.low, string) === undefined)
        next.push([...lays.slice(0, -1), { ...last, high: string, count: last.count + 1 }]);
      if (lays.length < most) next.push([...lays, { fret, low: string, high: string, count: 1 }]);
    }
    found = next;
  }
  return found;
}

/**
 * Goes through every grip of these frets that the hand reaches and that costs less than `below` says by then. Fingers
 * rise with the frets, and on one fret from the lower string to the higher; the index alone may lie on a higher string
 * than another finger on its fret.
 */
function eachGrip(
  instrument: Instrument,
  frets: Frets,
  hand: Hand,
  below: () => number,
  found: (grip: Grip) => void,
): void {
  const wires = fretWires(instrument);
  const reaches = pairReaches(hand);
  const spots = spotsOf(frets);
  const [first, last] = [spots[0]?.fret ?? 0, spots.at(-1)?.fret ?? 0];
  const presses: Press[] = [];

  /** `top`: the last finger but a turned index; `turned`: the index is still to come, on the lowest fret. */
  const hold = (at: number, top: number, turned: boolean, cost: number): void => {
    if (cost >= below()) return;
    const spot = spots[at];
    if (!spot) {
      if (!turned) found({ presses: [...presses], cost });
      return;
    }
    const before = presses.at(-1);
    if (before?.fret === spot.fret && stringUnder(frets, spot.fret, before.low, spot.string) === undefined) {
      presses[presses.length - 1] = { ...before, high: spot.string, count: before.count + 1 };
      hold(at + 1, top, turned, cost + widerCost(frets, before, spot.string));
      presses[presses.length - 1] = before;
    }
    const press = (finger: Finger, next: number, stillTurned: boolean, more: number) => {
      const stretch = stretchTo(wires, reaches, presses, finger, spot.fret);
      if (stretch === undefined) return;
      presses.push({ finger, fret: spot.fret, low: spot.string, high: spot.string, count: 1 });
      hold(at + 1, next, stillTurned, cost + stretch / hand.share + costs.finger * finger + more);
      presses.pop();
    };
    if (turned && spot.fret !== first) return;
    if (turned) press(1, top, false, costs.turnedIndex);
    for (let finger = top + 1; finger <= fingerCount; finger += 1) press(finger as Finger, finger, turned, 0);
    if (!before)
      for (let finger = 2; finger <= fingerCount; finger += 1) press(finger as Finger, finger, true, 0);
  };
  hold(0, 0, false, between(wires, first, last) / hand.share);
}

/** What it takes to put this finger beside those that hold already; undefined where it doesn't get there. */
function stretchTo(
  wires: readonly number[],
  reaches: readonly (readonly Reach[])[],
  presses: readonly Press[],
  finger: Finger,
  fret: number,
): number | undefined {
  let nearest = 0;
  let stretch = 0;
  for (const other of presses) {
    if (fret > other.fret && between(wires, other.fret, fret) > (reaches[other.finger]?.[finger]?.mm ?? 0))
      return undefined;
    if (other.finger < finger && other.finger > nearest) {
      nearest = other.finger;
      const natural = other.fret + finger - other.finger;
      stretch = fret > natural ? between(wires, natural, fret) : 0;
    }
  }
  return stretch;
}

/** What it costs to lay a press over the strings up to this one. */
function widerCost(frets: Frets, { finger, high, count }: Press, string: number): number {
  let cost = count === 1 ? costs.barre : 0;
  if (finger !== 1) cost += costs.bentBarre * (high - string);
  for (let under = high - 1; under > string; under -= 1)
    if (frets[under - 1] === silent) cost += costs.mutedUnderBarre;
  return cost;
}

/** Every grip of these frets that the hand reaches, best first. */
export function gripsOf(instrument: Instrument, frets: Frets, hand: Hand): readonly Grip[] {
  const grips: Grip[] = [];
  eachGrip(
    instrument,
    frets,
    hand,
    () => Infinity,
    (grip) => grips.push(grip),
  );
  return grips.sort((a, b) =>
    Math.abs(a.cost - b.cost) > rounding ? a.cost - b.cost : weakness(a) - weakness(b),
  );
}

/** Sums of the same millimetres in another order are equal. */
const rounding = 1e-9;

/** Of equals, the one that gives more to the stronger fingers is better. */
function weakness({ presses }: Grip): number {
  return presses.reduce((sum, { finger, count }) => sum + finger ** 2 * count, 0);
}

/** What the first of `gripsOf` costs; undefined where that isn't less than `below`. */
export function gripCost(
  instrument: Instrument,
  frets: Frets,
  hand: Hand,
  below: number,
): number | undefined {
  let least: number | undefined;
  eachGrip(
    instrument,
    frets,
    hand,
    () => least ?? below,
    ({ cost }) => (least = cost),
  );
  return least;
}

/** Whether a place on this string needs a finger of its own, given the frets on the strings with larger numbers. */
export function needsPress(frets: Frets, string: number, fret: number): boolean {
  for (let other = string + 1; other <= frets.length; other += 1) {
    const sounding = frets[other - 1] ?? silent;
    if (sounding === fret) return false;
    if (sounding !== silent && sounding < fret) return true;
  }
  return true;
}

/**
 * No grip of so many places costs less, but for its stretch, if it takes at least so many presses; the index may save
 * so many of them on the lowest fret.
 */
export function leastFingers(places: number, presses: number, saved: number): number {
  let least = presses === 0 ? 0 : Infinity;
  for (let used = Math.max(1, presses); used <= Math.min(fingerCount, places); used += 1) {
    const spared = places - used;
    const barre = spared === 0 ? 0 : costs.barre + (spared > saved ? costs.bentBarre : 0);
    least = Math.min(least, (costs.finger * used * (used + 1)) / 2 + barre);
  }
  return least;
}

/** No grip between these frets stretches less: fingers 1 to 4 cover three frets from the lowest on. */
export function leastStretch(wires: readonly number[], low: number, high: number): number {
  const covered = low + fingerCount - 1;
  return between(wires, low, high) + (high > covered ? between(wires, covered, high) : 0);
}
