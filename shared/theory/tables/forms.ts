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

/**
 * Frets and fingers as the trade writes them, low string first, x not sounded (common practice). A form of four tones
 * is the major or minor one with a doubled root or fifth moved; of the G form only what lies on strings 4 to 1, for no
 * hand plays it whole. Root strings are all that sound the root.
 */
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
  ['E', '7', '131211', '131211', [6, 1], [5, 1]],
  ['E', 'maj7', '132211', '142311', [6, 1], [5, 1]],
  ['E', 'm7', '131111', '131111', [6, 1], [5, 1]],
  ['E', 'm7b5', '2x221x', '2x341x', [6]],
  ['E', 'dim7', '2x121x', '2x131x', [6]],
  ['E', '6', '2x132x', '2x143x', [6]],
  ['E', 'm6', '133131', '123141', [6, 4, 1]],
  ['E', 'sus4', '133311', '123411', [6, 4, 1]],
  ['E', '7sus4', '131311', '131411', [6, 1], [5, 1]],
  ['E', '9', '131213', '131214', [6]],
  ['A', '7', 'x13131', 'x13141', [5], [1]],
  ['A', 'maj7', 'x13231', 'x13241', [5], [1]],
  ['A', 'm7', 'x13121', 'x13121', [5], [1]],
  ['A', 'm7b5', 'x1212x', 'x1324x', [5]],
  ['A', 'dim7', 'x23131', 'x23141', [5], [1]],
  ['A', '6', 'x13333', 'x13333', [5, 3]],
  ['A', 'm6', 'x13x23', 'x13x24', [5]],
  ['A', 'sus2', 'x13311', 'x13411', [5, 3]],
  ['A', 'sus4', 'x13341', 'x12341', [5, 3]],
  ['A', '7sus4', 'x13141', 'x13141', [5], [1]],
  ['G', '7', 'xx1112', 'xx1112', [3]],
  ['G', 'maj7', 'xx1113', 'xx1114', [3]],
  ['G', 'm7', 'xx2213', 'xx2314', [3]],
  ['G', 'm7b5', 'xx1213', 'xx1214', [3]],
  ['C', '7', 'x3231x', 'x3241x', [5, 2]],
  ['C', 'maj7', 'x43111', 'x43111', [5]],
  ['C', 'm7', 'x3131x', 'x3141x', [5, 2]],
  ['C', '6', 'x3221x', 'x4231x', [5, 2]],
  ['C', 'm6', 'x31213', 'x31214', [5, 2]],
  ['C', 'sus2', 'x41124', 'x31124', [5, 2]],
  ['C', '7sus4', 'x33311', 'x23411', [5, 2]],
  ['C', '9', 'x21222', 'x21333', [5]],
  ['D', '7', 'xx1323', 'xx1324', [4]],
  ['D', 'maj7', 'xx1333', 'xx1333', [4]],
  ['D', 'm7', 'xx1322', 'xx1423', [4]],
  ['D', 'm7b5', 'xx1222', 'xx1222', [4]],
  ['D', 'dim7', 'xx1212', 'xx1324', [4]],
  ['D', '6', 'xx1313', 'xx1314', [4]],
  ['D', 'm6', 'xx1312', 'xx1312', [4]],
  ['D', 'sus2', 'xx1341', 'xx1341', [4, 2]],
  ['D', 'sus4', 'xx1344', 'xx1234', [4, 2]],
  ['D', '7sus4', 'xx1324', 'xx1324', [4]],
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
