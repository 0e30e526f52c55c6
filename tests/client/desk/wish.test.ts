import { expect, test } from 'vitest';
import {
  another,
  firstFields,
  harderFor,
  lackOf,
  newSeed,
  rungWords,
  toggledRoot,
  wishOf,
} from '../../../client/pages/desk/five/wish.ts';
import { meetingsIn, slipLandings } from '../../../client/pages/desk/five/slip-landings.ts';
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
    third: 'both',
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

test('made ones become a harder level only where there are as many, each with room for one', () => {
  const own = { id: 'a', part: 'check' as const, exercise: findOn2('D'), harder: [], seconds: null };
  const full = { ...own, id: 'b', harder: [findOn2('E'), findOn2('F')] };
  expect(harderFor([own, { ...own, id: 'c' }], 'check', 2).map(({ id }) => id)).toEqual(['a', 'c']);
  expect(harderFor([own], 'check', 2)).toEqual([]);
  expect(harderFor([own], 'new', 1)).toEqual([]);
  expect(harderFor([own, full], 'check', 2)).toEqual([]);
});

// F on string 2 is fret 6: counted from the nut as fret 1 it comes out at fret 5, where the position mark is too
// (computed in standard tuning; position marks at frets 3, 5, 7).
test('slips that meet are said by their names and the place where they meet, with a question that parts them', () => {
  const [meeting] = meetingsIn(findOn2('F'));
  expect(meeting?.says).toBe(
    '“Nut counted as fret 1” and “drawn to a position mark” both land on string 2, fret 5: such an answer does not tell which it was.',
  );
  expect(meeting?.instead).toBeDefined();
  expect(meeting?.instead && meetingsIn(meeting.instead)).toEqual([]);
  expect(meetingsIn(findOn2('E'))).toEqual([]);
});

test('a likely slip is listed once, with every place that it leads to', () => {
  const landings = slipLandings(findOn2('C'));
  expect(landings.find(({ name }) => name === 'String-6 map')?.where).toContain('string 2, fret 8');
  expect(new Set(landings.map(({ name }) => name)).size).toBe(landings.length);
});
