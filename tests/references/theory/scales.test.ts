import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { degreeAt, scaleDegrees } from '../../../shared/theory/chord.ts';
import { midiAt, pitchClassAt, place, samePlace, type Place } from '../../../shared/theory/fretboard.ts';
import { positionAt, scalePlaces, type Position } from '../../../shared/theory/position.ts';
import { scaleTable } from '../../../shared/theory/tables/scales.ts';
import { counts } from '../counts.ts';
import { instrumentOf, note } from './chord-cases.ts';
import { onStrings, scaleCases, scaleIdOf, type ScaleCase } from './scale-cases.ts';

const inPosition = scaleCases.filter((one) => one.system !== '3nps');
const threeNotes = scaleCases.filter((one) => one.system === '3nps');
const named = (some: readonly ScaleCase[]) => some.map((one) => [`${one.id} ${one.group}`, one] as const);

/** The positions that the case may mean: the one of its window, or of any finger where it names none. */
function positionsOf(one: ScaleCase): readonly Position[] {
  const low = one.window?.[0];
  const fingers = low === undefined ? [1, 2, 3, 4] : [one.rootFret - low + 1];
  const rootPlace = place(one.rootString, one.rootFret);
  return fingers
    .map((finger) =>
      positionAt(instrumentOf(one.tuning.name), note(one.root), scaleIdOf(one.scale), rootPlace, finger),
    )
    .filter((position) => position !== undefined);
}

/** Each pitch of the position once, on places that are accepted for it. */
function isPosition(one: ScaleCase, position: Position, places: readonly Place[]): boolean {
  const instrument = instrumentOf(one.tuning.name);
  const pitches = places.map((spot) => midiAt(instrument, spot)).sort((a, b) => a - b);
  const wanted = position.notes.map((shown) => midiAt(instrument, shown.place));
  return (
    pitches.length === wanted.length &&
    pitches.every((pitch, index) => pitch === wanted[index]) &&
    places.every((spot) => position.accepted.some((other) => samePlace(other, spot)))
  );
}

test('every case is here and run below', () => {
  expect(scaleCases).toHaveLength(counts['scales.json'].cases);
  expect([inPosition.length, threeNotes.length]).toEqual([30, 14]);
  for (const one of scaleCases) expect(Object.hasOwn(scaleTable, scaleIdOf(one.scale))).toBe(true);
});

describe('POSITION-1, POSITION-2: positions of four frets, pentatonic boxes, a bass', () => {
  test.each(named(inPosition))('%s', (_name, one) => {
    const positions = positionsOf(one);
    expect(positions.length).toBeGreaterThan(0);
    for (const frets of [one.fretsPerString, ...(one.acceptAlso ?? [])])
      expect(positions.some((position) => isPosition(one, position, onStrings(frets)))).toBe(
        one.verdict === 'correct',
      );
  });
});

describe('POSITION: three notes on every string reach past one position', () => {
  test.each(named(threeNotes))('%s', (_name, one) => {
    const instrument = instrumentOf(one.tuning.name);
    const places = onStrings(one.fretsPerString);
    const range = { low: place(1, one.lowFret).fret, high: place(1, one.highFret).fret };
    const inScale = scalePlaces(instrument, note(one.root), scaleIdOf(one.scale), range);
    const isScale = places.every((spot) => inScale.some((tone) => samePlace(tone.place, spot)));
    expect(isScale).toBe(one.verdict === 'correct');
    if (!isScale) return;
    const degrees = scaleDegrees(scaleIdOf(one.scale));
    const heard = places.map((spot) => degreeAt(note(one.root), degrees, pitchClassAt(instrument, spot)));
    expect(new Set(heard).size).toBe(degrees.length);
    // Three on each string, and no pitch of the scale skipped on the way up.
    const pitches = places.map((spot) => midiAt(instrument, spot));
    for (const [index, pitch] of pitches.slice(1).entries()) {
      const before = known(pitches[index], 'the note before');
      const next = degrees[(degrees.indexOf(known(heard[index], 'a degree')) + 1) % degrees.length];
      expect(pitch).toBeGreaterThan(before);
      expect(heard[index + 1]).toBe(next);
    }
  });
});

test('the roots of each right case sound the root', () => {
  for (const one of scaleCases.filter((some) => some.verdict === 'correct'))
    for (const { string, fret } of one.roots ?? [])
      expect(
        degreeAt(note(one.root), ['1'], pitchClassAt(instrumentOf(one.tuning.name), place(string, fret))),
      ).toBe('1');
});
