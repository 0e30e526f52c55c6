import type { Heard } from '../../shared/exercise/heard.ts';
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
