import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { chordSounds } from '../../../shared/theory/chord-rule.ts';
import { familyIds, stackAt, stacksOf, type StackedFamily } from '../../../shared/theory/families.ts';
import {
  instrumentById,
  isOnNeck,
  midiAt,
  place,
  standardGuitar,
  type Instrument,
} from '../../../shared/theory/fretboard.ts';
import { formatInstrument, parseInstrument } from '../../../shared/theory/instrument-id.ts';
import { semitonesOf } from '../../../shared/theory/interval.ts';
import { pitchClass } from '../../../shared/theory/pitch.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { specs } from './any-instrument.ts';

const stacked = familyIds.filter((family) => family !== 'form');
const named = (id: string): Instrument => known(instrumentById(id), id);

/** The voicings of a family, lowest voice first. */
const voicings = (family: StackedFamily, quality: ChordQuality) =>
  new Set(stacksOf(standardGuitar, family, quality).map(({ degrees }) => degrees.join(' ')));
/** The sets of strings, the lowest voice's first. */
const sets = (family: StackedFamily, quality: ChordQuality, instrument = standardGuitar) =>
  [...new Set(stacksOf(instrument, family, quality).map(({ strings }) => strings.join('')))].join(' ');
/** Frets by string, as `4:7`, of the shape of those strings with its root at that place. */
const frets = (
  family: StackedFamily,
  quality: ChordQuality,
  strings: string,
  root: readonly [string: number, fret: number],
  instrument = standardGuitar,
) =>
  stacksOf(instrument, family, quality)
    .filter((stack) => stack.strings.join('') === strings)
    .flatMap((stack) => {
      const notes = stackAt(instrument, stack, place(...root));
      return notes ? [notes.map((note) => note.place.fret).join(' ')] : [];
    });

describe('SHAPE-1: which voicings a family has', () => {
  // [computed]: close a b c d from the lowest; drop-2 puts the second voice from above lowest: c a b d. From the close
  // voicings 5 7 1 3, 7 1 3 5, 1 3 5 7, 3 5 7 1 that makes 1 5 7 3, 3 7 1 5, 5 1 3 7, 7 3 5 1.
  test('drop-2', () => {
    expect(voicings('drop-2', 'maj7')).toEqual(new Set(['1 5 7 3', '3 7 1 5', '5 1 3 7', '7 3 5 1']));
  });

  // [computed]: the third voice from above lowest: b a c d. From 7 1 3 5, 1 3 5 7, 3 5 7 1, 5 7 1 3.
  test('drop-3', () => {
    expect(voicings('drop-3', 'maj7')).toEqual(new Set(['1 7 3 5', '3 1 5 7', '5 3 7 1', '7 5 1 3']));
  });

  test('triad: three inversions; the close order of an added ninth is by pitch', () => {
    expect(voicings('triad', 'minor')).toEqual(new Set(['1 b3 5', 'b3 5 1', '5 1 b3']));
    // [computed]: close 5 1 9 3, its second voice from above put lowest.
    expect(voicings('drop-2', 'add9')).toContain('9 5 1 3');
  });

  test('shell: third or sus tone, and seventh or sixth, in both orders', () => {
    expect(voicings('shell', 'm7')).toEqual(new Set(['1 b3 b7', '1 b7 b3']));
    expect(voicings('shell', '6')).toEqual(new Set(['1 3 6', '1 6 3']));
    expect(voicings('shell', '7sus4')).toEqual(new Set(['1 4 b7', '1 b7 4']));
  });

  test('CHORD-3, CHORD-5: no shell without the altered fifth or the ninth, no triad of four tones', () => {
    for (const quality of ['m7b5', 'dim7', '7#5', '9', '69', 'major', '5'] as const)
      expect(voicings('shell', quality)).toEqual(new Set());
    expect(voicings('triad', '7')).toEqual(new Set());
    expect(voicings('drop-2', 'major')).toEqual(new Set());
    expect(voicings('drop-3', '9')).toEqual(new Set());
  });

  test('strings: neighbours; a shell also, and a drop-3 always, skips the one above the bass', () => {
    expect(sets('triad', 'major')).toBe('654 543 432 321');
    expect(sets('shell', '7')).toBe('654 543 432 321 643 532 421');
    expect(sets('drop-2', '7')).toBe('6543 5432 4321');
    expect(sets('drop-3', '7')).toBe('6432 5321');
    expect(sets('drop-3', '7', named('guitar-7'))).toBe('7543 6432 5321');
    expect(sets('triad', 'major', named('custom:E4-B3-G3'))).toBe('321');
    expect(sets('drop-2', '7', named('custom:E4-B3-G3'))).toBe('');
  });

  // String 4 of a ukulele sounds G4, between string 2 (E4) and string 1 (A4).
  test('SHAPE-2: re-entrant strings are ordered by pitch', () => {
    expect(sets('triad', 'major', named('ukulele'))).toBe('324 321');
    expect(sets('drop-2', '7', named('ukulele'))).toBe('3241');
    expect(sets('triad', 'major', named('ukulele-low-g'))).toBe('432 321');
  });
});

