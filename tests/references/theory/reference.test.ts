import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, neededDegrees } from '../../../shared/theory/chord.ts';
import { midiAt, place, standardGuitar } from '../../../shared/theory/fretboard.ts';
import {
  formatPitch,
  frequencyOf,
  parseNoteName,
  pitchClass,
  pitchClassOf,
} from '../../../shared/theory/pitch.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import reference from './reference.json' with { type: 'json' };

/** Source of every value: reference.json (CC0, computed); see README.md beside it. */

test('CHORD-1…3: formulas, and what may be left out of them', () => {
  const formulas = Object.entries<{ degrees: string[]; mayOmit: object }>(reference.qualities);
  expect(formulas.map(([quality]) => quality).sort()).toEqual(Object.keys(chordTable).sort());
  for (const [id, { degrees, mayOmit }] of formulas) {
    const quality = id as ChordQuality;
    expect([id, chordDegrees(quality)]).toEqual([id, degrees]);
    const free = degrees.filter((degree) => !neededDegrees(quality).includes(degree));
    expect([id, free]).toEqual([id, Object.keys(mayOmit)]);
  }
});

test('NECK-1: the standard tuning', () => {
  expect([...standardGuitar.openStrings].reverse().map(formatPitch)).toEqual(reference.tunings.standard);
});

describe('FORM-1: movable forms', () => {
  test.each(reference.movableShapes.map((shape) => [`${shape.form} ${shape.quality}`, shape] as const))(
    '%s',
    (_name, shape) => {
      const row = known(
        formTable.find((one) => one.form === shape.form && one.quality === shape.quality),
        'row',
      );
      expect(row.frets).toEqual(shape.frets);
      expect(row.fingers).toEqual(shape.fingers);
      expect(row.rootStrings).toEqual(shape.roots);
    },
  );

  test('ten of them; the close triads are ours', () => {
    expect(reference.movableShapes).toHaveLength(10);
    const others = formTable.filter(({ form }) => !form.startsWith('triad'));
    expect(others).toHaveLength(10);
  });
});

test('NECK-1: string 2, fret by fret', () => {
  expect(reference.secondString).toHaveLength(13);
  for (const { fret, midi, sharp, flat, hz } of reference.secondString) {
    expect(midiAt(standardGuitar, place(2, fret))).toBe(midi);
    for (const name of [sharp, flat])
      expect(pitchClassOf(known(parseNoteName(name), name))).toBe(pitchClass(midi));
    expect(frequencyOf(midiAt(standardGuitar, place(2, fret)))).toBeCloseTo(hz, 2);
  }
});
