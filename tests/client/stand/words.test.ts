import { describe, expect, it } from 'vitest';
import { rootMarked, tapped, takenBack, type PlacesInput } from '../../../client/fretboard/placing.ts';
import { tappedFor } from '../../../client/pages/stand/heard-answer.ts';
import {
  fingerWords,
  heldWords,
  openWords,
  rootWords,
  tapForHeardWords,
  tapWords,
} from '../../../client/pages/stand/words.ts';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { Playing } from '../../../shared/exercise/heard.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import type { PitchClass } from '../../../shared/theory/pitch.ts';

const input: PlacesInput = {
  kind: 'places',
  perString: 'many',
  ordered: false,
  marksRoot: true,
  asksFinger: true,
  playing: null,
};
const heard: Answer = {
  places: [],
  heard: { kind: 'chord', tones: [{ pitchClass: 9 as PitchClass, confidence: 1 }] },
  way: 'play',
};
const placed: Answer = { places: [place(2, 5), place(1, 3)] };

describe('what is still open at Done', () => {
  it('is what the exercise asks for besides the notes, as far as it is missing', () => {
    expect(openWords(input, placed)).toBe('the root and its finger');
    expect(openWords(input, { ...placed, root: place(2, 5) })).toBe('the finger on the root');
    expect(openWords({ ...input, marksRoot: false }, placed)).toBe('the finger on the root');
    expect(openWords(input, { ...placed, finger: 3 })).toBe('the root');
    expect(openWords(input, { ...placed, root: place(2, 5), finger: 3 })).toBe('');
  });

  it('is nothing where nothing more is asked, or nothing is given yet', () => {
    expect(openWords({ ...input, marksRoot: false, asksFinger: false, playing: null }, placed)).toBe('');
    expect(openWords(input, { places: [] })).toBe('');
    expect(openWords({ kind: 'name', place: place(3, 5), wanted: 'note' }, placed)).toBe('');
  });
});

describe('what is still open of what was heard', () => {
  const playable: PlacesInput = {
    ...input,
    asksFinger: false,
    playing: { as: 'chord', taps: ['root', 'lowest'] },
  };

  it('is the taps that are asked for, and no root mark besides', () => {
    expect(openWords(playable, heard)).toBe('a tap on your root and a tap on your lowest note');
    expect(openWords(playable, { ...heard, places: [place(5, 0)] })).toBe('a tap on your lowest note');
    expect(openWords(playable, { ...heard, places: [place(5, 0), place(6, 0)] })).toBe('');
    expect(
      openWords({ ...playable, asksFinger: true }, { ...heard, places: [place(5, 0), place(6, 0)] }),
    ).toBe('the finger on the root');
  });

  it('is said as it is tapped', () => {
    const taps: Playing = { as: 'chord', taps: ['root', 'lowest'] };
    const one = tappedFor(heard, place(5, 0), taps);
    const two = tappedFor(one, place(6, 0), taps);
    expect(tapForHeardWords(heard, one, place(5, 0), taps)).toBe('Root: string 5, open.');
    expect(tapForHeardWords(one, two, place(6, 0), taps)).toBe('Lowest note: string 6, open.');
    expect(tapForHeardWords(two, one, place(6, 0), taps)).toBe('Taken back string 6, open.');
    const none: Playing = { as: 'chord', taps: [] };
    expect(tapForHeardWords(heard, tappedFor(heard, place(5, 0), none), place(5, 0), none)).toBe(
      'What was heard is enough: no tap is asked for.',
    );
  });
});

describe('what a screen reader hears of a tap', () => {
  const said = (before: Answer, string: number, fret: number, ordered: boolean) => {
    const at = place(string, fret);
    return tapWords(before, tapped(before, at, { ...input, ordered }), at, { ...input, ordered });
  };

  it('is the place, put there or taken back', () => {
    expect(said(placed, 3, 4, false)).toBe('Placed string 3, fret 4.');
    expect(said(placed, 1, 3, false)).toBe('Taken back string 1, fret 3.');
  });

  it('is, in an order, which one it is', () => {
    expect(said(placed, 2, 6, true)).toBe('3rd: string 2, fret 6.');
    expect(said(placed, 2, 5, true)).toBe('3rd: string 2, fret 5.');
    expect(said(placed, 1, 3, true)).toBe('Taken back, 2nd: string 1, fret 3.');
    const twice: Answer = { places: [place(2, 5), place(1, 3), place(2, 5)] };
    expect(tapWords(twice, takenBack(twice), place(2, 5), { ...input, ordered: true })).toBe(
      'Taken back, 3rd: string 2, fret 5.',
    );
  });

  it('is the root mark and the finger, or that they are gone', () => {
    const marked = rootMarked(placed, place(2, 5));
    expect(rootWords(placed, marked)).toBe('Root marked: string 2, fret 5.');
    expect(rootWords(marked, rootMarked(marked, place(2, 5)))).toBe('The root mark is gone.');
    expect(rootWords(placed, rootMarked(placed, place(3, 1)))).toBe('Only a placed note can be the root.');
    expect(fingerWords({ ...placed, finger: 3 })).toBe('Finger 3 on the root.');
    expect(fingerWords(placed)).toBe('No finger on the root.');
  });
});

describe('what is said after the hold', () => {
  it('is of a name where a name was asked', () => {
    expect(heldWords('safe', 'places', noAnswer)).toBe('What you placed last counts.');
    expect(heldWords('safe', 'name', noAnswer)).toBe('What you named last counts.');
    expect(heldWords('nothing', 'name', noAnswer)).toBe('Nothing is named this time.');
    expect(heldWords('safe', 'places', heard)).toBe('What you played last counts.');
  });
});
