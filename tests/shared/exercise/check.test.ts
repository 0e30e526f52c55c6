import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { build, find, scale } from '../../support/exercises.ts';
import { exercisesFor, range, strings } from './making.ts';

const form = (id: 'C' | 'E') => ({ kind: 'form', form: id, full: false }) as const;
const on = (...numbers: number[]) => ({ kind: 'strings', strings: strings(...numbers) }) as const;
const [six] = strings(6);
const [nine] = strings(9);
const [none] = strings(0);

describe('CHECK-2: what can’t be asked is refused with a sentence', () => {
  test.each<[string, Exercise, RegExp]>([
    ['an unknown instrument', find('D', { instrument: 'lute' }), /instrument/],
    ['a string that is not there', find('D', { rootString: nine }), /no string 9/],
    ['string 0', find('D', { rootString: none }), /no string 0/],
    ['frets in the wrong order', find('D', { range: range(9, 2) }), /above the highest/],
    ['frets past the neck', find('D', { range: range(2, 20) }), /ends at fret 19/],
    ['frets before the nut', find('D', { range: range(-1, 5) }), /nut/],
    ['place without frets', find('D', { strictness: 'place' }), /which frets/],
    ['range without frets', find('D', { strictness: 'range' }), /which frets/],
    ['place with two roots', find('D', { strictness: 'place', range: range(0, 19) }), /twice/],
    ['place without a root', find('D', { strictness: 'place', range: range(4, 8) }), /does not lie there/],
    ['string without a root in the frets', find('D', { range: range(4, 8) }), /does not lie there/],
    ['a root that needs a triple accidental', build('B##', 'aug'), /Respell/],
    ['a scale that needs one', scale('G##', 'major', 2, 10), /Respell/],
    ['a form that this quality lacks', build('E', 'dim', { voicing: form('C') }), /no such chord/],
    ['a form without a root there', build('E', 'major', { voicing: form('E') }), /string 2/],
    ['a string named twice', build('E', 'major', { voicing: on(3, 3, 2) }), /twice/],
    [
      'a string of the voicing that is not there',
      build('E', 'major', { voicing: on(9, 3, 2) }),
      /no string 9/,
    ],
    ['too few strings', build('E', 'major', { voicing: on(3, 2) }), /more tones/],
    ['the root string not among the strings', build('E', 'major', { voicing: on(5, 4, 3) }), /not among/],
    [
      'the open root of a form',
      build('B', 'major', { voicing: form('C'), strictness: 'place', range: range(0, 4) }),
      /Twelve frets up it fits/,
    ],
    [
      'a form past the last fret',
      build('F#', 'major', { voicing: form('C'), strictness: 'place', range: range(18, 19) }),
      /Twelve frets down it fits/,
    ],
    ['a position before the nut', scale('B', 'major', 2, 0), /Twelve frets up it fits/],
    ['a position past the neck', scale('F', 'major', 2, 18), /Twelve frets down it fits/],
    [
      'every pitch anywhere',
      { ...scale('E', 'major', 2, 5), strictness: 'anywhere', range: null },
      /every note name/,
    ],
    [
      'a range without the whole scale',
      { ...scale('E', 'major', 2, 5), strictness: 'range', coverage: 'every-tone', range: range(5, 5) },
      /No hand position/,
    ],
    [
      'a chord that no hand holds in the range',
      build('E', 'major', { strictness: 'range', range: range(1, 1), voicing: { kind: 'any' } }),
      /does not lie there|No hand position/,
    ],
  ])('%s', (_name, exercise, sentence) => {
    const checked = checkExercise(exercise);
    expect(checked.ok ? 'can be asked' : checked.error).toMatch(sentence);
  });
});

describe('CHECK-1', () => {
  test.each<[string, Exercise]>([
    ['find on a string', find('D')],
    ['find in a place', find('D', { strictness: 'place', range: range(0, 11) })],
    ['a triad', build('E', 'minor')],
    ['the E form from string 6', build('F', 'major', { voicing: form('E'), rootString: six })],
    ['a position', scale('E', 'major', 2, 5)],
    ['every note of some frets', { ...scale('E', 'major', 2, 5), strictness: 'range', range: range(5, 5) }],
    [
      'any voicing in few frets: four strings, root lowest',
      build('A', 'major', { strictness: 'range', range: range(2, 2), voicing: { kind: 'any' } }),
    ],
  ])('%s can be asked', (_name, exercise) => {
    expect(checkExercise(exercise)).toEqual({ ok: true, value: exercise });
  });

  test('whatever is refused is refused with a sentence for a person, and nothing is thrown', () => {
    let refused = 0;
    for (const exercise of exercisesFor(['E', 'Bb'])) {
      const checked = checkExercise(exercise);
      if (checked.ok) continue;
      refused += 1;
      expect(checked.error).toMatch(/^[A-Z].*\.$/);
      expect(checked.error).not.toMatch(/wrong|fail|!|undefined/i);
    }
    expect(refused).toBeGreaterThan(50);
  });
});
