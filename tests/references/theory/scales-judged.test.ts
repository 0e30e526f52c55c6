import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Finger, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import type { Fret, StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import { instrumentOf } from './chord-cases.ts';
import { onStrings, scaleCases, scaleIdOf, type ScaleCase } from './scale-cases.ts';

type Case = ScaleCase;

const cases = scaleCases;
const placesOf = onStrings;

function exerciseOf(one: Case, fields: Partial<ScaleExercise>): ScaleExercise {
  return {
    kind: 'scale',
    instrument: instrumentOf(one.tuning.name).id,
    root: known(parseNoteName(one.root), one.root),
    rootString: one.rootString as StringNumber,
    scale: scaleIdOf(one.scale),
    coverage: 'every-pitch',
    strictness: 'place',
    range: { low: one.rootFret as Fret, high: one.rootFret as Fret },
    rootFinger: 1,
    ...fields,
  };
}

/** The positions that the case may mean: the one of its window, or of any finger where it names none. */
function positionsOf(one: Case): readonly ScaleExercise[] {
  const low = one.window?.[0];
  const fingers = low === undefined ? [1, 2, 3, 4] : [one.rootFret - low + 1];
  return fingers
    .map((finger) => exerciseOf(one, { rootFinger: finger as Finger }))
    .filter((exercise) => checkExercise(exercise).ok);
}

const verdictsOf = (one: Case, frets: Case['fretsPerString']): readonly Verdict[] =>
  positionsOf(one).map((exercise) => judge(exercise, { places: placesOf(frets) }));

const inPosition = cases.filter((one) => one.system !== '3nps');
const threeNotes = cases.filter((one) => one.system === '3nps');
const named = (some: readonly Case[]) => some.map((one) => [one.id, one] as const);

test('every case is here and run below', () => {
  expect(cases).toHaveLength(44);
  expect([inPosition.length, threeNotes.length]).toEqual([30, 14]);
});

describe('JUDGE-3, POSITION-2: positions of four frets and pentatonic boxes', () => {
  test.each(named(inPosition.filter((one) => one.verdict === 'correct')))('%s is right', (_id, one) => {
    expect(verdictsOf(one, one.fretsPerString)).toContainEqual({ kind: 'right' });
    for (const other of one.acceptAlso ?? [])
      expect(verdictsOf(one, other)).toContainEqual({ kind: 'right' });
  });

  test.each(named(inPosition.filter((one) => one.verdict === 'wrong')))('%s is a slip', (_id, one) => {
    const verdicts = verdictsOf(one, one.fretsPerString);
    expect(verdicts.length).toBeGreaterThan(0);
    expect(verdicts.map((verdict) => verdict.kind)).not.toContain('right');
    const causes = verdicts.flatMap((verdict) =>
      verdict.kind === 'slip' ? [verdict.cause] : verdict.kind === 'unclear' ? verdict.causes : [],
    );
    if (one.diagnosis?.kind === 'second-string-offset-ignored') expect(causes).toContain('short-step');
  });
});

describe('JUDGE-3: three notes on every string reach past one position', () => {
  const inRange = (one: Case) =>
    exerciseOf(one, {
      coverage: 'every-tone',
      strictness: 'range',
      range: { low: one.lowFret as Fret, high: one.highFret as Fret },
    });

  test.each(named(threeNotes))('%s', (_id, one) => {
    const exercise = inRange(one);
    expect(checkExercise(exercise).ok).toBe(true);
    const { kind } = judge(exercise, { places: placesOf(one.fretsPerString) });
    expect(kind === 'right').toBe(one.verdict === 'correct');
  });
});
