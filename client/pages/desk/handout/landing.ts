import {
  fretText,
  fretsText,
  placeText,
  stringsText,
  uncapital,
} from '../../../../shared/exercise/phrases.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { holds, type Place } from '../../../../shared/theory/fretboard.ts';
import { byString } from './places-text.ts';

/** Longer than this nobody reads it off a student's sheet. */
const longest = 70;

/**
 * Where a slip lands, for whoever marks a sheet: the places that are not in the key, or by how far which strings moved;
 * undefined where it can't be told shortly.
 */
export function landingText(
  exercise: Exercise,
  key: readonly Place[],
  places: readonly Place[],
): string | undefined {
  const [first] = places;
  if (exercise.kind === 'find' && first && places.length === 1)
    return first.string === exercise.rootString ? fretText(first) : placeText(first);
  const astray = places.filter((place) => !holds(key, place));
  if (astray.length === 0) return 'notes left out';
  const moved = movedText(key, places);
  if (moved?.startsWith('everything')) return moved;
  const text = byString(astray);
  const shortest = text.length > longest ? (moved ?? text) : text;
  return shortest.length > longest ? undefined : shortest;
}

/** "strings 6 to 3 one fret higher"; undefined where the strings moved otherwise. */
function movedText(key: readonly Place[], places: readonly Place[]): string | undefined {
  const strings = [...new Set([...key, ...places].map(({ string }) => string))];
  const shifts = strings.map((string) => shiftOf(onString(key, string), onString(places, string)));
  const found = [...new Set(shifts)].filter((shift) => shift !== 0);
  const [shift] = found;
  if (found.length !== 1 || shift === undefined) return undefined;
  const moved = key.filter(({ string }) => shifts[strings.indexOf(string)] !== 0);
  const what = shifts.includes(0) ? uncapital(stringsText(moved)) : 'everything';
  return `${what} ${fretsText(Math.abs(shift))} ${shift > 0 ? 'higher' : 'lower'}`;
}

function onString(places: readonly Place[], string: number): readonly number[] {
  return places
    .filter((place) => place.string === string)
    .map(({ fret }) => fret)
    .toSorted((a, b) => a - b);
}

/** By how many frets all of them moved; undefined where they didn't move together. */
function shiftOf(from: readonly number[], to: readonly number[]): number | undefined {
  const shift = (to[0] ?? 0) - (from[0] ?? 0);
  const isTogether = from.length === to.length && from.every((fret, at) => fret + shift === to[at]);
  return isTogether ? shift : undefined;
}
