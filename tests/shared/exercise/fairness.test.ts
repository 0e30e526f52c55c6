import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { place, type Place, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { build, find, scale } from '../../support/exercises.ts';
import { chordTones, isChord } from './chord-law.ts';
import { rootTone } from './heard-answers.ts';
import {
  everyPlace,
  exercisesFor,
  fretCount,
  midi,
  note,
  oneAnswer,
  openMidi,
  range,
  roots,
  strings,
} from './making.ts';

// Whole necks are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

/** The laws by plain arithmetic, apart from the code under test. */
const scaleTones: Record<string, readonly number[]> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  'natural-minor': [0, 2, 3, 5, 7, 8, 10],
  'major-pentatonic': [0, 2, 4, 7, 9],
  'minor-pentatonic': [0, 3, 5, 7, 10],
  dorian: [0, 2, 3, 5, 7, 9, 10],
  blues: [0, 3, 5, 6, 7, 10],
};
const above = (exercise: Exercise, spot: Place) => (midi(spot) - rootTone(exercise) + 12) % 12;
const isBound = ({ strictness }: Exercise) => strictness === 'place' || strictness === 'string';
const isInside = ({ range: frets }: Exercise, spot: Place) =>
  frets === null || (spot.fret >= frets.low && spot.fret <= frets.high);
const mayBeRoot = (exercise: Exercise, spot: Place) =>
  above(exercise, spot) === 0 &&
  isInside(exercise, spot) &&
  (!isBound(exercise) || spot.string === exercise.rootString);

const once = (places: readonly Place[]) => [
  ...new Map(places.map((spot) => [`${String(spot.string)}:${String(spot.fret)}`, spot])).values(),
];

/** Whether the wording of the exercise is satisfied; undefined for forms and positions, which have tests of their own. */
function isSatisfied(exercise: Exercise, places: readonly Place[]): boolean | undefined {
  if (places.length === 0 || exercise.kind === 'name') return false;
  if (exercise.kind === 'find') return places.every((spot) => mayBeRoot(exercise, spot));
  const hasRoot = !isBound(exercise) || places.some((spot) => mayBeRoot(exercise, spot));
  const inRange = exercise.strictness !== 'range' || places.every((spot) => isInside(exercise, spot));
  const heard = new Set(places.map((spot) => above(exercise, spot)));
  if (exercise.kind === 'scale') {
    if (exercise.coverage === 'every-pitch') return undefined;
    const tones = scaleTones[exercise.scale] ?? [];
    return (
      hasRoot &&
      inRange &&
      tones.every((tone) => heard.has(tone)) &&
      [...heard].every((tone) => tones.includes(tone))
    );
  }
  if (exercise.voicing.kind === 'form') return undefined;
  const used = places.map((spot) => spot.string);
  if (new Set(used).size < used.length) return false;
  const { voicing } = exercise;
  if (voicing.kind === 'strings' && [...used].sort().join() !== [...voicing.strings].sort().join())
    return false;
  const [lowest] = [...places].sort((a, b) => midi(a) - midi(b));
  const isRootLowest = lowest !== undefined && above(exercise, lowest) === 0;
  return hasRoot && inRange && isChord(exercise.quality, heard, isRootLowest);
}

describe('JUDGE-1, JUDGE-4: find, by brute force over the neck', () => {
  test.each(roots.map((root) => [root]))(
    '%s: every place that satisfies the wording is right, and only those',
    (root) => {
      for (const exercise of exercisesFor([root])) {
        if (exercise.kind !== 'find' || !checkExercise(exercise).ok) continue;
        const astray = everyPlace.filter(
          (spot) => (judge(exercise, { places: [spot] }).kind === 'right') !== isSatisfied(exercise, [spot]),
        );
        expect([exercise, astray]).toEqual([exercise, []]);
      }
    },
  );

  // Source: common practice.
  test('C on string 2 is fret 1 or 13: both, unless the range says one', () => {
    const right = (exercise: Exercise) =>
      everyPlace
        .filter((spot) => judge(exercise, { places: [spot] }).kind === 'right')
        .map((spot) => spot.fret);
    expect(right(find('C'))).toEqual([1, 13]);
    expect(right(find('C', { range: range(1, 12) }))).toEqual([1]);
    expect(right(find('C', { strictness: 'place', range: range(12, 19) }))).toEqual([13]);
  });
});

describe('JUDGE-2, JUDGE-4: triads on three strings, by brute force over all fret triples', () => {
  test.each([
    ['E', 'minor', strings(3, 2, 1)],
    ['Ab', 'major', strings(4, 3, 2)],
    ['F', '7', strings(4, 3, 2)],
  ] as const)('%s %s on strings %j', (root, quality, used) => {
    const exercise = build(root, quality, {
      voicing: { kind: 'strings', strings: used },
      rootString: used[1],
    });
    const astray: Place[][] = [];
    let right = 0;
    for (let a = 0; a <= fretCount; a += 1)
      for (let b = 0; b <= fretCount; b += 1)
        for (let c = 0; c <= fretCount; c += 1) {
          const places = [place(used[0], a), place(used[1], b), place(used[2], c)];
          const satisfied = isSatisfied(exercise, places);
          if (satisfied) right += 1;
          if ((judge(exercise, { places }).kind === 'right') !== satisfied) astray.push(places);
        }
    expect(astray).toEqual([]);
    expect(right).toBeGreaterThan(0);
  });
});

