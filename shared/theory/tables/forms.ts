import type { ChordQuality } from './chords.ts';

/** A movable form by the trade's name for it; `triad-321` is the close triad on strings 3, 2 and 1. */
export type FormId = 'E' | 'A' | 'G' | 'C' | 'D' | 'triad-321' | 'triad-432';

/**
 * One movable form of one quality. Frets and fingers run from the lowest string to string 1; frets are relative,
 * the lowest is 1, null is not sounded; finger 0 is none.
 */
export interface FormRow {
  readonly form: FormId;
  readonly quality: ChordQuality;
  readonly frets: readonly (number | null)[];
  readonly fingers: readonly number[];
  readonly rootStrings: readonly number[];
  /** Strings that may be left out, for a small hand. */
  readonly optionalStrings: readonly number[];
}

type Row = readonly [
  form: FormId,
  quality: ChordQuality,
  frets: string,
  fingers: string,
  rootStrings: readonly number[],
  optionalStrings?: readonly number[],
];

/** Frets and fingers as the trade writes them, low string first, x not sounded (common practice). */
const rows: readonly Row[] = [
  ['E', 'major', '133211', '134211', [6, 4, 1]],
  ['E', 'minor', '133111', '134111', [6, 4, 1]],
  ['A', 'major', 'x13331', 'x12341', [5, 3]],
  ['A', 'minor', 'x13321', 'x13421', [5, 3]],
  ['G', 'major', '431114', '321114', [6, 3, 1]],
  ['G', 'minor', '4211xx', '4211xx', [6, 3]],
  ['C', 'major', 'x43121', 'x43121', [5, 2]],
  ['C', 'minor', 'x4212x', 'x4213x', [5, 2], [5]],
  ['D', 'major', 'xx1343', 'xx1243', [4, 2]],
  ['D', 'minor', 'xx1342', 'xx1342', [4, 2]],
  ['triad-321', 'major', 'xxx121', 'xxx121', [2]],
  ['triad-321', 'minor', 'xxx231', 'xxx231', [2]],
  ['triad-321', 'dim', 'xxx131', 'xxx131', [2]],
  ['triad-321', 'aug', 'xxx221', 'xxx231', [2]],
  ['triad-432', 'major', 'xx312x', 'xx312x', [2]],
  ['triad-432', 'minor', 'xx212x', 'xx213x', [2]],
  ['triad-432', 'dim', 'xx313x', 'xx314x', [2]],
  ['triad-432', 'aug', 'xx211x', 'xx211x', [2]],
];

export const formTable: readonly FormRow[] = rows.map(
  ([form, quality, frets, fingers, rootStrings, optionalStrings = []]) => ({
    form,
    quality,
    frets: [...frets].map((fret) => (fret === 'x' ? null : Number(fret))),
    fingers: [...fingers].map((finger) => (finger === 'x' ? 0 : Number(finger))),
    rootStrings,
    optionalStrings,
  }),
);
