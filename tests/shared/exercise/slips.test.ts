import { describe, expect, test, vi } from 'vitest';
import type { Answer } from '../../../shared/exercise/answer.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { SlipCause, Verdict } from '../../../shared/exercise/verdict.ts';
import { place, samePlace, type Place } from '../../../shared/theory/fretboard.ts';
import { build, find, name, places, scale } from '../../support/exercises.ts';
import { midi, note, oneAnswer, range, roots, slipsOf, strings } from './making.ts';
import { walked } from './walked.ts';

// Whole necks are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

/** Other true names that an answer made by this slip may get, and why. */
const alsoTrue: Partial<Record<SlipCause, (exercise: Exercise) => readonly SlipCause[]>> = {
  // A fret too far says why, where a mark lies there or two frets for every letter lead there.
  'one-fret-off': ({ kind }) => (kind === 'find' ? ['letters-two-frets', 'mark-drift'] : []),
  // A mark one fret below the place draws just as well.
  'nut-as-one': ({ kind }) => (kind === 'find' ? ['mark-drift'] : []),
  // The letters may end on a marked fret beside the place, or on the note itself before the frets asked for.
  'letters-two-frets': () => ['mark-drift', 'outside-range'],
  // A shape that is its own mirror image; string 1 has the names of string 6; a diagonal moved over is mirrored too.
  'next-string': () => ['strings-reversed', 'low-string-map', 'frets-mirrored'],
  // Any voicing, turned round, may be the chord but for one note; strings 1 and 6 share their notes.
  'strings-reversed': (exercise) => [
    ...(isFree(exercise) ? (['missing-tone'] as const) : []),
    // One note a string over says nothing of where strings were counted from.
    ...(exercise.kind === 'find' ? (['right-note-wrong-string', 'next-string'] as const) : []),
  ],
  // Mirrored frets of a shape may be its strings turned round, or the shape where string 6 would put it.
  'frets-mirrored': () => ['strings-reversed', 'low-string-map'],
  // Three frets may be what string 6 says, and the relative's notes are the parallel's with the other third.
  'relative-root': () => ['low-string-map', 'low-string-box', 'major-for-minor', 'minor-for-major'],
  // Where no root string is bound, a triad with one note a fret off is also the other chord, with nothing more assumed.
  'short-step': ({ strictness }) =>
    strictness === 'range' || strictness === 'anywhere' ? ['minor-for-major', 'major-for-minor'] : [],
  // Any voicing may hold one note more: a fret beside a chord tone it is what a slip makes of that tone.
  'extra-tone': (exercise) => (isFree(exercise) ? ['short-step', 'minor-for-major', 'major-for-minor'] : []),
  // Where frets are stated, twelve frets away is outside them.
  'wrong-octave': () => ['outside-range'],
};

const isFree = (exercise: Exercise) => exercise.kind === 'build' && exercise.voicing.kind === 'any';

/** On string 6, as `name` takes it. */
const on6 = (fret: number) => ({ place: place(6, fret), rootString: strings(6)[0] });

function isNamed(exercise: Exercise, made: SlipCause, verdict: Verdict): boolean {
  const names = [made, ...(alsoTrue[made]?.(exercise) ?? [])];
  // Of three that fit two are kept: then both must be true names.
  if (verdict.kind === 'unclear')
    return verdict.causes.includes(made) || verdict.causes.every((cause) => names.includes(cause));
  return verdict.kind === 'slip' && names.includes(verdict.cause);
}

/** Slips whose result may satisfy the exercise after all: then it is right (JUDGE-4), whatever was meant. */
const mayBeRight: ReadonlySet<SlipCause> = new Set([
  'wrong-octave',
  'missing-tone',
  'extra-tone',
  'muted-string-sounded',
  'strings-reversed',
  'frets-mirrored',
  'letters-two-frets',
]);

/** Causes that often share their one fret with another: the tie is what is to be said. */
const oftenShared: ReadonlySet<SlipCause> = new Set(['mark-drift', 'letters-two-frets']);

