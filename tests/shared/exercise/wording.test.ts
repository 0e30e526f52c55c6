import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { inputOf } from '../../../shared/exercise/input.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { acceptedRoots } from '../../../shared/exercise/roots.ts';
import { wordingOf, wordingsOf } from '../../../shared/exercise/wording.ts';
import { build, find, name, scale } from '../../support/exercises.ts';
import { everyPlace, exercisesFor, range, strings } from './making.ts';

const form = (id: 'C' | 'D', full = false) => ({ kind: 'form', form: id, full }) as const;

describe('WORD-1: what is asked', () => {
  test.each<[Exercise, string, string]>([
    [find('D'), 'Find D', 'On string 2 (second thinnest), any fret.'],
    [find('D', { range: range(1, 12) }), 'Find D', 'On string 2 (second thinnest), frets 1 to 12.'],
    [
      find('D', {
        strictness: 'place',
        range: range(5, 5),
        rootString: strings(5)[0],
      }),
      'Find D',
      'On string 5 (second thickest), below fret 12.',
    ],
    [find('Bb', { strictness: 'range', range: range(2, 9) }), 'Find B♭', 'Frets 2 to 9, any string.'],
    [find('F#', { strictness: 'anywhere' }), 'Find F♯', 'Anywhere on the neck.'],
    [
      build('E', 'minor', { range: range(1, 12) }),
      'Build E minor',
      'Root on string 2, frets 1 to 12. Close triad on strings 3, 2 and 1.',
    ],
    [
      build('E', 'minor', { voicing: form('C') }),
      'Build E minor',
      'Root on string 2, any fret. C form; string 5 may stay silent.',
    ],
    [
      build('E', 'minor', { voicing: form('C', true) }),
      'Build E minor',
      'Root on string 2, any fret. C form, every string of it and no other.',
    ],
    [
      build('E', 'major', { voicing: form('D'), strictness: 'range', range: range(2, 9) }),
      'Build E major',
      'Root on string 2, all of it in frets 2 to 9. D form.',
    ],
    [
      build('E', 'm7', { voicing: { kind: 'strings', strings: strings(1, 4, 2, 3) } }),
      'Build Em7',
      'Root on string 2, any fret. Exactly strings 4, 3, 2 and 1.',
    ],
    [
      build('Eb', '7', { voicing: { kind: 'any' }, strictness: 'anywhere' }),
      'Build E♭7',
      'Anywhere on the neck. Any voicing.',
    ],
    [
      scale('E', 'minor-pentatonic', 1, 5),
      'E minor pentatonic',
      'Root on string 2, below fret 12, under finger 1. Every note from the lowest to the highest under the hand, stretches included.',
    ],
    [
      { ...scale('E', 'major', 2, 5), coverage: 'every-tone' },
      'E major scale',
      'A root on string 2, below fret 12. Each note name at least once.',
    ],
    [
      { ...scale('E', 'natural-minor', 1, 5), strictness: 'range', range: range(2, 9) },
      'E natural minor scale',
      'Frets 2 to 9, any string. Every note of it there.',
    ],
    [
      find('D', { strictness: 'anywhere', wanted: 'every' }),
      'Find every D',
      'Anywhere on the neck. All of them.',
    ],
    [name('Eb', 4), 'Name this place', 'String 2, fret 4. Which note is it?'],
    [
      name('C', 4, { wanted: 'interval' }),
      'Name this place',
      'String 2, fret 4. Which interval above C is it?',
    ],
    [
      name('C', 0, { wanted: 'degree' }),
      'Name this place',
      'String 2, open. Which degree is it, with C as the root?',
    ],
    [
      { ...scale('E', 'minor-pentatonic', 1, 5), order: 'up-and-down', marksRoot: true },
      'E minor pentatonic',
      'Root on string 2, below fret 12, under finger 1. Every note from the lowest to the highest under the hand, stretches included. In order, up and back down the same way. Mark the root.',
    ],
    [
      { ...scale('E', 'major', 2, 5), coverage: 'every-tone', order: 'down' },
      'E major scale',
      'A root on string 2, below fret 12. Each note name at least once. In order, downwards from a root.',
    ],
    [
      build('E', 'minor', { asksFinger: true }),
      'Build E minor',
      'Root on string 2, any fret. Close triad on strings 3, 2 and 1. Say which finger takes the root on string 2.',
    ],
    [
      find('G', { instrument: 'guitar-drop-d' }),
      'Find G',
      'On string 2 (second thinnest), any fret. Guitar, drop D.',
    ],
    [
      find('G', { instrument: 'guitar+capo=2' }),
      'Find G',
      'On string 2 (second thinnest), any fret. Guitar, capo 2.',
    ],
    // Thickness says nothing where string 4 is tuned above string 3.
    [find('D', { instrument: 'ukulele' }), 'Find D', 'On string 2 of 4, any fret.'],
  ])('%#', (exercise, title, detail) => {
    expect(checkExercise(exercise).ok).toBe(true);
    expect(wordingOf(exercise, 'english')).toEqual({ title, detail });
  });

  test('PITCH-3: in the reader’s own naming', () => {
    expect(wordingOf(find('Bb'), 'german').title).toBe('Find B');
    expect(wordingOf(build('B', 'sus4'), 'german').title).toBe('Build Hsus4');
    expect(wordingOf(build('Eb', 'm7'), 'solfege').title).toBe('Build mi♭ m7');
    expect(wordingOf(name('Bb', 4, { wanted: 'degree' }), 'german').detail).toContain('with B as the root');
    expect(wordingsOf(find('Bb'))).toEqual({
      english: { title: 'Find B♭', detail: 'On string 2 (second thinnest), any fret.' },
      german: { title: 'Find B', detail: 'On string 2 (second thinnest), any fret.' },
      solfege: { title: 'Find si♭', detail: 'On string 2 (second thinnest), any fret.' },
    });
  });

  const asked = exercisesFor(['C', 'E']).filter((exercise) => checkExercise(exercise).ok);

  test('two exercises with the same words accept the same places', () => {
    const byWords = new Map<string, string>();
    for (const exercise of asked) {
      if (exercise.kind !== 'find') continue;
      const words = JSON.stringify(wordingOf(exercise, 'english'));
      const accepted = JSON.stringify(
        everyPlace.filter((spot) => judge(exercise, { places: [spot] }).kind === 'right'),
      );
      expect(byWords.get(words) ?? accepted).toBe(accepted);
      byWords.set(words, accepted);
    }
    expect(byWords.size).toBeGreaterThan(20);
  });

  test('different exercises have different words', () => {
    const seen = new Map<string, Exercise>();
    for (const exercise of asked) {
      // A form has its root on one string, and a range or the whole neck asks for every string.
      const isFree = exercise.strictness === 'range' || exercise.strictness === 'anywhere';
      if (isFree && exercise.rootString !== 2) continue;
      // Any fret of the neck is anywhere, where a form binds the root string.
      if (exercise.strictness === 'anywhere' && exercise.kind === 'build' && exercise.voicing.kind === 'form')
        continue;
      const words = JSON.stringify(wordingOf(exercise, 'english'));
      expect([words, seen.get(words)]).toEqual([words, undefined]);
      seen.set(words, exercise);
    }
  });

  test('WORD-2: one place is never told by its fret', () => {
    for (const exercise of asked) {
      if (exercise.strictness !== 'place') continue;
      const { title, detail } = wordingOf(exercise, 'english');
      const numbers = `${title} ${detail}`.match(/(?<=frets? )\d+/g) ?? [];
      expect([...new Set(numbers)]).toEqual(['12']);
      expect(acceptedRoots(exercise)).toHaveLength(1);
    }
  });
});

