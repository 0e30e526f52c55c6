import { expect, test } from 'vitest';
import { answerChart } from '../../../client/fretboard/answer-chart.ts';
import { givenChart } from '../../../client/pages/desk/chart-notes.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { place, standardGuitar, type StringNumber } from '../../../shared/theory/fretboard.ts';

const build = {
  kind: 'build',
  instrument: 'guitar',
  root: { letter: 'E', alteration: 0 },
  rootString: 2 as StringNumber,
  strictness: 'string',
  range: null,
  quality: 'minor',
  voicing: { kind: 'form', form: 'triad-321', full: false },
  marksRoot: true,
} as const;
// E minor, root on string 2 at fret 5: minor triad (f−1, f, f−2), computed in standard tuning; G is its relative major.
const places = [place(3, 4), place(2, 5), place(1, 3)];
const answer = { places, root: place(1, 3) };

test('with the key hidden an answer shows what was placed and marked, and nothing of what is right', () => {
  expect(givenChart({ places: [...places, place(3, 4)], root: place(1, 3) })).toEqual([
    { place: place(3, 4), look: 'filled', root: false },
    { place: place(2, 5), look: 'filled', root: false },
    { place: place(1, 3), look: 'filled', root: true },
  ]);
});

test('with the key a slur leads from the student’s mark to the root', () => {
  const chart = answerChart(standardGuitar, build, answerKey(build), answer, judge(build, answer));
  expect(chart.corrections).toEqual([{ from: place(1, 3), to: place(2, 5) }]);
});