describe('SLIP-1, SLIP-2: each slip made on purpose is named with its cause, or unclear with it', () => {
  const causes: SlipCause[] = [
    'low-string-map',
    'short-step',
    'major-for-minor',
    'minor-for-major',
    'letters-two-frets',
    'nut-as-one',
    'mark-drift',
    'sharp-for-flat',
    'relative-root',
    'strings-reversed',
    'frets-mirrored',
    'next-string',
    'wrong-octave',
    'muted-string-sounded',
    'sounding-string-muted',
    'missing-tone',
    'extra-tone',
    'one-fret-off',
  ];

  test('these are all that slipsOf makes', () => {
    const made = walked.flatMap((exercise) => slipsOf(exercise, oneAnswer(exercise, answerKey(exercise))));
    expect(new Set(made.map((slip) => slip.cause))).toEqual(new Set(causes));
  });

  test.each(causes.map((cause) => [cause]))('%s', (cause) => {
    const tally = { named: 0, unclear: 0, right: 0 };
    const astray: unknown[] = [];
    for (const exercise of walked) {
      const key = oneAnswer(exercise, answerKey(exercise));
      for (const slip of slipsOf(exercise, key)) {
        if (slip.cause !== cause) continue;
        const verdict = judge(exercise, { places: slip.places });
        if (verdict.kind === 'right' && mayBeRight.has(cause)) tally.right += 1;
        else if (!isNamed(exercise, cause, verdict)) astray.push({ exercise, slip, verdict });
        else if (verdict.kind === 'unclear') tally.unclear += 1;
        else tally.named += 1;
      }
    }
    expect(astray).toEqual([]);
    expect(tally.named).toBeGreaterThan(20);
    if (!oftenShared.has(cause)) expect(tally.unclear).toBeLessThan(tally.named / 4);
  });
});

test('SLIP-4: each slip made on purpose is corrected from a place astray to one that is not there yet', () => {
  const astray: unknown[] = [];
  let corrected = 0;
  for (const exercise of walked)
    for (const slip of slipsOf(exercise, oneAnswer(exercise, answerKey(exercise)))) {
      const verdict = judge(exercise, { places: slip.places });
      if (verdict.kind !== 'slip') continue;
      const isGiven = (spot: Place) => slip.places.some((given) => samePlace(given, spot));
      const isMarkedRight = (spot: Place) =>
        verdict.marks.some((mark) => mark.right && samePlace(mark.place, spot));
      corrected += verdict.corrections.length;
      for (const { from, to } of verdict.corrections)
        if (!isGiven(from) || isMarkedRight(from) || isGiven(to)) astray.push({ exercise, slip, from, to });
    }
  expect(astray).toEqual([]);
  expect(corrected).toBeGreaterThan(1000);
});

// Source: computed from the tuning (B3 and E2), marks at 3 5 7 9 12 (common practice).
describe('SLIP-1, SLIP-2: the notes of string 2, and where each slip would land', () => {
  type Verdicts = readonly (readonly [fret: number, SlipCause | readonly [SlipCause, SlipCause]])[];
  const drift = ['nut-as-one', 'mark-drift'] as const;
  test.each<[string, number, Verdicts]>([
    [
      'C',
      1,
      [
        [8, 'low-string-map'],
        [0, 'nut-as-one'],
        [2, 'letters-two-frets'],
      ],
    ],
    [
      'D',
      3,
      [
        [10, 'low-string-map'],
        [2, 'nut-as-one'],
        [4, 'letters-two-frets'],
      ],
    ],
    [
      'E',
      5,
      [
        [0, 'low-string-map'],
        [4, 'nut-as-one'],
        [6, 'letters-two-frets'],
      ],
    ],
    [
      'F',
      6,
      [
        [1, 'low-string-map'],
        [5, drift],
        [8, 'letters-two-frets'],
        [7, 'mark-drift'],
      ],
    ],
    [
      'G',
      8,
      [
        [3, 'low-string-map'],
        [7, drift],
        [10, 'letters-two-frets'],
        [9, 'mark-drift'],
      ],
    ],
    [
      'A',
      10,
      [
        [5, 'low-string-map'],
        [9, drift],
        [12, 'letters-two-frets'],
        [11, 'one-fret-off'],
      ],
    ],
  ])('%s lies at fret %i', (root, right, verdicts) => {
    for (const exercise of [
      find(root),
      find(root, { wanted: 'one', range: range(0, 11) }),
      find(root, { strictness: 'place', range: range(0, 11) }),
    ]) {
      expect(judge(exercise, { places: places([2, right]) })).toEqual({ kind: 'right' });
      for (const [fret, cause] of verdicts) {
        const marks = [{ place: place(2, fret), right: false }];
        const to = { from: place(2, fret), to: place(2, right) };
        const isOne = typeof cause === 'string';
        expect([fret, judge(exercise, { places: places([2, fret]) })]).toEqual([
          fret,
          isOne
            ? { kind: 'slip', cause, marks, corrections: [to], missing: [] }
            : { kind: 'unclear', causes: cause, marks, missing: [] },
        ]);
      }
    }
  });
});

