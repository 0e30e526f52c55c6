import { midiAt, type Place } from '../theory/fretboard.ts';
import { octave, pitchClass } from '../theory/pitch.ts';
import type { Exercise } from './exercise.ts';
import { instrumentOf } from './roots.ts';

/**
 * What of a note counts for the exercise: its pitch where a scale is asked pitch by pitch, else its pitch class.
 * `soundOf(exercise, 52)` of a chord is 4.
 */
export function soundOf(exercise: Exercise, pitch: number): number {
  return isOctaveFree(exercise) ? pitchClass(pitch) : pitch;
}

/** What a place sounds, as `soundOf` counts it. */
export function soundAt(exercise: Exercise, spot: Place): number {
  return soundOf(exercise, midiAt(instrumentOf(exercise), spot));
}

/** Whether any octave will do: always for a chord, whose octaves can't be heard. */
export function isOctaveFree(exercise: Exercise): boolean {
  return exercise.kind !== 'scale' || exercise.coverage === 'every-tone';
}

/** Semitones from one pitch class up to another, or down where that is nearer: 11 to 0 is 1, −5 to 6. */
export function semitonesTo(from: number, to: number): number {
  return pitchClass(to - from + octave / 2 - 1) - octave / 2 + 1;
}
