import { describe, expect, test, vi } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { build, find, name } from '../../support/exercises.ts';
import { everyPlace, exercisesFor, midi, range, roots } from './making.ts';

// Whole necks are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

describe('KEY-2: the key of every exercise that can be asked is right', () => {
  test.each(roots.map((root) => [root]))(
    'root %s, every string, form, voicing, scale and strictness',
    (root) => {
      let asked = 0;
      for (const exercise of exercisesFor([root])) {
        if (!checkExercise(exercise).ok) continue;
        asked += 1;
        const key = answerKey(exercise);
        const places = key.map((one) => one.place);
        expect([exercise, places.length > 0]).toEqual([exercise, true]);
        expect([exercise, judge(exercise, { places }).kind]).toEqual([exercise, 'right']);
        // On every place alone for a note that is found.
        if (exercise.kind === 'find')
          for (const spot of places) expect(judge(exercise, { places: [spot] }).kind).toBe('right');
      }
      expect(asked).toBeGreaterThan(1000);
    },
  );
});

describe('KEY-1', () => {
  test('find: every right place, and only those', () => {
    const key = answerKey(find('D', { strictness: 'anywhere' })).map((one) => one.place);
    expect(key).toHaveLength(everyPlace.filter((spot) => midi(spot) % 12 === 2).length);
    expect(key.every((spot) => midi(spot) % 12 === 2)).toBe(true);
  });

  test('every place where all of them are wanted, and the name of a place beside it', () => {
    const every = find('D', { strictness: 'anywhere', wanted: 'every' });
    expect(judge(every, { places: answerKey(every).map((one) => one.place) }).kind).toBe('right');
    expect(answerKey(name('C', 4, { wanted: 'degree' }))).toEqual([{ place: place(2, 4), degree: 'b3' }]);
    expect(answerKey(name('Eb', 4))).toEqual([{ place: place(2, 4), degree: '1' }]);
  });

  test('a form that needs a fret before the nut is shown twelve frets up', () => {
    const openB = build('B', 'major', { voicing: { kind: 'form', form: 'C', full: false } });
    expect(answerKey(openB).find((one) => one.place.string === 2)?.place.fret).toBe(12);
    const c = build('C', 'major', { voicing: { kind: 'form', form: 'C', full: false } });
    expect(answerKey(c).map((one) => one.place.fret)).toEqual([3, 2, 0, 1, 0]);
  });

  test('it holds degree, finger and what may be left out', () => {
    const key = answerKey(build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: false } }));
    expect(
      key.map((one) => [one.place.string, one.place.fret, one.degree, one.finger, one.optional]),
    ).toEqual([
      [5, 7, '1', 4, true],
      [4, 5, 'b3', 2, undefined],
      [3, 4, '5', 1, undefined],
      [2, 5, '1', 3, undefined],
    ]);
  });

  test('the range bounds the root of a form on its string, and all of it where every fret is asked for', () => {
    const form = { kind: 'form', form: 'C', full: false } as const;
    expect(answerKey(build('D', 'major', { voicing: form, range: range(3, 3) }))[0]?.place.fret).toBe(5);
    expect(
      checkExercise(build('D', 'major', { voicing: form, range: range(3, 3), strictness: 'range' })).ok,
    ).toBe(false);
  });
});
