import { describe, expect, it } from 'vitest';
import { checkExercise } from '../../../../shared/exercise/check.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { generate, rungs } from '../../../../shared/exercise/generate.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import { likelySlips } from '../../../../shared/exercise/likely.ts';
import { targetsOf } from '../../../../shared/exercise/targets.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import { course } from '../../../../shared/plans/course.ts';
import { find, form, frets, name, position } from '../../../../shared/plans/making.ts';
import type { StringNumber } from '../../../../shared/theory/fretboard.ts';
import { formatNoteName, parseNoteName } from '../../../../shared/theory/pitch.ts';
import { answerLineOf } from '../../../../client/pages/desk/handout/answers.ts';
import { pagesOf } from '../../../../client/pages/desk/handout/pages.ts';
import { questionOf, quizWindow } from '../../../../client/pages/desk/handout/quiz.ts';
import { itemsOf, usualSettings } from '../../../../client/pages/desk/handout/sheet.ts';
import { build } from '../../../support/exercises.ts';
import { handoutPlan } from '../../../support/handout-plan.ts';

/** Exercises as teachers have them: the ready plans, those of the handout's tests, and made ones of every rung. */
const exercises: readonly Exercise[] = [
  ...course.flatMap((plan) => plan.exercises.map(({ exercise }) => exercise)),
  ...handoutPlan.flatMap(({ exercise, harder }) => [exercise, ...harder]),
  ...rungs.flatMap((rung) => {
    const rootStrings = [2, 5].map((string) => string as StringNumber);
    const wish = { instrument: 'guitar', rung, roots: [], rootStrings, range: null, count: 8, seed: 6 };
    const made = generate(wish);
    return made.ok ? made.value : [];
  }),
];
const placed = exercises.filter(({ kind }) => kind !== 'name');
const itemOf = (chart: Exercise) => ({ id: 'x', number: '7', chart, line: null, chosen: true });
const answerTo = (exercise: Exercise) => answerLineOf(itemOf(exercise), 'english')[0];

describe('HANDOUT-6 the chart to mark is chosen by the words alone', () => {
  it('holds every right place, and where the likely slips land', () => {
    expect(placed.length).toBeGreaterThan(100);
    for (const exercise of placed) {
      const { low, high } = quizWindow(exercise);
      const right = targetsOf(exercise).flatMap(({ accepted }) => accepted);
      const slips = likelySlips(exercise).flatMap(({ places }) => places);
      expect(low).toBe(1);
      for (const { fret } of [...right, ...slips])
        expect(fret, JSON.stringify(wordingOf(exercise, 'english'))).toBeLessThanOrEqual(high);
    }
  });

  it('is the same for every root that the same words may ask for', () => {
    const roots = 'C C# D Eb E F F# G Ab A Bb B'.split(' ');
    const others = (exercise: Exercise): readonly Exercise[] =>
      roots.flatMap((text) => {
        const root = parseNoteName(text);
        if (!root || formatNoteName(root) === formatNoteName(exercise.root)) return [];
        const ranges =
          exercise.strictness === 'place'
            ? Array.from({ length: 20 }, (_, fret) => frets(fret, fret))
            : [exercise.range];
        return ranges
          .map((range) => ({ ...exercise, root, range }))
          .filter((other) => checkExercise(other).ok);
      });
    let compared = 0;
    for (const exercise of placed.slice(0, 120))
      for (const other of others(exercise)) {
        compared += 1;
        expect(quizWindow(other)).toEqual(quizWindow(exercise));
      }
    expect(compared).toBeGreaterThan(500);
  });

  it('is some frets beyond a range, and twelve at least', () => {
    const inRange = (low: number, high: number) =>
      quizWindow({ ...find('D', 2), strictness: 'range', range: frets(low, high) });
    expect(inRange(0, 3)).toEqual(frets(1, 12));
    expect(inRange(5, 9)).toEqual(frets(1, 16));
  });
});

it('HANDOUT-7 a question holds its words and nothing of its answer', () => {
  for (const exercise of exercises) {
    const [question] = questionOf(itemOf(exercise), 'english');
    expect(question?.words).toEqual(wordingOf(exercise, 'english'));
    const fretWords = answerKey(exercise).map(({ place }) => `fret ${String(place.fret)}`);
    const text = JSON.stringify({ ...question, window: null });
    // A stated range may end on a fret of the answer, a place to be named is told.
    const isTold = exercise.kind === 'name' || exercise.range !== null;
    if (!isTold) for (const words of fretWords) expect(text).not.toMatch(new RegExp(`${words}\\b`));
  }
  expect(questionOf(itemOf(name('D', 2, 3)), 'english')[0]?.window).toBeNull();
});

describe('HANDOUT-8 the answers', () => {
  it('come last, on pages of their own, once for both hands', () => {
    const settings = { ...usualSettings, kind: 'quiz', hands: 'both' } as const;
    const kinds = pagesOf({ settings, items: itemsOf(handoutPlan), naming: 'english' }).map(
      ({ kind }) => kind,
    );
    expect(kinds.indexOf('answers')).toBeGreaterThan(kinds.lastIndexOf('questions'));
    const lines = pagesOf({ settings, items: itemsOf(handoutPlan), naming: 'english' }).flatMap((page) =>
      page.kind === 'answers' ? page.answers : [],
    );
    expect(lines.map(({ number }) => number)).toEqual(itemsOf(handoutPlan).map(({ number }) => number));
  });

  it('tell every place of the key', () => {
    for (const exercise of placed) {
      const right = answerTo(exercise)?.right ?? '';
      const told = [...right.matchAll(/string (\d+), (?:open|frets? ([\d, and]+))/gi)].flatMap(
        ([, string = '', list = '0']) => (list.match(/\d+/g) ?? []).map((fret) => `${string}:${fret}`),
      );
      const key = answerKey(exercise).map(({ place }) => `${String(place.string)}:${String(place.fret)}`);
      expect(told.toSorted()).toEqual(key.toSorted());
    }
  });

  // The landings of D on string 2: TRADE's check values, by counting frets.
  it('tell the likely slips by the Desk’s names, and where they land', () => {
    expect(answerTo(find('D', 2))?.right).toBe('String 2, frets 3 and 15.');
    expect(answerTo(find('D', 2))?.slips).toContain('String-6 map: fret 10.');
    expect(answerTo(find('D', 2))?.slips).toContain('Nut counted as fret 1: fret 2.');
    expect(answerTo(name('F#', 2, 7))?.right).toBe('String 2, fret 7: F♯.');
    expect(answerTo(name('F#', 2, 7))?.slips).toContain('String-6 map: B.');
    expect(answerTo(form('C', 'A', 'minor', 2, 10))?.slips).toContain(
      'String-6 map: everything five frets lower.',
    );
    expect(answerTo(position('minor-pentatonic', 'E', 2, 5, 1))?.slips).toContain(
      'String-3-to-2 step: strings 6 to 3 one fret higher.',
    );
  });

  it('two slips that land together are told together, and a key that is one of several says so', () => {
    expect(answerTo(find('F', 2))?.slips.some((slip) => / or /.test(slip))).toBe(true);
    expect(answerTo(build('E', 'minor'))?.right).toContain('Whatever else fits the words is right too.');
    expect(answerTo(form('C', 'A', 'minor', 2, 10))?.right).not.toContain('Whatever');
  });
});
