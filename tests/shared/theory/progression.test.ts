import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { formatChordName, qualityIds } from '../../../shared/theory/chord-name.ts';
import { parseKey } from '../../../shared/theory/key-name.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { letters, parseNoteName, type Alteration } from '../../../shared/theory/pitch.ts';
import {
  formatNumerals,
  formatProgression,
  mostChords,
  parseProgression,
} from '../../../shared/theory/progression.ts';
import { romanOf, type RomanKey } from '../../../shared/theory/roman.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import spelling from '../../references/theory/spelling.json' with { type: 'json' };

const namings: readonly NoteNaming[] = ['english', 'german', 'solfege'];
const keyNamed = (text: string): RomanKey => {
  const read = parseKey(text, 'english');
  if (!read.ok) throw new Error(read.error);
  return read.value;
};
const note = (text: string) => known(parseNoteName(text), text);
/** The chords that are read, in English names; or the sentence. */
const read = (text: string, key = 'C major', naming: NoteNaming = 'english') => {
  const found = parseProgression(text, keyNamed(key), naming);
  return found.ok ? formatProgression(found.value, 'english') : found.error;
};
const numerals = (text: string, key: string) => {
  const found = parseProgression(text, keyNamed(key), 'english');
  return found.ok ? formatNumerals(found.value, 'english') : found.error;
};

// Source of these cases: tests/references/theory/spelling.json (CC0, computed).
const reference = spelling.cases.filter((one) => one.kind === 'roman') as readonly {
  readonly id: string;
  readonly key: string;
  readonly numeral: string;
  readonly chord: { readonly root: string; readonly quality: ChordQuality };
}[];

describe('SPELL-3: the numerals of the reference, in a row', () => {
  const keys = [...new Set(reference.map((one) => one.key))];

  test('there are 49, in several keys', () => {
    expect(reference).toHaveLength(49);
    expect(keys.length).toBeGreaterThan(3);
  });

  test.each(keys)('%s', (key) => {
    const own = reference.filter((one) => one.key === key);
    const chords = own.map(({ chord }) => ({ root: note(chord.root), quality: chord.quality }));
    for (const separator of [' ', '-', ' | ', ',', ' – ', '—', '\n'])
      expect(read(own.map((one) => one.numeral).join(separator), key)).toBe(
        formatProgression(chords, 'english'),
      );
  });
});

