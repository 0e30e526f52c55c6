import fc from 'fast-check';
import { expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { pitchClassAt, place, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { parseNoteName, pitchClassOf } from '../../../shared/theory/pitch.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import { anyInstrument, anyRoot } from './any-tones.ts';

test('every string has its roots, the lowest fret first', () => {
  const c = known(parseNoteName('C'), 'C');
  const frets = everyString(standardGuitar, c).map((spots) => spots.map((spot) => spot.fret));
  // Source: common practice; string 2 has C at 1 and 13.
  expect(frets).toEqual([[8], [1, 13], [5, 17], [10], [3, 15], [8]]);
});

test('any instrument: every place of a string that sounds the root, and no other', () => {
  fc.assert(
    fc.property(anyInstrument, anyRoot, (neck, one) => {
      const wanted = neck.openStrings.map((_, index) =>
        Array.from({ length: neck.fretCount + 1 }, (_, fret) => place(index + 1, fret)).filter(
          (spot) => pitchClassAt(neck, spot) === pitchClassOf(one),
        ),
      );
      expect(everyString(neck, one)).toEqual(wanted);
    }),
  );
});
