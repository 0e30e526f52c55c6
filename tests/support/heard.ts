import type { Answer } from '../../shared/exercise/answer.ts';
import type { Heard } from '../../shared/exercise/heard.ts';
import { place } from '../../shared/theory/fretboard.ts';
import type { MidiNote, PitchClass } from '../../shared/theory/pitch.ts';

/** What was heard, as short words for tests. */

/** `chord(9, 1, 4)` is A, C♯, E. */
export const chord = (...tones: readonly number[]): Heard => ({
  kind: 'chord',
  tones: tones.map((tone) => ({ pitchClass: tone as PitchClass, confidence: 1 })),
});

/** `line(60, 62)` is C4, D4. */
export const line = (...pitches: readonly number[]): Heard => ({
  kind: 'line',
  pitches: pitches.map((pitch, at) => ({ pitch: pitch as MidiNote, at: 250 * at, confidence: 1 })),
});

/** E, G and B, the root tapped on string 2, fret 5 (E4 is MIDI 64, and E is pitch class 4). */
export const playedEMinor: Answer = { places: [place(2, 5)], heard: chord(4, 7, 11), way: 'play' };
/** G sharp in the place of G. */
export const playedEMajor: Answer = { ...playedEMinor, heard: chord(4, 8, 11) };