describe('PROGRESSION-1: numerals, names, and both', () => {
  // Source: common practice.
  test.each([
    ['ii7 V7 Imaj7', 'C major', 'Dm7 G7 Cmaj7'],
    ['ii-V-I', 'C major', 'Dm G C'],
    ['I–vi–IV–V', 'A major', 'A F♯m D E'],
    ['i bVI', 'C major', 'Cm A♭'],
    ['iiø7 V7 i', 'A minor', 'Bm7♭5 E7 Am'],
    ['i VII VI V', 'A minor', 'Am G F E'],
    ['| Dm7 | G7 | Cmaj7 |', 'C major', 'Dm7 G7 Cmaj7'],
    ['Dm7, V7, I', 'C major', 'Dm7 G7 C'],
    ['Dm7 - G7 - C', 'C major', 'Dm7 G7 C'],
    ['|| Bb\t|\tF#m7b5 ||', 'C major', 'B♭ F♯m7♭5'],
    ['I/E  IV  V/B', 'C major', 'C/E F G/B'],
    ['C / G  F/A', 'C major', 'C/G F/A'],
    ['C6/9 I6/9 C6/9/E', 'C major', 'C6/9 C6/9 C6/9/E'],
    // The third written out, whatever the case.
    ['IIm7 V7 Ima7', 'C major', 'Dm7 G7 Cmaj7'],
    ['VIm iim7 V7 I-6', 'C major', 'Am Dm7 G7 Cm6'],
    ['viidim7 #IVdim7 iimin7b5', 'C major', 'Bdim7 F♯dim7 Dm7♭5'],
    ['VIIdim7 Im', 'A minor', 'G♯dim7 Am'],
    // Signs that look alike: a minus, a hyphen that breaks no line, an increment for a delta.
    ['vi−ii‑V−I', 'C major', 'Am Dm G C'],
    ['C∆7 CMaj7 Cma7 CmMaj7 C-7b5', 'C major', 'Cmaj7 Cmaj7 Cmaj7 Cm(maj7) Cm7♭5'],
  ])('%s in %s is %s', (text, key, chords) => {
    expect(read(text, key)).toBe(chords);
  });

  // Source: common practice (a hyphen is a minor sign in chord symbols, and a separator between them).
  test.each([
    ['C-7 F-7', 'Cm7 Fm7'],
    ['C-7-F-7', 'Cm7 Fm7'],
    ['Dm7-G7-Cmaj7', 'Dm7 G7 Cmaj7'],
    ['A-D-E', 'A D E'],
    ['A- D- E', 'Am Dm E'],
    ['A- - D-', 'Am Dm'],
    ['A -D -E', 'A D E'],
    ['A--D', 'A D'],
    ['A - D - E', 'A D E'],
    ['Dm7- | -G7-', 'Dm7 G7'],
    ['Dm7- G7', 'Dm7 G7'],
    ['- Dm7 -', 'Dm7'],
    ['Bm7-5 E7', 'Bm7♭5 E7'],
    ['C m7 F 7', 'Cm7 F7'],
    ['C7 b9', 'C7♭9'],
    ['C B5', 'C B5'],
    ['C -7', 'Cm7'],
  ])('a gap or hyphen in %s: %s', (text, chords) => {
    expect(read(text)).toBe(chords);
  });

  test.each<[NoteNaming, string, string]>([
    ['german', 'Hm7 E7 A', 'Bm7 E7 A'],
    ['german', 'B Es F7', 'B♭ E♭ F7'],
    ['german', 'I/H V', 'C/B G'],
    ['solfege', 're m7 sol 7 do maj7', 'Dm7 G7 Cmaj7'],
    ['solfege', 'rem7-sol7-do', 'Dm7 G7 C'],
    ['solfege', 'si♭ I/mi', 'B♭ C/E'],
    ['solfege', 'ré m7 RÉ7/fa#', 'Dm7 D7/F♯'],
    // The longest name there is.
    ['solfege', 'sol## m(maj7)♭5/sol##', 'G𝄪m(maj7)♭5/G𝄪'],
  ])('%s names: %s', (naming, text, chords) => {
    expect(read(text, 'C major', naming)).toBe(chords);
  });

  test('a chord has the numeral that says it, and keeps its name where none does', () => {
    expect(numerals('Dm7 G7/B C Ab D##', 'C major')).toBe('ii7 V7/B I ♭VI D𝄪');
    expect(numerals('C E7 Am', 'A minor')).toBe('III V7 i');
  });
});

describe('PROGRESSION-2: numerals that lead to another chord', () => {
  // Source: R. Hutchinson, Music Theory for the 21st-Century Classroom, 17.3 (University of Puget Sound), the cases in C
  // minor and V7/IV; the rest common practice.
  test.each([
    ['V/VII V7/III', 'C minor', 'F B♭7'],
    ['V7/IV', 'C major', 'C7'],
    ['V7/V V', 'C major', 'D7 G'],
    ['V7/vi V/ii', 'C major', 'E7 A'],
    ['vii°7/ii viio/V', 'C major', 'C♯dim7 F♯dim'],
    ['V7/bVII', 'C major', 'F7'],
    ['V7/V/F#', 'C major', 'D7/F♯'],
  ])('%s in %s is %s', (text, key, chords) => {
    expect(read(text, key)).toBe(chords);
  });

  test('the numeral is kept', () => {
    expect(numerals('V7/V viio7/ii V/bVII', 'C major')).toBe('V7/V vii°7/ii V/♭VII');
  });

  test.each([
    // A diminished chord can't be a key (Hutchinson, as above).
    ['V7/vii°', 'vii° is neither a major nor a minor chord'],
    ['IV/V', 'only V and vii° lead to another chord'],
    ['VI/V', 'only V and vii° lead to another chord'],
    ['Vm7/IV', 'only V and vii° lead to another chord'],
    ['V/IX', 'IX'],
    ['V/V/V', 'no chord known'],
  ])('%s is refused', (text, why) => {
    expect(read(text)).toContain(why);
  });
});