const exercises = exercisesFor(['C', 'Eb', 'F#', 'B']).filter((exercise) => checkExercise(exercise).ok);
const anExercise = fc.constantFrom(...exercises);
const somePlaces = fc.array(fc.constantFrom(...everyPlace), { maxLength: 7 });
/** A right answer, with some of it changed: near the border between right and not. */
const nearlyRight = anExercise.chain((exercise) => {
  const key = oneAnswer(exercise, answerKey(exercise)).map((one) => one.place);
  return fc
    .record({
      drop: fc.subarray(key),
      move: fc.array(
        fc.tuple(fc.nat(key.length), fc.integer({ min: -1, max: 1 }), fc.integer({ min: -2, max: 2 })),
        { maxLength: 2 },
      ),
      add: fc.array(fc.constantFrom(...everyPlace), { maxLength: 1 }),
      keep: fc.boolean(),
    })
    .map(({ drop, move, add, keep }) => {
      const moved = (keep ? key : drop).map((spot, index) => {
        const [, strings_, frets] = move.find(([at]) => at === index) ?? [0, 0, 0];
        const to = place(spot.string + strings_, spot.fret + frets);
        return everyPlace.some((one) => one.string === to.string && one.fret === to.fret) ? to : spot;
      });
      return { exercise, places: [...moved, ...add] };
    });
});
const anAnswer = fc.oneof(nearlyRight, fc.record({ exercise: anExercise, places: somePlaces }));
const runs = { numRuns: 4000, seed: 20261125 };

describe('JUDGE: properties of any answer', () => {
  test('JUDGE-4: what satisfies the wording is right, and only that', () => {
    let right = 0;
    fc.assert(
      fc.property(anAnswer, ({ exercise, places }) => {
        const satisfied = isSatisfied(exercise, once(places));
        if (satisfied === undefined) return;
        if (satisfied) right += 1;
        expect(judge(exercise, { places }).kind === 'right').toBe(satisfied);
      }),
      runs,
    );
    expect(right).toBeGreaterThan(100);
  });

  test('JUDGE-5: order means nothing and a place given twice counts once', () => {
    fc.assert(
      fc.property(anAnswer, ({ exercise, places }) => {
        const kind = judge(exercise, { places }).kind;
        expect(judge(exercise, { places: [...places].reverse() }).kind).toBe(kind);
        expect(judge(exercise, { places: [...places, ...places] }).kind).toBe(kind);
      }),
      { ...runs, numRuns: 1500 },
    );
  });

  test('SLIP-4: marks, corrections and missing places speak of the answer and of a right one', () => {
    fc.assert(
      fc.property(anAnswer, ({ exercise, places }) => {
        const verdict = judge(exercise, { places });
        if (verdict.kind === 'right') return;
        const text = (spot: Place) => `${String(spot.string)}:${String(spot.fret)}`;
        const given = places.map(text);
        expect(new Set(verdict.marks.map((mark) => text(mark.place)))).toEqual(new Set(given));
        for (const spot of verdict.missing) expect(given).not.toContain(text(spot));
        if (verdict.kind !== 'slip') return;
        for (const { from, to } of verdict.corrections) {
          expect(verdict.marks.find((mark) => text(mark.place) === text(from))?.right).toBe(false);
          expect(text(from)).not.toBe(text(to));
          expect(given).not.toContain(text(to));
        }
      }),
      runs,
    );
  });

  test('NECK-3: right stays right when root, range and answer move together', () => {
    const moves = fc.integer({ min: -11, max: 12 });
    let moved = 0;
    fc.assert(
      fc.property(anAnswer, moves, ({ exercise, places }, frets) => {
        const to = places.map((spot) => place(spot.string, spot.fret + frets));
        const frame = exercise.range && range(exercise.range.low + frets, exercise.range.high + frets);
        const onNeck = [...to.map((spot) => spot.fret), ...(frame ? [frame.low, frame.high] : [])];
        if (onNeck.some((fret) => fret < 0 || fret > fretCount)) return;
        const tone = (rootTone(exercise) + frets + 12) % 12;
        const name = roots.find((one) => rootTone({ root: note(one) }) === tone);
        const other: Exercise = { ...exercise, root: note(name ?? 'C'), range: frame };
        if (!checkExercise(other).ok) return;
        moved += 1;
        const before = judge(exercise, { places }).kind === 'right';
        expect(judge(other, { places: to }).kind === 'right').toBe(before);
      }),
      runs,
    );
    expect(moved).toBeGreaterThan(500);
  });

  test('NECK-3: right stays right twelve frets up where the fret is open', () => {
    for (const exercise of exercises) {
      if (exercise.range !== null) continue;
      const up = oneAnswer(exercise, answerKey(exercise)).map((one) =>
        place(one.place.string, one.place.fret + 12),
      );
      if (up.some((spot) => spot.fret > fretCount)) continue;
      // A position near the nut lacks the fret below it, so a stretch may lie elsewhere; pitches stay the same.
      expect([exercise, judge(exercise, { places: up }).kind]).toEqual([exercise, 'right']);
    }
  });
});

