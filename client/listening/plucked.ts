import { decibelsOf } from './level.ts';

/** How what a hand has struck dies away. */
export interface Shape {
  /** Loudness is followed in pieces of so many seconds, from `attack` on. */
  readonly piece: number;
  readonly attack: number;
  /** It swells by less, in decibels, as strings do that beat with each other; a voice swells by more. */
  readonly swelling: number;
  /** It dies away by less, in decibels; a muted string, or the end of a syllable, by more. */
  readonly dying: number;
}

/** While a note is told, and while a chord is. */
export const noteShape: Shape = { piece: 0.025, attack: 0.012, swelling: 4.5, dying: 16 };
/** A note beside others that ring: a semitone apart they beat hard. */
export const ringingShape: Shape = { ...noteShape, swelling: 15 };
export const chordShape: Shape = { piece: 0.05, attack: 0.03, swelling: 5, dying: 24 };

/** Whether this, from its onset on, sounds like strings that were struck once. */
export function isPlucked(
  samples: Float32Array,
  sampleRate: number,
  { piece, attack, swelling, dying }: Shape,
): boolean {
  const length = Math.round(piece * sampleRate);
  let [most, least, last] = [-Infinity, Infinity, 0];
  for (let at = Math.round(attack * sampleRate); at + length <= samples.length; at += length) {
    last = decibelsOf(samples.subarray(at, at + length));
    most = Math.max(most, last);
    least = Math.min(least, last);
    if (last > least + swelling) return false;
  }
  return last > most - dying;
}
