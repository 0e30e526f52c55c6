import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Finger, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import { place, type Fret, type Place, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import type { ScaleId } from '../../../shared/theory/tables/scales.ts';
import scales from './scales.json' with { type: 'json' };

/** Source of every case: scales.json (CC0, computed); see README.md beside it. */
interface Case {
  readonly id: string;
  readonly group: string;
  readonly system: 'pentatonic-box' | 'caged' | '3nps' | 'window';
  readonly root: string;
  readonly scale: string;
  readonly window?: readonly number[];
  readonly rootString: number;
  readonly rootFret: number;
  readonly rootFinger?: number;
  readonly lowFret: number;
  readonly highFret: number;
  readonly fretsPerString: readonly (readonly number[])[];
  readonly acceptAlso?: readonly (readonly (readonly number[])[])[];
  readonly verdict: 'correct' | 'wrong';
  readonly diagnosis?: { readonly kind: string };
}
const cases = scales.cases as unknown as readonly Case[];
const scaleOf: Record<string, ScaleId> = {
  major: 'major',
  minor: 'natural-minor',
  'major pentatonic': 'major-pentatonic',
  'minor pentatonic': 'minor-pentatonic',
};

const placesOf = (frets: Case['fretsPerString']): readonly Place[] =>
  frets.flatMap((onString, index) => onString.map((fret) => place(frets.length - index, fret)));

function exerciseOf(one: Case, fields: Partial<ScaleExercise>): ScaleExercise {
  return {
    kind: 'scale',
    instrument: 'guitar',
    root: known(parseNoteName(one.root), one.root),
    rootString: one.rootString as StringNumber,
    scale: known(scaleOf[one.scale], one.scale),
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

test('every case in scope is here and run below', () => {
  expect(cases).toHaveLength(scales.count);
  expect([inPosition.length, threeNotes.length]).toEqual([27, 11]);
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
    if (one.diagnosis?.kind === 'second-string-offset-ignored')
      expect(causes).toContain('string-3-to-2-step');
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
