import { expect, test } from 'vitest';
import { editsFor } from '../../../client/pages/desk/plan/wishes.ts';
import type { LineWish } from '../../../client/pages/desk/plan/line-event.ts';
import { lengthWords, standsAt } from '../../../client/pages/desk/plan/words.ts';
import { applyEdits } from '../../../shared/plans/edit.ts';
import type { PlannedExercise } from '../../../shared/plans/plan.ts';
import { build, find } from '../../support/exercises.ts';

const own: PlannedExercise = {
  id: 'a',
  part: 'new',
  exercise: find('D'),
  harder: [find('F'), find('A')],
  seconds: 30,
};
const other: PlannedExercise = { ...own, id: 'b', exercise: build('E', 'minor'), harder: [] };
const exercises = [own, other];

/** What is undone, in words, and what the plan then holds. */
function after(wish: Exclude<LineWish, { kind: 'make' }>) {
  const worded = editsFor(wish, own, exercises, { naming: 'english', newId: 'copy' });
  const plan = { title: 'Roots', aim: '', points: [], exercises };
  return worded && { words: worded.words, exercises: applyEdits(plan, worded.edits).plan.exercises };
}

test('PLAN-4: levels are taken out and swapped, also with the first', () => {
  expect(after({ kind: 'take-level', level: 2 })).toMatchObject({
    words: 'take out the second level of Find D',
    exercises: [{ exercise: find('D'), harder: [find('A')] }, other],
  });
  expect(after({ kind: 'swap-level', level: 2 })?.exercises[0]).toMatchObject({
    exercise: find('F'),
    harder: [find('D'), find('A')],
  });
  expect(after({ kind: 'swap-level', level: 3 })?.exercises[0]?.harder).toEqual([find('A'), find('F')]);
});

test('another root is asked at its own level', () => {
  const wish = { kind: 'ask-instead', level: 3, exercise: find('C') } as const;
  expect(after(wish)?.exercises[0]).toMatchObject({ exercise: find('D'), harder: [find('F'), find('C')] });
});

test('PLAN-3: a wish that changes nothing is none', () => {
  expect(after({ kind: 'part', part: 'new' })).toBeNull();
  expect(after({ kind: 'move', part: 'new', before: 'a' })).toBeNull();
  expect(after({ kind: 'part', part: 'check' })?.words).toBe('put Find D under Check');
});

test('it is said where an exercise stands and how long the plan takes', () => {
  const moved = after({ kind: 'step', by: 1 })?.exercises ?? [];
  expect(standsAt(moved, 'a')).toBe('Now number 2 of 2, under New.');
  expect(lengthWords([])).toBe('no exercises yet');
  expect(lengthWords([own])).toBe('1 exercise, about 2 minutes');
});
