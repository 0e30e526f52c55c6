import type { Place } from '../theory/fretboard.ts';
import type { Degree } from '../theory/interval.ts';

/** Named patterns of wrong answers. The Desk shows the name, the Stand plain words. */
export type SlipCause =
  | 'string-6-map'
  | 'string-3-to-2-step'
  | 'major-for-minor'
  | 'minor-for-major'
  | 'right-note-wrong-string'
  | 'wrong-octave'
  | 'strings-reversed'
  | 'missing-tone'
  | 'extra-tone'
  | 'outside-range'
  | 'wrong-form'
  | 'one-fret-off'
  | 'other-place';

/** What one place of the answer is worth. */
export interface PlaceMark {
  readonly place: Place;
  readonly right: boolean;
}

/** A wrong place and where it should have been. */
export interface Correction {
  readonly from: Place;
  readonly to: Place;
}

/** A note of an answer key: where it is, what it is above the root, and which finger the form gives it. */
export interface KeyNote {
  readonly place: Place;
  readonly degree: Degree;
  /** Absent where no fingering is given. */
  readonly finger?: number;
  /** True where the note may be left out. */
  readonly optional?: boolean;
}

export interface RightVerdict {
  readonly kind: 'right';
}

export interface SlipVerdict {
  readonly kind: 'slip';
  readonly cause: SlipCause;
  readonly marks: readonly PlaceMark[];
  readonly corrections: readonly Correction[];
  /** Expected places that nothing of the answer stands for. */
  readonly missing: readonly Place[];
}

/** Two causes explain the answer equally well: neither is said, the question that separates them is. */
export interface UnclearVerdict {
  readonly kind: 'unclear';
  readonly causes: readonly [SlipCause, SlipCause];
  readonly marks: readonly PlaceMark[];
  readonly missing: readonly Place[];
}

export type Verdict = RightVerdict | SlipVerdict | UnclearVerdict;
