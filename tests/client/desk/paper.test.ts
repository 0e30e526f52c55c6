import { describe, expect, test } from 'vitest';
import { cellKey, keepDraft, newDraft, readDraft } from '../../../client/pages/desk/paper/draft.ts';
import { pastedCells } from '../../../client/pages/desk/paper/pasted.ts';
import { cellHint, readCell } from '../../../client/pages/desk/paper/read-cell.ts';
import { Reader, resultsIn } from '../../../client/pages/desk/paper/results.ts';
import { memoryStore } from '../../../client/lib/key-store.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { build, find, name, places, scale } from '../../support/exercises.ts';

const answer = (exercise: Exercise, text: string, naming: NoteNaming = 'english') => {
  const read = readCell(exercise, text, naming);
  return read.ok ? read.value : read.error;
};

const everyD = find('D', { strictness: 'anywhere', wanted: 'every' });
const chord = build('E', 'minor', { voicing: { kind: 'any' } });

describe('PAPER-5: what is typed for what was written', () => {
  test('a fret on the asked string, or string and fret where any string is allowed', () => {
    expect(answer(find('D'), ' 10 ')).toEqual({ places: places([2, 10]) });
    expect(answer(find('D'), '3/7')).toEqual({ places: places([3, 7]) });
    expect(answer(find('D'), '3 15')).toEqual({ places: places([2, 3], [2, 15]) });
    expect(answer(everyD, '2/3, 3:7')).toEqual({ places: places([2, 3], [3, 7]) });
    expect(answer(everyD, '10')).toBe('Write string/fret, such as 3/5.');
    expect(answer(find('D'), 'ten')).toBe('“ten” is no fret.');
    expect(answer(find('D'), '40')).toBe('String 2, fret 40 is not on this neck.');
    expect(answer(everyD, '7/3')).toBe('String 7, fret 3 is not on this neck.');
  });

  test('a fret or x for every string of a chord, from the thickest', () => {
    const written = places([5, 7], [4, 5], [3, 4], [2, 5]);
    expect(answer(chord, 'x 7 5 4 5 x')).toEqual({ places: written });
    expect(answer(chord, 'X7545x')).toEqual({ places: written });
    expect(answer(chord, '12 14 14 12 12 12')).toMatchObject({ places: { length: 6 } });
    expect(answer(chord, '7 5 4 5')).toBe('Write a fret or x for each of six strings.');
    expect(answer(chord, 'x x x x x x')).toContain('Every string is silent.');
    const bass = build('E', 'minor', { instrument: 'bass-4', voicing: { kind: 'any' } });
    expect(answer(bass, 'x 7 5 4')).toEqual({ places: places([3, 7], [2, 5], [1, 4]) });
  });

  test('a name in the naming of the group, SPEC PITCH-3', () => {
    const bFlat = { kind: 'note', note: { letter: 'B', alteration: -1 } };
    expect(answer(name('Bb', 11), 'Bb')).toEqual({ places: [], named: bFlat });
    expect(answer(name('Bb', 11), 'b', 'german')).toEqual({ places: [], named: bFlat });
    expect(answer(name('Bb', 11), 'si♭', 'solfege')).toEqual({ places: [], named: bFlat });
    expect(answer(name('Bb', 11), 'h')).toBe('“h” is no such name.');
    const degree = name('E', 8, { wanted: 'degree' });
    for (const text of ['b3', '♭3', 'minor third'])
      expect(answer(degree, text)).toEqual({ places: [], named: { kind: 'degree', degree: 'b3' } });
    expect(answer(degree, 'R')).toEqual({ places: [], named: { kind: 'degree', degree: '1' } });
  });

  test('+ and - for everything; a scale, and what asks for more than places, takes nothing else', () => {
    const box = scale('A', 'minor-pentatonic', 1, 10);
    for (const exercise of [find('D'), chord, name('E', 5), box]) {
      expect(answer(exercise, '+')).toEqual({ places: [], teacherSays: 'right' });
      for (const minus of ['-', '−', '–'])
        expect(answer(exercise, minus)).toEqual({ places: [], teacherSays: 'not-yet' });
      expect(answer(exercise, '  ')).toBeNull();
    }
    expect(answer(box, '10')).toBe('Write + or -.');
    expect(answer(build('E', 'minor', { marksRoot: true }), 'x x x 4 5 3')).toBe('Write + or -.');
  });

  test('the column says how it is written, and what it says can be read', () => {
    expect(cellHint(find('D'), 'english')).toBe('fret on string 2');
    expect(cellHint(everyD, 'english')).toBe('string/fret');
    expect(cellHint(chord, 'english')).toBe('fret or x, from string 6');
    expect(cellHint(name('E', 5), 'german')).toBe('note, such as B');
    expect(cellHint(scale('A', 'minor-pentatonic', 1, 10), 'english')).toBe('+ or -');
  });
});

test('ANSWER-6: what the teacher marked is right, or has no named slip', () => {
  const box = scale('A', 'minor-pentatonic', 1, 10);
  expect(judge(box, { places: [], teacherSays: 'right' })).toEqual({ kind: 'right' });
  expect(judge(box, { places: [], teacherSays: 'not-yet' }).kind).toBe('unnamed');
});

test('cells copied from a spreadsheet come as rows and columns', () => {
  expect(pastedCells('3\t5\r\n10\t+\r\n')).toEqual([
    ['3', '5'],
    ['10', '+'],
  ]);
  expect(pastedCells('3\t\t5')).toEqual([['3', '', '5']]);
  expect(pastedCells('3\n\n5')).toEqual([['3'], [''], ['5']]);
});

describe('the draft', () => {
  const students = ['kaya', 'bram'].map((id) => ({
    ...{ id, name: id, seatNumber: null, alias: null, team: null, moreTime: 1 },
  }));
  const planned = (id: string, exercise: Exercise, harder: readonly Exercise[] = []) =>
    ({ id, part: 'new', exercise, harder, seconds: null }) as const;
  const exercises = [planned('one', find('D'), [find('F')]), planned('two', chord)];

  test('holds results at the level of each row, as hard as there is one; and counts what can’t be read', () => {
    const draft = {
      ...newDraft('2026-11-25'),
      cells: {
        [cellKey('kaya', 'one')]: '6',
        [cellKey('kaya', 'two')]: '+',
        [cellKey('bram', 'one')]: '3',
        [cellKey('bram', 'two')]: '5',
        [cellKey('gone', 'one')]: '3',
      },
      levels: { kaya: 3 },
    } as const;
    expect(resultsIn(draft, students, exercises, new Reader('english'))).toEqual({
      results: [
        {
          studentId: 'kaya',
          answers: [
            { exerciseId: 'one', places: places([2, 6]), level: 2 },
            { exerciseId: 'two', places: [], teacherSays: 'right' },
          ],
        },
        { studentId: 'bram', answers: [{ exerciseId: 'one', places: places([2, 3]) }] },
      ],
      answers: 3,
      unread: 1,
    });
  });

  test('PAPER-3: is kept on the device as it is, with its id', () => {
    const storage = memoryStore();
    const draft = { ...newDraft('2026-11-25'), cells: { 'kaya one': '3' } };
    keepDraft(storage, 'plan', draft);
    expect(readDraft(storage, 'plan')).toEqual(draft);
    expect(readDraft(storage, 'other')).toBeNull();
    storage.set('rootcall.desk.paper.plan', 'no draft');
    expect(readDraft(storage, 'plan')).toBeNull();
  });
});
