import { describe, expect, test } from 'vitest';
import { changed, formsFor, onInstrument, placesToChoose } from '../../../client/pages/desk/maker/changed.ts';
import { draftOf } from '../../../client/pages/desk/maker/draft-of.ts';
import {
  exerciseOf,
  firstDraft,
  problemOf,
  rootFrets,
  type Draft,
} from '../../../client/pages/desk/maker/draft.ts';
import { usualRoots } from '../../../client/pages/desk/maker/words.ts';
import type { Exercise, ExerciseKind } from '../../../shared/exercise/exercise.ts';
import {
  stringNumbers,
  standardGuitar,
  type Fret,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

const first = firstDraft('guitar');
const on2 = { instrument: 'guitar', rootString: 2 as StringNumber } as const;
const fret = (n: number) => n as Fret;

describe('where a teacher starts', () => {
  test('finds D on string 2 at any fret, without a time limit', () => {
    expect(exerciseOf(first)).toEqual({
      kind: 'find',
      ...on2,
      root: { letter: 'D', alteration: 0 },
      strictness: 'string',
      range: null,
    });
    expect(first.seconds).toBeNull();
  });

  // Every kind can be asked as it comes up: nothing has to be filled in first.
  test.each<ExerciseKind>(['find', 'name', 'build', 'scale'])('%s can be asked as it comes up', (kind) => {
    expect(problemOf(changed(first, { kind }))).toBeNull();
  });
});

describe('what hangs on a choice follows it', () => {
  test('a triad of E minor on strings 3-2-1 has its root on string 2 at fret 5 (computed in standard tuning)', () => {
    const draft = changed(changed(first, { kind: 'build' }), { root: { letter: 'E', alteration: 0 } });
    expect(exerciseOf(draft)).toEqual({
      kind: 'build',
      ...on2,
      root: { letter: 'E', alteration: 0 },
      strictness: 'place',
      range: { low: 5, high: 5 },
      quality: 'minor',
      voicing: { kind: 'form', form: 'triad-321', full: false },
    });
  });

  test('the place moves with the root, and stays where the teacher chose it while it fits', () => {
    const scale = changed(changed(first, { kind: 'scale' }), { root: { letter: 'E', alteration: 0 } });
    expect(scale.rootFret).toBe(5);
    const triad = changed(changed(scale, { kind: 'build' }), { rootFret: fret(17) });
    expect(changed(triad, { seconds: 60 }).rootFret).toBe(17);
    expect(changed(triad, { quality: 'major' }).rootFret).toBe(17);
    expect(rootFrets(changed(triad, { root: { letter: 'C', alteration: 0 } }))).toContain(
      changed(triad, { root: { letter: 'C', alteration: 0 } }).rootFret,
    );
  });

  test('a place is offered only where the exercise can be asked there', () => {
    const scale = changed(changed(first, { kind: 'scale' }), { root: { letter: 'E', alteration: 0 } });
    // Its little finger would need fret 20, and the neck ends at 19.
    expect(rootFrets(scale)).toEqual([5, 17]);
    expect(placesToChoose(scale)).toEqual([5]);
  });

  test('a form that has no root on the new string gives way to one that has', () => {
    const build = changed(first, { kind: 'build' });
    const on5 = changed(build, { rootString: 5 as StringNumber });
    expect(on5.voicing).toBe('form');
    expect(formsFor(on5)).toContain(on5.form);
  });

  test('the finger on the root is the usual one: 2 for major, 1 for minor (common practice)', () => {
    const scale = changed(first, { kind: 'scale' });
    const fingers = (Object.keys(scaleTable) as ScaleId[]).map((id) => [
      id,
      changed(changed(scale, { scale: 'major' }), { scale: id }).rootFinger,
    ]);
    expect(Object.fromEntries(fingers)).toMatchObject({
      major: 2,
      'major-pentatonic': 2,
      'natural-minor': 1,
      'minor-pentatonic': 1,
    });
  });

  test('a chord without a form is any shape, and the form comes back with the chord', () => {
    const build = changed(first, { kind: 'build' });
    const ninth = changed(build, { quality: 'm9' });
    expect(ninth).toMatchObject({ voicing: 'any', strictness: 'string' });
    expect(problemOf(ninth)).toBeNull();
    const back = changed(ninth, { quality: 'minor' });
    expect(back).toMatchObject({ voicing: 'form', form: 'triad-321', strictness: 'place' });
    expect(problemOf(back)).toBeNull();
  });

  test('a slash bass makes any shape of a form, and a form has none', () => {
    const slash = changed(changed(first, { kind: 'build' }), { bass: { letter: 'A', alteration: 0 } });
    expect(slash).toMatchObject({ voicing: 'any', strictness: 'string' });
    expect(problemOf(slash)).toBeNull();
    const form = changed(slash, { voicing: 'form', form: 'C', strictness: 'place' });
    expect(form.bass).toBeNull();
    expect(problemOf(form)).toBeNull();
  });

  test('asking for the finger on the root fixes the hand, and moves it with the root', () => {
    const chord = changed(changed(first, { kind: 'build', quality: 'major', voicing: 'any' }), {
      asksFinger: true,
    });
    expect(chord).toMatchObject({ voicing: 'form', strictness: 'place' });
    expect(problemOf(chord)).toBeNull();
    const scale = changed(changed(first, { kind: 'scale', scale: 'major' }), { asksFinger: true });
    // D on string 2 is fret 3, under finger 2: the hand covers frets 2 to 5 (computed in standard tuning).
    expect(scale).toMatchObject({ strictness: 'range', range: { low: 2, high: 5 }, rootFinger: 2 });
    expect(problemOf(scale)).toBeNull();
    const onE = changed(scale, { root: { letter: 'E', alteration: 0 } });
    expect(onE.range).toEqual({ low: 4, high: 7 });
    expect(problemOf(onE)).toBeNull();
  });

  test('the finger is not asked any more where a chord leaves it open; ticked there, it is said why not', () => {
    const chord = changed(changed(first, { kind: 'build' }), { asksFinger: true });
    const ninth = changed(chord, { quality: 'm9' });
    expect(ninth.asksFinger).toBe(false);
    expect(problemOf(changed(ninth, { asksFinger: true }))).toContain('finger');
  });

  test('the root stays lowest when it is another one', () => {
    const lowest = changed(changed(first, { kind: 'build' }), { bass: first.root });
    const root = { letter: 'G', alteration: 0 } as const;
    expect(changed(lowest, { root }).bass).toEqual(root);
    const slash = changed(lowest, { bass: { letter: 'A', alteration: 0 } });
    expect(changed(slash, { root }).bass).toEqual({ letter: 'A', alteration: 0 });
  });

  test('any shape that the teacher chose stays with another chord', () => {
    const build = changed(changed(first, { kind: 'build' }), { voicing: 'any', strictness: 'string' });
    expect(changed(build, { quality: 'major' }).voicing).toBe('any');
  });

  test('on another instrument strings, frets and form that it lacks give way', () => {
    const build = changed(changed(first, { kind: 'build' }), { rootString: 6 as StringNumber });
    const small = changed({ ...build, namedFret: fret(19) }, { instrument: 'ukulele' });
    expect(small).toMatchObject({ rootString: 4, namedFret: 15, voicing: 'any', strings: [3, 2, 1] });
    expect(problemOf(small)).toBeNull();
  });

  test('a new exercise goes back to the group’s instrument, and is as it was where that is the same', () => {
    const small = changed(firstDraft('ukulele'), { kind: 'build' });
    expect(onInstrument(small, 'ukulele')).toBe(small);
    const back = onInstrument(small, 'guitar');
    expect(back).toMatchObject({ instrument: 'guitar', kind: 'build', root: small.root });
    expect(problemOf(back)).toBeNull();
  });

  test('a form is offered only where the tuning makes its chord', () => {
    const build = changed(first, { kind: 'build' });
    expect(formsFor(build)).toContain('triad-321');
    expect(formsFor({ ...build, instrument: 'guitar-drop-d' })).toContain('triad-321');
    expect(formsFor({ ...build, instrument: 'guitar-fourths' })).toEqual([]);
    expect(formsFor({ ...build, instrument: 'ukulele' })).toEqual([]);
  });

  // String 2, fret 4 is E flat and D sharp (computed in standard tuning).
  test('a place is named by the note that sounds there, spelled as the root where that is the same note', () => {
    const name = changed(first, { kind: 'name', namedFret: fret(4) });
    expect(exerciseOf(name)).toMatchObject({ root: { letter: 'D', alteration: 1 }, wanted: 'note' });
    const flat = changed(name, { root: { letter: 'E', alteration: -1 } });
    expect(exerciseOf(flat)).toMatchObject({ root: { letter: 'E', alteration: -1 } });
    const degree = changed(name, { named: 'degree', root: { letter: 'C', alteration: 0 } });
    expect(exerciseOf(degree)).toMatchObject({ root: { letter: 'C' }, place: { string: 2, fret: 4 } });
  });

  test('going from one kind to another and back loses nothing', () => {
    const build = changed(changed(first, { kind: 'build' }), { quality: 'major', form: 'C' });
    const back = changed(changed(build, { kind: 'find' }), { kind: 'build' });
    expect(exerciseOf(back)).toEqual(exerciseOf(build));
  });
});

describe('every choice that the maker offers', () => {
  const strings = stringNumbers(standardGuitar);

  test('has a root on every string for all roots', () => {
    for (const root of usualRoots)
      for (const rootString of strings)
        expect(rootFrets(changed(first, { root, rootString })).length).toBeGreaterThan(0);
  });

  test('each quality on string 2 comes up askable for every root', () => {
    const refused = usualRoots.flatMap((root) =>
      (Object.keys(chordTable) as ChordQuality[]).flatMap((quality) => {
        const draft = changed(changed(changed(first, { kind: 'build' }), { root }), { quality });
        return problemOf(draft) === null ? [] : [{ root, quality, problem: problemOf(draft) }];
      }),
    );
    // Some spellings would need a triple accidental: the maker says so, and the teacher respells.
    expect(refused.filter(({ problem }) => !problem?.includes('triple accidental'))).toEqual([]);
  });
});

describe('on every instrument', () => {
  test.each(tuningIds)('each kind comes up askable on %s', (instrument) => {
    for (const kind of ['find', 'name', 'build', 'scale'] as const)
      expect(problemOf(changed(firstDraft(instrument), { kind })), kind).toBeNull();
  });

  test('what is played along one string, or with so many notes on each, goes by where that can be asked', () => {
    const along = changed(changed(first, { kind: 'scale' }), { oneString: true });
    expect([along.strictness, problemOf(along)]).toEqual(['range', null]);
    expect(changed(along, { strictness: 'string' }).oneString).toBe(false);
    const many = changed(changed(changed(first, { kind: 'scale' }), { strictness: 'range' }), {
      perString: { notes: 2, rootAt: 1 },
    });
    expect([many.strictness, problemOf(many)]).toEqual(['string', null]);
    expect(changed(many, { coverage: 'every-tone' }).perString).toBeNull();
  });

  test('a way of stacking stays with another chord where it fits, and gives way where it does not', () => {
    const strings = [5, 4, 3, 2] as StringNumber[];
    const drop2 = changed(changed(first, { kind: 'build', quality: 'm7' }), {
      voicing: 'family',
      family: 'drop-2',
      strings,
    });
    expect(problemOf(drop2)).toBeNull();
    expect(changed(drop2, { quality: 'maj7' })).toMatchObject({
      voicing: 'family',
      family: 'drop-2',
      strings,
    });
    expect(changed(drop2, { quality: 'minor' }).voicing).toBe('form');
  });

  test('each scale comes up askable for every root on string 2', () => {
    const refused = usualRoots.flatMap((root) =>
      (Object.keys(scaleTable) as ScaleId[]).flatMap((scale) => {
        const problem = problemOf(changed(changed(changed(first, { kind: 'scale' }), { root }), { scale }));
        return problem === null || problem.includes('triple accidental') ? [] : [{ root, scale, problem }];
      }),
    );
    expect(refused).toEqual([]);
  });
});

describe('an exercise that is changed', () => {
  const range = { low: fret(5), high: fret(9) };
  const exercises: readonly (readonly [string, Exercise])[] = [
    ['find on a string', exerciseOf(first)],
    ['find between two frets of a string', { ...exerciseOf(first), range: { low: fret(0), high: fret(5) } }],
    ['find in a range', { ...exerciseOf(first), strictness: 'range', range }],
    ['find anywhere', { ...exerciseOf(first), strictness: 'anywhere' }],
    ['a form at one place', exerciseOf(changed(first, { kind: 'build' }))],
    [
      'any shape on three strings',
      {
        kind: 'build',
        ...on2,
        root: { letter: 'B', alteration: -1 },
        strictness: 'string',
        range: null,
        quality: 'major',
        voicing: { kind: 'strings', strings: [4, 3, 2] as StringNumber[] },
      },
    ],
    [
      'a full form',
      {
        kind: 'build',
        ...on2,
        root: { letter: 'C', alteration: 0 },
        strictness: 'string',
        range: null,
        quality: 'major',
        voicing: { kind: 'form', form: 'C', full: true },
      },
    ],
    ['find every place', { ...exerciseOf(first), wanted: 'every' } as Exercise],
    ['name a note', exerciseOf(changed(first, { kind: 'name', namedFret: fret(4) }))],
    ['name a degree', exerciseOf(changed(first, { kind: 'name', named: 'degree', namedFret: fret(7) }))],
    ['name an interval', exerciseOf(changed(first, { kind: 'name', named: 'interval', namedFret: fret(0) }))],
    [
      'a slash chord that asks for root and finger',
      {
        ...exerciseOf(changed(first, { kind: 'build' })),
        bass: { letter: 'F', alteration: 1 },
        marksRoot: true,
        asksFinger: true,
      } as Exercise,
    ],
    [
      'a scale in order on another instrument',
      exerciseOf(
        changed(changed(firstDraft('bass-4'), { kind: 'scale', order: 'up-and-down' }), { marksRoot: true }),
      ),
    ],
    [
      'three notes a string',
      exerciseOf(
        changed(changed(first, { kind: 'scale' }), { perString: { notes: 3, rootAt: 2 }, scale: 'dorian' }),
      ),
    ],
    ['a scale along one string', exerciseOf(changed(changed(first, { kind: 'scale' }), { oneString: true }))],
    ['an arpeggio', exerciseOf(changed(changed(first, { kind: 'scale' }), { scale: 'arpeggio-m7' }))],
    [
      'a drop-2 voicing',
      exerciseOf(
        changed(changed(first, { kind: 'build', quality: 'm7' }), {
          voicing: 'family',
          family: 'drop-2',
          strings: [5, 4, 3, 2] as StringNumber[],
        }),
      ),
    ],
    ['a scale', exerciseOf(changed(changed(first, { kind: 'scale' }), { scale: 'major', rootFinger: 3 }))],
  ];

  test.each(exercises)('%s comes back as it was', (_, exercise) => {
    expect(exerciseOf(draftOf(exercise, 30))).toEqual(exercise);
    expect(draftOf(exercise, 30).seconds).toBe(30);
  });

  test('a change of the time limit alone touches nothing else', () => {
    for (const [, exercise] of exercises) {
      const draft: Draft = draftOf(exercise, null);
      expect(exerciseOf(changed(draft, { seconds: 90 }))).toEqual(exercise);
    }
  });
});
