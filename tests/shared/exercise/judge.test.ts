import { describe, expect, test } from 'vitest';
import { judge } from '../../../shared/exercise/judge.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { build, find, places, scale } from '../../support/exercises.ts';

/** Frets by string from string 6 on, as pattern tables print them. */
const pattern = (strings: readonly (readonly number[])[]) =>
  strings.flatMap((frets, index) => frets.map((fret) => place(strings.length - index, fret)));

describe('JUDGE-1…3: check values', () => {
  // Source: common practice.
  test('C on string 2 is fret 1 or 13, one of them or both', () => {
    for (const given of [places([2, 1]), places([2, 13]), places([2, 1], [2, 13])])
      expect(judge(find('C'), { places: given })).toEqual({ kind: 'right' });
  });

  // Source: computed from the tuning.
  test('E minor on strings 3-2-1 with its root on string 2, fret 5: 4-5-3, and twelve frets up', () => {
    for (const given of [places([3, 4], [2, 5], [1, 3]), places([3, 16], [2, 17], [1, 15])])
      expect(judge(build('E', 'minor'), { places: given })).toEqual({ kind: 'right' });
  });

  // Source: common practice; the minor pentatonic also computed.
  test.each([
    [
      'major-pentatonic',
      2,
      [
        [4, 7],
        [4, 7],
        [4, 6],
        [4, 6],
        [5, 7],
        [4, 7],
      ],
    ],
    [
      'minor-pentatonic',
      1,
      [
        [5, 7],
        [5, 7],
        [5, 7],
        [4, 7],
        [5, 8],
        [5, 7],
      ],
    ],
    [
      'major',
      2,
      [
        [4, 5, 7],
        [4, 6, 7],
        [4, 6, 7],
        [4, 6],
        [4, 5, 7],
        [4, 5, 7],
      ],
    ],
    [
      'natural-minor',
      1,
      [
        [5, 7, 8],
        [5, 7],
        [4, 5, 7],
        [4, 5, 7],
        [5, 7, 8],
        [5, 7, 8],
      ],
    ],
  ] as const)('E %s with the root on string 2, fret 5, under finger %i', (id, finger, frets) => {
    expect(judge(scale('E', id, finger, 5), { places: pattern(frets) })).toEqual({ kind: 'right' });
  });

  test('a root on string 2 sounds as a root; lower roots may sound too', () => {
    const any = build('E', 'major', { voicing: { kind: 'any' } });
    expect(judge(any, { places: places([6, 4], [5, 7], [4, 6], [3, 4], [2, 5]) }).kind).toBe('right');
    expect(judge(any, { places: places([5, 7], [4, 6], [3, 4]) }).kind).toBe('slip');
  });
});
