import { describe, expect, test } from 'vitest';
import type { BuildExercise, FindExercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { explain } from '../../../shared/exercise/explain.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { known } from '../../../shared/lib/assert.ts';
import { place, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';

const note = (text: string) => known(parseNoteName(text), text);
const two = 2 as StringNumber;
const fret = (n: number) => n as Fret;

const find = (root: string, fields: Partial<FindExercise> = {}): FindExercise => ({
  kind: 'find',
  instrument: 'guitar',
  root: note(root),
  rootString: two,
  strictness: 'string',
  range: null,
  ...fields,
});
const triad = (
  root: string,
  quality: BuildExercise['quality'],
  fields: Partial<BuildExercise> = {},
): BuildExercise => ({
  ...find(root),
  kind: 'build',
  quality,
  voicing: { kind: 'form', form: 'triad-321', full: false },
  ...fields,
});
const scale = (root: string, id: ScaleExercise['scale'], rootFinger: 1 | 2, at: number): ScaleExercise => ({
  ...find(root),
  kind: 'scale',
  scale: id,
  rootFinger,
  coverage: 'every-pitch',
  strictness: 'place',
  range: { low: fret(at), high: fret(at) },
});

const places = (...pairs: [number, number][]) => ({ places: pairs.map(([s, f]) => place(s, f)) });
/** Frets by string from the lowest on, as the pattern tables of the trade print them. */
const pattern = (...strings: number[][]) => ({
  places: strings.flatMap((frets, index) => frets.map((f) => place(strings.length - index, f))),
});

describe('JUDGE: a right student is never told otherwise', () => {
  test('C on string 2 is fret 1 or 13 (common practice)', () => {
    for (const f of [1, 13]) expect(judge(find('C'), places([2, f])).kind).toBe('right');
    expect(judge(find('C'), places([2, 1], [2, 13])).kind).toBe('right');
  });

  test('E minor triad on strings 3-2-1 with its root on string 2, fret 5: 4-5-3 (computed in standard tuning)', () => {
    expect(judge(triad('E', 'minor'), places([3, 4], [2, 5], [1, 3])).kind).toBe('right');
    expect(judge(triad('E', 'minor'), places([3, 16], [2, 17], [1, 15])).kind).toBe('right');
  });

  test.each([
    [
      'major-pentatonic',
      2,
      [
        [4, 7],
        [4, 7],
        [4, 6],
        [4, 6],
        [5, 7],
        [4, 7],
      ],
    ],
    [
      'minor-pentatonic',
      1,
      [
        [5, 7],
        [5, 7],
        [5, 7],
        [4, 7],
        [5, 8],
        [5, 7],
      ],
    ],
    [
      'major',
      2,
      [
        [4, 5, 7],
        [4, 6, 7],
        [4, 6, 7],
        [4, 6],
        [4, 5, 7],
        [4, 5, 7],
      ],
    ],
    [
      'natural-minor',
      1,
      [
        [5, 7, 8],
        [5, 7],
        [4, 5, 7],
        [4, 5, 7],
        [5, 7, 8],
        [5, 7, 8],
      ],
    ],
  ] as const)(
    'E %s with the root on string 2, fret 5, under finger %i (common practice)',
    (id, finger, frets) => {
      expect(judge(scale('E', id, finger, 5), pattern(...frets.map((f) => [...f]))).kind).toBe('right');
    },
  );
});

describe('SLIP: one cause for the whole answer', () => {
  test.each([
    ['string-6 map: C at fret 8', find('C'), places([2, 8]), 'string-6-map'],
    ['string 3 one fret high', triad('E', 'minor'), places([3, 5], [2, 5], [1, 3]), 'string-3-to-2-step'],
    ['major for minor', triad('E', 'minor'), places([3, 4], [2, 5], [1, 4]), 'major-for-minor'],
    ['minor for major', triad('E', 'major'), places([3, 4], [2, 5], [1, 3]), 'minor-for-major'],
    ['the note on another string', find('D'), places([4, 0]), 'right-note-wrong-string'],
    [
      'strings counted from the other side',
      triad('E', 'minor'),
      places([4, 4], [5, 5], [6, 3]),
      'strings-reversed',
    ],
    ['a tone missing', triad('E', 'minor'), places([3, 4], [2, 5]), 'missing-tone'],
    ['one fret off', find('D'), places([2, 2]), 'one-fret-off'],
    [
      'another octave',
      triad('E', 'minor', { strictness: 'place', range: { low: fret(0), high: fret(11) } }),
      places([3, 16], [2, 17], [1, 15]),
      'wrong-octave',
    ],
    [
      'outside the range',
      find('D', { strictness: 'range', range: { low: fret(0), high: fret(4) } }),
      places([2, 15]),
      'outside-range',
    ],
    [
      'the C form instead of the triad',
      triad('E', 'major'),
      places([5, 7], [4, 6], [3, 4], [2, 5]),
      'wrong-form',
    ],
  ] as const)('%s', (_name, exercise, answer, cause) => {
    const verdict = judge(exercise, answer);
    expect(verdict).toMatchObject({ kind: 'slip', cause });
    const words = explain(exercise, answer, verdict, 'english');
    expect(`${words.text} ${words.tryThis}`.split(/\s+/).length).toBeLessThan(25);
  });

  test('the short step is said as the Stand says it', () => {
    const exercise = triad('E', 'minor');
    const answer = places([3, 5], [2, 5], [1, 3]);
    expect(explain(exercise, answer, judge(exercise, answer), 'english')).toEqual({
      heading: 'The short step, string 3 to 2',
      text: 'Strings 2 and 1 are right. String 3 is one fret high: string 3 to 2 is four frets, not five.',
      tryThis: 'Try fret 4.',
    });
  });
});
