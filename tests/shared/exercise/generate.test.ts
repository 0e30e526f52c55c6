import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { Answer } from '../../../shared/exercise/answer.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { generate, rungs, type Rung, type Wish } from '../../../shared/exercise/generate.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { candidatesFor } from '../../../shared/exercise/ladder.ts';
import { slipsApart } from '../../../shared/exercise/likely.ts';
import { usualRoots } from '../../../shared/exercise/usual-roots.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  instrumentById,
  pitchClassAt,
  stringNumbers,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { formatNoteName, pitchClassOf } from '../../../shared/theory/pitch.ts';
import { note, range, roots, strings } from './making.ts';

// Every instrument with every rung on every string: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const wish = (rung: Rung, fields: Partial<Wish> = {}): Wish => ({
  instrument: 'guitar',
  rung,
  roots: [],
  rootStrings: strings(2),
  range: null,
  count: 5,
  seed: 1,
  ...fields,
});

function made(asked: Wish): readonly Exercise[] {
  const result = generate(asked);
  if (!result.ok) throw new Error(result.error);
  return result.value;
}

/** The failure, as a person would read it. */
function refusal(asked: Wish): string {
  const result = generate(asked);
  return result.ok ? '' : result.error;
}

/** Tunings of the table and some that nobody sells: from three strings to ten, re-entrant, capo, few frets. */
const instruments = [
  ...tuningIds,
  'guitar+capo=7',
  'guitar-7+frets=36',
  'custom:D4-A3-D3',
  'custom:G4-D4-G3-D5+frets=5',
  'custom:E4-B3-G3-D3-A2-E2-B1-F#1-C#1-G#0+frets=24',
];

/** A right answer as somebody would give it. */
function rightAnswer(exercise: Exercise): Answer {
  const instrument = known(instrumentById(exercise.instrument), exercise.instrument);
  if (exercise.kind !== 'name') return { places: answerKey(exercise).map(({ place }) => place) };
  if (exercise.wanted === 'note') return { places: [], named: { kind: 'note', note: exercise.root } };
  const above = (pitchClassAt(instrument, exercise.place) - pitchClassOf(exercise.root) + 12) % 12;
  // Semitones above a root, flat before sharp (equal temperament).
  const degree = ['1', 'b2', '2', 'b3', '3', '4', 'b5', '5', 'b6', '6', 'b7', '7'][above] ?? '';
  return { places: [], named: { kind: 'degree', degree } };
}

const sound = ({ root }: Exercise) => pitchClassOf(root);
const text = (exercise: Exercise) => JSON.stringify(exercise);
const mean = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
const seeds = Array.from({ length: 200 }, (_, index) => index);
const guitar = known(instrumentById('guitar'), 'guitar');
const onGuitar = { instrument: guitar, roots: [], strings: stringNumbers(guitar), range: null };

/** How often each value comes. */
function tally(values: readonly unknown[]): readonly number[] {
  const counts = new Map<unknown, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()];
}

describe('GENERATE-1: the same wish and seed make the same exercises', () => {
  test.each(rungs)('%s', (rung) => {
    const some = (seed: number) => made(wish(rung, { seed })).map(text).join();
    expect(some(11)).toBe(some(11));
    expect(new Set(seeds.slice(0, 20).map(some)).size).toBeGreaterThan(15);
  });
});

describe('GENERATE-2: what is made can be asked, and its key is right', () => {
  const wishes = fc.record({
    instrument: fc.constantFrom(...instruments),
    rung: fc.constantFrom(...rungs),
    roots: fc.oneof(fc.constant([]), fc.subarray(roots.map(note), { minLength: 1, maxLength: 4 })),
    rootStrings: fc.array(
      fc.integer({ min: 1, max: 10 }).map((string) => string as StringNumber),
      { maxLength: 3 },
    ),
    range: fc.option(
      fc.tuple(fc.nat(20), fc.nat(12)).map(([low, width]) => range(low, low + width)),
      { nil: null },
    ),
    count: fc.integer({ min: 1, max: 20 }),
    seed: fc.integer(),
  });

  test('any wish: as many as wished, or a sentence', () => {
    fc.assert(
      fc.property(wishes, (asked) => {
        const result = generate(asked);
        if (!result.ok) {
          expect(result.error).toMatch(/^[A-Z“].+\.$/);
          return;
        }
        expect(result.value).toHaveLength(asked.count);
        for (const exercise of result.value) {
          expect(checkExercise(exercise)).toEqual({ ok: true, value: exercise });
          expect(judge(exercise, rightAnswer(exercise)).kind).toBe('right');
          expect(exercise.instrument).toBe(asked.instrument);
          if (asked.roots.length > 0) expect(asked.roots).toContainEqual(exercise.root);
          if (asked.rootStrings.length > 0) expect(asked.rootStrings).toContain(exercise.rootString);
          if (asked.range && exercise.strictness !== 'range') {
            expect(exercise.range?.low).toBeGreaterThanOrEqual(asked.range.low);
            expect(exercise.range?.high).toBeLessThanOrEqual(asked.range.high);
          }
        }
      }),
      { numRuns: 250, seed: 3 },
    );
  });

  test.each(instruments)('%s: notes on each string, and every rung on some', (id) => {
    const instrument = known(instrumentById(id), id);
    for (const rung of rungs) {
      const results = stringNumbers(instrument).map((string) =>
        generate(wish(rung, { instrument: id, rootStrings: [string] })),
      );
      for (const result of results)
        if (result.ok) {
          expect(result.value).toHaveLength(5);
          for (const exercise of result.value) {
            expect(checkExercise(exercise).ok).toBe(true);
            expect(judge(exercise, rightAnswer(exercise)).kind).toBe('right');
          }
        }
      if (['natural-notes', 'all-notes', 'name-places'].includes(rung))
        expect(results.every((result) => result.ok)).toBe(true);
      // A chord of four tones needs as many strings, and two positions more than five frets.
      const mayBeTooSmall = instrument.openStrings.length < 4 || instrument.fretCount < 12;
      if (!mayBeTooSmall) expect(results.some((result) => result.ok)).toBe(true);
    }
  });
});

