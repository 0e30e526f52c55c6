import type { Place } from '../theory/fretboard.ts';

/** The strings and frets that a student gave; order is kept and means nothing yet. */
export interface Answer {
  readonly places: readonly Place[];
}
