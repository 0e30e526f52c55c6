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
import { tunedStrings } from '../../../shared/theory/instrument.ts';
import { intervalName } from '../../../shared/theory/interval-names.ts';
import { noteOnDegree, semitonesOf } from '../../../shared/theory/interval.ts';
import { formatName } from '../../../shared/theory/naming.ts';
import {
  formatNoteName,
  formatPitch,
  frequencyOf,
  parseNoteName,
  pitchNamed,
} from '../../../shared/theory/pitch.ts';
import { romanChord, romanOf, type RomanKey } from '../../../shared/theory/roman.ts';
import { spellIn } from '../../../shared/theory/spelling.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';
import { counts } from '../counts.ts';
import { instrumentOf } from './chord-cases.ts';
import spelling from './spelling.json' with { type: 'json' };

/** Source of every case: spelling.json (CC0, computed); see ../README.md. */
interface Case {
  readonly id: string;
  readonly kind: string;
  readonly [field: string]: unknown;
}
const cases = spelling.cases as readonly Case[];
const of = (kind: string) => cases.filter((one) => one.kind === kind).map((one) => [one.id, one] as const);
const note = (text: unknown) => known(parseNoteName(String(text)), String(text));
/** The file writes "harmonic minor" for our `harmonic-minor`, and "minor" for natural minor. */
const scaleOf = (name: string): ScaleId => {
  const id = name === 'minor' ? 'natural-minor' : name.replaceAll(' ', '-');
  if (!Object.hasOwn(scaleTable, id)) throw new Error(`unknown scale ${name}`);
  return id as ScaleId;
};
/** "A4" is an augmented fourth: the major scale's degree, altered by the interval's quality. */
function degreeOf(interval: string): string {
  const number = Number(interval.slice(1));
  const isPerfect = [0, 3, 4].includes((number - 1) % 7);
  const signs: Record<string, string> = { M: '', P: '', m: 'b', A: '#', d: isPerfect ? 'b' : 'bb' };
  return `${known(signs[interval.charAt(0)], interval)}${String(number)}`;
}

test('every case in scope is here, of a kind that is run below', () => {
  const byKind = Object.fromEntries(
    [...new Set(cases.map((one) => one.kind))].sort().map((kind) => [kind, of(kind).length]),
  );
  expect(byKind).toEqual({
    chord: 135,
    'fret-distance': 3,
    'fret-in-key': 3,
    interval: 66,
    'note-name': 3,
    pitch: 3,
    roman: 49,
    scale: 36,
  });
  expect(cases).toHaveLength(spelling.count);
  expect(spelling.count).toBe(counts['spelling.json'].cases);
});

describe('PITCH-2', () => {
  test.each(of('chord'))('%s', (_id, one) => {
    const degrees = chordDegrees(one['quality'] as ChordQuality);
    expect(degrees).toEqual(one['degrees']);
    expect(notesOn(note(one['root']), degrees)?.map(formatNoteName)).toEqual(one['notes']);
  });

  test.each(of('scale'))('%s', (_id, one) => {
    const degrees = scaleDegrees(scaleOf(String(one['scale'])));
    expect(degrees).toEqual(one['degrees']);
    expect(notesOn(note(one['root']), degrees)?.map(formatNoteName)).toEqual(one['notes']);
  });

  test.each(of('interval'))('%s', (_id, one) => {
    const degree = degreeOf(String(one['interval']));
    expect(semitonesOf(degree)).toBe(one['semitones']);
    const to = noteOnDegree(note(one['from']), degree);
    expect(to && formatNoteName(to)).toBe(one['to']);
    const words: Record<string, string> = {
      M: 'major',
      P: 'perfect',
      m: 'minor',
      A: 'augmented',
      d: 'diminished',
    };
    expect(intervalName(degree)).toMatch(
      new RegExp(`^(${known(words[String(one['interval']).charAt(0)], 'quality')} [a-z]+|unison|octave)$`),
    );
  });
});

describe('SPELL-1: a place in a key', () => {
  test.each(of('fret-in-key'))('%s', (_id, one) => {
    const [root, scale = ''] = String(one['key']).split(' ');
    const spot = place(Number(one['string']), Number(one['fret']));
    const key = { root: note(root), degrees: scaleDegrees(scaleOf(scale)) };
    const midi = midiAt(standardGuitar, spot);
    const name = spellIn(key, pitchClassAt(standardGuitar, spot));
    expect(formatNoteName(name)).toBe(one['note']);
    expect(midi).toBe(one['midi']);
    expect(formatPitch(pitchNamed(name, midi))).toBe(one['pitch']);
    expect(frequencyOf(midi)).toBeCloseTo(Number(one['hz']), 2);
  });
});

describe('PITCH-1, NECK-5: tunings and capos', () => {
  test.each(of('pitch'))('%s', (_id, one) => {
    const tuning = one['tuning'] as { name: string; strings: string[] };
    const instrument = instrumentOf(tuning.name, Number(one['capo']));
    expect(tunedStrings(instrument.spec.tuning).map(formatPitch).reverse()).toEqual(tuning.strings);
    const midi = midiAt(instrument, place(Number(one['string']), Number(one['fret'])));
    expect(midi).toBe(one['midi']);
    expect(frequencyOf(midi)).toBeCloseTo(Number(one['hz']), 2);
  });
});

describe('SPELL-3: roman numerals', () => {
  test.each(of('roman'))('%s', (_id, one) => {
    const [tonic, mode] = String(one['key']).split(' ');
    const key: RomanKey = { tonic: note(tonic), mode: mode === 'minor' ? 'minor' : 'major' };
    const numeral = String(one['numeral']);
    const chord = romanChord(key, numeral);
    const wanted = one['chord'] as { root: string; quality: ChordQuality };
    expect(chord).toEqual({ ok: true, value: { root: note(wanted.root), quality: wanted.quality } });
    expect(notesOn(note(wanted.root), chordDegrees(wanted.quality))?.map(formatNoteName)).toEqual(
      one['notes'],
    );
    expect(romanOf(key, { root: note(wanted.root), quality: wanted.quality })).toBe(
      numeral.replace('b', '♭'),
    );
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
