import { perObject } from '../lib/per-object.ts';
import {
  type Fret,
  type FretRange,
  isOnNeck,
  pitchClassAt,
  place,
  type Place,
  stringNumbers,
} from '../theory/fretboard.ts';
import { octave, pitchClassOf } from '../theory/pitch.ts';
import { checkExercise } from './check.ts';
import type { Exercise } from './exercise.ts';
import { hypothesesFor } from './hypotheses.ts';
import { judge } from './judge.ts';
import { arePlacesRight } from './right.ts';
import { acceptedRoots, degreesAsked, instrumentOf } from './roots.ts';
import { saysWhy } from './pattern.ts';
import { targetsOf } from './targets.ts';
import { usualRoots } from './usual-roots.ts';
import type { SlipCause } from './verdict.ts';

/** What somebody who makes one slip would answer. */
export interface LikelySlip {
  readonly cause: SlipCause;
  readonly places: readonly Place[];
}

/**
 * What each slip that says why makes of the key, where it is wrong and lies on the neck: for C on string 2 the
 * low-string map gives fret 8. Empty for _name_, which is answered with a word.
 */
export const likelySlips: (exercise: Exercise) => readonly LikelySlip[] = perObject((exercise) =>
  slipsOf(exercise).filter(({ cause }) => saysWhy(cause)),
);

/** The share of likely slips that land where no other does: 1 for E on string 2, less for F. */
export function slipsApart(exercise: Exercise): number {
  const landings = likelySlips(exercise).map(({ places }) => landing(places));
  if (landings.length === 0) return 1;
  const alone = landings.filter((one) => landings.indexOf(one) === landings.lastIndexOf(one));
  return alone.length / landings.length;
}

/**
 * The same exercise from another root, the nearest on the same string, or from another string, whose wrong answer
 * tells which of two causes it was. Undefined where there is none.
 */
export function separatingExercise(
  exercise: Exercise,
  causes: readonly [SlipCause, SlipCause],
): Exercise | undefined {
  const instrument = instrumentOf(exercise);
  const root = acceptedRoots(exercise).find((spot) => spot.string === exercise.rootString);
  if (exercise.kind === 'name' || !root) return undefined;
  const roots = usualRoots(degreesAsked(exercise));
  const steps = Array.from({ length: octave - 1 }, (_, index) => [index + 1, -index - 1]).flat();
  for (const step of steps) {
    const spot = place(root.string, root.fret + step);
    if (!isOnNeck(instrument, spot)) continue;
    const name = roots.find((other) => pitchClassOf(other) === pitchClassAt(instrument, spot));
    if (!name) continue;
    // Where the frets asked for don't hold the other root, they move with it.
    const ranges = exercise.range ? [exercise.range, moved(exercise.range, step)] : [null];
    const found = ranges
      .map((range) => ({ ...exercise, root: name, range }))
      .find((other) => checkExercise(other).ok);
    if (found && tellsApart(found, causes)) return found;
  }
  return onOtherStrings(exercise).find((other) => tellsApart(other, causes));
}

/** The same note asked from other strings, the nearest first: causes that move with the root part there. */
function onOtherStrings(exercise: Exercise): readonly Exercise[] {
  const { rootString, strictness } = exercise;
  const lowest = { low: 0 as Fret, high: (octave - 1) as Fret };
  return stringNumbers(instrumentOf(exercise))
    .filter((string) => string !== rootString)
    .sort((a, b) => Math.abs(a - rootString) - Math.abs(b - rootString))
    .map((string) => ({
      ...exercise,
      rootString: string,
      range: strictness === 'place' ? lowest : exercise.range,
    }))
    .filter((other) => checkExercise(other).ok);
}

/** Whether the two causes land apart, and each landing is judged to be its own cause. */
function tellsApart(exercise: Exercise, [one, other]: readonly [SlipCause, SlipCause]): boolean {
  const own = slipsOf(exercise).filter(({ cause }) => cause === one || cause === other);
  const areBoth = [one, other].every((cause) => own.some((slip) => slip.cause === cause));
  // Causes that move with the root meet from every root: no need to judge.
  const landings = new Set(own.map(({ places }) => landing(places)));
  return areBoth && landings.size === own.length && own.every((slip) => isJudged(exercise, slip));
}

function isJudged(exercise: Exercise, { cause, places }: LikelySlip): boolean {
  const verdict = judge(exercise, { places });
  return verdict.kind === 'slip' && verdict.cause === cause;
}

function moved(range: FretRange, step: number): FretRange {
  return { low: (range.low + step) as Fret, high: (range.high + step) as Fret };
}

/** Every slip from the lowest right answer that is wrong and lies on the neck, each landing of a cause once. */
function slipsOf(exercise: Exercise): readonly LikelySlip[] {
  const [target] = exercise.kind === 'name' ? [] : targetsOf(exercise);
  if (!target) return [];
  const instrument = instrumentOf(exercise);
  const found = new Map<string, LikelySlip>();
  for (const { cause, moved: notes } of hypothesesFor(exercise, target)) {
    const places = notes.map(({ to }) => to);
    const id = `${cause} ${landing(places)}`;
    if (found.has(id) || !places.every((spot) => isOnNeck(instrument, spot))) continue;
    if (!arePlacesRight(exercise, places)) found.set(id, { cause, places });
  }
  return [...found.values()];
}

/** One text for the same places in any order. */
function landing(places: readonly Place[]): string {
  return places
    .map(({ string, fret }) => string * 100 + fret)
    .sort((a, b) => a - b)
    .join(' ');
}
