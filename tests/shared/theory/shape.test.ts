import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordSounds } from '../../../shared/theory/chord-rule.ts';
import { chordDegrees } from '../../../shared/theory/chord.ts';
import { pitchClassAt, place, standardGuitar, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { letters, pitchClassOf, type NoteName } from '../../../shared/theory/pitch.ts';
import { formRow, shapeAt } from '../../../shared/theory/shape.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { formTable, type FormId } from '../../../shared/theory/tables/forms.ts';

const f = 7;
/** The root that string 2 has at fret 7. */
const fSharp: NoteName = { letter: 'F', alteration: 1 };

function fretsAt(form: FormId, quality: ChordQuality): readonly (readonly [number, number])[] {
  const row = known(formRow(form, quality, 2 as StringNumber), `${form} ${quality}`);
  const notes = known(shapeAt(standardGuitar, row, fSharp, place(2, f)), 'shape');
  return notes.map(({ place: spot }) => [spot.string, spot.fret]);
}

describe('FORM-1, FORM-3: the root on string 2 at fret f', () => {
  // Source: computed from the tuning; common practice for the C forms.
  test.each<[FormId, ChordQuality, (readonly [number, number])[]]>([
    [
      'triad-321',
      'major',
      [
        [3, f - 1],
        [2, f],
        [1, f - 1],
      ],
    ],
    [
      'triad-321',
      'minor',
      [
        [3, f - 1],
        [2, f],
        [1, f - 2],
      ],
    ],
    [
      'triad-432',
      'major',
      [
        [4, f + 1],
        [3, f - 1],
        [2, f],
      ],
    ],
    [
      'triad-432',
      'minor',
      [
        [4, f],
        [3, f - 1],
        [2, f],
      ],
    ],
    [
      'C',
      'major',
      [
        [5, f + 2],
        [4, f + 1],
        [3, f - 1],
        [2, f],
        [1, f - 1],
      ],
    ],
    [
      'C',
      'minor',
      [
        [5, f + 2],
        [4, f],
        [3, f - 1],
        [2, f],
      ],
    ],
  ])('%s %s', (form, quality, expected) => {
    expect(fretsAt(form, quality)).toEqual(expected);
  });

  // Source: common practice.
  test.each<[FormId, ChordQuality, number]>([
    ['C', 'major', 2],
    ['C', 'minor', 3],
    ['D', 'major', 4],
    ['D', 'minor', 4],
  ])('the %s form in %s takes it with finger %i', (form, quality, finger) => {
    const row = known(formRow(form, quality, 2 as StringNumber), form);
    const notes = known(shapeAt(standardGuitar, row, fSharp, place(2, f)), 'shape');
    expect(notes.find((note) => note.place.string === 2)?.finger).toBe(finger);
  });

  test('the C form in minor leaves string 5 free for a small hand', () => {
    expect(formRow('C', 'minor', 2 as StringNumber)?.optionalStrings).toEqual([5]);
  });
});

describe('FORM-1: every row against its definition', () => {
  const rows = formTable.map((row) => [`${row.form} ${row.quality}`, row] as const);

  test('there are 60, and each form and quality once', () => {
    expect(rows).toHaveLength(60);
    expect(new Set(rows.map(([name]) => name)).size).toBe(60);
  });

  test.each(rows)('%s sounds its chord on every root and every root string, and only it', (_name, row) => {
    let fitted = 0;
    for (const letter of letters)
      for (const rootString of row.rootStrings)
        for (let fret = 0; fret <= standardGuitar.fretCount; fret += 1) {
          const root: NoteName = { letter, alteration: 0 };
          const rootPlace = place(rootString, fret);
          if (pitchClassAt(standardGuitar, rootPlace) !== pitchClassOf(root)) continue;
          const notes = shapeAt(standardGuitar, row, root, rootPlace);
          const lowest = Math.min(...row.frets.filter((one) => one !== null));
          const rootFret = known(row.frets[6 - rootString], 'root');
          const highest = Math.max(...row.frets.filter((one) => one !== null));
          const fits =
            fret - (rootFret - lowest) >= 0 && fret + (highest - rootFret) <= standardGuitar.fretCount;
          expect([letter, rootString, fret, notes !== undefined]).toEqual([letter, rootString, fret, fits]);
          if (!notes) continue;
          fitted += 1;
          const degrees = new Set(notes.map((note) => note.degree));
          expect([...degrees].filter((degree) => !chordDegrees(row.quality).includes(degree))).toEqual([]);
          expect(chordSounds(row.quality, [...degrees], { bass: notes[0]?.degree }).ok).toBe(true);
          // The root strings are all the strings that sound the root.
          const roots = notes.filter((note) => note.degree === '1').map((note) => note.place.string);
          expect(roots).toEqual(row.rootStrings);
          // The rest of the chord stands without what may be left out.
          const kept = new Set(notes.filter((note) => !note.optional).map((note) => note.degree));
          expect(kept.size).toBe(degrees.size);
        }
    expect(fitted).toBeGreaterThan(7);
  });

  test.each(rows)('%s is laid by its fingers: one finger one fret, numbers rise with frets', (_name, row) => {
    const fretted = row.frets.flatMap((fret, index) =>
      fret === null ? [] : [{ fret, finger: row.fingers[index] ?? 0 }],
    );
    expect(fretted.every(({ finger }) => finger >= 1 && finger <= 4)).toBe(true);
    for (const a of fretted)
      for (const b of fretted) {
        if (a.finger === b.finger) expect(a.fret).toBe(b.fret);
        if (a.fret < b.fret) expect(a.finger).toBeLessThan(b.finger);
      }
    expect(row.frets.length).toBe(6);
    // A finger on several strings lies across those between: none of them sounds open or on a lower fret.
    for (const [low, finger] of row.fingers.entries()) {
      const high = row.fingers.lastIndexOf(finger);
      const under = row.frets.slice(low, high + 1).filter((fret) => fret !== null);
      if (finger > 0) expect(Math.min(...under)).toBe(row.frets[low]);
    }
  });

  // Source: common practice; the E and A forms of a root on fret 3 of string 6 and fret 3 of string 5.
  test.each<[FormId, ChordQuality, string]>([
    ['E', '7', '353433'],
    ['E', 'm7', '353333'],
    ['A', '7', 'x35353'],
    ['A', 'm7', 'x35343'],
    ['C', '7', 'x3231x'],
    ['C', '9', 'x32333'],
  ])('%s %s is %s', (form, quality, frets) => {
    const row = known(
      formTable.find((one) => one.form === form && one.quality === quality),
      form,
    );
    const lowest = Math.min(...[...frets].filter((fret) => fret !== 'x').map(Number));
    expect(row.frets.map((fret) => (fret === null ? 'x' : fret + lowest - 1)).join('')).toBe(frets);
  });
});

test('FORM-1: no row, no form', () => {
  expect(formRow('C', 'dim', 2 as StringNumber)).toBeUndefined();
  expect(formRow('C', 'major', 4 as StringNumber)).toBeUndefined();
});
