import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../shared/exercise/answer.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { BuildExercise, Exercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { place, type Place } from '../../../shared/theory/fretboard.ts';
import { build, find, name, places, scale } from '../../support/exercises.ts';
import { everyPlace, midi, note, range, strings } from './making.ts';

const isRight = (exercise: Exercise, answer: Answer) => judge(exercise, answer).kind === 'right';
const keyOf = (exercise: Exercise) => answerKey(exercise).map((one) => one.place);

/** Frets by string from string 6 on, as pattern tables print them. */
const pattern = (strings: readonly (readonly number[])[]) =>
  strings.flatMap((frets, index) => frets.map((fret) => place(strings.length - index, fret)));

describe('JUDGE-1…3: check values', () => {
  // Source: common practice.
  test('C on string 2 is fret 1 or 13, one of them or both', () => {
    for (const given of [places([2, 1]), places([2, 13]), places([2, 1], [2, 13])])
      expect(judge(find('C'), { places: given })).toEqual({ kind: 'right' });
  });

  // Source: computed from the tuning.
  test('E minor on strings 3-2-1 with its root on string 2, fret 5: 4-5-3, and twelve frets up', () => {
    for (const given of [places([3, 4], [2, 5], [1, 3]), places([3, 16], [2, 17], [1, 15])])
      expect(judge(build('E', 'minor'), { places: given })).toEqual({ kind: 'right' });
  });

  // Source: common practice; the minor pentatonic also computed.
  test.each([
    [
      'major-pentatonic',
      2,
      [
        [4, 7],
        [4, 7],
        [4, 6],
        [4, 6],
        [5, 7],
        [4, 7],
      ],
    ],
    [
      'minor-pentatonic',
      1,
      [
        [5, 7],
        [5, 7],
        [5, 7],
        [4, 7],
        [5, 8],
        [5, 7],
      ],
    ],
    [
      'major',
      2,
      [
        [4, 5, 7],
        [4, 6, 7],
        [4, 6, 7],
        [4, 6],
        [4, 5, 7],
        [4, 5, 7],
      ],
    ],
    [
      'natural-minor',
      1,
      [
        [5, 7, 8],
        [5, 7],
        [4, 5, 7],
        [4, 5, 7],
        [5, 7, 8],
        [5, 7, 8],
      ],
    ],
  ] as const)('E %s with the root on string 2, fret 5, under finger %i', (id, finger, frets) => {
    expect(judge(scale('E', id, finger, 5), { places: pattern(frets) })).toEqual({ kind: 'right' });
  });

  test('a root on string 2 sounds as a root; lower roots may sound too', () => {
    const any = build('E', 'major', { voicing: { kind: 'any' } });
    expect(judge(any, { places: places([6, 4], [5, 7], [4, 6], [3, 4], [2, 5]) }).kind).toBe('right');
    expect(judge(any, { places: places([5, 7], [4, 6], [3, 4]) }).kind).toBe('slip');
  });
});

describe('JUDGE-1: find every place', () => {
  // By plain arithmetic over the neck: D is 2 modulo 12.
  const roots = everyPlace.filter((spot) => midi(spot) % 12 === 2);
  const every = find('D', { strictness: 'anywhere', wanted: 'every' });

  test('all of them and nothing else, in any order', () => {
    expect(roots).toHaveLength(10);
    expect(isRight(every, { places: roots })).toBe(true);
    expect(isRight(every, { places: [...roots].reverse() })).toBe(true);
    for (const left of roots)
      expect(isRight(every, { places: roots.filter((spot) => spot !== left) })).toBe(false);
    for (const other of everyPlace)
      expect(isRight(every, { places: [...roots, other] })).toBe(roots.includes(other));
  });

  test('on one string, and in the frets asked for', () => {
    expect(isRight(find('D', { wanted: 'every' }), { places: places([2, 3], [2, 15]) })).toBe(true);
    expect(isRight(find('D', { wanted: 'every' }), { places: places([2, 3]) })).toBe(false);
    const inRange = find('D', { strictness: 'range', range: range(0, 5), wanted: 'every' });
    expect(isRight(inRange, { places: places([2, 3], [4, 0], [5, 5]) })).toBe(true);
    expect(isRight(inRange, { places: places([2, 3], [4, 0]) })).toBe(false);
  });

  test('one place is enough where not every one is wanted', () => {
    for (const spot of roots)
      expect(isRight(find('D', { strictness: 'anywhere', wanted: 'one' }), { places: [spot] })).toBe(true);
  });
});

describe('JUDGE: name', () => {
  const letters = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];
  const spellings = letters.flatMap((letter) => ['bb', 'b', '', '#', '##'].map((sign) => letter + sign));
  const semitones: Record<string, number> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
  const soundOf = (text: string) =>
    ((semitones[text.charAt(0)] ?? 0) +
      (text.split('#').length - 1) -
      (text.slice(1).split('b').length - 1) +
      24) %
    12;

  // By plain arithmetic: string 2 open is B, 11 semitones above C.
  test('a note in every spelling that sounds it, and in no other', () => {
    for (let fret = 0; fret <= 19; fret += 1) {
      const sounding = (11 + fret) % 12;
      const fitting = spellings.filter((text) => soundOf(text) === sounding);
      expect(fitting.length).toBeGreaterThan(1);
      for (const asked of fitting)
        for (const text of spellings) {
          const given = { places: [], named: { kind: 'note', note: note(text) } } as const;
          expect([fret, asked, text, isRight(name(asked, fret), given)]).toEqual([
            fret,
            asked,
            text,
            fitting.includes(text),
          ]);
        }
    }
  });

  // Source: MusicXML 4.0 `kind` counts degrees in these semitones above the root.
  test.each([
    ['b3', 3],
    ['#4', 6],
    ['b5', 6],
    ['#5', 8],
    ['b6', 8],
    ['6', 9],
    ['7', 11],
    ['1', 0],
  ])('%s is %i semitones above the root, as an interval and as a degree', (degree, above) => {
    for (const wanted of ['interval', 'degree'] as const)
      for (let fret = 0; fret < 12; fret += 1) {
        // The root C is 1 semitone above the open string 2.
        const isIt = (fret - 1 + 12) % 12 === above;
        const asked = name('C', fret, { wanted });
        expect(checkExercise(asked).ok).toBe(true);
        expect(isRight(asked, { places: [], named: { kind: 'degree', degree } })).toBe(isIt);
      }
  });

  test('no name, or a name of another sort, is not right', () => {
    expect(isRight(name('D', 3), { places: [] })).toBe(false);
    expect(isRight(name('D', 3), { places: places([2, 3]) })).toBe(false);
    expect(isRight(name('D', 3), { places: [], named: { kind: 'degree', degree: '1' } })).toBe(false);
    const degree = name('D', 3, { wanted: 'degree' });
    expect(isRight(degree, { places: [], named: { kind: 'note', note: note('D') } })).toBe(false);
  });
});

