import type { MidiNote, PitchClass } from '../theory/pitch.ts';

/** One note that was heard by itself. */
export interface HeardNote {
  readonly pitch: MidiNote;
  /** Milliseconds since the first note. */
  readonly at: number;
  /** 0 to 1. */
  readonly confidence: number;
}

/** A tone of a chord; in which octave it sounded isn't known. */
export interface HeardTone {
  readonly pitchClass: PitchClass;
  /** 0 to 1. */
  readonly confidence: number;
}

/**
 * What a student played: a line of notes one after another, or a chord, tones together. Never where: which string sounded can't be heard
 * (SPEC HEARD).
 */
export type Heard =
  | { readonly kind: 'line'; readonly pitches: readonly HeardNote[] }
  | {
      readonly kind: 'chord';
      /** Those that are more likely there than not. */
      readonly tones: readonly HeardTone[];
      /** Others that may be there all the same. */
      readonly faint?: readonly HeardTone[];
      /** The tone that sounded lowest, where that is known. */
      readonly lowest?: PitchClass;
    };

/** From here on a tone was heard for certain; below, it counts in the student's favour (SPEC HEARD-12). */
export const certain = 0.9;

/** How an answer was given where it was not tapped: heard by a microphone, or sent by an instrument over MIDI. */
export type Way = 'play' | 'midi';

/** A place that is asked for with what was played, since nothing else tells it: where the root is, or the lowest note. */
export type PlayedTap = 'root' | 'lowest';

/** What `playing` gives to say and to tap. */
export interface Playing {
  /** What is listened for: a line of notes one after another, or a chord's tones together. */
  readonly as: Heard['kind'];
  /** In this order in `places`. */
  readonly taps: readonly PlayedTap[];
}
