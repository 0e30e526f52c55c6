import type { Degree } from '../interval.ts';

export interface ChordRow {
  readonly degrees: readonly Degree[];
  /** Lower extensions that may stay silent: the 9 of an 11, the 9 and 11 of a 13. */
  readonly optional: readonly Degree[];
}

function row(degrees: string, optional?: string): ChordRow {
  return { degrees: degrees.split(' '), optional: optional?.split(' ') ?? [] };
}

/** Chord qualities by the id that the trade writes; formulas as the MusicXML 4.0 `kind` of `musicxml-kinds.ts`. */
export const chordTable = {
  major: row('1 3 5'),
  minor: row('1 b3 5'),
  dim: row('1 b3 b5'),
  aug: row('1 3 #5'),
  sus2: row('1 2 5'),
  sus4: row('1 4 5'),
  '5': row('1 5'),
  b5: row('1 3 b5'),
  '6': row('1 3 5 6'),
  m6: row('1 b3 5 6'),
  '69': row('1 3 5 6 9'),
  m69: row('1 b3 5 6 9'),
  '7': row('1 3 5 b7'),
  maj7: row('1 3 5 7'),
  m7: row('1 b3 5 b7'),
  mmaj7: row('1 b3 5 7'),
  m7b5: row('1 b3 b5 b7'),
  dim7: row('1 b3 b5 bb7'),
  mmaj7b5: row('1 b3 b5 7'),
  '7sus4': row('1 4 5 b7'),
  '7sus2': row('1 2 5 b7'),
  '7b5': row('1 3 b5 b7'),
  '7#5': row('1 3 #5 b7'),
  maj7b5: row('1 3 b5 7'),
  'maj7#5': row('1 3 #5 7'),
  '9': row('1 3 5 b7 9'),
  maj9: row('1 3 5 7 9'),
  m9: row('1 b3 5 b7 9'),
  mmaj9: row('1 b3 5 7 9'),
  '9b5': row('1 3 b5 b7 9'),
  '9#5': row('1 3 #5 b7 9'),
  '7b9': row('1 3 5 b7 b9'),
  '7#9': row('1 3 5 b7 #9'),
  '9sus4': row('1 4 5 b7 9'),
  '11': row('1 3 5 b7 9 11', '9'),
  maj11: row('1 3 5 7 9 11', '9'),
  m11: row('1 b3 5 b7 9 11', '9'),
  mmaj11: row('1 b3 5 7 9 11', '9'),
  '9#11': row('1 3 5 b7 9 #11', '9'),
  '13': row('1 3 5 b7 9 11 13', '9 11'),
  maj13: row('1 3 5 7 9 11 13', '9 11'),
  m13: row('1 b3 5 b7 9 11 13', '9 11'),
  add9: row('1 3 5 9'),
  madd9: row('1 b3 5 9'),
  add11: row('1 3 5 11'),
} as const satisfies Readonly<Record<string, ChordRow>>;

export type ChordQuality = keyof typeof chordTable;
