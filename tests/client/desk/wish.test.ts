import { expect, test } from 'vitest';
import {
  another,
  firstFields,
  lackOf,
  newSeed,
  rungWords,
  toggledRoot,
  wishOf,
} from '../../../client/pages/desk/five/wish.ts';
import { likelyText } from '../../../client/pages/desk/five/likely-text.ts';
import { generate, rungs } from '../../../shared/exercise/generate.ts';
import { uncapital } from '../../../shared/exercise/phrases.ts';
import { slipName } from '../../../shared/exercise/slip-names.ts';
import { standardGuitar, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import type { NoteName } from '../../../shared/theory/pitch.ts';
import { findOn2 } from './desk-view.ts';

const d: NoteName = { letter: 'D', alteration: 0 };
const eFlat: NoteName = { letter: 'E', alteration: -1 };

test('a teacher starts with five natural notes whose root is on string 2', () => {
  expect(wishOf(firstFields, 'guitar', 7)).toEqual({
    instrument: 'guitar',
    rung: 'natural-notes',
    roots: [],
    rootStrings: [2],
    range: null,
    count: 5,
    seed: 7,
  });
  expect(lackOf(firstFields)).toBeNull();
});

test('every rung has its words', () => {
  expect(Object.keys(rungWords)).toEqual([...rungs]);
});

test('the range counts only where it is asked for, the roots as chosen', () => {
  const range = { low: 0 as Fret, high: 5 as Fret };
  expect(wishOf({ ...firstFields, range }, 'guitar', 1).range).toBeNull();
  expect(wishOf({ ...firstFields, range, narrow: true }, 'guitar', 1).range).toEqual(range);
  expect(wishOf({ ...firstFields, roots: 'natural' }, 'guitar', 1).roots).toHaveLength(7);
  expect(wishOf({ ...firstFields, roots: 'own', own: [d] }, 'guitar', 1).roots).toEqual([d]);
});

test('what is missing is said before anything is made', () => {
  expect(lackOf({ ...firstFields, rootStrings: [] })).toBe('Choose at least one string.');
  expect(lackOf({ ...firstFields, roots: 'own' })).toBe('Choose at least one root.');
});

test('a root is taken up and put down again', () => {
  expect(toggledRoot([d], eFlat)).toEqual([d, eFlat]);
  expect(toggledRoot([d, eFlat], d)).toEqual([eFlat]);
});

test('another one is not in the list yet', () => {
  const made = generate(wishOf(firstFields, 'guitar', 3));
  if (!made.ok) throw new Error(made.error);
  const found = another(wishOf(firstFields, 'guitar', 4), made.value);
  expect(found).toBeDefined();
  expect(made.value).not.toContainEqual(found);
});

test('seeds differ', () => {
  expect(new Set([newSeed(), newSeed(), newSeed()]).size).toBe(3);
});

// C on string 2 is fret 1; on string 6 it is fret 8, and C counted from the nut as fret 1 is the open string
// (computed in standard tuning).
test('the likely slips of C on string 2 are told by their frets', () => {
  const text = likelyText(findOn2('C'));
  expect(text).toMatch(/^The likely slips land on .*fret 8.*\.$/);
  expect(text).toContain('the open string');
});

// E minor, root on string 2 fret 5: strings 3-2-1 at 4-5-3. Without the short step string 3 comes out at fret 5
// (computed in standard tuning).
test('the likely slips of a chord are told by name, and by place where one note is astray', () => {
  const text = likelyText({
    kind: 'build',
    instrument: 'guitar',
    root: { letter: 'E', alteration: 0 },
    rootString: 2 as StringNumber,
    strictness: 'place',
    range: { low: 5 as Fret, high: 5 as Fret },
    quality: 'minor',
    voicing: { kind: 'form', form: 'triad-321', full: false },
  });
  const step = uncapital(slipName('short-step', standardGuitar));
  expect(text).toContain(`${step} (string 3, fret 5)`);
});

test('a likely slip is told once, however many answers it leads to', () => {
  const made = generate({ ...wishOf(firstFields, 'guitar', 5), rung: 'triads', count: 20 });
  if (!made.ok) throw new Error(made.error);
  const texts = made.value.map(likelyText).filter((text) => text !== '');
  expect(texts.length).toBeGreaterThan(10);
  for (const text of texts) {
    const names = text
      .replace(/^Likely slips: |\.$/g, '')
      .replace(/ \([^)]*\)/g, '')
      .split(/, | and /);
    expect(new Set(names).size, text).toBe(names.length);
  }
});
