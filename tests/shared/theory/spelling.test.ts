import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, notesOn, scaleDegrees } from '../../../shared/theory/chord.ts';
import { intervalName } from '../../../shared/theory/interval-names.ts';
import { degreeOf, degreesAbove, noteOnDegree, semitonesOf } from '../../../shared/theory/interval.ts';
import {
  formatNoteName,
  letters,
  parseNoteName,
  pitchClass,
  pitchClassOf,
} from '../../../shared/theory/pitch.ts';
import { spellIn, type Key } from '../../../shared/theory/spelling.ts';
import { scaleNames } from '../../../shared/theory/tables/scale-names.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

const note = (text: string) => known(parseNoteName(text), text);
const scaleKey = (root: string, scale: ScaleId): Key => ({ root: note(root), degrees: scaleDegrees(scale) });
const all = (key: Key) =>
  Array.from({ length: 12 }, (_, semitones) => formatNoteName(spellIn(key, pitchClass(semitones)))).join(' ');

describe('SPELL-1: a note in a key', () => {
  // Source: common practice; computed.
  test.each<[string, Key, string]>([
    ['C major', scaleKey('C', 'major'), 'C C# D D# E F F# G G# A A# B'],
    ['F major', scaleKey('F', 'major'), 'C Db D Eb E F Gb G Ab A Bb B'],
    ['E major', scaleKey('E', 'major'), 'C C# D D# E F F# G G# A A# B'],
    ['C minor', scaleKey('C', 'natural-minor'), 'C Db D Eb E F Gb G Ab A Bb B'],
    ['A minor', scaleKey('A', 'natural-minor'), 'C C# D D# E F F# G G# A A# B'],
    ['Gb major', scaleKey('Gb', 'major'), 'C Db D Eb E F Gb G Ab A Bb Cb'],
    ['F# major', scaleKey('F#', 'major'), 'C C# D D# E E# F# G G# A A# B'],
    ['Ab minor chord', { root: note('Ab'), degrees: chordDegrees('minor') }, 'C Db D Eb E F Gb G Ab A Bb Cb'],
    ['C7♯9', { root: note('C'), degrees: chordDegrees('7#9') }, 'C C# D D# E F F# G G# A Bb B'],
  ])('%s', (_name, key, names) => {
    expect(all(key)).toBe(names);
  });

  test('what is named sounds so, and a tone of the key has its degree’s letter', () => {
    const scales = Object.keys(scaleTable) as ScaleId[];
    fc.assert(
      fc.property(
        fc.constantFrom(...scales),
        fc.constantFrom(...letters),
        fc.constantFrom(-1 as const, 0 as const, 1 as const),
        fc.integer({ min: 0, max: 11 }),
        (scale, letter, alteration, semitones) => {
          const key: Key = { root: { letter, alteration }, degrees: scaleDegrees(scale) };
          const sounding = pitchClass(semitones);
          const name = spellIn(key, sounding);
          expect(pitchClassOf(name)).toBe(sounding);
          const own = notesOn(key.root, key.degrees)?.find((one) => pitchClassOf(one) === sounding);
          if (own) expect(name).toEqual(own);
        },
      ),
    );
  });
});

describe('PITCH-2: degrees', () => {
  test('the degree of a note is the way back', () => {
    for (const letter of letters)
      for (const alteration of [-1, 0, 1] as const)
        for (const degree of [
          '1',
          'b2',
          '2',
          'b3',
          '3',
          '4',
          '#4',
          'b5',
          '5',
          '#5',
          'b6',
          '6',
          'bb7',
          'b7',
          '7',
        ]) {
          const root = { letter, alteration };
          const name = noteOnDegree(root, degree);
          if (name) expect([degree, degreeOf(root, name)]).toEqual([degree, degree]);
        }
  });

  test('degrees above a root sound so, the flat one first', () => {
    expect(degreesAbove(6)).toEqual(['b5', '#4']);
    expect(degreesAbove(12)).toEqual(degreesAbove(0));
    for (let semitones = 0; semitones < 12; semitones += 1)
      for (const degree of degreesAbove(semitones))
        expect(pitchClass(semitonesOf(degree))).toBe(pitchClass(semitones));
  });

  test('transposing a chord or scale keeps its steps', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(scaleTable) as ScaleId[])),
        fc.constantFrom(...letters),
        fc.constantFrom(...letters),
        (scale, from, to) => {
          const classes = (letter: (typeof letters)[number]) =>
            notesOn({ letter, alteration: 0 }, scaleDegrees(scale))?.map(pitchClassOf) ?? [];
          const step =
            pitchClassOf({ letter: to, alteration: 0 }) - pitchClassOf({ letter: from, alteration: 0 });
          expect(classes(to)).toEqual(classes(from).map((one) => pitchClass(one + step)));
        },
      ),
    );
  });
});

// Source: common practice.
test.each([
  ['1', 'unison'],
  ['b2', 'minor second'],
  ['2', 'major second'],
  ['#2', 'augmented second'],
  ['b3', 'minor third'],
  ['3', 'major third'],
  ['4', 'perfect fourth'],
  ['#4', 'augmented fourth'],
  ['b5', 'diminished fifth'],
  ['5', 'perfect fifth'],
  ['#5', 'augmented fifth'],
  ['6', 'major sixth'],
  ['bb7', 'diminished seventh'],
  ['b7', 'minor seventh'],
  ['8', 'octave'],
  ['b9', 'minor ninth'],
  ['#9', 'augmented ninth'],
  ['11', 'perfect eleventh'],
  ['#11', 'augmented eleventh'],
  ['13', 'major thirteenth'],
])('SPELL-4: the interval up to %s is a %s', (degree, name) => {
  expect(intervalName(degree)).toBe(name);
});

test('SCALE-1: every scale has words of its own', () => {
  expect(Object.keys(scaleNames).sort()).toEqual(Object.keys(scaleTable).sort());
  expect(new Set(Object.values(scaleNames)).size).toBe(20);
});
