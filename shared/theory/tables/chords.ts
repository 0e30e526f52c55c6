import type { Degree } from '../interval.ts';

/** The common chord qualities; formulas as MusicXML 4.0 `kind` gives them, ids as the trade writes them. */
export const chordTable = {
  major: ['1', '3', '5'],
  minor: ['1', 'b3', '5'],
  dim: ['1', 'b3', 'b5'],
  aug: ['1', '3', '#5'],
  sus2: ['1', '2', '5'],
  sus4: ['1', '4', '5'],
  '5': ['1', '5'],
  '7': ['1', '3', '5', 'b7'],
  maj7: ['1', '3', '5', '7'],
  m7: ['1', 'b3', '5', 'b7'],
} as const satisfies Readonly<Record<string, readonly Degree[]>>;

export type ChordQuality = keyof typeof chordTable;