describe('SLIP-1: the whole answer has one cause', () => {
  const fSharpMinor = build('F#', 'minor');

  // Source: computed from the tuning. Root on string 2 fret 7: 6-7-5 on strings 3-2-1; 7-7-5 sounds D major.
  test('the short step wins over the chord that happens to sound', () => {
    expect(judge(fSharpMinor, { places: places([3, 6], [2, 7], [1, 5]) }).kind).toBe('right');
    const verdict = judge(fSharpMinor, { places: places([3, 7], [2, 7], [1, 5]) });
    expect(verdict).toEqual({
      kind: 'slip',
      cause: 'short-step',
      marks: [
        { place: place(3, 7), right: false },
        { place: place(2, 7), right: true },
        { place: place(1, 5), right: true },
      ],
      corrections: [{ from: place(3, 7), to: place(3, 6) }],
      missing: [],
    });
  });

  test.each<[string, Exercise, Place[], SlipCause]>([
    ['the right note on another string', find('D'), places([4, 0]), 'right-note-wrong-string'],
    ['beside the place', find('A'), places([2, 11]), 'one-fret-off'],
    ['one right, one not', find('D'), places([2, 3], [2, 9]), 'extra-tone'],
    [
      'another octave',
      find('D', { strictness: 'place', range: range(0, 11) }),
      places([2, 15]),
      'wrong-octave',
    ],
    [
      'outside the frets',
      find('D', { strictness: 'range', range: range(0, 4) }),
      places([2, 15]),
      'outside-range',
    ],
    ['nothing near', find('D'), places([1, 5]), 'other-place'],
    [
      'the form instead of the triad',
      build('E', 'major'),
      places([5, 7], [4, 6], [3, 4], [2, 5]),
      'wrong-form',
    ],
    [
      'the chord on other strings',
      build('E', 'major', { voicing: { kind: 'strings', strings: strings(3, 2, 1) } }),
      places([4, 6], [3, 4], [2, 5]),
      'wrong-form',
    ],
    ['two notes on one string', build('E', 'minor'), places([3, 4], [2, 5], [1, 3], [1, 5]), 'extra-tone'],
    [
      'the other third in a scale',
      scale('E', 'major-pentatonic', 2, 5),
      places([6, 5], [6, 7], [5, 5], [5, 7], [4, 5], [4, 7], [3, 4], [3, 7], [2, 5], [2, 8], [1, 5], [1, 7]),
      'minor-for-major',
    ],
  ])('%s', (_name, exercise, given, cause) => {
    expect(judge(exercise, { places: given })).toMatchObject({ kind: 'slip', cause });
  });

  // The relative of D dorian, C major, isn't three frets away (common practice).
  test('a mode has no relative three frets away', () => {
    const dorian = scale('D', 'dorian', 1, 3);
    const right = answerKey(dorian).map((one) => one.place);
    const high = right.map((spot) => place(spot.string, spot.fret + 3));
    expect(judge(dorian, { places: high })).toMatchObject({ kind: 'slip', cause: 'other-place' });
    const marked = { ...dorian, marksRoot: true };
    const third = place(2, 6);
    expect(right).toContainEqual(third);
    expect(judge(marked, { places: right, root: third })).toMatchObject({ cause: 'wrong-root-mark' });
  });

  test('SLIP-2: two causes that explain it equally well', () => {
    // Root on string 1 fret 8: C minor is 8-8-8 on strings 3-2-1; 9-8-8 is the major third and the short step too.
    const exercise = build('C', 'minor', {
      rootString: strings(1)[0],
      voicing: { kind: 'strings', strings: strings(3, 2, 1) },
    });
    const verdict = judge(exercise, { places: places([3, 9], [2, 8], [1, 8]) });
    expect(verdict.kind === 'unclear' && [...verdict.causes].sort()).toEqual([
      'major-for-minor',
      'short-step',
    ]);
  });

  test('JUDGE-6: nothing placed is a missing tone with everything missing', () => {
    expect(judge(fSharpMinor, { places: [] })).toEqual({
      kind: 'slip',
      cause: 'missing-tone',
      marks: [],
      corrections: [],
      missing: answerKey(fSharpMinor).map((one) => one.place),
    });
    const causes = walked.map((exercise) => judge(exercise, { places: [] }));
    expect(causes.every((one) => one.kind === 'slip' && one.cause === 'missing-tone')).toBe(true);
  });
});