describe('what was read is written so that it reads back', () => {
  const alterations: readonly Alteration[] = [-2, -1, 0, 1, 2];
  const notes = fc.record({
    letter: fc.constantFrom(...letters),
    alteration: fc.constantFrom(...alterations),
  });
  const chords = fc.array(
    fc.record(
      { root: notes, quality: fc.constantFrom(...qualityIds), bass: notes },
      { requiredKeys: ['root', 'quality'] },
    ),
    { minLength: 1, maxLength: mostChords },
  );
  const keys = fc.record({ tonic: notes, mode: fc.constantFrom('major' as const, 'minor' as const) });

  test.each(namings)('names and numerals, %s', (naming) => {
    fc.assert(
      fc.property(chords, keys, (some, key) => {
        const expected = some.map((chord) => {
          const numeral = romanOf(key, chord);
          return numeral === undefined ? chord : { ...chord, numeral };
        });
        const named = parseProgression(formatProgression(some, naming), key, naming);
        expect(named).toEqual({ ok: true, value: expected });
        expect(parseProgression(formatNumerals(expected, naming), key, naming)).toEqual(named);
      }),
    );
  });

  test('no name of a chord in any system is a numeral, or the other way round', () => {
    for (const naming of namings)
      for (const letter of letters)
        for (const quality of qualityIds)
          expect(formatChordName({ root: { letter, alteration: -1 }, quality }, naming)).not.toMatch(
            /^[b♭#♯]?[iv]/i,
          );
  });
});

describe('PROGRESSION-1: what is no progression is refused with one sentence', () => {
  test.each([
    ['Dm7 Xq7 C', '“Xq7” is not understood'],
    ['Dm7 G7 H', '“H” is not understood'],
    ['ii iiq', '“iiq” is not understood (“q” after ii is no chord known here)'],
    ['VIII', '“VIII” is not understood'],
    ['C-7-5', '“C-7-5” is not understood'],
    ['C-b5', '“C-b5” is not understood'],
    ['C 7 9', '“9” is not understood'],
    ['C/ |', '“C/” is not understood'],
    ['/', '“/” is not understood'],
    ['', 'There is no chord yet'],
    [' | - , ', 'There is no chord yet'],
    ['🎸 Am', '“🎸” is not understood'],
    ['constructor __proto__', '“constructor” is not understood'],
  ])('%j', (text, start) => {
    const sentence = read(text);
    expect(sentence.startsWith(start)).toBe(true);
    expect(sentence).toMatch(/: write chords like Dm7 G7 C, numerals like ii7 V7 I, or both\.$/);
  });

  test('the reason that a numeral has is told', () => {
    expect(read('bVII', 'A minor')).toContain('“bVII” is not understood (in a minor key VII needs no ♭): ');
  });

  test('its examples can be read in the same system', () => {
    for (const naming of namings) {
      const [, names = '', romans = ''] = /like (.+), numerals like (.+), or both/.exec(
        read('?', 'C major', naming),
      ) ?? [''];
      expect(read(names, 'C major', naming)).toBe('Dm7 G7 C');
      expect(read(romans, 'C major', naming)).toBe('Dm7 G7 C');
    }
  });

  test(`${String(mostChords)} chords are read, one more is not`, () => {
    expect(read('C '.repeat(mostChords)).split(' ')).toHaveLength(mostChords);
    expect(read('C '.repeat(mostChords) + 'Am')).toBe(
      '“Am” is one chord too many: a progression has at most 32.',
    );
  });

  const hostile = [
    ...['x', 'C', 'V', 'b', '-', 'C-', '/', 'C/', 'V/', ' ', 'C ', '|', '(', '7', '🎸', '👩‍👩‍👧', '\u0000', '♭'],
    ...['C - ', '- ', 'C 7 ', 'V 7 ', 'ſ', 'İ'],
  ];
  test.each(hostile)('10,000 times %j gets a short answer', (text) => {
    for (const naming of namings)
      expect(read(text.repeat(10_000), 'C major', naming).length).toBeLessThan(200);
  });

  test('ten times the text takes no more than about ten times as long', () => {
    const timeOf = (length: number) => {
      const times = Array.from({ length: 3 }, () => {
        const start = performance.now();
        for (const text of hostile) read(text.repeat(length));
        return performance.now() - start;
      });
      return Math.min(...times);
    };
    timeOf(500);
    // A quadratic reader would take a hundred times as long; the rest is room for a busy machine.
    expect(timeOf(10_000)).toBeLessThan(40 * timeOf(1000) + 5);
  });

  test('whatever is typed gets chords or one sentence', () => {
    const typed = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc
        .array(fc.constantFrom(...'ABCGmiIVv7-/ |,b#°ø+(9)sol'), { maxLength: 30 })
        .map((some) => some.join('')),
    );
    fc.assert(
      fc.property(typed, fc.constantFrom(...namings), (text, naming) => {
        const found = parseProgression(text, keyNamed('E minor'), naming);
        if (found.ok) expect(found.value.length).toBeGreaterThan(0);
        else expect(found.error).toMatch(/\.$/);
      }),
      { numRuns: 150 },
    );
  });
});
