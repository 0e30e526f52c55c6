import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { midiAt, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { chordTable } from '../../../shared/theory/tables/chords.ts';
import { counts } from '../counts.ts';
import { heard } from './chord-cases.ts';
import { positions, reasons } from './chords-db-positions.ts';

const noteNames = 'C C♯ D E♭ E F F♯ G A♭ A B♭ B'.split(' ');

test('all of the package is here, each suffix with a quality of ours', () => {
  expect(positions).toHaveLength(counts['chords-db'].cases);
  for (const { chord } of positions) expect(Object.hasOwn(chordTable, chord.quality)).toBe(true);
});

test('its own errors are listed, each with what sounds', () => {
  expect(reasons.size).toBe(counts['chords-db'].disagreed);
  const byName = new Map(positions.map((one) => [one.name, one] as const));
  for (const [name, reason] of reasons) {
    const { midi } = known(byName.get(name), name).position;
    expect(reason).toContain(`${midi.map((one) => noteNames[one % 12]).join(' ')}: `);
  }
});

test('NECK-1: every position sounds the pitches that the package says', () => {
  for (const { name, position, places } of positions)
    expect([name, places.map((spot) => midiAt(standardGuitar, spot))]).toEqual([name, position.midi]);
});

describe('CHORD-1…6: every published position is the chord, slash chords too, but for the errors of the table', () => {
  const qualities = [...new Set(positions.map((one) => one.chord.quality))];
  test.each(qualities)('%s', (quality) => {
    for (const { name, chord, places } of positions.filter((one) => one.chord.quality === quality))
      expect([name, heard(standardGuitar, places, chord).isChord]).toEqual([name, !reasons.has(name)]);
  });
});
