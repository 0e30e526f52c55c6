import type { Layer } from '../theory/neck-map.ts';
import type { Place } from '../theory/fretboard.ts';
import type { Degree } from '../theory/interval.ts';
import type { MidiNote, PitchClass } from '../theory/pitch.ts';

/** Named patterns of wrong answers (SPEC SLIP). The Desk shows the name, the Stand plain words. */
export type SlipCause =
  | 'low-string-map'
  | 'low-string-box'
  | 'short-step'
  | 'major-for-minor'
  | 'minor-for-major'
  | 'letters-two-frets'
  | 'nut-as-one'
  | 'mark-drift'
  | 'sharp-for-flat'
  | 'relative-root'
  | 'tuning-ignored'
  | 'capo-ignored'
  | 'strings-reversed'
  | 'frets-mirrored'
  | 'next-string'
  | 'right-note-wrong-string'
  | 'wrong-octave'
  | 'outside-range'
  | 'wrong-form'
  | 'wrong-bass'
  | 'wrong-order'
  | 'wrong-root-mark'
  | 'wrong-finger'
  | 'untapped'
  | 'muted-string-sounded'
  | 'sounding-string-muted'
  | 'one-fret-off'
  | 'extra-tone'
  | 'missing-tone'
  | 'other-place'
  | 'other-name';

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
  /** On a map: what has the note, where the chord doesn't. */
  readonly layer?: Exclude<Layer, 'chord'>;
}

/** What was wrong by ear: of a chord its tones, of a line its first note astray; empty where all that was heard is right. */
export type HeardFault =
  | { readonly kind: 'chord'; readonly missing: readonly Degree[]; readonly foreign: readonly PitchClass[] }
  | {
      readonly kind: 'line';
      /** The note before, where an order says what follows it. */
      readonly after?: MidiNote;
      readonly expected?: MidiNote;
      readonly sounded?: MidiNote;
    };

export interface RightVerdict {
  readonly kind: 'right';
  /** The degree that sounds lowest, where a chord is inverted and no bass was asked. */
  readonly inversion?: Degree;
}

export interface SlipVerdict {
  readonly kind: 'slip';
  readonly cause: SlipCause;
  readonly marks: readonly PlaceMark[];
  readonly corrections: readonly Correction[];
  /** Expected places that nothing of the answer stands for. */
  readonly missing: readonly Place[];
  /** Of an answer that was heard; its marks are the taps alone (SPEC HEARD-9). */
  readonly heard?: HeardFault;
}

/** Two causes explain the answer equally well: neither is said, the question that separates them is. */
export interface UnclearVerdict {
  readonly kind: 'unclear';
  readonly causes: readonly [SlipCause, SlipCause];
  readonly marks: readonly PlaceMark[];
  readonly missing: readonly Place[];
  readonly heard?: HeardFault;
}

/** Not right, as the teacher marked it: what was placed isn't known, so no slip is named. */
export interface UnnamedVerdict {
  readonly kind: 'unnamed';
  readonly marks: readonly [];
  readonly missing: readonly [];
}

export type Verdict = RightVerdict | SlipVerdict | UnclearVerdict | UnnamedVerdict;
