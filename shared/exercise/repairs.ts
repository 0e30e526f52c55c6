import { pitchClassOn } from '../theory/interval.ts';
import { perObject } from '../lib/per-object.ts';
import { neededDegrees } from '../theory/chord-rule.ts';
import {
  holds,
  pitchClassAt,
  place,
  stringNumbers,
  type Place,
  type StringNumber,
} from '../theory/fretboard.ts';
import { octave } from '../theory/pitch.ts';
import type { BuildExercise } from './exercise.ts';
import { arePlacesRight } from './right.ts';
import { acceptedRoots, degreesAsked, instrumentOf, isRootBound, toneAt } from './roots.ts';
import { targetsOf, type Target } from './targets.ts';

/** Beyond these frets from the hand nothing of an answer is looked for. */
const reach = 3;
/** Strings changed at most; with more an answer is another one. */
const mostChanges = 2;
/** Right answers as near as each other that are worth comparing with. */
const mostFound = 6;

/** What a string may hold: a fret and the degree there as a bit, or nothing. */
interface Choice {
  readonly fret: number | null;
  readonly bit: number;
}

/**
 * Where a chord may be voiced otherwise: the right answers that differ from these places on the fewest strings,
 * the smallest moves first. Empty where more than two strings would have to change.
 */
export function repairsOf(exercise: BuildExercise, places: readonly Place[]): readonly Target[] {
  const strings = stringsOf(exercise);
  const frets = fretsNear(exercise, places);
  const choices = strings.map((string) => choicesOn(exercise, string, frets));
  const given = strings.map((string): Choice => {
    const own = places.find((spot) => spot.string === string);
    return own ? { fret: own.fret, bit: bitOf(exercise, own) } : silent;
  });
  const isFull = exercise.voicing.kind === 'strings';
  // A foreign tone, and a string that has to sound, must change whatever else does.
  const forced = given.flatMap((choice, index) =>
    choice.bit < 0 || (isFull && choice === silent) ? [index] : [],
  );
  if (forced.length > Math.max(mostChanges, strings.length - places.length)) return [];
  const needed = neededBits(exercise);
  const isRootAt = strings.map((string) => rootTest(exercise, string));
  for (let more = 0; more <= Math.max(0, mostChanges - forced.length); more += 1) {
    const found: Place[][] = [];
    // Two strings at once are only moved: none is added or left out.
    const free =
      more < mostChanges ? [] : given.flatMap((choice, index) => (choice === silent ? [index] : []));
    const offered =
      more < mostChanges ? choices : choices.map((some) => some.filter((choice) => choice !== silent));
    for (const extra of subsets(strings.length, more, [...forced, ...free]))
      vary(given, offered, [...forced, ...extra], (chosen) => {
        let bits = 0;
        for (const { bit } of chosen) {
          if (bit < 0) return;
          bits |= bit;
        }
        if ((bits & needed) !== needed) return;
        if (!chosen.some((choice, index) => isRootAt[index]?.(choice.fret))) return;
        const spots = chosen.flatMap((choice, index) =>
          choice.fret === null ? [] : [place(strings[index] ?? 0, choice.fret)],
        );
        if (arePlacesRight(exercise, spots)) found.push(spots);
      });
    if (found.length > 0) return nearestFirst(found, places).map((spots) => targetOf(exercise, spots));
  }
  return [];
}

const silent: Choice = { fret: null, bit: 0 };

function stringsOf(exercise: BuildExercise): readonly StringNumber[] {
  const { voicing } = exercise;
  return voicing.kind === 'strings' ? voicing.strings : stringNumbers(instrumentOf(exercise));
}

/** The degree of each pitch class as a bit, −1 for a foreign tone; looked up many times for one answer. */
const bitTable = perObject((exercise: BuildExercise): readonly number[] => {
  const bits = Array.from({ length: octave }, () => -1);
  for (const [index, degree] of degreesAsked(exercise).entries())
    bits[pitchClassOn(exercise.root, degree)] = 1 << index;
  return bits;
});

function bitOf(exercise: BuildExercise, spot: Place): number {
  return bitTable(exercise)[pitchClassAt(instrumentOf(exercise), spot)] ?? -1;
}

/** Tones that no voicing may leave out; the root and the third have their exceptions. */
function neededBits(exercise: BuildExercise): number {
  return neededDegrees(exercise.quality)
    .filter((degree) => degree !== '1' && degree !== '3')
    .reduce((bits, degree) => bits | (1 << degreesAsked(exercise).indexOf(degree)), 0);
}

