import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees } from '../../../shared/theory/chord.ts';
import { chordSounds } from '../../../shared/theory/chord-rule.ts';
import { midiAt, place, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { semitonesOf } from '../../../shared/theory/interval.ts';
import {
  formatPitch,
  frequencyOf,
  parseNoteName,
  pitchClass,
  pitchClassOf,
} from '../../../shared/theory/pitch.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { counts } from '../counts.ts';
import { instrumentOf } from './chord-cases.ts';
import reference from './reference.json' with { type: 'json' };
import { normalForm, primeForm, primeForms } from './set-class.ts';

/** Source of every value: reference.json (CC0, computed); see ../README.md. */

test('CHORD-1…7: formulas, and what may be left out of them', () => {
  const formulas = Object.entries<{ degrees: string[]; mayOmit: object }>(reference.qualities);
  expect(formulas).toHaveLength(counts['reference.json, qualities'].cases);
  expect(formulas.map(([quality]) => quality).sort()).toEqual(Object.keys(chordTable).sort());
  for (const [id, { degrees, mayOmit }] of formulas) {
    const quality = id as ChordQuality;
    expect([id, chordDegrees(quality)]).toEqual([id, degrees]);
    const free = degrees.filter((silent) => {
      const sounding = degrees.filter((degree) => degree !== silent);
      return chordSounds(quality, sounding, { bass: sounding[0] }).ok;
    });
    expect([id, free]).toEqual([id, degrees.filter((degree) => Object.hasOwn(mayOmit, degree))]);
  }
});

test('CHORD-7: the set classes of the common chords', () => {
  const withForte = Object.entries<{ degrees: string[]; forte?: string }>(reference.qualities).flatMap(
    ([id, { degrees, forte }]) => (forte === undefined ? [] : [{ id, degrees, forte }]),
  );
  expect(withForte).toHaveLength(counts['reference.json, Forte set classes'].cases);
  for (const { id, degrees, forte } of withForte) {
    const set = degrees.map((degree) => pitchClass(semitonesOf(degree)));
    const [name, side] = [forte.replace(/[AB]$/, ''), forte.slice(-1)];
    expect([id, primeForm(set)]).toEqual([id, known(primeForms[name], name)]);
    // A is the form that is packed to the left as it stands, B its inversion.
    if (side === 'A') expect(normalForm(set)).toEqual(primeForm(set));
    if (side === 'B') expect(normalForm(set)).not.toEqual(primeForm(set));
  }
});

test('NECK-1: the tunings', () => {
  const tunings = Object.entries(reference.tunings);
  expect(tunings).toHaveLength(counts['reference.json, tunings'].cases);
  for (const [name, strings] of tunings)
    expect([name, [...instrumentOf(name).openStrings].reverse().map(formatPitch)]).toEqual([name, strings]);
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

  test('ten of them in major and minor; the close triads are ours', () => {
    expect(reference.movableShapes).toHaveLength(counts['reference.json, movable forms'].cases);
    const others = formTable.filter(
      ({ form, quality }) => !form.startsWith('triad') && ['major', 'minor'].includes(quality),
    );
    expect(others).toHaveLength(10);
  });
});

test('NECK-1: string 2, fret by fret', () => {
  expect(reference.secondString).toHaveLength(counts['reference.json, string 2'].cases);
  for (const { fret, midi, sharp, flat, hz } of reference.secondString) {
    expect(midiAt(standardGuitar, place(2, fret))).toBe(midi);
    for (const name of [sharp, flat])
      expect(pitchClassOf(known(parseNoteName(name), name))).toBe(pitchClass(midi));
    expect(frequencyOf(midiAt(standardGuitar, place(2, fret)))).toBeCloseTo(hz, 2);
  }
});
