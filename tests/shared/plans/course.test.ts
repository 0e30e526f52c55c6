import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { planSchema } from '../../../shared/protocol/plans.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { likelySlips, slipsApart } from '../../../shared/exercise/likely.ts';
import { rightName } from '../../../shared/exercise/name-words.ts';
import { known } from '../../../shared/lib/assert.ts';
import { course, plansFor } from '../../../shared/plans/course.ts';
import type { ReadyPlan } from '../../../shared/plans/ready-plan.ts';
import { formatNoteName } from '../../../shared/theory/pitch.ts';
import { oneAnswer } from '../exercise/making.ts';

const lessons = course.map((plan) => [plan.id, plan] as const);
const planCalled = (id: string) =>
  known(
    course.find((plan) => plan.id === id),
    id,
  );
const exercisesOf = (plan: ReadyPlan) => plan.exercises.map(({ exercise }) => exercise);
const everyExercise = course.flatMap(exercisesOf);

/** What a student gives who knows the answer. */
const rightAnswer = (exercise: Exercise) =>
  exercise.kind === 'name'
    ? { places: [], named: rightName(exercise) }
    : { places: oneAnswer(exercise, answerKey(exercise)).map(({ place }) => place) };

describe.each(lessons)('%s', (_, plan) => {
  test('every exercise can be asked and its key is judged right', () => {
    for (const exercise of exercisesOf(plan)) {
      expect(checkExercise(exercise)).toMatchObject({ ok: true });
      expect(judge(exercise, rightAnswer(exercise))).toMatchObject({ kind: 'right' });
    }
  });

  test('likely slips land apart in at least half of the exercises', () => {
    const apart = exercisesOf(plan).filter(
      (exercise) => likelySlips(exercise).length > 0 && slipsApart(exercise) === 1,
    );
    expect(2 * apart.length).toBeGreaterThanOrEqual(plan.exercises.length);
  });

  test('five to eight exercises, none twice: warm-up, new, check', () => {
    expect(plan.exercises.length).toBeGreaterThanOrEqual(5);
    expect(plan.exercises.length).toBeLessThanOrEqual(8);
    const texts = exercisesOf(plan).map((exercise) => JSON.stringify(exercise));
    expect(new Set(texts).size).toBe(texts.length);
    const parts = plan.exercises.map(({ part }) => part);
    expect(parts.filter((part, index) => part !== parts[index - 1])).toEqual(['warm-up', 'new', 'check']);
  });

  // Pauses after 25 minutes of playing: musiciansway.com, 2011-07; an exercise without a limit takes about two minutes.
  test('the minutes hold the exercises and the talking, and end before a pause is due', () => {
    const asked = plan.exercises.reduce((sum, { seconds }) => sum + (seconds ?? 120), 0) / 60;
    expect(plan.minutes).toBeGreaterThan(1.5 * asked);
    expect(plan.minutes).toBeLessThan(3.5 * asked);
    expect(plan.minutes).toBeLessThanOrEqual(25);
  });

  test('is taken as a plan as it is', () => {
    const posted = {
      title: plan.title,
      exercises: plan.exercises.map(({ exercise, seconds }) => ({ exercise, seconds })),
    };
    expect(v.parse(planSchema, JSON.parse(JSON.stringify(posted)))).toMatchObject(posted);
  });
});

describe('the course', () => {
  test('ids and titles are unique', () => {
    expect(course.length).toBeGreaterThanOrEqual(12);
    for (const field of ['id', 'title', 'aim'] as const)
      expect(new Set(course.map((plan) => plan[field])).size).toBe(course.length);
  });

  test('keys are spread: twelve roots and more, none in a sixth of the exercises, G once', () => {
    const times = new Map<string, number>();
    for (const { root } of everyExercise)
      times.set(formatNoteName(root), (times.get(formatNoteName(root)) ?? 0) + 1);
    expect(times.size).toBeGreaterThanOrEqual(12);
    expect(Math.max(...times.values())).toBeLessThan(everyExercise.length / 6);
    expect(times.get('G')).toBe(1);
  });
});

/** A lesson's answer key as plain numbers: string, fret. */
const keyOf = (plan: ReadyPlan, index: number) =>
  answerKey(known(exercisesOf(plan)[index], `exercise ${String(index)}`)).map(
    ({ place: { string, fret } }) => [string, fret] as const,
  );

/** The frets of a box, from string 6 to string 1, told from the fret of the root on string 2. */
const box = (fret: number, ...steps: readonly (readonly number[])[]) =>
  steps.flatMap((onString, index) => onString.map((step) => [6 - index, fret + step] as const));

const sorted = (places: readonly (readonly [number, number])[]) =>
  [...places].sort(([s1, f1], [s2, f2]) => s2 - s1 || f1 - f2);

