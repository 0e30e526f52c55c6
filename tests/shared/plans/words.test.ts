import { describe, expect, test } from 'vitest';
import { judge } from '../../../shared/exercise/judge.ts';
import { likelySlips } from '../../../shared/exercise/likely.ts';
import { known } from '../../../shared/lib/assert.ts';
import { course } from '../../../shared/plans/course.ts';
import { cautionsOf, pointsOf, slipsToExpect } from '../../../shared/plans/words.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';

const planCalled = (id: string) =>
  known(
    course.find((plan) => plan.id === id),
    id,
  );
const words = (text: string) => text.split(/\s+/).length;
const sentences = (text: string) => text.split(/[.?]\s|[.?]$/).filter(Boolean).length;

/** Words that blame or praise, order a stretch, or speak of sides that turn with the neck. */
const unwanted =
  /!|\b(wrong|mistake|fail\w*|bad|good|great|perfect|well done|stretch|must|left|right|top|bottom|just)\b/i;

describe.each(course.map((plan) => [plan.id, plan] as const))('%s', (_, plan) => {
  test('MSG-3: title, aim, points and cautions are short and kind', () => {
    expect(plan.title.length).toBeLessThanOrEqual(80);
    expect(sentences(plan.aim)).toBe(1);
    expect(words(plan.aim)).toBeLessThan(20);
    const points = pointsOf(plan, 'english');
    const count = points.reduce((sum, point) => sum + sentences(point), 0);
    expect(count).toBeGreaterThanOrEqual(2);
    expect(count).toBeLessThanOrEqual(4);
    for (const text of [plan.title, plan.aim, ...points, ...cautionsOf(plan)]) {
      expect(words(text)).toBeLessThan(25);
      expect(text).not.toMatch(unwanted);
    }
  });

  test('notes are written for the reader, in every naming', () => {
    for (const naming of ['english', 'german', 'solfege'] as const)
      for (const point of pointsOf(plan, naming)) expect(point).not.toMatch(/[{}]/);
    for (const [, name = ''] of plan.points.join().matchAll(/\{(.*?)\}/g))
      expect(parseNoteName(name)).toBeDefined();
  });

  test('MSG-1: slips to expect are those that the new exercises invite, in under 25 words', () => {
    const slips = slipsToExpect(plan, 'english');
    expect(slips.length).toBeGreaterThanOrEqual(3);
    expect(new Set(slips.map(({ cause }) => cause)).size).toBe(slips.length);
    const invited = plan.exercises.flatMap(({ exercise }) =>
      likelySlips(exercise).filter(({ cause, places }) => {
        const verdict = judge(exercise, { places });
        return verdict.kind === 'slip' && verdict.cause === cause;
      }),
    );
    for (const { cause, name, says } of slips) {
      expect(invited.map((slip) => slip.cause)).toContain(cause);
      expect(name).not.toBe('');
      expect(words(says)).toBeLessThan(25);
    }
  });
});

test('a note is named in the reader’s own way', () => {
  const [open, last] = [planCalled('string-2-near-the-nut'), planCalled('string-2-to-fret-12')];
  expect(pointsOf(open, 'english')[0]).toBe('String 2, second thinnest, is B when it is open.');
  expect(pointsOf(open, 'german')[0]).toBe('String 2, second thinnest, is H when it is open.');
  expect(pointsOf(open, 'solfege')[0]).toBe('String 2, second thinnest, is si when it is open.');
  expect(pointsOf(last, 'german')[1]).toContain('Fis is fret 7, B fret 11');
});

// C is fret 1 on string 2 and fret 8 on string 6: counted from B3 and E2.
test('the first slip with notes is the map of string 6, in numbers', () => {
  expect(slipsToExpect(planCalled('string-2-near-the-nut'), 'english')[0]).toEqual({
    cause: 'low-string-map',
    name: 'String-6 map',
    of: 'Find C',
    says: 'Fret 8 is the C of string 6. On string 2 it is fret 1.',
  });
});

test('each kind of lesson names its own slips', () => {
  const causes = (id: string) => slipsToExpect(planCalled(id), 'english').map(({ cause }) => cause);
  expect(causes('string-2-major-triads')).toContain('minor-for-major');
  expect(causes('string-2-minor-triads')).toContain('major-for-minor');
  expect(causes('string-2-minor-pentatonic')).toContain('low-string-box');
  expect(causes('string-2-c-and-d-forms')).toContain('short-step');
});

// Five minutes after 25 of playing: musiciansway.com, 2011-07.
test('a pause is always told, another way round a far note where there is one', () => {
  for (const plan of course)
    expect(cautionsOf(plan)[0]).toContain('After 25 minutes of playing, pause for five.');
  // The box of the minor pentatonic goes from f − 1 to f + 3, five frets; a triad takes three.
  expect(cautionsOf(planCalled('string-2-minor-pentatonic'))).toHaveLength(2);
  expect(cautionsOf(planCalled('string-2-major-triads'))).toHaveLength(1);
});
