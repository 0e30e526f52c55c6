import type { ChordQuality } from './chords.ts';

/**
 * A `degree` of MusicXML 4.0. `alter` counts from the tone that the kind has; with `add` from the degree over a
 * dominant chord, so that an added 7 is the minor seventh.
 */
export interface KindDegree {
  readonly type: 'add' | 'alter';
  readonly value: number;
  readonly alter: number;
}

/** How MusicXML 4.0 says a quality: a `kind` value and what is changed in it. */
export interface ChordKind {
  readonly kind: string;
  readonly degrees: readonly KindDegree[];
}

function add(value: number, alter = 0): KindDegree {
  return { type: 'add', value, alter };
}
const flatFive: KindDegree = { type: 'alter', value: 5, alter: -1 };
const sharpFive: KindDegree = { type: 'alter', value: 5, alter: 1 };

function kind(value: string, ...degrees: readonly KindDegree[]): ChordKind {
  return { kind: value, degrees };
}

/** `chordKinds.m7b5.kind` is "half-diminished". */
export const chordKinds: Readonly<Record<ChordQuality, ChordKind>> = {
  major: kind('major'),
  minor: kind('minor'),
  dim: kind('diminished'),
  aug: kind('augmented'),
  sus2: kind('suspended-second'),
  sus4: kind('suspended-fourth'),
  '5': kind('power'),
  b5: kind('major', flatFive),
  '6': kind('major-sixth'),
  m6: kind('minor-sixth'),
  '69': kind('major-sixth', add(9)),
  m69: kind('minor-sixth', add(9)),
  '7': kind('dominant'),
  maj7: kind('major-seventh'),
  m7: kind('minor-seventh'),
  mmaj7: kind('major-minor'),
  m7b5: kind('half-diminished'),
  dim7: kind('diminished-seventh'),
  mmaj7b5: kind('major-minor', flatFive),
  '7sus4': kind('suspended-fourth', add(7)),
  '7sus2': kind('suspended-second', add(7)),
  '7b5': kind('dominant', flatFive),
  '7#5': kind('augmented-seventh'),
  maj7b5: kind('major-seventh', flatFive),
  'maj7#5': kind('major-seventh', sharpFive),
  '9': kind('dominant-ninth'),
  maj9: kind('major-ninth'),
  m9: kind('minor-ninth'),
  mmaj9: kind('major-minor', add(9)),
  '9b5': kind('dominant-ninth', flatFive),
  '9#5': kind('dominant-ninth', sharpFive),
  '7b9': kind('dominant', add(9, -1)),
  '7#9': kind('dominant', add(9, 1)),
  '9sus4': kind('suspended-fourth', add(7), add(9)),
  '11': kind('dominant-11th'),
  maj11: kind('major-11th'),
  m11: kind('minor-11th'),
  mmaj11: kind('major-minor', add(9), add(11)),
  '9#11': kind('dominant-ninth', add(11, 1)),
  '13': kind('dominant-13th'),
  maj13: kind('major-13th'),
  m13: kind('minor-13th'),
  add9: kind('major', add(9)),
  madd9: kind('minor', add(9)),
  add11: kind('major', add(11)),
};
