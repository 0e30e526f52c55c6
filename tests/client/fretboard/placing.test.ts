import { describe, expect, it } from 'vitest';
import {
  ordinal,
  rootMarked,
  takenBack,
  tapped,
  visitsTo,
  type PlacesInput,
} from '../../../client/fretboard/placing.ts';
import { cellName } from '../../../client/fretboard/render-cells.ts';
import { placeName, type WoodMarks } from '../../../client/fretboard/state.ts';
import { orderLabel } from '../../../client/fretboard/wood-marks.ts';
import type { Answer } from '../../../shared/exercise/answer.ts';
import { place, type Place } from '../../../shared/theory/fretboard.ts';

const set: PlacesInput = {
  kind: 'places',
  perString: 'many',
  ordered: false,
  marksRoot: true,
  asksFinger: true,
  playing: null,
};
const chord: PlacesInput = { ...set, perString: 'one' };
const order: PlacesInput = { ...set, ordered: true };
const [a, b, c] = [place(6, 3), place(6, 5), place(5, 2)];

function taps(input: PlacesInput, ...places: readonly Place[]): Answer {
  return places.reduce<Answer>((answer, one) => tapped(answer, one, input), { places: [] });
}

describe('places in an order', () => {
  it('are added one after another, the same one also twice: up and down', () => {
    expect(taps(order, a, b, c, b, a).places).toEqual([a, b, c, b, a]);
  });

  it('lose the last one when it is tapped again, and no other', () => {
    expect(taps(order, a, b, c, c).places).toEqual([a, b]);
    expect(taps(order, a, b, c, c, b).places).toEqual([a]);
  });

  it('lose the last one when it is taken back, down to none', () => {
    expect(takenBack(taps(order, a, b)).places).toEqual([a]);
    expect(takenBack({ places: [] }).places).toEqual([]);
  });

  it('know when each was visited', () => {
    const { places } = taps(order, a, b, c, b, a);
    expect(visitsTo(places, b)).toEqual([2, 4]);
    expect(visitsTo(places, place(1, 1))).toEqual([]);
  });

  it('never grow beyond what one answer may hold', () => {
    const many = Array.from({ length: 120 }, (_, at) => (at % 2 === 0 ? a : b));
    expect(taps(order, ...many, c, a).places).toEqual(many);
    const all = Array.from({ length: 300 }, (_, at) => place((at % 10) + 1, Math.floor(at / 10)));
    expect(taps(set, ...all).places).toHaveLength(120);
  });
});

describe('places in no order', () => {
  it('come and go with each tap', () => {
    expect(taps(set, a, b, c, a).places).toEqual([b, c]);
  });

  it('are one a string in a chord', () => {
    expect(taps(chord, a, b, c).places).toEqual([b, c]);
  });

  it('leave the finger that was named alone', () => {
    expect(tapped({ places: [a], finger: 2 }, b, set)).toEqual({ places: [a, b], finger: 2 });
  });
});

describe('the root mark', () => {
  const three = taps(set, a, b, c);

  it('is set on a note, moved to another, and taken away by a second tap', () => {
    expect(rootMarked(three, b)).toEqual({ places: [a, b, c], root: b });
    expect(rootMarked(rootMarked(three, b), c).root).toEqual(c);
    expect(rootMarked(rootMarked(three, b), b)).toEqual(three);
  });

  it('needs a note under it', () => {
    expect(rootMarked(three, place(1, 1))).toEqual(three);
  });

  it('goes with its note, whichever way that goes', () => {
    const marked = rootMarked(three, b);
    expect(tapped(marked, b, set)).toEqual({ places: [a, c] });
    expect(tapped(marked, a, set)).toEqual({ places: [b, c], root: b });
    expect(takenBack({ places: [a, b], root: b })).toEqual({ places: [a] });
    // One note a string: a tap beside it moves it away.
    expect(tapped({ places: [b], root: b }, a, chord)).toEqual({ places: [a] });
  });

  it('stays while the order still visits its note', () => {
    expect(takenBack({ places: [a, b, a], root: a })).toEqual({ places: [a, b], root: a });
  });
});

describe('what is read of an order', () => {
  it('counts in words as one says them', () => {
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 103, 111].map(ordinal)).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '12th',
      '13th',
      '21st',
      '22nd',
      '103rd',
      '111th',
    ]);
  });

  it('shows every visit where there is room, else the last, and never smaller than 11 px', () => {
    expect(orderLabel([3, 11], 18).text).toBe('3·11');
    expect(orderLabel([3, 11], 11).text).toBe('11');
    expect(orderLabel([1, 8, 15], 18).text).toBe('15');
    for (const r of [11, 14, 18, 24]) {
      expect(orderLabel([8, 15], r).size).toBeGreaterThanOrEqual(11);
    }
  });

  it('names a cell by string, fret, visits and root, never by its note', () => {
    const marks: WoodMarks = {
      places: [a, b, a],
      ordered: true,
      root: a,
      asked: null,
      pressed: [],
      heard: [],
      sent: false,
      stringNames: [],
    };
    expect(cellName(a, marks, placeName)).toBe('string 6, fret 3, 1st and 3rd, root');
    expect(cellName(c, marks, placeName)).toBe('string 5, fret 2');
    expect(cellName(a, { ...marks, ordered: false, root: null }, placeName)).toBe('string 6, fret 3');
    const heard = [{ place: c, look: 'newest' } as const, { place: b, look: 'hint' } as const];
    expect(cellName(c, { ...marks, heard }, placeName)).toBe('string 5, fret 2, heard');
    // A hint is not heard yet.
    expect(cellName(b, { ...marks, heard, places: [] }, placeName)).not.toContain('heard');
  });
});
