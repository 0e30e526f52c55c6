/** Notes that the net names by themselves: E2 to E6, MIDI 40 to 88. */
export const lowestNote = 40;
export const noteCount = 49;
/** Three bins a semitone from MIDI 38 to 106. */
export const binCount = 204;

/** What a look at a sound gives, as probabilities 0 to 1. */
export interface NetHeard {
  /** By MIDI note from `lowestNote` on. */
  readonly notes: Float32Array;
  /** By pitch class, C first. */
  readonly tones: Float32Array;
}

/** A small net: 204 bins → 256 → 128 → 49 notes and 12 pitch classes. */
export interface Net {
  hear(bins: Float32Array): NetHeard;
}
