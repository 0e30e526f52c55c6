import { describe, expect, test } from 'vitest';
import {
  answerSentences,
  orderText,
  verdictNote,
  verdictText,
} from '../../../client/pages/desk/live/answer-text.ts';
import { namedCounts } from '../../../client/pages/desk/live/named-counts.ts';
import { enteredFrom } from '../../../client/pages/desk/live/played.ts';
import type { Named } from '../../../shared/exercise/answer.ts';
import type { NameExercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import type { Heard } from '../../../shared/exercise/heard.ts';
import { slipName } from '../../../shared/exercise/slip-names.ts';
import { uncapital } from '../../../shared/exercise/phrases.ts';
import { place, standardGuitar, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { pitchClass, type MidiNote, type NoteName } from '../../../shared/theory/pitch.ts';
import { build, find, scale } from '../../support/exercises.ts';

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

describe('a played answer in words', () => {
  const tone = (semitones: number) => ({ pitchClass: pitchClass(semitones), confidence: 0.9 });
  const line = (...pitches: readonly number[]): Heard => ({
    kind: 'line',
    pitches: pitches.map((pitch, index) => ({ pitch: pitch as MidiNote, at: 300 * index, confidence: 0.9 })),
  });
  // A 69, C sharp 73, E 76 (MIDI 1.0).
  const chord: Heard = { kind: 'chord', tones: [tone(4), tone(9), tone(1)] };
  const aMajor = build('A', 'major', { bass: { letter: 'E', alteration: 0 } });

  test('what was heard, then each tap by what it was asked for', () => {
    const answer = { places: [place(2, 10), place(4, 2)], heard: chord, way: 'play' } as const;
    const said = ['Root tapped on string 2, fret 10.', 'Lowest note tapped on string 4, fret 2.'];
    expect(answerSentences(aMajor, answer, 'english')).toEqual(['Played.', 'Heard: A, C♯, E.', ...said]);
    expect(answerSentences(aMajor, { ...answer, way: 'midi', places: [] }, 'german')).toEqual([
      'By MIDI.',
      'Heard: A, Cis, E.',
    ]);
  });

  test('of a note to be found the string, and never an order of its taps', () => {
    const found = { places: [place(2, 5)], heard: line(62), way: 'play' } as const;
    expect(answerSentences(find('D'), found, 'english')).toEqual([
      'Played.',
      'Heard: D.',
      'String 2 tapped.',
    ]);
    const upwards = { ...scale('E', 'minor-pentatonic', 1, 5), order: 'up' } as const;
    const played = { places: [place(2, 5)], heard: line(64, 67, 69), way: 'play' } as const;
    expect(answerSentences(upwards, played, 'english')).toEqual([
      'Played.',
      'Heard: E, G, A.',
      'Root tapped on string 2, fret 5.',
    ]);
  });

  test('the teacher enters anew what was played, at its level, and goes on from what was placed', () => {
    expect(enteredFrom({ places: [place(2, 5)], heard: line(62), way: 'play', level: 2 })).toEqual({
      places: [],
      level: 2,
    });
    expect(enteredFrom({ places: [place(2, 3)], way: 'midi' })).toEqual({ places: [place(2, 3)] });
    expect(enteredFrom({ places: [place(2, 3)], finger: 1 })).toEqual({ places: [place(2, 3)], finger: 1 });
  });

  test('a guitar on MIDI that tells its strings is drawn as taps are, and says how it came', () => {
    const answer = { places: [place(2, 3)], way: 'midi' } as const;
    expect(answerSentences(find('D'), answer, 'english')).toEqual(['By MIDI.']);
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
