import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import {
  distinct,
  fretDistance,
  instrumentById,
  isOnNeck,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  stringNumbers,
} from '../../../shared/theory/fretboard.ts';
import { formatPitch, parseNoteName, pitchClassOf } from '../../../shared/theory/pitch.ts';

describe('NECK-1: strings and frets', () => {
  // Source: MIDI 1.0 numbers of E4 B3 G3 D3 A2 E2, the usual tuning of a six-string guitar.
  test('open strings 1 to 6 are MIDI 64 59 55 50 45 40', () => {
    expect(stringNumbers(standardGuitar).map((s) => midiAt(standardGuitar, place(s, 0)))).toEqual([
      64, 59, 55, 50, 45, 40,
    ]);
    expect(standardGuitar.openStrings.map(formatPitch)).toEqual(['E4', 'B3', 'G3', 'D3', 'A2', 'E2']);
  });

  // Source: common practice; computed from the tuning.
  test('string 2: open B, C 1, D 3, E 5, F 6, G 8, A 10, B 12, and again from there', () => {
    const frets = { B: 0, C: 1, D: 3, E: 5, F: 6, G: 8, A: 10 };
    for (const [name, fret] of Object.entries(frets)) {
      const wanted = pitchClassOf(known(parseNoteName(name), name));
      const found = Array.from({ length: 20 }, (_, f) => f).filter(
        (f) => pitchClassAt(standardGuitar, place(2, f)) === wanted,
      );
      expect([name, found]).toEqual([name, [fret, fret + 12].filter((f) => f <= 19)]);
    }
  });

  // Source: computed from the tuning; common practice.
  test.each([
    [6, 4, 2],
    [5, 3, 2],
    [4, 2, 3],
    [3, 1, 3],
  ])('the octave of string %i lies on string %i, %i frets up', (from, to, frets) => {
    for (let fret = 0; fret <= 19 - frets; fret += 1) {
      const step =
        midiAt(standardGuitar, place(to, fret + frets)) - midiAt(standardGuitar, place(from, fret));
      expect(step).toBe(12);
    }
  });

  test('every place of the neck is on it, and none beside', () => {
    for (let string = 0; string <= 7; string += 1)
      for (let fret = -1; fret <= 20; fret += 1)
        expect(isOnNeck(standardGuitar, place(string, fret))).toBe(
          string >= 1 && string <= 6 && fret >= 0 && fret <= 19,
        );
  });

  test('an instrument is found by its id', () => {
    expect(instrumentById('guitar')).toBe(standardGuitar);
    expect(instrumentById('lute')).toBeUndefined();
  });
});

// Source: equal temperament; the octave halves the string, a fifth (fret 7) leaves 2/3 of it within 0.2 %.
test('NECK-2: fret 12 halves the string', () => {
  expect(fretDistance(648, 12)).toBeCloseTo(324, 9);
  expect(fretDistance(648, 0)).toBe(0);
  expect(fretDistance(648, 7) / 648).toBeCloseTo(1 / 3, 2);
});

test('JUDGE-5: a place given twice counts once', () => {
  expect(distinct([place(2, 3), place(1, 0), place(2, 3)])).toEqual([place(2, 3), place(1, 0)]);
});
