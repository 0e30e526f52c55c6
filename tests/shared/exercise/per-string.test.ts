import { describe, expect, test, vi } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { SlipCause, Verdict } from '../../../shared/exercise/verdict.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { holds, isOnNeck, midiAt, place, type Place } from '../../../shared/theory/fretboard.ts';
import { scaleDegrees } from '../../../shared/theory/chord.ts';
import { patternsFrom } from '../../../shared/theory/patterns.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import { scale } from '../../support/exercises.ts';
import { everyPlaceOf, note, range, strings } from './making.ts';
import { keyPlaces, neck, written } from './proposed.ts';

// Whole necks are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const toneSets = [
  'minor-pentatonic',
  'major-pentatonic',
  'major',
  'dorian',
  'harmonic-minor',
  'blues',
] as const;

/** From every root place of the neck; not by way of proposals, which leave out what a position is already. */
const patternsOn = (id: string, name: string): readonly ScaleExercise[] =>
  toneSets.flatMap((tones) => {
    const notes = scaleDegrees(tones).length === 5 ? 2 : 3;
    return everyString(neck(id), note(name))
      .flat()
      .flatMap((spot) =>
        patternsFrom(neck(id), note(name), tones, spot, notes).map(({ rootAt }): ScaleExercise => ({
          kind: 'scale',
          instrument: id,
          root: note(name),
          rootString: spot.string,
          strictness: 'place',
          range: { low: spot.fret, high: spot.fret },
          scale: tones,
          coverage: 'every-pitch',
          perString: { notes, rootAt },
          rootFinger: 1,
        })),
      );
  });

const nameOf = (verdict: Verdict) => (verdict.kind === 'slip' ? verdict.cause : verdict.kind);
const causesIn = (verdict: Verdict): readonly string[] =>
  verdict.kind === 'slip' ? [verdict.cause] : verdict.kind === 'unclear' ? verdict.causes : [];

describe.each([['guitar'], ['guitar-drop-d'], ['guitar-7'], ['bass-4'], ['mandolin'], ['guitar+capo=3']])(
  'JUDGE-10: with so many notes on every string the pattern is judged exactly: %s',
  (id) => {
    const instrument = neck(id);
    const asked = patternsOn(id, 'A');

    test('so many on each string, the root where it was said', () => {
      expect(asked.length).toBeGreaterThan(5);
      for (const exercise of asked) {
        const { perString, range: root } = exercise;
        for (const [index] of instrument.openStrings.entries()) {
          const own = keyPlaces(exercise)
            .filter(({ string }) => string === index + 1)
            .map(({ fret }): number => fret)
            .sort((a, b) => a - b);
          expect(own).toHaveLength(perString?.notes ?? 0);
          if (index + 1 === exercise.rootString)
            expect(own.indexOf(root?.low ?? -1) + 1).toBe(perString?.rootAt);
        }
      }
    });

    test('any order is right; one fewer, or any place of the neck more, is not', () => {
      let others = 0;
      for (const exercise of asked) {
        const right = keyPlaces(exercise);
        expect(judge(exercise, { places: right.toReversed() }).kind).toBe('right');
        for (const spot of right)
          expect(nameOf(judge(exercise, { places: right.filter((one) => one !== spot) }))).toBe(
            'missing-tone',
          );
        const { rootString } = exercise;
        for (const { place: spot } of everyPlaceOf(instrument)) {
          // The neck is long: the neighbouring strings are enough.
          if (holds(right, spot) || Math.abs(spot.string - rootString) > 1) continue;
          expect(nameOf(judge(exercise, { places: [...right, spot] }))).toBe('extra-tone');
          others += 1;
        }
      }
      expect(others).toBeGreaterThan(300);
    });

    test('the same pitch on another string is not the pattern', () => {
      let moved = 0;
      for (const exercise of asked) {
        const right = keyPlaces(exercise);
        for (const [index, spot] of right.entries())
          for (const { place: other } of everyPlaceOf(instrument)) {
            const isSamePitch = midiAt(instrument, other) === midiAt(instrument, spot);
            if (!isSamePitch || holds(right, other)) continue;
            expect(judge(exercise, { places: right.with(index, other) }).kind).not.toBe('right');
            moved += 1;
          }
      }
      expect(moved).toBeGreaterThan(100);
    });

    test('SLIP-1: each slip is named, or unclear with its cause', () => {
      for (const exercise of asked) {
        const key = answerKey(exercise);
        const right = key.map((one) => one.place);
        const shift = (frets: number, which: (spot: Place, at: number) => boolean = () => true) =>
          right.map((spot, at) => (which(spot, at) ? place(spot.string, spot.fret + frets) : spot));
        const isMinor = key.some(({ degree }) => degree === 'b3');
        const third = isMinor ? 'b3' : '3';
        const slips: [SlipCause, readonly Place[]][] = [
          ['one-fret-off', shift(1)],
          ['nut-as-one', shift(-1)],
          ['wrong-octave', shift(12)],
          ['wrong-octave', shift(-12)],
          [
            isMinor ? 'major-for-minor' : 'minor-for-major',
            shift(isMinor ? 1 : -1, (_, at) => key[at]?.degree === third),
          ],
        ];
        if (id === 'guitar')
          slips.push(
            ['short-step', shift(1, ({ string }) => string > 2)],
            ['short-step', shift(-1, ({ string }) => string <= 2)],
          );
        for (const [cause, given] of slips)
          if (given.every((spot) => isOnNeck(instrument, spot)))
            expect([exercise.scale, causesIn(judge(exercise, { places: given }))]).toEqual([
              exercise.scale,
              expect.arrayContaining([cause]),
            ]);
      }
    });
  },
);

