import type { StackedFamily } from '../theory/families.ts';
import type { FretRange, InstrumentId, Place, StringNumber } from '../theory/fretboard.ts';
import type { NoteName } from '../theory/pitch.ts';
import type { FormId } from '../theory/tables/forms.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { PatternChoice } from '../theory/patterns.ts';
import type { ToneSetId } from '../theory/tone-sets.ts';

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

/** Find a note: one place is enough, or `every` place that is accepted; every place given must be right. */
export interface FindExercise extends Task {
  readonly kind: 'find';
  readonly wanted?: 'one' | 'every';
}

/**
 * Name a place: its note (whose name is `root`, any spelling of which is right), or how far it lies above `root`,
 * as an interval or as a degree. `rootString` is the place's string.
 */
export interface NameExercise extends Task {
  readonly kind: 'name';
  readonly place: Place;
  readonly wanted: 'note' | 'interval' | 'degree';
}

/** What the answer must carry besides the notes. */
interface Extras {
  /** The place of the root is to be marked. */
  readonly marksRoot?: boolean;
  /** The finger on the root is to be named; the chart must say which. */
  readonly asksFinger?: boolean;
}

/**
 * Which notes make the chord: a movable form, one way of stacking its tones on these strings, any voicing on exactly
 * these strings, or any voicing.
 */
export type Voicing =
  | {
      readonly kind: 'form';
      readonly form: FormId;
      /** True where the strings that the form marks as optional must sound too. */
      readonly full: boolean;
    }
  | {
      readonly kind: 'family';
      readonly family: StackedFamily;
      readonly strings: readonly StringNumber[];
    }
  | { readonly kind: 'strings'; readonly strings: readonly StringNumber[] }
  | { readonly kind: 'any' };

/** Build a chord, triad or arpeggio. */
export interface BuildExercise extends Task, Extras {
  readonly kind: 'build';
  readonly quality: ChordQuality;
  /** The note that must sound lowest: a slash chord's, or the root itself for root position. Without it any may. */
  readonly bass?: NoteName;
  readonly voicing: Voicing;
}

/**
 * Play a scale. `every-pitch`: every pitch of the position around the root, on every string (strictness `place`
 * or `string`) or of the fret range (strictness `range`);
 * `every-tone`: every note name of the scale at least once.
 */
export interface ScaleExercise extends Task, Extras {
  readonly kind: 'scale';
  /** A scale, or the tones of a chord: `arpeggio-m7`. */
  readonly scale: ToneSetId;
  readonly coverage: 'every-pitch' | 'every-tone';
  /** In order of pitch; a set without it. Up and down turns at the top, which is given once. */
  readonly order?: ScaleOrder;
  /** So many notes on every string, of which the root is a given one on its own; a position of the hand without it. */
  readonly perString?: PatternChoice;
  /** Along the root string alone, through the range. */
  readonly oneString?: true;
  /** Finger on the root, which fixes a position: the hand's four frets start `rootFinger − 1` below the root. */
  readonly rootFinger: Finger;
}

export type ScaleOrder = 'up' | 'down' | 'up-and-down';

export type Exercise = FindExercise | NameExercise | BuildExercise | ScaleExercise;
export type ExerciseKind = Exercise['kind'];

/** Whether the shape of the chord is given, and only its place is to be found. */
export function hasGivenShape({ voicing }: BuildExercise): boolean {
  return voicing.kind === 'form' || voicing.kind === 'family';
}
