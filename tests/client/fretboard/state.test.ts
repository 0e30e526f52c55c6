import { describe, expect, it } from 'vitest';
import {
  capoWords,
  cropTo,
  fretsShown,
  isWound,
  placeName,
  stringWidth,
  toggled,
} from '../../../client/fretboard/state.ts';
import { windowHolding } from '../../../client/fretboard/wood-frame.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  instrumentById,
  place,
  standardGuitar,
  stringNumbers,
  type FretRange,
} from '../../../shared/theory/fretboard.ts';

function range(low: number, high: number): FretRange {
  return { low: place(1, low).fret, high: place(1, high).fret };
}

describe('placing', () => {
  it('adds and takes back', () => {
    const once = toggled([place(1, 3)], place(2, 5), 'many');
    expect(once).toEqual([place(1, 3), place(2, 5)]);
    expect(toggled(once, place(1, 3), 'many')).toEqual([place(2, 5)]);
  });

  it('moves the string’s place where a string sounds once, and keeps it where it may sound twice', () => {
    expect(toggled([place(2, 5), place(1, 3)], place(2, 6), 'one')).toEqual([place(1, 3), place(2, 6)]);
    expect(toggled([place(2, 5)], place(2, 6), 'many')).toEqual([place(2, 5), place(2, 6)]);
  });

  it('names a place by string and fret, never by note', () => {
    expect(placeName(place(2, 10))).toBe('string 2, fret 10');
    expect(placeName(place(2, 0))).toBe('string 2, open');
  });
});

describe('what a chart crops to', () => {
  // E minor on strings 3-2-1: frets 4, 5, 3 (root on string 2 at fret f, strings 3-2-1 minor: f−1, f, f−2; computed from standard tuning).
  it.each([
    ['four frets from the lowest', [place(3, 4), place(2, 5), place(1, 3)], range(3, 6)],
    ['the nut where it is near', [place(3, 2), place(2, 3), place(1, 1)], range(1, 4)],
    ['the nut with open strings', [place(5, 3), place(3, 0)], range(1, 4)],
    ['not the nut with an open string and a high hand', [place(6, 0), place(2, 9)], range(9, 12)],
    ['all of a wide answer', [place(6, 1), place(1, 12)], range(1, 12)],
    ['no fret beyond the neck', [place(1, 19)], range(16, 19)],
    ['the first frets where nothing is marked', [], range(1, 4)],
  ])('%s', (_, marks, window) => {
    expect(cropTo(standardGuitar, marks)).toEqual(window);
  });

  it('offers the open string in every window', () => {
    expect(fretsShown(range(7, 10))).toEqual([0, 7, 8, 9, 10]);
  });

  it('opens at the window that shows most of a stated range, the earlier of two', () => {
    const windows = [range(1, 10), range(7, 16), range(10, 19)];
    expect(windowHolding(windows, range(8, 11))).toEqual(range(7, 16));
    expect(windowHolding(windows, range(7, 10))).toEqual(range(1, 10));
    expect(windowHolding([], range(7, 10))).toBeUndefined();
  });
});

describe('strings', () => {
  // Widths drawn by hand for the look: 1.5 1.8 2.3 2.7 3.3 4 px; strings 4 to 6 are wound on every steel set.
  it('thicken downwards as drawn, and 4 to 6 are wound', () => {
    const strings = stringNumbers(standardGuitar);
    const drawn = [1.5, 1.8, 2.3, 2.7, 3.3, 4];
    strings.forEach((string, at) => {
      expect(Math.abs(stringWidth(standardGuitar, string, [1.5, 4]) - (drawn[at] ?? 0))).toBeLessThan(0.15);
    });
    expect(strings.filter((string) => isWound(standardGuitar, string))).toEqual([4, 5, 6]);
  });

  it('are as thick as they are tuned, whatever their number: the fourth of a ukulele is a thin one', () => {
    const ukulele = known(instrumentById('ukulele'), 'ukulele');
    const widths = stringNumbers(ukulele).map((string) => stringWidth(ukulele, string, [1.5, 4]));
    // A4 E4 C4 G4 (common practice): string 3 is the lowest.
    expect(Math.max(...widths)).toBe(widths[2]);
    expect(widths[3]).toBeLessThan(widths[1] ?? 0);
  });

  it('are no thinner with a capo on', () => {
    const capoed = known(instrumentById('guitar+capo=5'), 'a guitar with a capo');
    for (const string of stringNumbers(capoed)) {
      expect(stringWidth(capoed, string, [1.5, 4])).toBe(stringWidth(standardGuitar, string, [1.5, 4]));
      expect(isWound(capoed, string)).toBe(isWound(standardGuitar, string));
    }
    expect(capoWords(capoed)).toBe('Capo 5');
    expect(capoWords(standardGuitar)).toBe('');
  });
});
