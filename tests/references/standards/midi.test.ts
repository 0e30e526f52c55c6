import { expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { frequencyOf, midiOf, parsePitch } from '../../../shared/theory/pitch.ts';
import { counts } from '../counts.ts';

/**
 * Source: MIDI 1.0 (note 60 is middle C, C4 in scientific octaves; notes 0 to 127) and ISO 16:1975 (A4 is 440 Hz), from
 * memory. Frequencies of the A's follow by doubling; middle C is 261.6256 Hz in equal temperament.
 */
const notes: readonly (readonly [name: string, midi: number, hertz: number])[] = [
  ['C-1', 0, 8.1758],
  ['A0', 21, 27.5],
  ['A1', 33, 55],
  ['A2', 45, 110],
  ['A3', 57, 220],
  ['C4', 60, 261.6256],
  ['A4', 69, 440],
  ['A5', 81, 880],
  ['C8', 108, 4186.009],
  ['G9', 127, 12543.854],
];

test.each(notes)('PITCH-1: %s', (name, midi, hertz) => {
  const note = midiOf(known(parsePitch(name), name));
  expect(note).toBe(midi);
  expect(frequencyOf(note)).toBeCloseTo(hertz, 3);
});

test('all are counted', () => {
  expect(notes).toHaveLength(counts['MIDI 1.0 and ISO 16'].cases);
});