const causeOf = (exercise: Exercise, answer: Answer) => {
  const verdict = judge(exercise, answer);
  return verdict.kind === 'slip' ? verdict.cause : verdict.kind === 'unclear' ? verdict.causes : 'right';
};
const keyOf = (exercise: Exercise) => answerKey(exercise).map((one) => one.place);

describe('SLIP-1: find every place', () => {
  const every = find('D', { strictness: 'anywhere', wanted: 'every' });
  const all = keyOf(every);
  test.each<[string, Exercise, Place[], SlipCause]>([
    ['one not found', every, all.slice(1), 'missing-tone'],
    ['one more', every, [...all, place(2, 4)], 'extra-tone'],
    ['one for another', every, [...all.slice(1), place(2, 4)], 'other-place'],
    ['the lower of two', find('D', { wanted: 'every' }), places([2, 3]), 'missing-tone'],
    ['the fret of string 6', find('D', { wanted: 'every' }), places([2, 10]), 'low-string-map'],
  ])('%s', (_name, exercise, given, cause) => {
    expect(causeOf(exercise, { places: given })).toBe(cause);
  });
});

// Source: computed from the tuning.
describe('SLIP-1: the name of a place', () => {
  const called = (text: string): Answer => ({ places: [], named: { kind: 'note', note: note(text) } });
  const far = (degree: string): Answer => ({ places: [], named: { kind: 'degree', degree } });
  const degreeOf = (fret: number) => name('C', fret, { wanted: 'degree' });
  test.each<[string, Exercise, Answer, SlipCause | readonly SlipCause[]]>([
    [
      'B is fret 7 of string 6, and string 1 only shares its names',
      name('F#', 7),
      called('B'),
      'low-string-map',
    ],
    ['D is fret 7 of string 3', name('F#', 7), called('D'), 'next-string'],
    ['E is fret 7 of string 5', name('F#', 7), called('E'), 'strings-reversed'],
    ['C is fret 3 of string 5', name('D', 3), called('C'), 'strings-reversed'],
    ['B♭ is fret 1 of string 5', name('F', 1, on6(1)), called('Bb'), 'next-string'],
    ['from B two frets to C, the third is C♯', name('D', 3), called('C#'), 'letters-two-frets'],
    ['from B two frets to C, two to D', name('Eb', 4), called('D'), 'letters-two-frets'],
    ['E♯ for E♭', name('Eb', 4), called('E#'), 'sharp-for-flat'],
    ['a fret above', name('F#', 7), called('G'), 'one-fret-off'],
    ['nothing near', name('F#', 7), called('C'), 'other-name'],
    ['no name', name('F#', 7), { places: [] }, 'other-name'],
    // F♭ sounds E, which is on string 5; and two frets for every letter lead there.
    ['two that fit', name('F#', 7), called('Fb'), ['strings-reversed', 'letters-two-frets']],
    ['the major third of C for its minor one', degreeOf(4), far('3'), 'major-for-minor'],
    ['the minor third of C for its major one', degreeOf(5), far('b3'), 'minor-for-major'],
    ['the 7 is fret 4 of string 3', degreeOf(4), far('7'), 'next-string'],
    ['the 2 is fret 5 of string 5', degreeOf(5), far('2'), 'strings-reversed'],
    ['a fret below', degreeOf(4), far('2'), 'one-fret-off'],
    ['another degree', degreeOf(4), far('5'), 'other-name'],
  ])('%s', (_name, exercise, answer, cause) => {
    expect(checkExercise(exercise).ok).toBe(true);
    expect(causeOf(exercise, answer)).toEqual(cause);
    expect(judge(exercise, answer)).toMatchObject({
      marks: [{ place: exercise.kind === 'name' && exercise.place, right: false }],
    });
  });
});

