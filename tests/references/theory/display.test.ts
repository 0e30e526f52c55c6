import { describe, expect, test } from 'vitest';
import { pointOf } from '../../../client/fretboard/geometry.ts';
import { inkFrame } from '../../../client/fretboard/ink-frame.ts';
import { place, standardGuitar, stringNumbers } from '../../../shared/theory/fretboard.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { counts } from '../counts.ts';
import { heard, note, placesOf } from './chord-cases.ts';
import display from './display.json' with { type: 'json' };

/** Source: display.json (positions of chords-db 0.5.1, MIT, © 2016 David Rubert); see ../README.md. */
const cases = display.cases.map((one) => [one.id, one] as const);

test('every case is here', () => {
  expect(cases).toHaveLength(counts['display.json'].cases);
});

describe('NECK-8: handedness mirrors the drawing and nothing else', () => {
  test.each(cases)('%s', (_id, one) => {
    for (const leftHanded of [false, true]) {
      const frame = inkFrame({
        view: 'upright',
        leftHanded,
        strings: standardGuitar.openStrings.length,
        window: { low: place(1, 1).fret, high: place(1, 12).fret },
        openRow: true,
        fingerRow: false,
        named: false,
        aspect: null,
      });
      const fromLeft = [...stringNumbers(standardGuitar)].sort(
        (a, b) => pointOf(frame, place(a, 1)).x - pointOf(frame, place(b, 1)).x,
      );
      const columns = fromLeft.map((string) => ({
        string,
        fret: one.frets[one.frets.length - string] ?? null,
      }));
      expect(columns).toEqual(leftHanded ? one.leftHandedColumns : one.rightHandedColumns);
    }
    const { root, quality } = one.expectChord;
    const chord = { root: note(root), quality: quality as ChordQuality, bass: undefined };
    expect(heard(standardGuitar, placesOf(one.frets), chord).isChord).toBe(true);
  });
});
