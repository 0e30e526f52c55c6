import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { chordDegrees, scaleDegrees } from '../../../shared/theory/chord.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import type { ScaleId } from '../../../shared/theory/tables/scales.ts';
import { counts } from '../counts.ts';
import { spelled, usualRoots } from './spelled.ts';

interface TeoriaNote {
  name(): string;
  /** Undefined for a triple one. */
  accidental(): string | undefined;
  scale(name: string): { notes(): TeoriaNote[] };
}
/** Source: teoria 2.5.0 (npm, MIT). It is CommonJS without types; only what is used here. */
const teoria = createRequire(import.meta.url)('teoria') as {
  chord(name: string): { notes(): TeoriaNote[] };
  note(name: string): TeoriaNote;
};

/** It writes the double sharp as x. */
const written = (notes: readonly TeoriaNote[]) =>
  notes.map((one) => one.name().toUpperCase() + (one.accidental() ?? '?').replaceAll('x', '##'));

const alias: Partial<Record<ChordQuality, string>> = {
  major: '',
  minor: 'm',
  b5: '(b5)',
  '69': '6add9',
  m69: 'm6add9',
};
/** It throws on this one. */
const failing: readonly ChordQuality[] = ['madd9'];
const chords = qualityIds.filter((quality) => !failing.includes(quality));

/** C♭dim7 would need a triple flat: teoria has no name for it, ours refuses it. */
const isRefused = (root: string, quality: ChordQuality) => root === 'Cb' && quality === 'dim7';
const refused = 1;

const scaleNames: Partial<Record<ScaleId, string>> = {
  major: 'major',
  'natural-minor': 'aeolian',
  'major-pentatonic': 'majorpentatonic',
  'minor-pentatonic': 'minorpentatonic',
  dorian: 'dorian',
  phrygian: 'phrygian',
  lydian: 'lydian',
  mixolydian: 'mixolydian',
  locrian: 'locrian',
  'harmonic-minor': 'harmonicminor',
  'melodic-minor': 'melodicminor',
  blues: 'blues',
  'whole-tone': 'wholetone',
};
const otherScales: Partial<Record<ScaleId, string>> = {
  'whole-tone': 'ends on ♯6; ours on ♭7, the seventh of its dominant chord (both in use)',
};

describe('PITCH-2, CHORD-7: chords as teoria spells them', () => {
  test.each(chords)('%s', (quality) => {
    for (const root of usualRoots) {
      const theirs = written(teoria.chord(root + (alias[quality] ?? quality)).notes());
      const ours = spelled(root, chordDegrees(quality));
      if (isRefused(root, quality)) expect([theirs.at(-1), ours]).toEqual(['B?', undefined]);
      else expect([root, ours]).toEqual([root, theirs]);
    }
  });

  test('the rest fails there', () => {
    for (const quality of failing) expect(() => teoria.chord(`C${quality}`)).toThrow();
  });

  test('all are counted', () => {
    expect([chords.length * usualRoots.length, refused]).toEqual([
      counts['teoria, chords'].cases,
      counts['teoria, chords'].disagreed,
    ]);
  });
});

describe('PITCH-2, SCALE-1…4: scales as teoria spells them', () => {
  const scales = Object.entries(scaleNames) as [ScaleId, string][];
  test.each(scales)('%s', (scale, name) => {
    for (const root of usualRoots) {
      const theirs = written(teoria.note(`${root.toLowerCase()}4`).scale(name).notes());
      const ours = spelled(root, scaleDegrees(scale));
      if (otherScales[scale] === undefined) expect([root, ours]).toEqual([root, theirs]);
      else expect([root, ours]).not.toEqual([root, theirs]);
    }
  });

  test('all are counted', () => {
    expect([scales.length * usualRoots.length, Object.keys(otherScales).length * usualRoots.length]).toEqual([
      counts['teoria, scales'].cases,
      counts['teoria, scales'].disagreed,
    ]);
  });
});
