import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { exerciseSchema } from '../../../shared/protocol/schemas.ts';
import { parseChordName } from '../../../shared/theory/chord-name.ts';
import { place, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { build, find, name, scale } from '../../support/exercises.ts';
import { exerciseOn, instrumentIds, seed } from './arbitraries.ts';
import { exercisesFor, note, range, strings } from './making.ts';

const form = (id: 'C' | 'E') => ({ kind: 'form', form: id, full: false }) as const;
const on = (...numbers: number[]) => ({ kind: 'strings', strings: strings(...numbers) }) as const;
const [six] = strings(6);
const [nine] = strings(9);
const [none] = strings(0);

describe('CHECK-2: what can’t be asked is refused with a sentence', () => {
  test.each<[string, Exercise, RegExp]>([
    ['an unknown instrument', find('D', { instrument: 'lute' }), /“lute” is no tuning known here\./],
    [
      'a capo that leaves no neck',
      find('D', { instrument: 'guitar+capo=18' }),
      /A capo leaves at least 5 frets/,
    ],
    ['too few strings of an own tuning', find('D', { instrument: 'custom:D4-A3' }), /3 to 10 strings/],
    [
      'forty strings',
      find('D', { instrument: `custom:${Array.from({ length: 40 }, () => 'D4').join('-')}` }),
      /at most 120 signs/,
    ],
    ['a place that is not on the neck', name('D', 20), /neck ends at fret 19|not on the neck/],
    ['a place on another string than the one named', name('D', 3, { rootString: six }), /String|string/],
    ['a place that sounds another note', name('Eb', 3), /sounds another note/],
    ['a string that is not there', find('D', { rootString: nine }), /no string 9/],
    ['string 0', find('D', { rootString: none }), /no string 0/],
    ['frets in the wrong order', find('D', { range: range(9, 2) }), /above the highest/],
    ['frets past the neck', find('D', { range: range(2, 20) }), /ends at fret 19/],
    ['frets before the nut', find('D', { range: range(-1, 5) }), /nut/],
    ['place without frets', find('D', { strictness: 'place' }), /which frets/],
    ['range without frets', find('D', { strictness: 'range' }), /which frets/],
    ['place with two roots', find('D', { strictness: 'place', range: range(0, 19) }), /twice/],
    ['place without a root', find('D', { strictness: 'place', range: range(4, 8) }), /does not lie there/],
    ['string without a root in the frets', find('D', { range: range(4, 8) }), /does not lie there/],
    ['a root that needs a triple accidental', build('B##', 'aug'), /Respell/],
    ['a scale that needs one', scale('G##', 'major', 2, 10), /Respell/],
    ['a form that this quality lacks', build('E', 'dim', { voicing: form('C') }), /no such chord/],
    ['a form without a root there', build('E', 'major', { voicing: form('E') }), /string 2/],
    ['a string named twice', build('E', 'major', { voicing: on(3, 3, 2) }), /twice/],
    [
      'a string of the voicing that is not there',
      build('E', 'major', { voicing: on(9, 3, 2) }),
      /no string 9/,
    ],
    ['too few strings', build('E', 'major', { voicing: on(3, 2) }), /more tones/],
    ['the root string not among the strings', build('E', 'major', { voicing: on(5, 4, 3) }), /not among/],
    [
      'the open root of a form',
      build('B', 'major', { voicing: form('C'), strictness: 'place', range: range(0, 4) }),
      /Twelve frets up it fits/,
    ],
    [
      'a form past the last fret',
      build('F#', 'major', { voicing: form('C'), strictness: 'place', range: range(18, 19) }),
      /Twelve frets down it fits/,
    ],
    ['a position before the nut', scale('B', 'major', 2, 0), /Twelve frets up it fits/],
    ['a position past the neck', scale('F', 'major', 2, 18), /Twelve frets down it fits/],
    [
      'every pitch anywhere',
      { ...scale('E', 'major', 2, 5), strictness: 'anywhere', range: null },
      /every note name/,
    ],
    [
      'a range without the whole scale',
      { ...scale('E', 'major', 2, 5), strictness: 'range', coverage: 'every-tone', range: range(5, 5) },
      /No hand position/,
    ],
    [
      'a chord with more tones than the instrument has strings',
      build('C', 'maj9', { instrument: 'custom:A4-E4-C4', voicing: { kind: 'any' } }),
      /more tones/,
    ],
    [
      'a form over a bass',
      build('C', 'major', { voicing: form('C'), bass: note('G') }),
      /its own lowest note/,
    ],
    [
      'the finger of a voicing that has none',
      build('E', 'minor', { voicing: on(3, 2, 1), asksFinger: true }),
      /No finger is given for the root there/,
    ],
    [
      'the finger of a position that names it',
      { ...scale('E', 'major', 2, 5), asksFinger: true },
      /Which finger takes the root is open/,
    ],
    [
      'the finger in a range that holds the open strings',
      { ...scale('C', 'major', 2, 1), asksFinger: true, strictness: 'range', range: range(0, 3) },
      /Which finger takes the root is open/,
    ],
    [
      'every note name in a position that lacks some, strings an octave apart',
      {
        ...scale('C', 'major', 2, 5),
        instrument: 'custom:C5-C4-C3',
        coverage: 'every-tone',
        strictness: 'string',
        range: null,
      },
      /No hand position/,
    ],
    [
      'the finger where the frets hold no root on its string',
      { ...scale('E', 'major', 2, 5), asksFinger: true, strictness: 'range', range: range(6, 9) },
      /Which finger takes the root is open/,
    ],
    [
      'a chord that no hand holds in the range',
      build('E', 'major', { strictness: 'range', range: range(1, 1), voicing: { kind: 'any' } }),
      /does not lie there|No hand position/,
    ],
  ])('%s', (_name, exercise, sentence) => {
    const checked = checkExercise(exercise);
    expect(checked.ok ? 'can be asked' : checked.error).toMatch(sentence);
  });
});

describe('CHECK-1', () => {
  test.each<[string, Exercise]>([
    ['find on a string', find('D')],
    ['find in a place', find('D', { strictness: 'place', range: range(0, 11) })],
    ['find every place', find('D', { wanted: 'every', strictness: 'anywhere' })],
    ['name a place', name('D', 3)],
    ['name it by another spelling', name('C##', 3)],
    ['name a degree', name('C', 4, { wanted: 'degree' })],
    ['a triad', build('E', 'minor')],
    [
      'a triad with its root marked and its finger',
      build('E', 'minor', { marksRoot: true, asksFinger: true }),
    ],
    ['a slash chord', build('C', 'major', { voicing: { kind: 'any' }, bass: note('G') })],
    [
      'root position',
      build('C', 'major', { voicing: { kind: 'any' }, bass: note('C'), strictness: 'anywhere' }),
    ],
    ['on another tuning', build('E', 'minor', { instrument: 'guitar-drop-d' })],
    ['with a capo', build('E', 'minor', { instrument: 'guitar+capo=2' })],
    [
      'a finger in the frets of a hand',
      { ...scale('E', 'major', 2, 5), asksFinger: true, strictness: 'range', range: range(4, 7) },
    ],
    ['the E form from string 6', build('F', 'major', { voicing: form('E'), rootString: six })],
    ['a position', scale('E', 'major', 2, 5)],
    ['every note of some frets', { ...scale('E', 'major', 2, 5), strictness: 'range', range: range(5, 5) }],
    [
      'any voicing in few frets: four strings, root lowest',
      build('A', 'major', { strictness: 'range', range: range(2, 2), voicing: { kind: 'any' } }),
    ],
  ])('%s can be asked', (_name, exercise) => {
    expect(checkExercise(exercise)).toEqual({ ok: true, value: exercise });
  });

  test('whatever is refused is refused with a sentence for a person, and nothing is thrown', () => {
    let refused = 0;
    for (const exercise of exercisesFor(['E', 'Bb'])) {
      const checked = checkExercise(exercise);
      if (checked.ok) continue;
      refused += 1;
      expect(checked.error).toMatch(/^[A-Z].*\.$/);
      expect(checked.error).not.toMatch(/wrong|fail|!|undefined/i);
    }
    expect(refused).toBeGreaterThan(50);
  });
});

describe('EDGE-1: nonsense is refused, never thrown at', () => {
  const parse = (exercise: unknown) => v.safeParse(exerciseSchema, exercise).success;
  const sound: Exercise = find('D');

  test.each<[string, object]>([
    ['a string that no instrument has', { rootString: 40 }],
    ['a string between two', { rootString: 2.5 }],
    ['a fret before the nut', { range: { low: -3, high: 5 } }],
    ['half a fret', { range: { low: 0.5, high: 5 } }],
    ['a strictness that is none', { strictness: 'sometimes' }],
    ['a kind that is none', { kind: 'sing' }],
    ['a quality that is none', { ...build('E', 'minor'), quality: 'unknown' }],
    ['a form that is none', { ...build('E', 'minor'), voicing: { kind: 'form', form: 'Q', full: false } }],
    ['a scale that is none', { ...scale('E', 'major', 2, 5), scale: 'unknown' }],
    ['a fifth finger', { ...scale('E', 'major', 2, 5), rootFinger: 5 }],
    ['a letter that is none', { root: { letter: 'X', alteration: 0 } }],
    ['a triple accidental', { root: { letter: 'C', alteration: 3 } }],
    ['an instrument too long to read', { instrument: 'x'.repeat(121) }],
    ['a field that nobody knows', { answer: [] }],
  ])('at the edge: %s', (_name, fields) => {
    expect(parse(sound)).toBe(true);
    expect(parse({ ...sound, ...fields })).toBe(false);
  });

  test.each(['english', 'german', 'solfege'] as const)('a chord name that is none, in %s', (naming) => {
    for (const text of ['Xq7', '', '/', 'do re mi', 'Cq7', 'C'.repeat(500)]) {
      const parsed = parseChordName(text, naming);
      expect(parsed.ok ? text : parsed.error).toMatch(
        /^“.*” (starts with no note name|is no chord known here): .*\.$/,
      );
    }
  });

  const wild = fc.oneof(
    fc.integer({ min: -5, max: 45 }),
    fc.constantFrom(-1000, 1000, 1e9, -1e9, NaN, 2.5, Infinity, -Infinity),
  );
  // One of them at a time, so that the checks behind it are met too.
  const wildFields: fc.Arbitrary<object> = fc.oneof(
    fc.constant({}),
    fc.record({
      instrument: fc.oneof(
        fc.constantFrom(
          ...['xyz', '', 'guitar+capo=99', 'guitar+', 'custom:', 'custom:C4-C4-C4', 'toString', '__proto__'],
        ),
        fc.string(),
      ),
    }),
    fc.record({ rootString: wild }),
    fc.record({ range: fc.record({ low: wild, high: wild }) }),
    fc.record({
      root: fc.record({
        letter: fc.constantFrom('C', 'D', 'E', 'F', 'G', 'A', 'B'),
        alteration: fc.constantFrom(-2, -1, 0, 1, 2),
      }),
    }),
  );
  const wildExercise = fc
    .tuple(
      exerciseOn(instrumentIds),
      wildFields,
      fc.tuple(wild, wild),
      fc.array(wild, { maxLength: 40 }),
      fc.boolean(),
    )
    .map(([exercise, fields, [string, fret], numbers, isKept]): Exercise => {
      const base = { ...exercise, ...fields } as Exercise;
      if (base.kind === 'name' && !isKept) return { ...base, place: place(string, fret) };
      if (base.kind === 'build' && !isKept)
        return { ...base, voicing: { kind: 'strings', strings: numbers as unknown as StringNumber[] } };
      return base;
    });

  test('any exercise with wild numbers: it can be asked, or there is a sentence', () => {
    const sentences = new Set<string>();
    let asked = 0;
    fc.assert(
      fc.property(wildExercise, (exercise) => {
        const checked = checkExercise(exercise);
        if (checked.ok) {
          asked += 1;
          expect(wordingOf(exercise, 'german').detail).not.toMatch(/undefined|NaN/);
          expect(judge(exercise, { places: [] }).kind).toBe('slip');
          return;
        }
        expect(checked.error).toMatch(/^[A-Z“].*\.$/s);
        // What was typed is quoted, whatever it was.
        const own = checked.error.replace(/“.*”/s, '“”');
        expect(own).not.toMatch(/wrong|fail|!|undefined/i);
        sentences.add(own.replace(/-?[\d.e+]+|NaN|Infinity/g, '#'));
      }),
      { numRuns: 4000, seed },
    );
    expect(asked).toBeGreaterThan(200);
    expect(sentences.size).toBeGreaterThan(15);
  });
});
