import { describe, expect, test } from 'vitest';
import {
  answerSentences,
  orderText,
  verdictNote,
  verdictText,
} from '../../../client/pages/desk/live/answer-text.ts';
import { namedCounts } from '../../../client/pages/desk/live/named-counts.ts';
import type { Named } from '../../../shared/exercise/answer.ts';
import type { NameExercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { slipName } from '../../../shared/exercise/slip-names.ts';
import { uncapital } from '../../../shared/exercise/phrases.ts';
import { place, standardGuitar, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import type { NoteName } from '../../../shared/theory/pitch.ts';

const eFlat: NoteName = { letter: 'E', alteration: -1 };
const note = (letter: NoteName['letter'], alteration: NoteName['alteration'] = 0): Named => ({
  kind: 'note',
  note: { letter, alteration },
});

/** String 2, fret 4 is E flat, and D sharp (computed in standard tuning). */
const named: NameExercise = {
  kind: 'name',
  instrument: 'guitar',
  root: eFlat,
  rootString: 2 as StringNumber,
  strictness: 'place',
  range: { low: 4 as Fret, high: 4 as Fret },
  place: place(2, 4),
  wanted: 'note',
};

describe('an answer in words', () => {
  test('a name, in the teacher’s own naming', () => {
    const answer = { places: [], named: note('E', -1) };
    expect(answerSentences(named, answer, 'english')).toEqual(['Answered E♭.']);
    expect(answerSentences(named, answer, 'german')).toEqual(['Answered Es.']);
  });

  test('the order in which places came, string by string', () => {
    const places = [place(6, 5), place(6, 8), place(5, 5), place(6, 5)];
    expect(orderText(places)).toBe('string 6: 5, 8; string 5: 5; string 6: 5');
  });

  test('order, root and finger, each in a sentence', () => {
    const scale: ScaleExercise = {
      kind: 'scale',
      instrument: 'guitar',
      root: { letter: 'A', alteration: 0 },
      rootString: 6 as StringNumber,
      strictness: 'place',
      range: { low: 5 as Fret, high: 5 as Fret },
      scale: 'minor-pentatonic',
      coverage: 'every-tone',
      order: 'up',
      rootFinger: 1,
    };
    const answer = { places: [place(6, 5), place(6, 8)], root: place(6, 5), finger: 1 } as const;
    expect(answerSentences(scale, answer, 'english')).toEqual([
      'In this order: string 6: 5, 8.',
      'Root marked on string 6, fret 5.',
      'Finger 1 on the root.',
    ]);
  });
});

describe('a verdict in words', () => {
  test('right, and which note is lowest where a chord is inverted', () => {
    expect(verdictText({ kind: 'right' }, standardGuitar)).toBe('Right.');
    expect(verdictText({ kind: 'right', inversion: 'b3' }, standardGuitar)).toBe(
      'Right, inverted (♭3 lowest).',
    );
    expect(verdictNote({ kind: 'right' }, standardGuitar)).toBe('');
  });

  test('two explanations are both said at the Desk', () => {
    const text = verdictText(
      { kind: 'unclear', causes: ['low-string-map', 'nut-as-one'], marks: [], missing: [] },
      standardGuitar,
    );
    const [one, other] = (['low-string-map', 'nut-as-one'] as const).map((cause) =>
      uncapital(slipName(cause, standardGuitar)),
    );
    expect(text).toBe(`Two explanations: ${one ?? ''}, or ${other ?? ''}.`);
  });
});

describe('what a place was called', () => {
  test('the commonest name first, every right spelling marked', () => {
    const names = [note('E'), note('E'), note('E'), note('E', -1), note('D', 1)];
    expect(namedCounts(named, names, 'english')).toEqual([
      { text: 'E', count: 3, share: 0.6, right: false },
      { text: 'D♯', count: 1, share: 0.2, right: true },
      { text: 'E♭', count: 1, share: 0.2, right: true },
    ]);
  });

  test('what is right is listed even where nobody said it', () => {
    expect(namedCounts(named, [note('E')], 'german')).toContainEqual({
      text: 'Es',
      count: 0,
      share: 0,
      right: true,
    });
  });

  // From C up to E flat is a minor third (computed).
  test('a degree by its sign, an interval by its name', () => {
    const above: NameExercise = { ...named, root: { letter: 'C', alteration: 0 }, wanted: 'degree' };
    expect(namedCounts(above, [], 'english')).toEqual([{ text: '♭3', count: 0, share: 0, right: true }]);
    expect(namedCounts({ ...above, wanted: 'interval' }, [], 'english')).toEqual([
      { text: 'minor third', count: 0, share: 0, right: true },
    ]);
  });
});
