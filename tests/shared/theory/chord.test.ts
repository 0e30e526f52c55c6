import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, degreeAt, notesOn, scaleDegrees } from '../../../shared/theory/chord.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { chordSounds, neededDegrees } from '../../../shared/theory/chord-rule.ts';
import { semitonesOf, type Degree } from '../../../shared/theory/interval.ts';
import { parseNoteName, pitchClass, pitchClassOf } from '../../../shared/theory/pitch.ts';
import { chordTable } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

const note = (text: string) => known(parseNoteName(text), text);
const usualRoots = 'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B Cb'.split(' ');

/** Every set of tones of a formula, the empty one left out. */
function subsets(degrees: readonly Degree[]): readonly (readonly Degree[])[] {
  return degrees
    .reduce<readonly (readonly Degree[])[]>(
      (sets, degree) => sets.flatMap((set) => [set, [...set, degree]]),
      [[]],
    )
    .filter((set) => set.length > 0);
}

/** Formulas and scales are held against outside sources in tests/references. */
describe('PITCH-2: spelled by degree', () => {
  test('every scale on every usual root without a triple accidental', () => {
    for (const scale of Object.keys(scaleTable) as ScaleId[])
      for (const root of usualRoots)
        expect([scale, root, notesOn(note(root), scaleDegrees(scale))?.length]).toEqual([
          scale,
          root,
          scaleTable[scale].length,
        ]);
  });

  test('every chord on every usual root, but for the double flat seventh of C♭', () => {
    const refused = qualityIds.flatMap((quality) =>
      usualRoots.filter((root) => !notesOn(note(root), chordDegrees(quality))).map((root) => root + quality),
    );
    expect(refused).toEqual(['Cbdim7']);
  });

  test('a triple accidental is refused, not bent', () => {
    expect(notesOn(note('B##'), chordDegrees('aug'))).toBeUndefined();
    expect(notesOn(note('Fbb'), chordDegrees('minor'))).toBeUndefined();
  });
});

test('SCALE-1: 20 scales, each from its root upward, and no two the same', () => {
  const rows = Object.values(scaleTable).map((degrees) => degrees.map(semitonesOf));
  expect(rows).toHaveLength(20);
  for (const row of rows) {
    expect(row[0]).toBe(0);
    expect(row).toEqual([...new Set(row)].sort((a, b) => a - b));
    expect(Math.max(...row)).toBeLessThan(12);
    // The hand's four frets hold a tone of it on every string.
    const steps = row.map((one, index) => (row[index + 1] ?? 12) - one);
    expect(Math.max(...steps)).toBeLessThanOrEqual(4);
  }
  expect(new Set(rows.map(String)).size).toBe(20);
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
    for (const quality of qualityIds) {
      const found = Array.from({ length: 12 }, (_, semitones) =>
        degreeAt(note('Eb'), chordDegrees(quality), pitchClass(semitones)),
      ).filter((degree) => degree !== undefined);
      expect([...found].sort()).toEqual([...chordDegrees(quality)].sort());
    }
  });
});

describe('CHORD-2, 3, 5, 6: what may be left out', () => {
  test.each(qualityIds)('%s, every set of its tones over every bass', (quality) => {
    const { degrees, optional } = chordTable[quality];
    for (const sounding of subsets(degrees))
      for (const bass of [...sounding, undefined]) {
        const silent = degrees.filter((degree) => !sounding.includes(degree));
        const has = (degree: Degree) => !silent.includes(degree);
        // The rule in its own words, tone by tone.
        const mayGo = (degree: Degree): boolean => {
          if (degree === '1') return degrees.length >= 5 && silent.length === 1;
          if (degree === '5') return degrees.length >= 4 && (!/^m?6$/.test(quality) || bass === '1');
          if (quality === '11' && (degree === '3' || degree === '9')) return has('3') || has('9');
          return optional.includes(degree);
        };
        const wanted = silent.every(mayGo);
        const sound = chordSounds(quality, sounding, { bass });
        expect([sounding, bass, sound.ok]).toEqual([sounding, bass, wanted]);
        if (sound.ok) {
          expect(sound.omitted).toEqual(silent);
          expect(sound.inversion).toBe(bass !== '1');
        } else {
          // Enough to make it right, and nothing that sounds already.
          expect(sound.missing.length).toBeGreaterThan(0);
          expect(sound.missing.every((degree) => silent.includes(degree))).toBe(true);
          expect(chordSounds(quality, [...sounding, ...sound.missing], { bass }).ok).toBe(true);
        }
      }
  });

  test('doublings change nothing', () => {
    expect(chordSounds('minor', ['1', '5', '1', 'b3', '5'], { bass: '1' })).toEqual(
      chordSounds('minor', ['1', 'b3', '5'], { bass: '1' }),
    );
  });

  test.each<[string, Parameters<typeof chordSounds>, boolean]>([
    ['a triad needs its fifth', ['major', ['1', '3'], { bass: '1' }], false],
    ['a power chord needs both', ['5', ['1'], { bass: '1' }], false],
    ['7 without fifth', ['7', ['1', '3', 'b7'], { bass: '3' }], true],
    ['6 without fifth over its root', ['6', ['1', '3', '6'], { bass: '1' }], true],
    ['6 without fifth over the sixth is another minor triad', ['6', ['1', '3', '6'], { bass: '6' }], false],
    ['9 without root', ['9', ['3', '5', 'b7', '9'], { bass: '3' }], true],
    ['9 without root and fifth', ['9', ['3', 'b7', '9'], { bass: '3' }], false],
    ['7 without root', ['7', ['3', '5', 'b7'], { bass: '3' }], false],
    ['11 without 3', ['11', ['1', '5', 'b7', '9', '11'], { bass: '1' }], true],
    ['11 without 3 and 9', ['11', ['1', '5', 'b7', '11'], { bass: '1' }], false],
    ['m11 without ♭3', ['m11', ['1', '5', 'b7', '9', '11'], { bass: '1' }], false],
    ['13 without 5, 9 and 11', ['13', ['1', '3', 'b7', '13'], { bass: '1' }], true],
    ['7♭9 without ♭9', ['7b9', ['1', '3', '5', 'b7'], { bass: '1' }], false],
  ])('%s', (_name, given, wanted) => {
    expect(chordSounds(...given).ok).toBe(wanted);
  });
});

describe('CHORD-8: a voicing that we make up', () => {
  test.each(qualityIds)(
    '%s: the needed tones are the chord over any of them, and with any others',
    (quality) => {
      const degrees = chordDegrees(quality);
      const needed = neededDegrees(quality);
      expect(needed).toContain('1');
      for (const sounding of subsets(degrees))
        if (needed.every((degree) => sounding.includes(degree)))
          for (const bass of sounding)
            expect([sounding, bass, chordSounds(quality, sounding, { bass }).ok]).toEqual([
              sounding,
              bass,
              true,
            ]);
    },
  );

  test('as players choose', () => {
    expect(neededDegrees('major')).toEqual(['1', '3', '5']);
    expect(neededDegrees('maj7')).toEqual(['1', '3', '7']);
    expect(neededDegrees('m6')).toEqual(['1', 'b3', '5', '6']);
    expect(neededDegrees('9b5')).toEqual(['1', '3', 'b5', 'b7', '9']);
    expect(neededDegrees('11')).toEqual(['1', '3', 'b7', '11']);
    expect(neededDegrees('13')).toEqual(['1', '3', 'b7', '13']);
  });
});
