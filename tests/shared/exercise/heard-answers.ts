import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { Heard } from '../../../shared/exercise/heard.ts';
import { inputOf } from '../../../shared/exercise/input.ts';
import type { Place } from '../../../shared/theory/fretboard.ts';
import { midiOf } from '../../../shared/theory/pitch.ts';
import { chord, line } from '../../support/heard.ts';
import { instrumentOf } from './arbitraries.ts';

/** What places sound as, and the taps that go with them, worked out apart from the code under test. */

/** What sounds at a place. */
export function pitchAt({ instrument }: Exercise, { string, fret }: Place): number {
  const open = instrumentOf(instrument).openStrings[string - 1];
  if (!open) throw new Error(`no string ${String(string)}`);
  return midiOf(open) + fret;
}

const semitones: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
export const rootTone = ({ root }: Pick<Exercise, 'root'>): number =>
  ((semitones[root.letter] ?? 0) + root.alteration + 12) % 12;

/** Played from these places: a chord at once, anything else from low to high. */
export function soundOf(exercise: Exercise, places: readonly Place[]): Heard {
  const pitches = places.map((spot) => pitchAt(exercise, spot)).sort((a, b) => a - b);
  return exercise.kind === 'build'
    ? chord(...new Set(pitches.map((pitch) => pitch % 12)))
    : line(...new Set(pitches));
}

/** The taps of a student who knows where these places are: the root on its string, where it lies there. */
export function tapsOf(exercise: Exercise, places: readonly Place[]): readonly Place[] {
  const input = inputOf(exercise);
  const asked = input.kind === 'places' ? (input.playing?.taps ?? []) : [];
  const roots = places.filter((spot) => pitchAt(exercise, spot) % 12 === rootTone(exercise));
  const { low, high } = exercise.range ?? { low: 0, high: 99 };
  const isBound = exercise.strictness === 'place' || exercise.strictness === 'string';
  const rank = (spot: Place) =>
    (isBound && spot.string !== exercise.rootString ? 2 : 0) + (spot.fret < low || spot.fret > high ? 1 : 0);
  const [root] = roots.toSorted((a, b) => rank(a) - rank(b));
  const [lowest] = places.toSorted((a, b) => pitchAt(exercise, a) - pitchAt(exercise, b));
  return asked.flatMap((what) => (what === 'root' ? (root ?? []) : (lowest ?? [])));
}

/** The whole answer of a student who plays these places. */
export const played = (exercise: Exercise, places: readonly Place[]): Answer => ({
  places: tapsOf(exercise, places),
  heard: soundOf(exercise, places),
  way: 'play',
});
