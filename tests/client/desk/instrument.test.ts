import { describe, expect, test } from 'vitest';
import {
  fieldsOf,
  instrumentIn,
  isOwnTuning,
  tuningGroups,
} from '../../../client/pages/desk/instrument/fields.ts';
import { readTuning, tuningText } from '../../../client/pages/desk/instrument/tuning-text.ts';
import { instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { formatPitch } from '../../../shared/theory/pitch.ts';

const guitar = standardGuitar.openStrings;
const namings: readonly NoteNaming[] = ['english', 'german', 'solfege'];

/** What is read, from string 1 on, or the sentence that refuses it. */
function read(text: string, naming: NoteNaming = 'english', like = guitar): string {
  const strings = readTuning(text, naming, like);
  return strings.ok ? strings.value.map(formatPitch).join(' ') : strings.error;
}

describe('open strings as a teacher writes them, lowest first', () => {
  test('with their octaves', () => {
    expect(read('E2 A2 D3 G3 B3 E4')).toBe('E4 B3 G3 D3 A2 E2');
    expect(read('Eb2 Ab2 Db3 Gb3 Bb3 Eb4')).toBe('Eb4 Bb3 Gb3 Db3 Ab2 Eb2');
  });

  test('without them, nearest to the strings chosen before', () => {
    expect(read('E A D G B E')).toBe('E4 B3 G3 D3 A2 E2');
    // C is nearer to E2 than to the C above it, D nearer to E4 than to the D below G3 (computed).
    expect(read('C G D G B D')).toBe('D4 B3 G3 D3 G2 C2');
    expect(read('G C E A', 'english', instrumentById('ukulele')?.openStrings)).toBe('A4 E4 C4 G4');
  });

  test('without them and with another number of strings, each above the one before', () => {
    expect(read('B E A D G B E')).toBe('E4 B3 G3 D3 A2 E2 B1');
    expect(read('E1 A D G')).toBe('G2 D2 A1 E1');
  });

  test('in the teacher’s own naming', () => {
    expect(read('E A D G H E', 'german')).toBe('E4 B3 G3 D3 A2 E2');
    expect(read('Es B Des Ges B Es', 'german')).toBe('Eb4 Bb3 Gb3 Db3 Bb2 Eb2');
    expect(read('mi la re sol si mi', 'solfege')).toBe('E4 B3 G3 D3 A2 E2');
  });

  test('what is no note is said as it was typed', () => {
    expect(read('E A D X B E')).toBe('“X” is no open string. Write its note, as in E A D G B E.');
    expect(read('E A D G Q E', 'german')).toBe('“Q” is no open string. Write its note, as in E A D G H E.');
  });

  test.each(tuningIds)('what is written of %s reads back, in every naming', (id) => {
    const strings = instrumentById(id)?.openStrings ?? [];
    for (const naming of namings)
      expect(read(tuningText(strings, naming), naming)).toBe(strings.map(formatPitch).join(' '));
  });
});

describe('the picker’s fields', () => {
  const ids = [
    ...tuningIds,
    'guitar+capo=2',
    'guitar-drop-d+capo=3+frets=22+scale=628',
    'custom:D4-B3-G3-D3-G4+frets=22+scale=670',
    'custom:E4-B3-G3-D3-A2-E2-B1-E1+scale=650.5',
  ];

  test.each(ids)('hold %s and give it back', (id) => {
    expect(instrumentById(id), id).toBeDefined();
    for (const naming of namings)
      expect(instrumentIn(fieldsOf(id, naming), naming)).toEqual({ ok: true, value: id });
  });

  test('strings of one’s own make a tuning of one’s own, and those of the row the row again', () => {
    const fields = fieldsOf('guitar', 'english');
    const own = { ...fields, strings: 'C G D G B D' };
    expect(isOwnTuning(own, 'english')).toBe(true);
    expect(instrumentIn(own, 'english')).toEqual({ ok: true, value: 'custom:D4-B3-G3-D3-G2-C2' });
    const back = { ...own, strings: 'e a d g b e' };
    expect(isOwnTuning(back, 'english')).toBe(false);
    expect(instrumentIn(back, 'english')).toEqual({ ok: true, value: 'guitar' });
  });

  test('an empty number is the usual one', () => {
    const fields = { ...fieldsOf('bass-4', 'english'), capo: '', frets: ' ', scale: '' };
    expect(instrumentIn(fields, 'english')).toEqual({ ok: true, value: 'bass-4' });
  });

  test('a number that can’t be, and a number that is none, are said in a sentence', () => {
    const fields = fieldsOf('guitar', 'english');
    expect(instrumentIn({ ...fields, capo: '18' }, 'english')).toEqual({
      ok: false,
      error: 'A capo leaves at least 5 frets to play.',
    });
    expect(instrumentIn({ ...fields, frets: 'many' }, 'english')).toEqual({
      ok: false,
      error: 'Capo, frets and scale length are plain numbers.',
    });
    expect(instrumentIn({ ...fields, strings: 'E A' }, 'english')).toMatchObject({ ok: false });
  });
});

test('every tuning can be chosen, once', () => {
  const offered = tuningGroups.flatMap(({ tunings }) => tunings);
  expect([...offered].sort()).toEqual([...tuningIds].sort());
});