describe('FORM-2: strings that may be left out, and one more chord tone', () => {
  const cForm = build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: false } });
  const full = build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: true } });
  const kindOf = (exercise: Exercise, ...spots: [number, number][]) =>
    judge(exercise, { places: spots.map(([s, f]) => place(s, f)) }).kind;

  // Source: common practice for the form; E minor holds E G B.
  test('C form of E minor at fret 5', () => {
    expect(kindOf(cForm, [5, 7], [4, 5], [3, 4], [2, 5])).toBe('right');
    expect(kindOf(cForm, [4, 5], [3, 4], [2, 5])).toBe('right');
    expect(kindOf(cForm, [4, 5], [3, 4], [2, 5], [1, 3])).toBe('right');
    expect(kindOf(cForm, [5, 7], [4, 5], [3, 4], [2, 5], [1, 3])).toBe('right');
    expect(kindOf(cForm, [5, 7], [4, 5], [3, 4], [2, 5], [1, 3], [6, 3])).toBe('slip');
    expect(kindOf(cForm, [5, 7], [4, 5], [3, 4], [2, 5], [1, 4])).toBe('slip');
    expect(kindOf(cForm, [5, 7], [4, 5], [2, 5])).toBe('slip');
  });

  test('with the full form neither holds', () => {
    expect(kindOf(full, [5, 7], [4, 5], [3, 4], [2, 5])).toBe('right');
    expect(kindOf(full, [4, 5], [3, 4], [2, 5])).toBe('slip');
    expect(kindOf(full, [5, 7], [4, 5], [3, 4], [2, 5], [1, 3])).toBe('slip');
  });

  test('every form on every fret of its root string: without each optional string, with each one more chord tone', () => {
    let variants = 0;
    for (const row of formTable)
      for (const string of row.rootStrings) {
        const voicing = { kind: 'form', form: row.form, full: false } as const;
        const exercise = build('G', row.quality, { voicing, rootString: string as StringNumber });
        const key = answerKey(exercise);
        const places = key.map((one) => one.place);
        const lean = key.filter((one) => !one.optional).map((one) => one.place);
        expect(judge(exercise, { places: lean }).kind).toBe('right');
        for (let s = 1; s <= openMidi.length; s += 1) {
          if (places.some((spot) => spot.string === s)) continue;
          for (let fret = 0; fret <= fretCount; fret += 1) {
            const one = place(s, fret);
            const isTone = (chordTones[row.quality] ?? []).includes(above(exercise, one));
            expect(judge(exercise, { places: [...places, one] }).kind === 'right').toBe(isTone);
            variants += 1;
          }
        }
      }
    expect(variants).toBe(2380);
  });
});

describe('POSITION-2: every way to stretch is accepted', () => {
  test('each pitch of the position may lie on either string that reaches it', () => {
    for (const exercise of exercises) {
      if (exercise.kind !== 'scale' || exercise.coverage !== 'every-pitch' || !isBound(exercise)) continue;
      const places = answerKey(exercise).map((one) => one.place);
      const root = places.find((spot) => mayBeRoot(exercise, spot));
      const low = (root?.fret ?? 0) - exercise.rootFinger + 1;
      for (const spot of places)
        for (const other of everyPlace) {
          if (midi(other) !== midi(spot) || other.fret < low - 1 || other.fret > low + 4) continue;
          const variant = [...places.filter((one) => one !== spot), other];
          expect([exercise, other, judge(exercise, { places: variant }).kind]).toEqual([
            exercise,
            other,
            'right',
          ]);
        }
    }
  });

  // Computed: in drop D string 6 lies seven frets below string 5. With the little finger on C, string 1 fret 8, the hand
  // is on frets 5 to 8; C on string 6 fret 10 or string 5 fret 3 is between its lowest and highest note.
  test('a note between strings too far apart is as right as its absence', () => {
    const inDropD: ScaleExercise = {
      ...scale('C', 'major', 2, 8),
      instrument: 'guitar-drop-d',
      rootString: strings(1)[0],
      rootFinger: 4,
    };
    const right = answerKey(inDropD).map((one) => one.place);
    for (const more of [[], [place(6, 10)], [place(5, 3)]])
      expect([more, judge(inDropD, { places: [...right, ...more] }).kind]).toEqual([more, 'right']);
    for (const other of [place(6, 3), place(6, 8), place(1, 10)])
      expect(judge(inDropD, { places: [...right, other] }).kind).not.toBe('right');
  });
});