describe('SHAPE-2: where the frets come out', () => {
  test.each<
    [string, StackedFamily, ChordQuality, string, readonly [string: number, fret: number], readonly string[]]
  >([
    // [computed]: D3 is string 5 fret 5; A3 is string 4 (D3) + 7; C♯4, 11 above D3, is string 3 (G3) + 6; F♯4 is
    // string 2 (B3) + 7.
    ['Dmaj7, 1 5 7 3', 'drop-2', 'maj7', '5432', [5, 5], ['5 7 6 7']],
    // [computed]: the root on the highest string: D♯3 string 5 fret 6, G♯3 string 4 fret 6, B3 string 3 fret 4, E4 string
    // 2 fret 5.
    ['Emaj7, 7 3 5 1', 'drop-2', 'maj7', '5432', [2, 5], ['6 6 4 5']],
    // [computed]: the root on the second highest: G♯3 string 4 fret 6, D♯4 string 3 fret 8, E4 string 2
    // fret 5, B4 string 1 fret 7.
    ['Emaj7, 3 7 1 5', 'drop-2', 'maj7', '4321', [2, 5], ['6 8 5 7']],
    // [computed]: A2 string 6 fret 5, G3 string 4 fret 5, C♯4 string 3 fret 6, E4 string 2 fret 5.
    ['A7, 1 7 3 5', 'drop-3', '7', '6432', [6, 5], ['5 5 6 5']],
    // [computed]: E3 string 6 fret 12, C♯4 string 4 fret 11, G4 string 3 fret 12, A4 string 2 fret 10.
    ['A7, 5 3 7 1', 'drop-3', '7', '6432', [2, 10], ['12 11 12 10']],
    // [computed]: D3 string 5 fret 5, C4 string 3 fret 5, F4 string 2 fret 6, A4 string 1 fret 5.
    ['Dm7, 1 7 3 5', 'drop-3', 'm7', '5321', [5, 5], ['5 5 6 5']],
    // [computed]: A2 string 6 fret 5; C♯3 string 5 fret 4, G3 string 4 fret 5 · G3 string 4 fret 5, C♯4 string 3 fret 6.
    ['A7, 1 3 7', 'shell', '7', '654', [6, 5], ['5 4 5']],
    ['A7, 1 7 3', 'shell', '7', '643', [6, 5], ['5 5 6']],
    // [computed]: D3 string 5 fret 5; C♯4, 11 above, string 3 fret 6; F4, 4 above that, string 2 fret 6.
    ['Dm(maj7), 1 7 3', 'shell', 'mmaj7', '532', [5, 5], ['5 6 6']],
    // [computed]: D3 string 5 fret 5; F3 string 4 fret 3, B3 string 3 fret 4.
    ['Dm6, 1 3 6', 'shell', 'm6', '543', [5, 5], ['5 3 4']],
    // [computed]: C4 is string 3 fret 5, F♯4 above it string 2 fret 7; F♯3 lies before the nut of string 3.
    ['D7, 1 7 3 on neighbours lies too far apart', 'shell', '7', '432', [4, 0], []],
    // [computed]: the third of E lies four semitones above the open string 6, before the nut of string 5.
    ['E7 at the nut', 'shell', '7', '654', [6, 0], []],
  ])('%s: %s %s on %s', (_name, family, quality, strings, root, expected) => {
    expect(frets(family, quality, strings, root)).toEqual(expected);
  });

  // [computed] on G4 C4 E4 A4: C4 E4 G4 open; C4 F4 A♭4 is F minor from the fifth, on strings 3, 2, 4.
  test('ukulele', () => {
    expect(frets('triad', 'major', '324', [3, 0], named('ukulele'))).toEqual(['0 0 0']);
    expect(frets('triad', 'minor', '324', [2, 1], named('ukulele'))).toEqual(['0 1 1']);
    // Its root C5 on string 1, fret 3: E4 4, G4 3 below it.
    expect(frets('triad', 'major', '321', [1, 3], named('ukulele'))).toEqual(['4 3 3']);
    // [computed]: 1 5 7 3 spans 14 semitones at least, that of 7sus2, and string 1 sounds 9 above string 3: five frets.
    for (const quality of qualityIds)
      for (let fret = 0; fret <= 15; fret += 1)
        expect(frets('drop-2', quality, '3241', [3, fret], named('ukulele'))).toEqual([]);
  });

  // [computed] in fifths: G3 D4 A4 E5. D4 root on string 4 fret 7; F♯4 string 3 fret 4, C5 string 2 fret 3.
  test('mandolin', () => {
    expect(frets('shell', '7', '432', [4, 7], named('mandolin'))).toEqual(['7 4 3', '7 10 9']);
  });
});