describe('what a Stand takes as the answer', () => {
  const playing = { as: 'line', taps: ['root'] };
  const places = {
    kind: 'places',
    perString: 'many',
    ordered: false,
    marksRoot: false,
    asksFinger: false,
    playing,
  };
  const chord = { ...places, perString: 'one', playing: { as: 'chord', taps: ['root'] } };
  test.each<[Exercise, object]>([
    [find('E'), places],
    [find('E', { wanted: 'every' }), { ...places, playing: null }],
    [find('E', { strictness: 'anywhere' }), { ...places, playing: { ...playing, taps: [] } }],
    [build('E', 'minor'), chord],
    [build('E', 'minor', { marksRoot: true }), { ...chord, marksRoot: true }],
    [build('E', 'minor', { asksFinger: true }), { ...chord, asksFinger: true }],
    [scale('E', 'major', 2, 5), places],
    [
      { ...scale('E', 'major', 2, 5), order: 'up-and-down' },
      { ...places, ordered: true },
    ],
    [name('Eb', 4), { kind: 'name', place: { string: 2, fret: 4 }, wanted: 'note' }],
    [name('C', 4, { wanted: 'degree' }), { kind: 'name', place: { string: 2, fret: 4 }, wanted: 'degree' }],
  ])('JUDGE-2, HEARD-2: %#', (exercise, input) => {
    expect(inputOf(exercise)).toEqual(input);
  });

  test('VIEW-2: nothing of it tells the root that is asked for', () => {
    const inputs = ['C', 'D', 'Eb'].map((root) => JSON.stringify(inputOf(find(root))));
    expect(new Set(inputs).size).toBe(1);
    expect(JSON.stringify(inputOf(name('Eb', 4)))).not.toContain('root');
  });
});