describe('GENERATE-3: what a rung asks', () => {
  const all = (rung: Rung) =>
    seeds.slice(0, 15).flatMap((seed) => made(wish(rung, { seed, rootStrings: [] })));

  test('natural-notes never asks an accidental', () => {
    for (const exercise of all('natural-notes')) {
      expect(exercise.kind).toBe('find');
      expect(exercise.root.alteration).toBe(0);
    }
    const flats = { roots: [note('Eb'), note('C')], count: 4 };
    for (const exercise of made(wish('natural-notes', flats))) expect(exercise.root).toEqual(note('C'));
  });

  test('all-notes asks sharps and flats, with at most one accidental', () => {
    const asked = new Set(
      seeds
        .flatMap((seed) => made(wish('all-notes', { seed, rootStrings: [] })))
        .map(({ root }) => formatNoteName(root)),
    );
    // Common practice: the twelve notes with both names of the five between the naturals.
    expect([...asked].sort()).toEqual(
      ['A', 'A#', 'Ab', 'B', 'Bb', 'C', 'C#', 'D', 'D#', 'Db', 'E', 'Eb', 'F', 'F#', 'G', 'G#', 'Gb'].sort(),
    );
  });

  test('name-places asks notes, and some intervals', () => {
    const wanted = all('name-places').map((exercise) =>
      exercise.kind === 'name' ? exercise.wanted : 'none',
    );
    const intervals = wanted.filter((one) => one === 'interval').length;
    expect(new Set(wanted)).toEqual(new Set(['note', 'interval']));
    expect(intervals / wanted.length).toBeLessThan(0.5);
  });

  test('triads on string 2 come in the close forms and the C and D forms', () => {
    const forms = seeds
      .slice(0, 60)
      .flatMap((seed) =>
        made(wish('triads', { seed })).map((exercise) =>
          exercise.kind === 'build' && exercise.voicing.kind === 'form' ? exercise.voicing.form : 'none',
        ),
      );
    expect(new Set(forms)).toEqual(new Set(['triad-321', 'triad-432', 'C', 'D']));
  });

  test('triads on a bass come on three neighbouring strings', () => {
    for (const exercise of made(wish('triads', { instrument: 'bass-4', rootStrings: strings(3) })))
      expect(exercise).toMatchObject({ kind: 'build', voicing: { kind: 'strings', strings: { length: 3 } } });
  });

  test('sevenths, pentatonics, two-positions and full-scales by their tables', () => {
    const kinds = (rung: Rung) =>
      new Set(
        all(rung).map((exercise) =>
          exercise.kind === 'build' ? exercise.quality : exercise.kind === 'scale' ? exercise.scale : '',
        ),
      );
    expect(kinds('sevenths')).toEqual(new Set(['7', 'maj7', 'm7', 'm7b5']));
    expect(kinds('pentatonics')).toEqual(new Set(['major-pentatonic', 'minor-pentatonic']));
    expect(kinds('two-positions')).toEqual(kinds('pentatonics'));
    expect(kinds('full-scales')).toEqual(
      new Set(['major', 'natural-minor', 'dorian', 'mixolydian', 'harmonic-minor']),
    );
  });

  test('two positions of E minor pentatonic, root on string 6 at the open string and fret 12', () => {
    const asked = { roots: [note('E')], rootStrings: strings(6), count: 4, seed: 2 };
    const minor = made(wish('two-positions', asked)).filter(
      (exercise) => exercise.kind === 'scale' && exercise.scale === 'minor-pentatonic',
    );
    // Common practice: the first box lies on frets 12 to 15, the second on 14 to 17.
    expect(new Set(minor.map((exercise) => JSON.stringify(exercise.range)))).toEqual(
      new Set([JSON.stringify(range(0, 5)), JSON.stringify(range(12, 17))]),
    );
  });

  test('roots are spelled as usual: by fewer accidentals, both where they are equal', () => {
    const names = (...degrees: readonly string[]) => usualRoots(degrees).map(formatNoteName).sort().join(' ');
    // Common practice: the key signatures of up to six accidentals.
    expect(names('1', '2', '3', '4', '5', '6', '7')).toBe('A Ab B Bb C D Db E Eb F F# G Gb');
    expect(names('1', '2', 'b3', '4', '5', 'b6', 'b7')).toBe('A B Bb C C# D D# E Eb F F# G G#');
  });
});

