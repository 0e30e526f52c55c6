import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { BuildExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { SlipCause } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, degreeAt, neededDegrees } from '../../../shared/theory/chord.ts';
import {
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import chords from './chords.json' with { type: 'json' };

/** Source of every case: chords.json (chords-db 0.5.1, MIT, © 2016 David Rubert; the rest CC0); see README.md. */
interface Case {
  readonly id: string;
  readonly group: string;
  readonly frets: readonly (number | null)[];
  readonly expectChord: { readonly root: string; readonly quality: ChordQuality };
  readonly verdict: 'correct' | 'omits-fifth' | 'wrong';
  readonly omitted: readonly string[];
  readonly missing: readonly string[];
  readonly foreign: readonly string[];
  readonly bassDegree: string | null;
  readonly inversion: boolean;
  readonly diagnosis?: {
    readonly kind: string;
    readonly changes: readonly { string: number; was: number | null }[];
  };
}
const cases = chords.cases as unknown as readonly Case[];
const named = (some: readonly Case[]) => some.map((one) => [`${one.id} ${one.group}`, one] as const);

const placesOf = (frets: Case['frets']): readonly Place[] =>
  frets.flatMap((fret, index) => (fret === null ? [] : [place(frets.length - index, fret)]));

function exerciseOf(one: Case, fields: Partial<BuildExercise> = {}): BuildExercise {
  return {
    kind: 'build',
    instrument: 'guitar',
    root: known(parseNoteName(one.expectChord.root), one.expectChord.root),
    rootString: 2 as StringNumber,
    strictness: 'anywhere',
    range: null,
    quality: one.expectChord.quality,
    voicing: { kind: 'any' },
    ...fields,
  };
}

test('every case in scope is here and run below', () => {
  expect(cases).toHaveLength(chords.count);
  expect(cases.filter((one) => one.verdict === 'wrong')).toHaveLength(28);
  expect(cases.filter((one) => one.verdict !== 'wrong')).toHaveLength(25);
});

describe('CHORD-1…4: the frets are the chord, or they are not', () => {
  test.each(named(cases))('%s', (_name, one) => {
    const exercise = exerciseOf(one);
    expect(checkExercise(exercise).ok).toBe(true);
    const { kind } = judge(exercise, { places: placesOf(one.frets) });
    expect(kind === 'right').toBe(one.verdict !== 'wrong');
  });

  test.each(named(cases))('%s: missing, left out and foreign tones', (_name, one) => {
    const { root, quality } = exerciseOf(one);
    const degrees = chordDegrees(quality);
    const heard = placesOf(one.frets).map((spot) =>
      degreeAt(root, degrees, pitchClassAt(standardGuitar, spot)),
    );
    const silent = degrees.filter((degree) => !heard.includes(degree));
    const isRight = one.verdict !== 'wrong';
    // A right chord lists what it leaves out by permission; else all that does not sound.
    expect(silent).toEqual(isRight ? one.omitted : one.missing);
    if (isRight) expect(silent.every((degree) => !neededDegrees(quality).includes(degree))).toBe(true);
    expect(heard.includes(undefined)).toBe(one.foreign.length > 0);
  });

  test.each(named(cases.filter((one) => one.verdict !== 'wrong')))('%s: its lowest tone', (_name, one) => {
    const { root, quality } = exerciseOf(one);
    const lowest = [...placesOf(one.frets)].sort(
      (a, b) => midiAt(standardGuitar, a) - midiAt(standardGuitar, b),
    )[0];
    const degree = lowest && degreeAt(root, chordDegrees(quality), pitchClassAt(standardGuitar, lowest));
    expect(degree).toBe(one.bassDegree);
    expect(degree !== '1').toBe(one.inversion);
  });
});

describe('SLIP-1: what was done to a right chord is named', () => {
  const causeOf: Record<string, readonly SlipCause[]> = {
    'whole-shape-one-fret-off': ['one-fret-off'],
    'third-muted': ['missing-tone'],
    'fifth-muted-triad': ['missing-tone'],
    'unwanted-open-string': ['extra-tone'],
    'third-moved': ['major-for-minor', 'minor-for-major'],
    'second-string-offset-ignored': ['string-3-to-2-step'],
  };
  const nameable = cases.filter(
    (one) => one.diagnosis && causeOf[one.diagnosis.kind] && one.verdict === 'wrong',
  );

  test('16 of the 28 have a cause that this version names', () => {
    expect(nameable.length).toBe(16);
  });

  test.each(named(nameable))('%s', (_name, one) => {
    // Asked on the strings that the right chord sounded on.
    const was = one.frets.map((fret, index) => {
      const change = one.diagnosis?.changes.find(({ string }) => string === one.frets.length - index);
      return change ? change.was : fret;
    });
    const exercise = exerciseOf(one, {
      voicing: { kind: 'strings', strings: placesOf(was).map((spot) => spot.string) },
    });
    const verdict = judge(exercise, { places: placesOf(one.frets) });
    const causes =
      verdict.kind === 'slip' ? [verdict.cause] : verdict.kind === 'unclear' ? verdict.causes : [];
    const expected = causeOf[one.diagnosis?.kind ?? ''] ?? [];
    expect([causes, causes.some((cause) => expected.includes(cause))]).toEqual([causes, true]);
  });
});
