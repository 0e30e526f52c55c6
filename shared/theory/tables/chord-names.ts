import type { ChordQuality } from './chords.ts';

export interface ChordNames {
  /** What stands behind the root: "m7♭5". Brackets keep "C(♭5)" apart from the power chord of C♭. */
  readonly symbol: string;
  /** As it is said: "minor seventh, flat five". */
  readonly words: string;
}

const rows: Readonly<Record<ChordQuality, readonly [symbol: string, words: string]>> = {
  major: ['', 'major'],
  minor: ['m', 'minor'],
  dim: ['dim', 'diminished'],
  aug: ['aug', 'augmented'],
  sus2: ['sus2', 'suspended second'],
  sus4: ['sus4', 'suspended fourth'],
  '5': ['5', 'power chord'],
  b5: ['(♭5)', 'major, flat five'],
  '6': ['6', 'major sixth'],
  m6: ['m6', 'minor sixth'],
  '69': ['6/9', 'six-nine'],
  m69: ['m6/9', 'minor six-nine'],
  '7': ['7', 'dominant seventh'],
  maj7: ['maj7', 'major seventh'],
  m7: ['m7', 'minor seventh'],
  mmaj7: ['m(maj7)', 'minor, major seventh'],
  m7b5: ['m7♭5', 'minor seventh, flat five'],
  dim7: ['dim7', 'diminished seventh'],
  mmaj7b5: ['m(maj7)♭5', 'minor, major seventh, flat five'],
  '7sus4': ['7sus4', 'seventh, suspended fourth'],
  '7sus2': ['7sus2', 'seventh, suspended second'],
  '7b5': ['7♭5', 'dominant seventh, flat five'],
  '7#5': ['7♯5', 'dominant seventh, sharp five'],
  maj7b5: ['maj7♭5', 'major seventh, flat five'],
  'maj7#5': ['maj7♯5', 'major seventh, sharp five'],
  '9': ['9', 'dominant ninth'],
  maj9: ['maj9', 'major ninth'],
  m9: ['m9', 'minor ninth'],
  mmaj9: ['m(maj9)', 'minor, major ninth'],
  '9b5': ['9♭5', 'dominant ninth, flat five'],
  '9#5': ['9♯5', 'dominant ninth, sharp five'],
  '7b9': ['7♭9', 'dominant seventh, flat nine'],
  '7#9': ['7♯9', 'dominant seventh, sharp nine'],
  '9sus4': ['9sus4', 'ninth, suspended fourth'],
  '11': ['11', 'dominant eleventh'],
  maj11: ['maj11', 'major eleventh'],
  m11: ['m11', 'minor eleventh'],
  mmaj11: ['m(maj11)', 'minor, major eleventh'],
  '9#11': ['9♯11', 'dominant ninth, sharp eleven'],
  '13': ['13', 'dominant thirteenth'],
  maj13: ['maj13', 'major thirteenth'],
  m13: ['m13', 'minor thirteenth'],
  add9: ['add9', 'added ninth'],
  madd9: ['m(add9)', 'minor, added ninth'],
  add11: ['add11', 'added eleventh'],
};

/** `chordNames.m7b5` is "m7♭5", "minor seventh, flat five". */
export const chordNames: Readonly<Record<ChordQuality, ChordNames>> = Object.fromEntries(
  Object.entries(rows).map(([quality, [symbol, words]]) => [quality, { symbol, words }]),
) as Record<ChordQuality, ChordNames>;
