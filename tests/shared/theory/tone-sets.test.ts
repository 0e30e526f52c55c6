import { expect, test } from 'vitest';
import { chordDegrees, scaleDegrees } from '../../../shared/theory/chord.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';
import { isToneSetId, toneDegrees } from '../../../shared/theory/tone-sets.ts';

test.each(Object.keys(scaleTable) as ScaleId[])('%s has the degrees of the scale', (scale) => {
  expect(isToneSetId(scale)).toBe(true);
  expect(toneDegrees(scale)).toEqual(scaleDegrees(scale));
});

test.each(Object.keys(chordTable) as ChordQuality[])(
  'arpeggio-%s has the degrees of the chord',
  (quality) => {
    expect(isToneSetId(`arpeggio-${quality}`)).toBe(true);
    expect(toneDegrees(`arpeggio-${quality}`)).toEqual(chordDegrees(quality));
  },
);

test.each(['', 'm7', 'arpeggio', 'arpeggio-', 'arpeggio-dorian', 'Dorian', 'toString', 'arpeggio-toString'])(
  '“%s” names none',
  (text) => {
    expect(isToneSetId(text)).toBe(false);
  },
);
