import { describe, expect, test } from 'vitest';
import { adviceFor, commonestSlip, heatOf, scoreKeyOf } from '../../../shared/exercise/score.ts';
import type { SlipCause, SlipVerdict, Verdict } from '../../../shared/exercise/verdict.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { build, find, places, scale } from '../../support/exercises.ts';
import { strings } from './making.ts';

test('SCORE-1: kind and root string make the comparison', () => {
  const [three] = strings(3);
  expect(scoreKeyOf(find('D'))).toBe(scoreKeyOf(find('F#', { strictness: 'anywhere' })));
  const keys = [find('D'), build('D', 'minor'), scale('D', 'major', 2, 3), find('D', { rootString: three })];
  expect(new Set(keys.map(scoreKeyOf)).size).toBe(4);
});

// Source: the peer-instruction thresholds of 80 and 40 %, as this project states them in SPEC SCORE-2.
describe('SCORE-2: advice', () => {
  test.each([
    [0, 0, 'none'],
    [10, 10, 'go-on'],
    [8, 10, 'go-on'],
    [79, 100, 'compare'],
    [4, 10, 'compare'],
    [39, 100, 'show-again'],
    [2, 10, 'show-again'],
    [1, 7, 'show-again'],
    [0, 7, 'show-again'],
    [1, 8, 'look-at-exercise'],
    [0, 8, 'look-at-exercise'],
    [19, 100, 'look-at-exercise'],
  ])('%i of %i: %s', (right, answered, advice) => {
    expect(adviceFor(right, answered)).toBe(advice);
  });
});

test('heat counts each place over all answers', () => {
  const heat = heatOf([{ places: places([2, 3]) }, { places: places([2, 3], [2, 15]) }, { places: [] }]);
  expect(heat).toEqual([
    { place: place(2, 3), count: 2, share: 2 / 3 },
    { place: place(2, 15), count: 1, share: 1 / 3 },
  ]);
  expect(heatOf([])).toEqual([]);
});

test('SCORE-3: the commonest slip; of equals, the one that says why', () => {
  const slip = (cause: SlipCause): SlipVerdict => ({
    kind: 'slip',
    cause,
    marks: [],
    corrections: [],
    missing: [],
  });
  const causes = (...verdicts: Verdict[]) => commonestSlip(verdicts).map((verdict) => verdict.cause);
  expect(causes({ kind: 'right' })).toEqual([]);
  expect(causes(slip('missing-tone'), slip('missing-tone'), slip('low-string-map'))).toEqual([
    'missing-tone',
    'missing-tone',
  ]);
  expect(causes(slip('missing-tone'), slip('other-place'), slip('low-string-map'))).toEqual([
    'low-string-map',
  ]);
});
