import { Chord, Interval, Scale } from 'tonal';
import { describe, expect, test } from 'vitest';
import { chordDegrees, scaleDegrees } from '../../../shared/theory/chord.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { degreeFrom, semitonesOf } from '../../../shared/theory/interval.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';
import { counts } from '../counts.ts';
import { spelled, usualRoots } from './spelled.ts';

/** Source: tonal 6.4.3 (npm, MIT). How it writes our ids, where it writes them otherwise. */
const chordAlias: Partial<Record<ChordQuality, string>> = {
  major: 'M',
  minor: 'm',
  b5: 'Mb5',
  '69': '6add9',
  mmaj7: 'mM7',
  mmaj7b5: 'oM7',
  maj7b5: 'M7b5',
  mmaj9: 'mM9',
  add9: 'Madd9',
};
const unknownChords: readonly ChordQuality[] = ['7sus2', 'maj11', 'mmaj11', 'add11'];

/** Other tones or letters than ours, and who is right. */
const otherChords: Partial<Record<ChordQuality, string>> = {
  '11': 'leaves the 3 out, as players do; the formula of MusicXML has it, and our rule lets it go',
  '13': 'leaves the 11 out, as players do; the formula of MusicXML has it, and our rule lets it go',
  maj13: 'leaves the 11 out, as players do; the formula of MusicXML has it, and our rule lets it go',
  m13: 'leaves the 11 out, as players do; the formula of MusicXML has it, and our rule lets it go',
};
/** C♭dim7 would need a triple flat: tonal writes it, ours refuses it. */
const isRefused = (root: string, quality: ChordQuality) => root === 'Cb' && quality === 'dim7';
const refused = 1;
const scaleAlias: Partial<Record<ScaleId, string>> = {
  'natural-minor': 'aeolian',
  blues: 'minor blues',
  'diminished-whole-half': 'diminished',
  'diminished-half-whole': 'half-whole diminished',
};
const otherScales: Partial<Record<ScaleId, string>> = {
  'whole-tone': 'ends on ♯6; ours on ♭7, the seventh of its dominant chord (both in use)',
  'diminished-half-whole': 'has ♭3 beside 3; ours ♯2, the sharp nine of its dominant chord (both in use)',
};

/** `harmonic-minor` is "harmonic minor" there. */
const scaleName = (scale: ScaleId) => scaleAlias[scale] ?? scale.replaceAll('-', ' ');
const chords = qualityIds.filter((quality) => !unknownChords.includes(quality));
const scales = Object.keys(scaleTable) as ScaleId[];

describe('PITCH-2, CHORD-7: chords as tonal spells them', () => {
  test.each(chords)('%s', (quality) => {
    for (const root of usualRoots) {
      const { notes } = Chord.get(root + (chordAlias[quality] ?? quality));
      expect(notes.length).toBeGreaterThan(1);
      const ours = spelled(root, chordDegrees(quality));
      if (isRefused(root, quality)) expect([notes.at(-1), ours]).toEqual(['Bbbb', undefined]);
      else if (otherChords[quality] === undefined) expect([root, ours]).toEqual([root, notes]);
      else {
        expect([root, ours]).not.toEqual([root, notes]);
        // Only left out: every tone it has is ours too.
        expect(notes.every((note) => ours?.includes(note))).toBe(true);
      }
    }
  });

  test('the rest is not in it', () => {
    for (const quality of unknownChords) expect(Chord.get(`C${quality}`).empty).toBe(true);
  });

  test('all are counted', () => {
    expect([
      chords.length * usualRoots.length,
      Object.keys(otherChords).length * usualRoots.length + refused,
    ]).toEqual([counts['tonal, chords'].cases, counts['tonal, chords'].disagreed]);
  });
});

describe('PITCH-2, SCALE-1…4: scales as tonal spells them', () => {
  test.each(scales)('%s', (scale) => {
    for (const root of usualRoots) {
      const { notes } = Scale.get(`${root} ${scaleName(scale)}`);
      const ours = spelled(root, scaleDegrees(scale));
      expect(ours).toHaveLength(notes.length);
      if (otherScales[scale] === undefined) expect([root, ours]).toEqual([root, notes]);
      else expect([root, ours]).not.toEqual([root, notes]);
    }
  });

  test('all are counted', () => {
    expect([scales.length * usualRoots.length, Object.keys(otherScales).length * usualRoots.length]).toEqual([
      counts['tonal, scales'].cases,
      counts['tonal, scales'].disagreed,
    ]);
  });
});

/** Interval qualities of tonal for the accidentals ♭♭ to ♯♯ of a degree. */
const qualitiesOfPerfect = ['dd', 'd', 'P', 'A', 'AA'];
const qualitiesOfOthers = ['d', 'm', 'M', 'A', 'AA'];

test('PITCH-2: semitones of every degree as tonal counts them', () => {
  let cases = 0;
  for (let number = 1; number <= 13; number += 1)
    for (let alteration = -2; alteration <= 2; alteration += 1) {
      const isPerfect = [1, 4, 5].includes(((number - 1) % 7) + 1);
      const quality = (isPerfect ? qualitiesOfPerfect : qualitiesOfOthers)[alteration + 2] ?? '';
      const degree = degreeFrom(number, alteration) ?? '';
      expect([degree, semitonesOf(degree)]).toEqual([
        degree,
        Interval.semitones(`${String(number)}${quality}`),
      ]);
      cases += 1;
    }
  expect(cases).toBe(counts['tonal, intervals'].cases);
});
