import { describe, expect, it } from 'vitest';
import { pointOf, type NeckFrame } from '../../../client/fretboard/geometry.ts';
import { Fingers, heldIn, isActKey, moved } from '../../../client/fretboard/input.ts';
import { fretsShown } from '../../../client/fretboard/state.ts';
import { woodFrame } from '../../../client/fretboard/wood-frame.ts';
import { place, type FretRange } from '../../../shared/theory/fretboard.ts';
import { phone, turnedPhone } from './requests.ts';

function range(low: number, high: number): FretRange {
  return { low: place(1, low).fret, high: place(1, high).fret };
}

const frames: readonly (readonly [string, NeckFrame])[] = [
  ['upright', woodFrame(phone, range(1, 10))],
  ['upright from fret 7', woodFrame(phone, range(7, 16))],
  ['upright, left-handed', woodFrame({ ...phone, leftHanded: true }, range(1, 10))],
  ['lying', woodFrame(turnedPhone, range(1, 12))],
  ['lying, left-handed', woodFrame({ ...turnedPhone, leftHanded: true }, range(1, 12))],
];

const directions = [
  ['ArrowUp', { x: 0, y: -1 }],
  ['ArrowDown', { x: 0, y: 1 }],
  ['ArrowLeft', { x: -1, y: 0 }],
  ['ArrowRight', { x: 1, y: 0 }],
] as const;

describe('arrow keys', () => {
  it.each(frames)('%s: go where they point, from every place, or stay at the edge', (_, frame) => {
    for (let string = 1; string <= frame.strings; string += 1) {
      for (const fret of fretsShown(frame.window)) {
        const from = place(string, fret);
        const there = pointOf(frame, from);
        for (const [key, way] of directions) {
          const to = moved(frame, from, key);
          expect(to).not.toBeNull();
          if (to === null || (to.string === from.string && to.fret === from.fret)) continue;
          const here = pointOf(frame, to);
          const along = (here.x - there.x) * way.x + (here.y - there.y) * way.y;
          const aside = Math.abs((here.x - there.x) * way.y) + Math.abs((here.y - there.y) * way.x);
          expect(along).toBeGreaterThan(0);
          expect(aside).toBeLessThan(along);
        }
      }
    }
  });

  it.each(frames)('%s: reach every place from every other', (_, frame) => {
    const reached = new Set<string>();
    const open = [place(1, 0)];
    for (let one = open.pop(); one !== undefined; one = open.pop()) {
      const name = `${String(one.string)}-${String(one.fret)}`;
      if (reached.has(name)) continue;
      reached.add(name);
      for (const [key] of directions) {
        const to = moved(frame, one, key);
        if (to !== null) open.push(to);
      }
    }
    expect(reached.size).toBe(frame.strings * fretsShown(frame.window).length);
  });

  it('Home goes to the open string, End to the last fret shown', () => {
    const frame = woodFrame(phone, range(7, 16));
    expect(moved(frame, place(3, 9), 'Home')).toEqual(place(3, 0));
    expect(moved(frame, place(3, 9), 'End')).toEqual(place(3, 16));
  });

  it('leaves other keys alone', () => {
    const frame = woodFrame(phone, range(1, 10));
    expect(moved(frame, place(2, 5), 'a')).toBeNull();
    expect(moved(frame, place(2, 5), 'PageDown')).toBeNull();
    expect([isActKey('Enter'), isActKey(' '), isActKey('a')]).toEqual([true, true, false]);
  });

  it('keeps the place in sight when the window changes', () => {
    const frame = woodFrame(phone, range(7, 16));
    expect(heldIn(frame, place(2, 3))).toEqual(place(2, 7));
    expect(heldIn(frame, place(2, 19))).toEqual(place(2, 16));
    expect(heldIn(frame, place(2, 0))).toEqual(place(2, 0));
  });
});

describe('fingers', () => {
  it('act where they lift', () => {
    const fingers = new Fingers();
    fingers.down(1, place(2, 5));
    expect(fingers.places).toEqual([place(2, 5)]);
    fingers.move(1, place(2, 6));
    expect(fingers.lift(1)).toEqual(place(2, 6));
    expect(fingers.places).toEqual([]);
  });

  it('do nothing after sliding off the neck, or when taken away', () => {
    const fingers = new Fingers();
    fingers.down(1, place(2, 5));
    fingers.move(1, null);
    expect(fingers.lift(1)).toBeNull();
    fingers.down(2, place(3, 5));
    fingers.cancel(2);
    expect(fingers.lift(2)).toBeNull();
  });

  it('are followed each by itself', () => {
    const fingers = new Fingers();
    fingers.down(1, place(1, 3));
    fingers.down(2, place(2, 5));
    fingers.move(2, place(2, 4));
    expect(fingers.lift(1)).toEqual(place(1, 3));
    expect(fingers.lift(2)).toEqual(place(2, 4));
  });

  it('count only once they were put down: a mouse that passes over does nothing', () => {
    const fingers = new Fingers();
    fingers.move(7, place(1, 1));
    expect(fingers.places).toEqual([]);
    expect(fingers.lift(7)).toBeNull();
  });
});
