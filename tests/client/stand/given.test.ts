import { describe, expect, it } from 'vitest';
import { afterFinger, afterRootMark, afterTakingBack, afterTap } from '../../../client/pages/stand/given.ts';
import type { PlacesInput } from '../../../client/fretboard/placing.ts';
import { inputOf } from '../../../shared/exercise/input.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { build, find, places, scale } from '../../support/exercises.ts';
import { playedEMinor } from '../../support/heard.ts';

function placesOf(exercise: Parameters<typeof inputOf>[0]): PlacesInput {
  const input = inputOf(exercise);
  if (input.kind !== 'places') throw new Error('no places are asked for');
  return input;
}
const chordInput = placesOf(build('E', 'minor'));

describe('what is given by hand', () => {
  it('is a place, and said as one', () => {
    const given = afterTap({ places: [] }, place(2, 3), placesOf(find('D')), 'tap');
    expect(given).toEqual({ answer: { places: places([2, 3]) }, words: 'Placed string 2, fret 3.' });
  });

  it('goes with what was heard while one plays, and takes its place while one taps', () => {
    const heard = { ...playedEMinor, places: [] };
    expect(afterTap(heard, place(2, 5), chordInput, 'play').answer).toEqual(playedEMinor);
    expect(afterTap(heard, place(2, 5), chordInput, 'tap').answer).toEqual({ places: places([2, 5]) });
  });

  it('is marked as the root only where it is placed', () => {
    const placed = { places: places([2, 5]) };
    expect(afterRootMark(placed, place(2, 5)).answer).toEqual({ ...placed, root: place(2, 5) });
    expect(afterRootMark(placed, place(3, 4))).toEqual({
      answer: placed,
      words: 'Only a placed note can be the root.',
    });
  });

  it('is taken back in its order, and where there is none by a tap alone', () => {
    const upwards = placesOf({ ...scale('E', 'minor-pentatonic', 1, 5), order: 'up' });
    const two = { places: places([6, 5], [6, 7]) };
    expect(afterTakingBack(two, upwards)?.answer).toEqual({ places: places([6, 5]) });
    expect(afterTakingBack({ places: [] }, upwards)).toBeNull();
    expect(afterTakingBack(two, chordInput)).toBeNull();
  });

  it('has the finger that was pressed last, none where it was pressed twice', () => {
    const first = afterFinger({ places: [] }, 2);
    expect(first).toEqual({ answer: { places: [], finger: 2 }, words: 'Finger 2 on the root.' });
    expect(afterFinger(first.answer, 2).answer).toEqual({ places: [] });
    expect(afterFinger(first.answer, 3).answer).toEqual({ places: [], finger: 3 });
  });
});
