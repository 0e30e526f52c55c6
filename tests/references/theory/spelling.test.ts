import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, notesOn, scaleDegrees } from '../../../shared/theory/chord.ts';
import {
  fretDistance,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
} from '../../../shared/theory/fretboard.ts';
import { noteOnDegree, semitonesOf } from '../../../shared/theory/interval.ts';
import { formatName } from '../../../shared/theory/naming.ts';
import {
  formatNoteName,
  frequencyOf,
  midiOf,
  parseNoteName,
  parsePitch,
  pitchClassOf,
  type MidiNote,
} from '../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import type { ScaleId } from '../../../shared/theory/tables/scales.ts';
import spelling from './spelling.json' with { type: 'json' };

/** Source of every case: spelling.json (CC0, computed); see README.md beside it. */
interface Case {
  readonly id: string;
  readonly kind: string;
  readonly [field: string]: unknown;
}
const cases = spelling.cases as readonly Case[];
const of = (kind: string) => cases.filter((one) => one.kind === kind).map((one) => [one.id, one] as const);
const note = (text: unknown) => known(parseNoteName(String(text)), String(text));
const scaleOf: Record<string, ScaleId> = {
  major: 'major',
  minor: 'natural-minor',
  'major pentatonic': 'major-pentatonic',
  'minor pentatonic': 'minor-pentatonic',
};
/** "A4" is an augmented fourth: the major scale's degree, altered by the interval's quality. */
function degreeOf(interval: string): string {
  const number = Number(interval.slice(1));
  const isPerfect = [0, 3, 4].includes((number - 1) % 7);
  const signs: Record<string, string> = { M: '', P: '', m: 'b', A: '#', d: isPerfect ? 'b' : 'bb' };
  return `${known(signs[interval.charAt(0)], interval)}${String(number)}`;
}

test('every case in scope is here, of a kind that is run below', () => {
  const counts = Object.fromEntries(
    [...new Set(cases.map((one) => one.kind))].sort().map((kind) => [kind, of(kind).length]),
  );
  expect(counts).toEqual({
    chord: 30,
    'fret-distance': 3,
    'fret-in-key': 3,
    interval: 66,
    'note-name': 3,
    pitch: 2,
    scale: 12,
  });
  expect(cases).toHaveLength(spelling.count);
  expect(spelling.count).toBe(119);
});

describe('PITCH-2', () => {
  test.each(of('chord'))('%s', (_id, one) => {
    const degrees = chordDegrees(one['quality'] as ChordQuality);
    expect(degrees).toEqual(one['degrees']);
    expect(notesOn(note(one['root']), degrees)?.map(formatNoteName)).toEqual(one['notes']);
  });

  test.each(of('scale'))('%s', (_id, one) => {
    const degrees = scaleDegrees(known(scaleOf[String(one['scale'])], String(one['scale'])));
    expect(degrees).toEqual(one['degrees']);
    expect(notesOn(note(one['root']), degrees)?.map(formatNoteName)).toEqual(one['notes']);
  });

  test.each(of('interval'))('%s', (_id, one) => {
    const degree = degreeOf(String(one['interval']));
    expect(semitonesOf(degree)).toBe(one['semitones']);
    const to = noteOnDegree(note(one['from']), degree);
    expect(to && formatNoteName(to)).toBe(one['to']);
  });
});

describe('NECK-1: a place in a key', () => {
  test.each(of('fret-in-key'))('%s', (_id, one) => {
    const [root, scale] = String(one['key']).split(' ');
    const spot = place(Number(one['string']), Number(one['fret']));
    const notes = notesOn(note(root), scaleDegrees(known(scaleOf[scale ?? ''], 'scale'))) ?? [];
    const sounding = notes.find((name) => pitchClassOf(name) === pitchClassAt(standardGuitar, spot));
    expect(sounding && formatNoteName(sounding)).toBe(one['note']);
    expect(midiAt(standardGuitar, spot)).toBe(one['midi']);
    expect(midiOf(known(parsePitch(String(one['pitch'])), 'pitch'))).toBe(one['midi']);
    expect(frequencyOf(one['midi'] as MidiNote)).toBeCloseTo(Number(one['hz']), 2);
  });
});

describe('PITCH-1', () => {
  test.each(of('pitch'))('%s', (_id, one) => {
    const { strings } = one['tuning'] as { strings: string[] };
    const open = known(parsePitch(known(strings[strings.length - Number(one['string'])], 'string')), 'pitch');
    const midi = midiOf(open) + Number(one['fret']);
    expect(midi).toBe(one['midi']);
    expect(frequencyOf(midi as MidiNote)).toBeCloseTo(Number(one['hz']), 2);
  });
});

describe('PITCH-3', () => {
  test.each(of('note-name'))('%s', (_id, one) => {
    expect(one['german']).toContain(formatName(note(one['note']), 'german'));
    expect(formatName(note(one['note']), 'solfege')).toBe(String(one['italianSyllable']).toLowerCase());
  });
});

describe('NECK-2', () => {
  test.each(of('fret-distance'))('%s', (_id, one) => {
    const [length, fret] = [Number(one['scaleMm']), Number(one['fret'])];
    expect(fretDistance(length, fret)).toBeCloseTo(Number(one['fromNutMm']), 2);
    expect(fretDistance(length, fret + 1) - fretDistance(length, fret)).toBeCloseTo(
      Number(one['toNextMm']),
      2,
    );
  });
});