/** Whether a fret of this string is an accepted root; always, where no root is bound. */
function rootTest(exercise: BuildExercise, string: StringNumber): (fret: number | null) => boolean {
  if (!isRootBound(exercise)) return () => true;
  const frets = acceptedRoots(exercise)
    .filter((root) => root.string === string)
    .map((root): number => root.fret);
  return (fret) => fret !== null && frets.includes(fret);
}

/** The frets near the hand, the open string, and what a chart that shares a place with the answer shows. */
function fretsNear(exercise: BuildExercise, places: readonly Place[]): readonly number[] {
  const fretted = places.map((spot): number => spot.fret).filter((fret) => fret > 0);
  const hand = fretted.length > 0 ? fretted : [0];
  const low = Math.max(1, Math.min(...hand) - reach);
  const high = Math.min(instrumentOf(exercise).fretCount, Math.max(...hand) + reach);
  const shown = targetsOf(exercise)
    .filter(({ accepted }) => accepted.some((spot) => holds(places, spot)))
    .flatMap(({ accepted }) => accepted.map((spot): number => spot.fret));
  return [...new Set([0, ...Array.from({ length: high - low + 1 }, (_, index) => low + index), ...shown])];
}

function choicesOn(
  exercise: BuildExercise,
  string: StringNumber,
  frets: readonly number[],
): readonly Choice[] {
  const found: Choice[] = exercise.voicing.kind === 'strings' ? [] : [silent];
  for (const fret of frets) {
    const bit = bitOf(exercise, place(string, fret));
    if (bit >= 0) found.push({ fret, bit });
  }
  return found;
}

/** Every set of so many indices that leaves those taken out. */
function subsets(length: number, size: number, taken: readonly number[]): readonly (readonly number[])[] {
  let grown: readonly (readonly number[])[] = [[]];
  for (let step = 0; step < size; step += 1)
    grown = grown.flatMap((set) =>
      Array.from({ length }, (_, index) => index)
        .filter((index) => index > (set.at(-1) ?? -1) && !taken.includes(index))
        .map((index) => [...set, index]),
    );
  return grown;
}

/** The answer with every choice on each of these strings. */
function vary(
  given: readonly Choice[],
  choices: readonly (readonly Choice[])[],
  changed: readonly number[],
  visit: (chosen: readonly Choice[]) => void,
): void {
  const chosen = [...given];
  const choose = (at: number): void => {
    const index = changed[at];
    if (index === undefined) {
      visit(chosen);
      return;
    }
    const own = given[index];
    for (const choice of choices[index] ?? []) {
      if (choice.fret === own?.fret) continue;
      chosen[index] = choice;
      choose(at + 1);
    }
    if (own) chosen[index] = own;
  };
  choose(0);
}

function nearestFirst(found: readonly Place[][], places: readonly Place[]): readonly Place[][] {
  const moved = (spots: readonly Place[]) =>
    spots.reduce((sum, spot) => {
      const own = places.find((other) => other.string === spot.string);
      return (
        sum +
        (own
          ? Math.abs(own.fret - spot.fret)
          : reach + outsideHand(spot, places) + beyondStrings(spot, places))
      );
    }, 0);
  return found
    .map((spots) => ({ spots, distance: moved(spots) }))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, mostFound)
    .map(({ spots }) => spots);
}

/** How far a place that is added lies outside the frets of the hand; an open string rings on after the others. */
function outsideHand({ fret }: Place, places: readonly Place[]): number {
  const hand = places.map((spot): number => spot.fret).filter((one) => one > 0);
  if (hand.length === 0) return 0;
  if (fret === 0) return reach;
  return Math.max(0, Math.min(...hand) - fret, fret - Math.max(...hand));
}

/** The further from a string that sounds, the dearer: more than a fret for each string between. */
function beyondStrings({ string }: Place, places: readonly Place[]): number {
  return 1.5 * Math.min(...places.map((other) => Math.abs(other.string - string)));
}

function targetOf(exercise: BuildExercise, accepted: readonly Place[]): Target {
  return {
    notes: accepted.map((spot) => ({
      place: spot,
      degree: toneAt(exercise, spot) ?? '1',
      finger: 0,
      optional: false,
    })),
    accepted,
  };
}