describe('SLIP-1: what was asked besides the notes', () => {
  const triad = places([3, 4], [2, 5], [1, 3]);
  const marked = build('E', 'minor', { marksRoot: true });
  const position: ScaleExercise = scale('E', 'minor-pentatonic', 1, 5);
  const up = [...keyOf(position)].sort((a, b) => midi(a) - midi(b));
  const major: ScaleExercise = { ...scale('E', 'major-pentatonic', 2, 5), marksRoot: true };
  const finger = build('E', 'minor', { asksFinger: true });

  // G is the relative major of E minor, C♯ minor the relative of E major (common practice).
  test.each<[string, Exercise, Answer, SlipCause]>([
    ['the relative major’s root', marked, { places: triad, root: place(1, 3) }, 'relative-root'],
    ['another note’s', marked, { places: triad, root: place(3, 4) }, 'wrong-root-mark'],
    ['a place outside the answer', marked, { places: triad, root: place(4, 2) }, 'wrong-root-mark'],
    ['no mark', marked, { places: triad }, 'wrong-root-mark'],
    ['the relative minor’s root', major, { places: keyOf(major), root: place(5, 4) }, 'relative-root'],
    ['another note’s in a scale', major, { places: keyOf(major), root: place(4, 6) }, 'wrong-root-mark'],
    ['another finger', finger, { places: triad, finger: 2 }, 'wrong-finger'],
    ['no finger', finger, { places: triad }, 'wrong-finger'],
    ['down for up', { ...position, order: 'up' }, { places: [...up].reverse() }, 'wrong-order'],
    ['up for up and down', { ...position, order: 'up-and-down' }, { places: up }, 'wrong-order'],
    [
      'not from a root',
      { ...position, order: 'up', coverage: 'every-tone' },
      { places: [...places([4, 5], [3, 2], [3, 4], [2, 3], [2, 5]), place(1, 3)] },
      'wrong-order',
    ],
  ])('%s: every note is marked right', (_name, exercise, answer, cause) => {
    expect(judge(exercise, answer)).toEqual({
      kind: 'slip',
      cause,
      marks: answer.places.map((spot) => ({ place: spot, right: true })),
      corrections: [],
      missing: [],
    });
  });

  test('wrong notes come before a wrong mark, finger or order', () => {
    expect(causeOf(marked, { places: places([3, 5], [2, 5], [1, 3]) })).toBe('short-step');
    expect(causeOf(finger, { places: places([3, 4], [2, 5], [1, 4]), finger: 1 })).toBe('major-for-minor');
    expect(causeOf({ ...position, order: 'up' }, { places: up.slice(0, -1).reverse() })).toBe('missing-tone');
  });
});

