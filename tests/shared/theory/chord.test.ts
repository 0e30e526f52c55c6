import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { Chord, Scale } from 'tonal';
import { known } from '../../../shared/lib/assert.ts';
import {
  chordDegrees,
  degreeAt,
  neededDegrees,
  notesOn,
  scaleDegrees,
} from '../../../shared/theory/chord.ts';
import { formatNoteName, parseNoteName, pitchClass, pitchClassOf } from '../../../shared/theory/pitch.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

/** teoria is CommonJS without types; only what is used here. */
const teoria = createRequire(import.meta.url)('teoria') as {
  chord(name: string): { notes(): { name(): string; accidental(): string }[] };
};

const note = (text: string) => known(parseNoteName(text), text);
const usualRoots = 'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B Cb'.split(' ');
const spelled = (root: string, degrees: readonly string[]) =>
  notesOn(note(root), degrees)?.map(formatNoteName);

const qualities = Object.keys(chordTable) as ChordQuality[];
const scales = Object.keys(scaleTable) as ScaleId[];

/** How the outside sources write our ids. */
const tonalChord: Record<ChordQuality, string> = {
  major: 'M',
  minor: 'm',
  dim: 'dim',
  aug: 'aug',
  sus2: 'sus2',
  sus4: 'sus4',
  '5': '5',
  '7': '7',
  maj7: 'maj7',
  m7: 'm7',
};
const tonalScale: Record<ScaleId, string> = {
  major: 'major',
  'natural-minor': 'aeolian',
  'major-pentatonic': 'major pentatonic',
  'minor-pentatonic': 'minor pentatonic',
};
const teoriaChord: Partial<Record<ChordQuality, string>> = {
  major: '',
  minor: 'm',
  dim: 'dim',
  aug: 'aug',
  sus2: 'sus2',
  sus4: 'sus4',
  '7': '7',
  maj7: 'maj7',
  m7: 'm7',
};

const roots = usualRoots.map((root) => [root]);

describe('PITCH-2: chords are spelled by degree', () => {
  // Source: tonal 6.4.3 (MIT).
  test.each(roots)('every quality on %s as tonal spells it', (root) => {
    for (const quality of qualities)
      expect([quality, spelled(root, chordDegrees(quality))]).toEqual([
        quality,
        Chord.get(root + tonalChord[quality]).notes,
      ]);
  });

  // Source: teoria 2.5.0 (MIT), which writes the double sharp as x. It names no power chord.
  test.each(roots)('every quality on %s as teoria spells it', (root) => {
    for (const quality of qualities) {
      const symbol = teoriaChord[quality];
      if (symbol === undefined) continue;
      const notes = teoria.chord(root + symbol).notes();
      expect([quality, spelled(root, chordDegrees(quality))]).toEqual([
        quality,
        notes.map((one) => one.name().toUpperCase() + one.accidental().replaceAll('x', '##')),
      ]);
    }
  });

  test('the table has ten qualities, one of them unknown to teoria', () => {
    expect(qualities).toHaveLength(10);
    expect(Object.keys(teoriaChord)).toHaveLength(9);
  });
});

describe('PITCH-2: scales are spelled by degree', () => {
  // Source: tonal 6.4.3 (MIT).
  test.each(roots)('every scale on %s as tonal spells it', (root) => {
    for (const scale of scales)
      expect([scale, spelled(root, scaleDegrees(scale))]).toEqual([
        scale,
        Scale.get(`${root} ${tonalScale[scale]}`).notes,
      ]);
  });

  test('a triple accidental is refused, not bent', () => {
    expect(spelled('B##', chordDegrees('aug'))).toBeUndefined();
    expect(spelled('Fbb', chordDegrees('minor'))).toBeUndefined();
  });
});

describe('CHORD-4: degrees are counted from the root asked for', () => {
  test('C E G A is 1 3 5 and foreign over C, ♭3 5 ♭7 1 over A', () => {
    const sounding = ['C', 'E', 'G', 'A'].map((name) => pitchClassOf(note(name)));
    expect(sounding.map((one) => degreeAt(note('C'), chordDegrees('major'), one))).toEqual([
      '1',
      '3',
      '5',
      undefined,
    ]);
    expect(sounding.map((one) => degreeAt(note('A'), chordDegrees('m7'), one))).toEqual([
      'b3',
      '5',
      'b7',
      '1',
    ]);
  });

  test('every pitch class has at most one degree, and all of the formula are found', () => {
    for (const quality of qualities) {
      const found = Array.from({ length: 12 }, (_, semitones) =>
        degreeAt(note('Eb'), chordDegrees(quality), pitchClass(semitones)),
      ).filter((degree) => degree !== undefined);
      expect([...found].sort()).toEqual([...chordDegrees(quality)].sort());
    }
  });
});

test('CHORD-2, CHORD-3: only the perfect fifth of a four-tone chord may be left out', () => {
  for (const quality of qualities) {
    const degrees = chordDegrees(quality);
    const free = degrees.filter((degree) => !neededDegrees(quality).includes(degree));
    expect([quality, free]).toEqual([quality, degrees.length === 4 ? ['5'] : []]);
  }
});
