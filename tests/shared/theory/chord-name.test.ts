import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import {
  formatChordName,
  parseChordName,
  parseQuality,
  qualityIds,
} from '../../../shared/theory/chord-name.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { formatNoteName, letters, parseNoteName, type Alteration } from '../../../shared/theory/pitch.ts';
import { chordNames } from '../../../shared/theory/tables/chord-names.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';

const namings: readonly NoteNaming[] = ['english', 'german', 'solfege'];
const alterations: readonly Alteration[] = [-2, -1, 0, 1, 2];
const note = (text: string) => known(parseNoteName(text), text);

test('SPELL-2: every quality has a symbol and words of its own', () => {
  expect(qualityIds).toHaveLength(45);
  expect(new Set(qualityIds.map((quality) => chordNames[quality].symbol)).size).toBe(45);
  expect(new Set(qualityIds.map((quality) => chordNames[quality].words)).size).toBe(45);
});

describe('SPELL-2: what is written as a chord reads back', () => {
  test.each(namings)('every root and quality, %s, with and without a bass', (naming) => {
    for (const letter of letters)
      for (const alteration of alterations)
        for (const quality of qualityIds)
          for (const bass of [undefined, note('G'), note('Bb'), note('F##')]) {
            const chord = { root: { letter, alteration }, quality, ...(bass && { bass }) };
            const text = formatChordName(chord, naming);
            expect([text, parseChordName(text, naming)]).toEqual([text, { ok: true, value: chord }]);
          }
  });

  // Source: common practice.
  test.each<[NoteNaming, string, string, ChordQuality, string?]>([
    ['english', 'Em7', 'E', 'm7'],
    ['english', 'F♯m7♭5', 'F#', 'm7b5'],
    ['english', 'F#m7b5', 'F#', 'm7b5'],
    ['english', 'F# m7(b5)', 'F#', 'm7b5'],
    ['english', 'Fø', 'F', 'm7b5'],
    ['english', 'C/G', 'C', 'major', 'G'],
    ['english', ' Bb7 / D ', 'Bb', '7', 'D'],
    ['english', 'C6/9', 'C', '69'],
    ['english', 'C6/9/E', 'C', '69', 'E'],
    ['english', 'Cb5', 'Cb', '5'],
    ['english', 'C(b5)', 'C', 'b5'],
    ['english', 'Bbb5', 'Bbb', '5'],
    ['english', 'CM7', 'C', 'maj7'],
    ['english', 'Cm7', 'C', 'm7'],
    ['english', 'CΔ', 'C', 'maj7'],
    ['english', 'C-7', 'C', 'm7'],
    ['english', 'C+', 'C', 'aug'],
    ['english', 'Co7', 'C', 'dim7'],
    ['english', 'Dsus', 'D', 'sus4'],
    ['english', 'Asus4', 'A', 'sus4'],
    ['english', 'Eadd9', 'E', 'add9'],
    ['german', 'Hm7', 'B', 'm7'],
    ['german', 'B7', 'Bb', '7'],
    ['german', 'Es', 'Eb', 'major'],
    ['german', 'Esus4', 'E', 'sus4'],
    ['german', 'Essus4', 'Eb', 'sus4'],
    ['german', 'Asus2', 'A', 'sus2'],
    ['german', 'Fism/Cis', 'F#', 'minor', 'C#'],
    ['german', 'C/H', 'C', 'major', 'B'],
    ['solfege', 'mi m7', 'E', 'm7'],
    ['solfege', 'mim7', 'E', 'm7'],
    ['solfege', 'fa#m7b5', 'F#', 'm7b5'],
    ['solfege', 'Sol', 'G', 'major'],
    ['solfege', 'solsus4/re', 'G', 'sus4', 'D'],
    ['solfege', 'si♭7', 'Bb', '7'],
    ['solfege', 'dom', 'C', 'minor'],
  ])('%s %s', (naming, text, root, quality, bass) => {
    const read = parseChordName(text, naming);
    expect(read.ok && [formatNoteName(read.value.root), read.value.quality]).toEqual([root, quality]);
    expect(read.ok && read.value.bass && formatNoteName(read.value.bass)).toBe(bass);
  });

  test('written as a reader expects', () => {
    const chord = { root: note('F#'), quality: 'm7b5', bass: note('B') } as const;
    expect(namings.map((naming) => formatChordName(chord, naming))).toEqual([
      'F♯m7♭5/B',
      'Fism7♭5/H',
      'fa♯ m7♭5/si',
    ]);
    expect(formatChordName({ root: note('Eb'), quality: 'major' }, 'german')).toBe('Es');
  });
});

describe('SPELL-2: what is no chord is refused with a sentence', () => {
  test.each<[NoteNaming, string, string]>([
    ['english', 'Xq7', 'starts with no note name'],
    ['english', '', 'starts with no note name'],
    ['english', 'Hm', 'starts with no note name'],
    ['english', '/G', 'starts with no note name'],
    ['english', 'Eq7', 'no chord known'],
    ['english', 'C/9', 'no chord known'],
    ['english', 'C/H', 'no chord known'],
    ['english', 'C7/', 'no chord known'],
    ['english', 'mi m7', 'starts with no note name'],
    ['german', 'F#m', 'no chord known'],
    ['solfege', 'Em7', 'starts with no note name'],
  ])('%s %j', (naming, text, why) => {
    const read = parseChordName(text, naming);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.error).toContain(why);
    expect(read.error).toMatch(/\.$/);
  });

  test('the example in the sentence can be read', () => {
    for (const naming of namings) {
      const read = parseChordName('?', naming);
      if (read.ok) throw new Error('read');
      const [, first = '', second = ''] = /like (.+) or (.+)\.$/.exec(read.error) ?? [];
      expect(parseChordName(first, naming).ok).toBe(true);
      expect(parseChordName(second, naming).ok).toBe(true);
    }
  });
});

test('SPELL-2: a quality alone', () => {
  expect(parseQuality('')).toBe('major');
  expect(parseQuality('m7♭5')).toBe('m7b5');
  expect(parseQuality('toString')).toBeUndefined();
});