describe('what a lesson teaches is what it asks', () => {
  // The names of string 2 in standard tuning: common practice, no source; counted from B3 (MIDI 59).
  test.each([
    ['string-2-near-the-nut', { B: 0, C: 1, D: 3, E: 5, F: 6 }],
    ['string-2-to-fret-12', { C: 1, E: 5, F: 6, 'F#': 7, G: 8, A: 10, Bb: 11 }],
  ])('%s', (id, frets) => {
    const found = exercisesOf(planCalled(id)).filter(({ kind }) => kind === 'find');
    const lowest = found.map((exercise) => [
      formatNoteName(exercise.root),
      answerKey(exercise)[0]?.place.fret,
    ]);
    expect(Object.fromEntries(lowest)).toEqual(frets);
  });

  // Close triads round a root on string 2 at fret f: counted out in standard tuning.
  test.each<[string, number, readonly (readonly [number, number])[]]>([
    // (f − 1, f, f − 1) on strings 3, 2, 1; (f + 1, f − 1, f) on strings 4, 3, 2.
    ['string-2-major-triads', 1, [[3, 2], [2, 3], [1, 2]]], // prettier-ignore
    ['string-2-major-triads', 4, [[4, 12], [3, 10], [2, 11]]], // prettier-ignore
    // (f − 1, f, f − 2); (f, f − 1, f).
    ['string-2-minor-triads', 2, [[3, 6], [2, 7], [1, 5]]], // prettier-ignore
    ['string-2-minor-triads', 4, [[4, 3], [3, 2], [2, 3]]], // prettier-ignore
    // Movable C form (f + 2, f + 1, f − 1, f, f − 1) and its minor (f + 2, f, f − 1, f): common practice, no source.
    ['string-2-c-and-d-forms', 1, [[5, 5], [4, 4], [3, 2], [2, 3], [1, 2]]], // prettier-ignore
    ['string-2-c-and-d-forms', 4, [[5, 7], [4, 5], [3, 4], [2, 5]]], // prettier-ignore
  ])('%s, exercise %i', (id, index, key) => {
    expect(keyOf(planCalled(id), index)).toEqual(key);
  });

  // Positions whose root on string 2 lies under finger 1 (minor) or 2 (major): common practice, no source.
  test('the position of each scale', () => {
    const two = [-1, 2];
    expect(sorted(keyOf(planCalled('string-2-minor-pentatonic'), 2))).toEqual(
      box(10, [0, 2], [0, 2], [0, 2], [-1, 2], [0, 3], [0, 2]),
    );
    expect(sorted(keyOf(planCalled('string-2-major-pentatonic'), 2))).toEqual(
      box(6, two, two, [-1, 1], [-1, 1], [0, 2], two),
    );
    expect(sorted(keyOf(planCalled('string-2-full-scales'), 1))).toEqual(
      box(3, [-1, 0, 2], [-1, 1, 2], [-1, 1, 2], [-1, 1], [-1, 0, 2], [-1, 0, 2]),
    );
    expect(sorted(keyOf(planCalled('string-2-full-scales'), 3))).toEqual(
      box(5, [0, 2, 3], [0, 2], [-1, 0, 2], [-1, 0, 2], [0, 2, 3], [0, 2, 3]),
    );
  });

  test('every root of the progressions is on string 2, their degrees as the words say', () => {
    const chords = exercisesOf(planCalled('string-2-progressions')).filter(
      (exercise) => exercise.kind === 'build',
    );
    expect(chords.every(({ rootString }) => rootString === 2)).toBe(true);
    expect(chords.map(({ root, quality }) => `${formatNoteName(root)} ${quality}`)).toEqual([
      ...['E major', 'C# minor', 'A major', 'B major'],
      ...['F m7', 'Bb 7', 'Eb maj7'],
    ]);
  });

  // What the talking points say of drop-2: the seventh on string 3, one tone a fret lower from each kind to the next.
  test('drop-2 from string 2: one tone moves from kind to kind', () => {
    const steps = new Map(
      exercisesOf(planCalled('string-2-sevenths')).flatMap((exercise) => {
        if (exercise.kind !== 'build' || exercise.voicing.kind !== 'family') return [];
        const key = answerKey(exercise);
        const root = known(
          key.find(({ place }) => place.string === 2),
          'root',
        );
        expect(key.find(({ place }) => place.string === 3)?.degree).toMatch(/7$/);
        return [[exercise.quality, key.map(({ place }) => place.fret - root.place.fret)] as const];
      }),
    );
    expect(Object.fromEntries(steps)).toEqual({
      maj7: [1, 3, 0, 2],
      '7': [1, 2, 0, 2],
      m7: [0, 2, 0, 2],
      m7b5: [0, 2, 0, 1],
    });
  });
});

describe('plansFor', () => {
  test('the whole course for the guitar, also with a longer neck or a string more', () => {
    expect(plansFor('guitar')).toEqual(course);
    for (const id of ['guitar+frets=24', 'guitar-7']) {
      expect(plansFor(id).map((plan) => plan.id)).toEqual(course.map((plan) => plan.id));
      for (const exercise of plansFor(id).flatMap(exercisesOf)) {
        expect(exercise.instrument).toBe(id);
        expect(checkExercise(exercise)).toMatchObject({ ok: true });
      }
    }
  });

  test('where string 6 is tuned down, what needs it is left out', () => {
    const ids = plansFor('guitar-drop-d').map((plan) => plan.id);
    expect(ids).toContain('string-2-major-triads');
    expect(ids).not.toContain('string-2-full-scales');
    expect(ids).not.toContain('string-1-roots');
  });

  test('nothing where the notes lie elsewhere, or for what is no instrument', () => {
    for (const id of ['ukulele', 'bass-4', 'guitar+capo=2', 'nothing']) expect(plansFor(id)).toEqual([]);
  });
});
