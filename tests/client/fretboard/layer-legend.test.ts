import { describe, expect, test } from 'vitest';
import { layerLegend } from '../../../client/fretboard/layer-legend.ts';
import type { NeckNote } from '../../../client/fretboard/state.ts';
import { place } from '../../../shared/theory/fretboard.ts';

const note = (fret: number, look: NeckNote['look'], rest: Partial<NeckNote> = {}): NeckNote => ({
  place: place(2, fret),
  look,
  ...rest,
});
const signs = (...notes: readonly NeckNote[]) => layerLegend(notes).map(({ sign, words }) => [sign, words]);

describe('the legend of a chart', () => {
  test('a map’s layers, from the innermost out', () => {
    expect(
      signs(note(3, 'filled'), note(5, 'pentatonic', { label: '4' }), note(6, 'scale', { label: '2' })),
    ).toEqual([
      ['disc', 'chord'],
      ['circle', 'pentatonic'],
      ['digit', 'scale'],
    ]);
  });

  test('a dot for the scale where no letters are drawn', () => {
    expect(signs(note(6, 'scale'))).toEqual([['dot', 'scale']]);
  });

  test('dashes for a note that may stay silent, its root too; nothing for a chord that is all needed', () => {
    expect(signs(note(3, 'filled', { optional: true, root: true }), note(5, 'filled'))).toEqual([
      ['dashes', 'may stay silent'],
    ]);
    expect(signs(note(3, 'filled', { root: true }), note(5, 'filled'))).toEqual([]);
  });
});