describe('JUDGE-10: strings, order and marks', () => {
  const [exercise] = patternsOn('guitar', 'A').filter(
    ({ scale: id, rootString, range: at, perString }) =>
      id === 'minor-pentatonic' && rootString === 6 && at?.low === 5 && perString?.rootAt === 1,
  );
  if (!exercise) throw new Error('no box of A');
  // Source: common practice for the box of A from string 6, fret 5.
  const box = [
    [6, 5, 8],
    [5, 5, 7],
    [4, 5, 7],
    [3, 5, 7],
    [2, 5, 8],
    [1, 5, 8],
  ].flatMap(([string = 0, ...frets]) => frets.map((fret) => place(string, fret)));

  test('the box that everybody knows', () => {
    expect(written(keyPlaces(exercise))).toBe(written(box));
    expect(wordingOf(exercise, 'english')).toEqual({
      title: 'A minor pentatonic',
      detail: 'Root on string 6, below fret 12. Two notes on every string, the root the first of its two.',
    });
  });

  test('in order, and with the root marked', () => {
    const ordered: ScaleExercise = { ...exercise, order: 'up', marksRoot: true };
    expect(judge(ordered, { places: box, root: place(4, 7) }).kind).toBe('right');
    expect(nameOf(judge(ordered, { places: box.toReversed(), root: place(4, 7) }))).toBe('wrong-order');
    expect(nameOf(judge(ordered, { places: box, root: place(5, 5) }))).toBe('wrong-root-mark');
  });

  test('on a string, wherever the pattern fits', () => {
    const anywhere: ScaleExercise = { ...exercise, strictness: 'string', range: null };
    const up = box.map((spot) => place(spot.string, spot.fret + 12));
    // An octave up fret 20 would be past a neck of 19.
    expect(judge(anywhere, { places: box }).kind).toBe('right');
    expect(judge(anywhere, { places: up }).kind).not.toBe('right');
    const longer: ScaleExercise = { ...anywhere, instrument: 'guitar+frets=22' };
    expect(judge(longer, { places: up }).kind).toBe('right');
  });
});

describe('CHECK-3: what can’t be asked', () => {
  const e = scale('E', 'dorian', 1, 5);
  const three = { notes: 3, rootAt: 1 } as const;
  const bound = 'A fixed number of notes on every string needs a root on one string, and every note of it.';
  test.each<[ScaleExercise, string]>([
    [{ ...e, perString: three, coverage: 'every-tone' }, bound],
    [{ ...e, perString: three, strictness: 'range', range: range(2, 9) }, bound],
    [{ ...e, perString: three, strictness: 'anywhere', range: null }, bound],
    [
      { ...e, perString: { notes: 3, rootAt: 4 } },
      'With three notes on a string the root can’t be number 4.',
    ],
    [
      { ...e, perString: three, instrument: 'ukulele', root: note('A'), rootString: strings(2)[0] },
      'No hand position there holds all of it.',
    ],
    [
      { ...e, perString: { notes: 3, rootAt: 3 }, root: note('C'), range: range(1, 1) },
      'From the root there it would reach before the nut. Twelve frets up it fits.',
    ],
  ])('%#', (exercise, reason) => {
    expect(checkExercise(exercise)).toEqual({ ok: false, error: reason });
  });
});
