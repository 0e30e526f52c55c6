import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { formatChordName, qualityIds } from '../../../shared/theory/chord-name.ts';
import { formatNoteName, letters, parseNoteName, type Alteration } from '../../../shared/theory/pitch.ts';
import { romanChord, romanOf, type RomanKey } from '../../../shared/theory/roman.ts';

/** 49 more cases, computed apart, in tests/references/theory/spelling.test.ts. */
const key = (tonic: string, mode: RomanKey['mode']): RomanKey => ({
  tonic: known(parseNoteName(tonic), tonic),
  mode,
});
const named = (where: RomanKey, numeral: string) => {
  const read = romanChord(where, numeral);
  return read.ok ? formatChordName(read.value, 'english') : read.error;
};

// Source: common practice.
describe('SPELL-3: roman numerals', () => {
  test.each([
    ['I', 'C'],
    ['ii7', 'Dm7'],
    ['V7', 'G7'],
    ['V9', 'G9'],
    ['V7♭9', 'G7♭9'],
    ['Vsus4', 'Gsus4'],
    ['♭VII', 'B♭'],
    ['bVII7', 'B♭7'],
    ['♯iv°', 'F♯dim'],
    ['#ivø7', 'F♯m7♭5'],
    ['viio7', 'Bdim7'],
    ['III+', 'Eaug'],
    ['imaj7', 'Cm(maj7)'],
    ['V5', 'G5'],
  ])('%s in C major is %s', (numeral, chord) => {
    expect(named(key('C', 'major'), numeral)).toBe(chord);
  });

  test.each([
    ['i', 'Am'],
    ['ii°', 'Bdim'],
    ['iiø7', 'Bm7♭5'],
    ['III', 'C'],
    ['III+', 'Caug'],
    ['v', 'Em'],
    ['V7', 'E7'],
    ['VI', 'F'],
    ['VII', 'G'],
    ['VII7', 'G7'],
    ['vii°', 'G♯dim'],
    ['vii°7', 'G♯dim7'],
    ['♭II', 'B♭'],
    ['♯vi°', 'F♯dim'],
    ['♯viø7', 'F♯m7♭5'],
  ])('%s in A minor is %s', (numeral, chord) => {
    expect(named(key('A', 'minor'), numeral)).toBe(chord);
  });

  test.each([
    ['major', '', 'no roman numeral'],
    ['major', 'VIII', 'no roman numeral'],
    ['major', 'iV', 'no chord known'],
    ['major', 'IIV', 'no roman numeral'],
    ['major', 'iiq', 'no chord known'],
    ['major', 'II°', 'no chord known'],
    ['major', 'iii+', 'no chord known'],
    ['major', 'vsus4', 'no chord known'],
    ['minor', '♭VII', 'needs no ♭'],
    ['minor', 'bVI', 'needs no ♭'],
    ['minor', '♯vii°7', 'needs no ♯'],
  ] as const)('in %s %j is refused', (mode, numeral, why) => {
    const read = romanChord(key('C', mode), numeral);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.error).toMatch(new RegExp(`${why}.*\\.$`));
  });

  test('a triple accidental is refused', () => {
    expect(romanChord(key('Fbb', 'major'), '♭II').ok).toBe(false);
  });

  test('whatever a numeral says reads back, on every usual tonic, in both modes', () => {
    const roots = letters.flatMap((letter) =>
      ([-1, 0, 1] as readonly Alteration[]).map((alteration) => ({ letter, alteration })),
    );
    let said = 0;
    for (const tonic of 'C G D A E B F# F Bb Eb Ab Db'.split(' '))
      for (const mode of ['major', 'minor'] as const)
        for (const root of roots)
          for (const quality of qualityIds) {
            const where = key(tonic, mode);
            const numeral = romanOf(where, { root, quality });
            if (numeral === undefined) continue;
            said += 1;
            expect([numeral, romanChord(where, numeral)]).toEqual([
              numeral,
              { ok: true, value: { root, quality } },
            ]);
          }
    expect(said).toBeGreaterThan(12 * 2 * 12 * qualityIds.length);
  });

  test('a root that no numeral reaches has none', () => {
    expect(
      romanOf(key('C', 'major'), { root: { letter: 'D', alteration: 2 }, quality: 'major' }),
    ).toBeUndefined();
  });
});

test('SPELL-3: the diatonic triads of both modes', () => {
  const roots = (where: RomanKey, numerals: string) =>
    numerals.split(' ').map((numeral) => {
      const read = romanChord(where, numeral);
      return read.ok ? formatNoteName(read.value.root) : read.error;
    });
  expect(roots(key('Eb', 'major'), 'I ii iii IV V vi vii°').join(' ')).toBe('Eb F G Ab Bb C D');
  expect(roots(key('C#', 'minor'), 'i ii° III iv v VI VII').join(' ')).toBe('C# D# E F# G# A B');
});
