import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import {
  fretDistance,
  instrumentById,
  isOnNeck,
  midiAt,
  place,
  standardGuitar,
  stringNumbers,
} from '../../../shared/theory/fretboard.ts';
import { formatInstrument, tuningIds } from '../../../shared/theory/instrument-id.ts';
import { makeInstrument } from '../../../shared/theory/instrument.ts';
import { formatPitch, midiOf } from '../../../shared/theory/pitch.ts';
import { isReentrant, neighbourSteps, usualStep } from '../../../shared/theory/string-steps.ts';
import { specs } from './any-instrument.ts';

const instrument = (id: string) => known(instrumentById(id), id);
const open = (id: string) => instrument(id).openStrings.map(formatPitch).join(' ');

describe('NECK-5: a capo is moved open strings', () => {
  test('fret 0 sounds what the fret under the capo sounds without it, and so on up the neck', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const bare = makeInstrument('bare', { ...spec, capo: 0 });
        const capoed = makeInstrument(formatInstrument(spec), spec);
        expect(capoed.fretCount).toBe(bare.fretCount - spec.capo);
        for (const string of stringNumbers(capoed))
          for (const fret of [0, 1, capoed.fretCount]) {
            expect(isOnNeck(capoed, place(string, fret))).toBe(true);
            expect(midiAt(capoed, place(string, fret))).toBe(midiAt(bare, place(string, fret + spec.capo)));
          }
        for (const mark of capoed.marks) expect(bare.marks).toContain(mark + spec.capo);
        expect(capoed.marks).toHaveLength(bare.marks.filter((mark) => mark > spec.capo).length);
        // The same wire lies in the same spot, measured from the bridge.
        const fromBridge = (length: number, fret: number) => length - fretDistance(length, fret);
        expect(fromBridge(capoed.scaleLengthMm, 1)).toBeCloseTo(
          fromBridge(bare.scaleLengthMm, spec.capo + 1),
          6,
        );
      }),
    );
  });

  // Source: common practice; the letters computed by one interval for all strings.
  test.each([
    ['guitar+capo=1', 'F4 C4 Ab3 Eb3 Bb2 F2'],
    ['guitar+capo=2', 'F#4 C#4 A3 E3 B2 F#2'],
    ['guitar+capo=3', 'G4 D4 Bb3 F3 C3 G2'],
    ['guitar+capo=5', 'A4 E4 C4 G3 D3 A2'],
    ['guitar+capo=7', 'B4 F#4 D4 A3 E3 B2'],
    ['guitar+capo=12', 'E5 B4 G4 D4 A3 E3'],
    ['guitar-half-down+capo=1', 'E4 B3 G3 D3 A2 E2'],
    ['guitar-half-down+capo=3', 'F#4 C#4 A3 E3 B2 F#2'],
    ['ukulele+capo=2', 'B4 F#4 D4 A4'],
  ])('%s: %s', (id, strings) => {
    expect(open(id)).toBe(strings);
  });

  test('marks move down, those at or below the capo vanish', () => {
    expect(standardGuitar.marks).toEqual([3, 5, 7, 9, 12, 15, 17, 19]);
    expect(standardGuitar.doubleMarks).toEqual([12]);
    expect(instrument('guitar+capo=3').marks).toEqual([2, 4, 6, 9, 12, 14, 16]);
    expect(instrument('guitar+capo=3').doubleMarks).toEqual([9]);
    expect(instrument('guitar-7').doubleMarks).toEqual([12, 24]);
    expect(instrument('ukulele').marks).toEqual([5, 7, 10, 12, 15]);
    expect(instrument('mandolin').marks.slice(0, 5)).toEqual([5, 7, 10, 12, 15]);
  });

  test('standard guitar is as it was', () => {
    expect([standardGuitar.id, standardGuitar.fretCount, standardGuitar.scaleLengthMm]).toEqual([
      'guitar',
      19,
      648,
    ]);
  });
});

describe('NECK-6: what the hands know', () => {
  test.each([
    ['guitar', undefined],
    ['guitar-7', undefined],
    ['mandolin', undefined],
    ['custom:E4-B3-G3', undefined],
    ['guitar-drop-d', [64, 59, 55, 50, 45, 40]],
    ['guitar-dadgad+capo=2', [64, 59, 55, 50, 45, 40]],
    ['guitar-baritone', [64, 59, 55, 50, 45, 40]],
    ['guitar+capo=2', [64, 59, 55, 50, 45, 40]],
    ['ukulele-baritone', [69, 64, 60, 67]],
    ['custom:E4-B3-G3+capo=2', [64, 59, 55]],
  ])('%s', (id, home) => {
    expect(instrument(id).homeStrings).toEqual(home);
  });

  test('a home has as many strings', () => {
    for (const id of tuningIds) {
      const { homeStrings, openStrings } = instrument(id);
      if (homeStrings) expect([id, homeStrings.length]).toEqual([id, openStrings.length]);
    }
  });

  // Source: common practice. Tunings that no outside source in tests/references has.
  test.each([
    ['guitar-open-e', 'guitar-open-d', 2],
    ['guitar-baritone', 'guitar', -5],
  ])('%s is %s, %i semitones away', (id, from, semitones) => {
    expect(instrument(id).openStrings.map(midiOf)).toEqual(
      instrument(from).openStrings.map((pitch) => midiOf(pitch) + semitones),
    );
  });

  test.each([
    ['guitar-open-a', 'E4 C#4 A3 E3 A2 E2'],
    ['guitar-8', 'E4 B3 G3 D3 A2 E2 B1 F#1'],
    ['tenor-guitar', 'A4 D4 G3 C3'],
  ])('%s is %s', (id, strings) => {
    expect(open(id)).toBe(strings);
  });
});

describe('NECK-7: from string to string', () => {
  // Source: computed from the tunings.
  test.each([
    ['guitar', [5, 4, 5, 5, 5], 5, false],
    ['guitar-fourths', [5, 5, 5, 5, 5], 5, false],
    ['guitar-open-g', [3, 4, 5, 7, 5], 5, false],
    ['bass-5', [5, 5, 5, 5], 5, false],
    ['mandolin', [7, 7, 7], 7, false],
    ['ukulele', [5, 4, -7], undefined, true],
    ['ukulele-low-g', [5, 4, 5], 5, false],
    ['custom:D4-B3-G3-D3-G4', [3, 4, 5, -17], undefined, true],
    ['custom:E4-E4-A3', [0, 7], undefined, true],
    ['custom:A4-E4-C4-G3-Eb3', [5, 4, 5, 4], 5, false],
  ])('%s', (id, steps, usual, reentrant) => {
    const found = neighbourSteps(instrument(id));
    expect(found.map((step) => step.frets)).toEqual(steps);
    expect(found.map((step) => [step.upper, step.lower])).toEqual(
      steps.map((_, index) => [index + 1, index + 2]),
    );
    expect(usualStep(found)).toBe(usual);
    expect(isReentrant(instrument(id))).toBe(reentrant);
  });

  test('the step is the frets that the lower string needs for the upper one', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const any = makeInstrument('any', spec);
        for (const { upper, lower, frets } of neighbourSteps(any))
          expect(midiAt(any, place(lower, 0)) + frets).toBe(midiAt(any, place(upper, 0)));
      }),
    );
  });
});
