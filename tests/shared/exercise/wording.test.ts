import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { placesPerString } from '../../../shared/exercise/input.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { acceptedRoots } from '../../../shared/exercise/targets.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { build, find, scale } from '../../support/exercises.ts';
import { everyPlace, exercisesFor, range, strings } from './making.ts';

const form = (id: 'C' | 'D', full = false) => ({ kind: 'form', form: id, full }) as const;

describe('WORD-1: what is asked', () => {
  test.each<[Exercise, string, string]>([
    [find('D'), 'Find D', 'On string 2 (second thinnest), any fret.'],
    [find('D', { range: range(1, 12) }), 'Find D', 'On string 2 (second thinnest), frets 1 to 12.'],
    [
      find('D', {
        strictness: 'place',
        range: range(3, 3),
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
      'Root on string 2, below fret 12, under finger 1. Every note under the hand, on all strings.',
    ],
    [
      { ...scale('E', 'major', 2, 5), coverage: 'every-tone' },
      'E major scale',
      'A root on string 2, below fret 12. Each note name at least once.',
    ],
    [
      { ...scale('E', 'natural-minor', 1, 5), strictness: 'range', range: range(2, 9) },
      'E natural minor scale',
      'Frets 2 to 9, any string. Every note of the scale there.',
    ],
  ])('%#', (exercise, title, detail) => {
    expect(wordingOf(exercise, 'english')).toEqual({ title, detail });
  });

  test('PITCH-3: in the reader’s own naming', () => {
    expect(wordingOf(find('Bb'), 'german').title).toBe('Find B');
    expect(wordingOf(build('B', 'sus4'), 'german').title).toBe('Build Hsus4');
    expect(wordingOf(build('Eb', 'm7'), 'solfege').title).toBe('Build mi♭ m7');
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

test('JUDGE-2: a chord takes one note a string, the rest as many as they like', () => {
  expect(placesPerString(build('E', 'minor'))).toBe('one');
  expect(placesPerString(find('E'))).toBe('many');
  expect(placesPerString(scale('E', 'major', 2, 5))).toBe('many');
});