describe('GENERATE-4: exercises whose likely slips land apart are preferred', () => {
  test('the chosen notes tell slips apart better than all that could be asked', () => {
    // One alone is asked as hard as may be: nothing else is preferred.
    const ground = { ...onGuitar, strings: strings(2) };
    const possible = candidatesFor('natural-notes', ground).map(({ exercise }) => slipsApart(exercise));
    const chosen = seeds.flatMap((seed) => made(wish('natural-notes', { seed, count: 1 })).map(slipsApart));
    expect(mean(chosen)).toBeGreaterThan(mean(possible) + 0.03);
  });

  test('and are not the only ones: every natural note comes', () => {
    const asked = seeds.flatMap((seed) =>
      made(wish('natural-notes', { seed })).map(({ root }) => root.letter),
    );
    expect(new Set(asked).size).toBe(7);
  });
});

describe('GENERATE-6: variety', () => {
  const everyString = wish('all-notes', { rootStrings: [], count: 20 });

  test('no root twice in a row where there are two', () => {
    for (const rung of rungs)
      for (const seed of seeds.slice(0, 4))
        for (const some of [[], [note('C'), note('D')]]) {
          const sounds = made({ ...everyString, rung, seed, roots: some }).map(sound);
          expect(sounds.some((one, index) => one === sounds[index + 1])).toBe(false);
        }
  });

  test('no exercise twice while another is left', () => {
    for (const rung of rungs)
      for (const seed of seeds.slice(0, 4)) {
        const asked = made({ ...everyString, rung, seed }).map(text);
        expect(new Set(asked).size).toBe(asked.length);
      }
    for (const seed of seeds) {
      const naturals = made(wish('natural-notes', { seed, count: 14 })).map(text);
      expect(new Set(naturals.slice(0, 7)).size).toBe(7);
      expect(tally(naturals)).toEqual([2, 2, 2, 2, 2, 2, 2]);
    }
  });

  test('strings, qualities and scales come about equally often', () => {
    for (const seed of seeds.slice(0, 20)) {
      const perString = tally(made({ ...everyString, seed, count: 18 }).map(({ rootString }) => rootString));
      expect(perString).toEqual([3, 3, 3, 3, 3, 3]);
      const sevenths = made(wish('sevenths', { seed, count: 12 }));
      const perQuality = tally(sevenths.map((one) => one.kind === 'build' && one.quality));
      expect(perQuality).toEqual([3, 3, 3, 3]);
    }
  });

  test('the first ones are a little easier', () => {
    const hardness = new Map(
      rungs.flatMap((rung) => candidatesFor(rung, onGuitar)).map((one) => [text(one.exercise), one.hardness]),
    );
    for (const rung of rungs) {
      const plans = seeds.slice(0, 30).map((seed) => made(wish(rung, { seed, count: 9, rootStrings: [] })));
      const at = (from: number, to: number) =>
        mean(
          plans.flatMap((plan) => plan.slice(from, to).map((one) => known(hardness.get(text(one)), rung))),
        );
      expect(at(0, 3)).toBeLessThan(at(6, 9));
    }
  });
});

describe('GENERATE-7: what can’t be made is said in a sentence', () => {
  test.each<readonly [sentence: string, asked: Wish]>([
    ['“harp” is no tuning known here.', wish('triads', { instrument: 'harp' })],
    ['This instrument has no string 7.', wish('triads', { rootStrings: strings(2, 7) })],
    ['Ask for 1 to 20 exercises.', wish('triads', { count: 0 })],
    ['Ask for 1 to 20 exercises.', wish('triads', { count: 21 })],
    ['Ask for 1 to 20 exercises.', wish('triads', { count: 2.5 })],
    ['The neck ends at fret 19.', wish('triads', { range: range(12, 20) })],
    ['The lowest fret lies above the highest.', wish('triads', { range: range(7, 5) })],
    ['Frets are counted from the nut, which is 0.', wish('triads', { range: range(-1, 5) })],
    [
      'The first step asks notes without accidentals only. Choose such a root, or the next step.',
      wish('natural-notes', { roots: [note('Eb')] }),
    ],
    [
      'Nothing of this kind fits there. Choose more roots, more frets or other strings.',
      wish('all-notes', { roots: [note('C')], range: range(2, 12) }),
    ],
  ])('%s', (sentence, asked) => {
    expect(refusal(asked)).toBe(sentence);
  });
});

test('GENERATE-3: triads are major or minor alone where that is wished', () => {
  for (const third of ['major', 'minor'] as const)
    for (const exercise of made(wish('triads', { third, count: 10 })))
      expect(exercise).toMatchObject({ kind: 'build', quality: third });
});