describe('SLIP-1: strings, bass, tuning and capo', () => {
  const cForm = build('C', 'major', { voicing: { kind: 'form', form: 'C', full: false } });
  const fullC = build('C', 'major', { voicing: { kind: 'form', form: 'C', full: true } });
  const openC = places([5, 3], [4, 2], [3, 0], [2, 1], [1, 0]);
  const over = (bass: string) =>
    build('C', 'major', { voicing: { kind: 'any' }, bass: note(bass), strictness: 'anywhere' });
  const capo = { instrument: 'guitar+capo=2' };
  const [six] = strings(6);
  const dropD = { instrument: 'guitar-drop-d', rootString: six };
  const shape = places([3, 4], [2, 5], [1, 3]);

  // Source: common practice for the open C chord; computed from the tuning for capo and drop D (string 6 is D).
  test.each<[string, Exercise, Place[], SlipCause | 'right']>([
    ['C form without string 5', cForm, openC.slice(1), 'sounding-string-muted'],
    ['C form without string 1', cForm, openC.slice(0, -1), 'sounding-string-muted'],
    ['C form with a foreign string 6', cForm, [...openC, place(6, 1)], 'muted-string-sounded'],
    ['C form with one more chord tone', cForm, [...openC, place(6, 0)], 'right'],
    ['the full C form with it', fullC, [...openC, place(6, 0)], 'muted-string-sounded'],
    ['C/G with E under it', over('G'), [...openC, place(6, 0)], 'wrong-bass'],
    ['C/E with G under it', over('E'), [...openC, place(6, 3)], 'wrong-bass'],
    ['C over C with E under it', over('C'), [...openC, place(6, 0)], 'wrong-bass'],
    ['E, counted from the capo', find('E', capo), places([2, 3]), 'right'],
    ['E where it is without the capo', find('E', capo), places([2, 5]), 'capo-ignored'],
    ['D where it is without the capo', find('D', capo), places([2, 3]), 'capo-ignored'],
    ['E minor where it is without the capo', build('E', 'minor', capo), shape, 'capo-ignored'],
    ['G on string 6 tuned to D', find('G', dropD), places([6, 5]), 'right'],
    ['G where string 6 usually has it', find('G', dropD), places([6, 3]), 'tuning-ignored'],
    ['E where string 6 usually has it', find('E', dropD), places([6, 0]), 'tuning-ignored'],
    [
      'E minor over all six strings, as in the usual tuning',
      build('E', 'minor', { ...dropD, voicing: { kind: 'any' } }),
      places([6, 0], [5, 2], [4, 2], [3, 0], [2, 0], [1, 0]),
      'tuning-ignored',
    ],
  ])('%s', (_name, exercise, given, cause) => {
    expect(checkExercise(exercise).ok).toBe(true);
    expect(causeOf(exercise, { places: given })).toBe(cause);
  });

  // Source: common practice for the box of A from string 6, fret 5: (5 8) (5 7) (5 7) (5 7) (5 8) (5 8).
  test('the box of A from string 6, where E was asked for from string 2', () => {
    const hung = places(
      ...([
        [6, 5],
        [6, 8],
        [5, 5],
        [5, 7],
        [4, 5],
        [4, 7],
        [3, 5],
        [3, 7],
        [2, 5],
        [2, 8],
        [1, 5],
        [1, 8],
      ] as const),
    );
    const box = scale('E', 'minor-pentatonic', 1, 5);
    for (const exercise of [
      box,
      { ...box, strictness: 'string', range: null } as const,
      { ...box, coverage: 'every-tone' } as const,
    ])
      expect(causeOf(exercise, { places: hung })).toBe('low-string-box');
    expect(causeOf(box, { places: hung.slice(1) })).toBe('low-string-box');
  });
});

test('SLIP-1: every root of the usual ones, the string-3-to-2 step from a root on string 2', () => {
  for (const root of roots)
    for (const quality of ['major', 'minor', 'dim', 'aug'] as const) {
      const exercise = build(root, quality);
      const up = answerKey(exercise).map(({ place: spot }) =>
        spot.string > 2 ? place(spot.string, spot.fret + 1) : spot,
      );
      expect([root, quality, judge(exercise, { places: up })]).toMatchObject([
        root,
        quality,
        { kind: 'slip', cause: 'short-step' },
      ]);
    }
});