describe('JUDGE-2: the bass', () => {
  const any = { kind: 'any' } as const;
  const over = (bass: string, fields: Partial<BuildExercise> = {}) =>
    build('C', 'major', { bass: note(bass), voicing: any, strictness: 'anywhere', ...fields });
  // Source: common practice for the open C chord and its slash chords.
  const openC = places([5, 3], [4, 2], [3, 0], [2, 1], [1, 0]);

  test.each<[string, string, Place[], boolean]>([
    ['C/G with the third fret of string 6', 'G', [...openC, place(6, 3)], true],
    ['C/G without it', 'G', openC, false],
    ['C/E with string 6 open', 'E', [...openC, place(6, 0)], true],
    ['C/E with G under it', 'E', [...openC, place(6, 3)], false],
    ['C/D, a bass that the chord lacks', 'D', places([4, 0], [3, 0], [2, 1], [1, 0]), true],
    ['C/D with its D elsewhere than lowest', 'D', places([4, 2], [3, 0], [2, 3], [1, 8]), false],
    ['C over C: root position', 'C', openC, true],
    ['C over C with E under it', 'C', [...openC, place(6, 0)], false],
  ])('CHORD-4: %s', (_name, bass, given, right) => {
    expect(isRight(over(bass), { places: given })).toBe(right);
  });

  // Source: common practice for ukulele shapes; string 4 is G4, so string 3, C4, is the lowest.
  test('the lowest pitch is the bass, also on a re-entrant ukulele', () => {
    const ukulele = { instrument: 'ukulele', strictness: 'anywhere', voicing: any } as const;
    const c = places([4, 0], [3, 0], [2, 0], [1, 3]);
    const f = places([4, 2], [3, 0], [2, 1], [1, 0]);
    expect(judge(build('C', 'major', ukulele), { places: c })).toEqual({ kind: 'right' });
    expect(judge(build('F', 'major', ukulele), { places: f })).toEqual({ kind: 'right', inversion: '5' });
    expect(isRight(build('C', 'major', { ...ukulele, bass: note('C') }), { places: c })).toBe(true);
    expect(isRight(build('C', 'major', { ...ukulele, bass: note('G') }), { places: c })).toBe(false);
    expect(isRight(build('F', 'major', { ...ukulele, bass: note('F') }), { places: f })).toBe(false);
    // The same frets with a low G: now string 4 is the lowest.
    const low = { ...ukulele, instrument: 'ukulele-low-g' } as const;
    expect(isRight(build('C', 'major', { ...low, bass: note('G') }), { places: c })).toBe(true);
  });

  test('an inversion is right and told, of a form it is the form’s own', () => {
    const triad = places([3, 4], [2, 5], [1, 3]);
    const on321 = { kind: 'strings', strings: strings(3, 2, 1) } as const;
    expect(judge(build('E', 'minor'), { places: triad })).toEqual({ kind: 'right' });
    for (const voicing of [any, on321])
      expect(judge(build('E', 'minor', { voicing }), { places: triad })).toEqual({
        kind: 'right',
        inversion: '5',
      });
  });
});

