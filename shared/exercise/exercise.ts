import type { FretRange, InstrumentId, StringNumber } from '../theory/fretboard.ts';
import type { NoteName } from '../theory/pitch.ts';
import type { FormId } from '../theory/tables/forms.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { ScaleId } from '../theory/tables/scales.ts';

/**
 * Where the root (and with it the answer) may lie (SPEC ROOT):
 * `place`: on the root string at the one fret that `range` holds ·
 * `string`: on the root string at any fret (inside `range`, where one is given) ·
 * `range`: on any string, every fret inside `range` ·
 * `anywhere`: on any string at any fret.
 */
export type Strictness = 'place' | 'string' | 'range' | 'anywhere';

/** The finger that takes the root: shown on charts, not judged. */
export type Finger = 1 | 2 | 3 | 4;

interface Task {
  readonly instrument: InstrumentId;
  readonly root: NoteName;
  readonly rootString: StringNumber;
  readonly strictness: Strictness;
  /** Needed by `place` and `range`; frets counted from the nut. */
  readonly range: FretRange | null;
}

/** Find a note. One place is enough; every place given must be right. */
export interface FindExercise extends Task {
  readonly kind: 'find';
}

/** Which notes make the chord: a movable form, any voicing on exactly these strings, or any voicing. */
export type Voicing =
  | {
      readonly kind: 'form';
      readonly form: FormId;
      /** True where the strings that the form marks as optional must sound too. */
      readonly full: boolean;
    }
  | { readonly kind: 'strings'; readonly strings: readonly StringNumber[] }
  | { readonly kind: 'any' };

/** Build a chord, triad or arpeggio. */
export interface BuildExercise extends Task {
  readonly kind: 'build';
  readonly quality: ChordQuality;
  readonly voicing: Voicing;
}

/**
 * Play a scale. `every-pitch`: every pitch of the position around the root, on every string (strictness `place`
 * or `string`) or of the fret range (strictness `range`);
 * `every-tone`: every note name of the scale at least once.
 */
export interface ScaleExercise extends Task {
  readonly kind: 'scale';
  readonly scale: ScaleId;
  readonly coverage: 'every-pitch' | 'every-tone';
  /** Finger on the root, which fixes the position: the hand's four frets start `rootFinger − 1` below the root. */
  readonly rootFinger: Finger;
}

export type Exercise = FindExercise | BuildExercise | ScaleExercise;
export type ExerciseKind = Exercise['kind'];
