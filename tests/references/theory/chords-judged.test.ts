import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { BuildExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { SlipCause } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import type { StringNumber } from '../../../shared/theory/fretboard.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { instrumentOf, note, placesOf } from './chord-cases.ts';
import chords from './chords.json' with { type: 'json' };

/** Source of every case: chords.json (chords-db 0.5.1, MIT, © 2016 David Rubert; the rest CC0); see ../README.md. */
interface Case {
  readonly id: string;
  readonly group: string;
  readonly tuning: { readonly name: string };
  readonly capo: number;
  readonly frets: readonly (number | null)[];
  readonly expectChord: { readonly root: string; readonly quality: ChordQuality; readonly bass?: string };
  readonly verdict: string;
  readonly inversion: boolean;
  readonly bassDegree: string | null;
  readonly diagnosis?: {
    readonly kind: string;
    readonly changes?: readonly { string: number; was: number | null }[];
  };
}
const cases = chords.cases as unknown as readonly Case[];
const named = (some: readonly Case[]) => some.map((one) => [`${one.id} ${one.group}`, one] as const);

function exerciseOf({ tuning, capo, expectChord }: Case, fields: Partial<BuildExercise> = {}): BuildExercise {
  return {
    kind: 'build',
    instrument: instrumentOf(tuning.name, capo).id,
    root: note(expectChord.root),
    rootString: 2 as StringNumber,
    strictness: 'anywhere',
    range: null,
    quality: expectChord.quality,
    voicing: { kind: 'any' },
    ...(expectChord.bass === undefined ? {} : { bass: note(expectChord.bass) }),
    ...fields,
  };
}

test('every case is here and run below', () => {
  expect(cases).toHaveLength(146);
  expect(cases.filter((one) => one.verdict === 'wrong')).toHaveLength(67);
});

describe('CHORD-1…8: the frets are the chord that was asked for, or they are not', () => {
  test.each(named(cases))('%s', (_name, one) => {
    const exercise = exerciseOf(one);
    expect(checkExercise(exercise).ok).toBe(true);
    const verdict = judge(exercise, { places: placesOf(one.frets) });
    const inversion = one.inversion && one.bassDegree !== null ? { inversion: one.bassDegree } : {};
    if (one.verdict === 'wrong') expect(verdict.kind).not.toBe('right');
    else expect(verdict).toEqual({ kind: 'right', ...inversion });
  });
});

describe('SLIP-1: what was done to a right chord is named', () => {
  const thirds: readonly SlipCause[] = ['major-for-minor', 'minor-for-major'];
  /** The causes that are true of each diagnosis. */
  const causeOf: Readonly<Record<string, readonly SlipCause[]>> = {
    'whole-shape-one-fret-off': ['one-fret-off', 'nut-as-one'],
    'third-muted': ['sounding-string-muted'],
    'fifth-muted-triad': ['sounding-string-muted'],
    'root-muted': ['sounding-string-muted'],
    'unwanted-open-string': ['muted-string-sounded'],
    'third-moved': thirds,
    'quality-confused': [...thirds, 'one-fret-off', 'other-place', 'missing-tone'],
    'second-string-offset-ignored': ['short-step'],
    // One string alone is off, though string 1 sounds too and is right; where string 2 has the third, it is the other one.
    'second-string-only-offset-ignored': ['short-step', 'one-fret-off', ...thirds],
    'one-string-one-fret-off': ['one-fret-off', 'short-step', ...thirds],
    'string-shift-down': ['next-string'],
    'string-shift-up': ['next-string'],
    'root-read-from-wrong-string': ['low-string-map'],
    'capo-ignored': ['capo-ignored'],
    'tuning-ignored': ['tuning-ignored'],
  };
  const diagnosed = cases.filter((one) => one.diagnosis && one.verdict === 'wrong');

  test('every diagnosis has its causes', () => {
    expect(diagnosed).toHaveLength(56);
    const kinds = new Set(diagnosed.map((one) => one.diagnosis?.kind));
    expect([...kinds].sort()).toEqual(Object.keys(causeOf).sort());
  });

  test.each(named(diagnosed))('%s', (_name, one) => {
    // Asked on the strings that the right chord sounded on, where the case says which; from string 5 for its root.
    const { kind, changes = [] } = known(one.diagnosis, 'diagnosis');
    const was = one.frets.map((fret, index) => {
      const change = changes.find(({ string }) => string === one.frets.length - index);
      return change ? change.was : fret;
    });
    const voicing =
      changes.length === 0
        ? ({ kind: 'any' } as const)
        : ({ kind: 'strings', strings: placesOf(was).map((spot) => spot.string) } as const);
    const rootString = (kind === 'root-read-from-wrong-string' ? 5 : 2) as StringNumber;
    const verdict = judge(exerciseOf(one, { voicing, rootString }), { places: placesOf(one.frets) });
    const causes = verdict.kind === 'slip' ? [verdict.cause] : verdict.kind === 'unclear' ? verdict.causes : [];
    expect([causes, causes.some((cause) => causeOf[kind]?.includes(cause))]).toEqual([causes, true]);
  });
});