describe('JUDGE-3: a scale in order', () => {
  const position: ScaleExercise = scale('E', 'minor-pentatonic', 1, 5);
  const up = [...keyOf(position)].sort((a, b) => midi(a) - midi(b));
  const down = [...up].reverse();
  const [first, second, ...rest] = up;

  test.each<['up' | 'down' | 'up-and-down', string, Place[], boolean]>([
    ['up', 'up', up, true],
    ['up', 'down', down, false],
    ['up', 'up and back', [...up, ...down.slice(1)], false],
    ['up', 'two neighbours exchanged', [second, first, ...rest].filter((spot) => spot !== undefined), false],
    ['up', 'the lowest twice', [...up.slice(0, 1), ...up], false],
    ['up', 'without the highest', up.slice(0, -1), false],
    ['down', 'down', down, true],
    ['down', 'up', up, false],
    ['up-and-down', 'up and back, the highest once', [...up, ...down.slice(1)], true],
    ['up-and-down', 'the highest twice', [...up, ...down], true],
    ['up-and-down', 'up alone', up, false],
    ['up-and-down', 'back with one left out', [...up, ...down.slice(2)], false],
  ])('%s: %s', (order, _name, given, right) => {
    expect(isRight({ ...position, order }, { places: given })).toBe(right);
    // Without an order all of these but the one that lacks a note are right.
    expect(isRight(position, { places: given })).toBe(given.length >= up.length);
  });

  // E minor pentatonic: E G A B D; from open string 4 on, D2 E2 is fret 2.
  const octave = places([4, 2], [4, 5], [3, 2], [3, 4], [2, 3], [2, 5]);
  const back = [...octave].reverse();
  test.each<['up' | 'down' | 'up-and-down', string, Place[], boolean]>([
    ['up', 'from the root', octave, true],
    ['up', 'from another note', [...octave.slice(1), place(1, 3)], false],
    ['down', 'from the root', back, true],
    ['down', 'from another note', [...back.slice(1), place(4, 0)], false],
    ['up-and-down', 'from the root', [...octave, ...back.slice(1)], true],
    ['up-and-down', 'up alone', octave, false],
  ])('each note name, %s: %s', (order, _name, given, right) => {
    const tones: ScaleExercise = { ...position, coverage: 'every-tone', order };
    expect(isRight(tones, { places: given })).toBe(right);
  });
});

describe('what else is asked besides the notes', () => {
  const triad = places([3, 4], [2, 5], [1, 3]);

  test('the root mark stands on a root of the answer', () => {
    const marked: Exercise = { ...build('E', 'minor'), marksRoot: true };
    for (const root of everyPlace)
      expect(isRight(marked, { places: triad, root })).toBe(root.string === 2 && root.fret === 5);
    expect(isRight(marked, { places: triad })).toBe(false);
    const position: Exercise = { ...scale('E', 'minor-pentatonic', 1, 5), marksRoot: true };
    const given = keyOf(position);
    const right = everyPlace.filter((root) => isRight(position, { places: given, root }));
    expect(right).toEqual(given.filter((spot) => midi(spot) % 12 === 4).sort((a, b) => a.string - b.string));
  });

  // Source: common practice: the close minor triad is 2-3-1 on strings 3-2-1; the minor position has the index on its root.
  test('the finger on the root', () => {
    const asked: Exercise = { ...build('E', 'minor'), asksFinger: true };
    const position: Exercise = {
      ...scale('E', 'minor-pentatonic', 1, 5),
      strictness: 'range',
      range: range(5, 8),
      asksFinger: true,
    };
    for (const finger of [1, 2, 3, 4, undefined] as const) {
      const said = finger === undefined ? {} : { finger };
      expect(isRight(asked, { places: triad, ...said })).toBe(finger === 3);
      expect(isRight(position, { places: keyOf(position), ...said })).toBe(finger === 1);
    }
  });

  test('JUDGE-5: a mark or a finger that nobody asked for means nothing', () => {
    expect(isRight(build('E', 'minor'), { places: triad, root: place(1, 3), finger: 4 })).toBe(true);
    expect(isRight(find('D'), { places: places([2, 3]), root: place(6, 0), finger: 4 })).toBe(true);
  });
});