test('SHAPE-2, SHAPE-3: any instrument: voices rise by the nearest pitch, on its neck, four frets wide at most, and sound the chord', () => {
  let laid = 0;
  fc.assert(
    fc.property(
      specs,
      fc.constantFrom(...stacked),
      fc.constantFrom(...qualityIds),
      fc.nat(9),
      fc.nat(36),
      (spec, family, quality, index, fret) => {
        const instrument = known(instrumentFrom(formatInstrument(spec)), 'instrument');
        const string = (index % instrument.openStrings.length) + 1;
        for (const stack of stacksOf(instrument, family, quality)) {
          const notes = stackAt(instrument, stack, place(string, fret));
          if (!notes) continue;
          laid += 1;
          const midi = notes.map((note) => midiAt(instrument, note.place));
          const root = fret + midiAt(instrument, place(string, 0));
          const degrees: readonly string[] = chordTable[quality].degrees;
          for (const [at, note] of notes.entries()) {
            expect(isOnNeck(instrument, note.place)).toBe(true);
            expect(degrees).toContain(note.degree);
            expect(pitchClass((midi[at] ?? 0) - root)).toBe(pitchClass(semitonesOf(note.degree)));
            const step = (midi[at + 1] ?? Infinity) - (midi[at] ?? 0);
            if (at < notes.length - 1) expect(step > 0 && step < 12).toBe(true);
          }
          const all = notes.map((note) => note.place.fret);
          expect(Math.max(...all) - Math.min(...all)).toBeLessThanOrEqual(4);
          const sounding = notes.map((note) => note.degree);
          expect(chordSounds(quality, sounding, { bass: sounding[0] }).ok).toBe(true);
        }
      },
    ),
    { seed: 20261125, numRuns: 3000 },
  );
  expect(laid).toBeGreaterThan(100);
});

function instrumentFrom(id: string): Instrument | undefined {
  const parsed = parseInstrument(id);
  return parsed.ok ? parsed.value : undefined;
}
