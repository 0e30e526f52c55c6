import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, degreeAt, scaleDegrees } from '../../../shared/theory/chord.ts';
import {
  instrumentById,
  pitchClassAt,
  place,
  samePlace,
  standardGuitar,
  stringNumbers,
  type Fret,
  type FretRange,
  type Instrument,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { neckMap, type Layers } from '../../../shared/theory/neck-map.ts';
import { parseNoteName, type NoteName } from '../../../shared/theory/pitch.ts';
import { allQualities, allScales, anyInstrument, anyRoot } from './any-tones.ts';

const root = (text: string): NoteName => known(parseNoteName(text), text);
const frets = (low: number, high: number): FretRange => ({ low: low as Fret, high: high as Fret });
const wholeNeck = (neck: Instrument): FretRange => frets(0, neck.fretCount);

/** The layer of each degree. */
function layersOf(layers: Layers): Readonly<Record<string, string>> {
  const map = neckMap(standardGuitar, root('G'), layers, wholeNeck(standardGuitar));
  return Object.fromEntries(map.map(({ degree, layer }) => [degree, layer]));
}

describe('MAP-1: each tone is of the innermost layer that has it', () => {
  // Source: the formulas (common practice).
  test('chord inside pentatonic inside scale', () => {
    expect(layersOf({ chord: 'major', pentatonic: 'major-pentatonic', scale: 'major' })).toEqual({
      '1': 'chord',
      '2': 'pentatonic',
      '3': 'chord',
      '4': 'scale',
      '5': 'chord',
      '6': 'pentatonic',
      '7': 'scale',
    });
    expect(layersOf({ chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' })).toEqual({
      '1': 'chord',
      '2': 'scale',
      b3: 'chord',
      '4': 'pentatonic',
      '5': 'chord',
      '6': 'scale',
      b7: 'chord',
    });
  });

  test('a pentatonic that lacks a tone of the chord: it is the chord’s all the same', () => {
    const layers = layersOf({ chord: 'maj7', pentatonic: 'major-pentatonic', scale: 'major' });
    expect([layers['7'], layers['4']]).toEqual(['chord', 'scale']);
  });

  test('what the scale lacks is there all the same', () => {
    const layers = layersOf({ chord: '7', pentatonic: 'minor-pentatonic', scale: 'major' });
    expect(layers).toMatchObject({ b7: 'chord', b3: 'pentatonic', '7': 'scale' });
  });

  test('the scale names a tone that the others call otherwise', () => {
    const layers = layersOf({ chord: 'minor', pentatonic: 'minor-pentatonic', scale: 'altered' });
    expect(layers).toMatchObject({ '#2': 'chord', '3': 'scale', b7: 'pentatonic' });
    expect(layers).not.toHaveProperty('b3');
    // The 9 of a chord is the 2 of the scale.
    expect(layersOf({ chord: 'add9', pentatonic: 'major-pentatonic', scale: 'major' })).not.toHaveProperty(
      '9',
    );
  });

  // Source: common practice; G on string 2 is fret 8, its third fret 12.
  test('only the range, string by string', () => {
    const layers: Layers = { chord: 'major', pentatonic: 'major-pentatonic', scale: 'major' };
    const map = neckMap(standardGuitar, root('G'), layers, frets(7, 10));
    const onString2 = map.filter((note) => note.place.string === 2);
    expect(onString2.map(({ place: spot, degree, layer }) => [spot.fret, degree, layer])).toEqual([
      [7, '7', 'scale'],
      [8, '1', 'chord'],
      [10, '2', 'pentatonic'],
    ]);
    expect(map.every((note) => note.place.fret >= 7 && note.place.fret <= 10)).toBe(true);
  });
});

const anyLayers: fc.Arbitrary<Layers> = fc.record({
  chord: fc.constantFrom(...allQualities),
  pentatonic: fc.constantFrom(...allScales),
  scale: fc.constantFrom(...allScales),
});

test('MAP-1: any instrument, chord, pentatonic and scale: every tone once, in its layer', () => {
  fc.assert(
    fc.property(anyInstrument, anyRoot, anyLayers, (neck, one, layers) => {
      const map = neckMap(neck, one, layers, wholeNeck(neck));
      for (const string of stringNumbers(neck))
        for (let fret = 0; fret <= neck.fretCount; fret += 1) {
          const spot = place(string, fret);
          const sounding = pitchClassAt(neck, spot);
          const [ofChord, ofPentatonic, ofScale] = [
            degreeAt(one, chordDegrees(layers.chord), sounding),
            degreeAt(one, scaleDegrees(layers.pentatonic), sounding),
            degreeAt(one, scaleDegrees(layers.scale), sounding),
          ];
          const found = map.filter((note) => samePlace(note.place, spot));
          const degree = ofScale ?? ofChord ?? ofPentatonic;
          if (degree === undefined) expect(found).toEqual([]);
          else {
            const layer = ofChord ? 'chord' : ofPentatonic ? 'pentatonic' : 'scale';
            expect(found).toEqual([{ place: spot, degree, layer }]);
          }
        }
    }),
    { numRuns: 30 },
  );
});

test.each(tuningIds)('%s: the root is on every string', (id) => {
  const neck = known(instrumentById(id), id);
  const layers: Layers = { chord: '13', pentatonic: 'minor-pentatonic', scale: 'mixolydian' };
  const map = neckMap(neck, root('Eb'), layers, wholeNeck(neck));
  for (const string of stringNumbers(neck))
    expect(map.some((note) => note.place.string === string && note.degree === '1')).toBe(true);
});
