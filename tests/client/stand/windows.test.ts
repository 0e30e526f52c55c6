import { describe, expect, it } from 'vitest';
import { windowsFor } from '../../../client/pages/stand/windows.ts';
import type { Fret, FretRange } from '../../../shared/theory/fretboard.ts';

function frets(low: number, high: number): FretRange {
  return { low: low as Fret, high: high as Fret };
}

const fitted = [frets(1, 12), frets(8, 19)];

describe('the windows of a round', () => {
  it('are those that fit where no range is stated, or one of them holds it', () => {
    expect(windowsFor(fitted, null)).toEqual(fitted);
    expect(windowsFor(fitted, frets(5, 9))).toEqual(fitted);
    expect(windowsFor(fitted, frets(0, 4))).toEqual(fitted);
    expect(windowsFor([], frets(5, 9))).toEqual([]);
  });

  it('have one more for a range that falls between two', () => {
    expect(windowsFor(fitted, frets(7, 13))).toEqual([frets(1, 12), frets(6, 17), frets(8, 19)]);
  });

  it('have one that starts with a range as long as a window, or longer', () => {
    expect(windowsFor(fitted, frets(2, 13))[1]).toEqual(frets(2, 13));
    expect(windowsFor(fitted, frets(3, 18))[1]).toEqual(frets(3, 14));
  });

  it.each([
    [2, 15],
    [7, 13],
    [7, 19],
  ])('stay on the neck, of one length (frets %i to %i)', (low, high) => {
    for (const window of windowsFor(fitted, frets(low, high))) {
      expect(window.low).toBeGreaterThanOrEqual(1);
      expect(window.high).toBeLessThanOrEqual(19);
      expect(window.high - window.low).toBe(11);
    }
  });
});
