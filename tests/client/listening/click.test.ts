import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clicksUntil, tempoWithin } from '../../../client/listening/click.ts';

describe('the click', () => {
  it.each([
    [20, 40],
    [40, 40],
    [92.4, 92],
    [208, 208],
    [500, 208],
  ])('keeps %d beats a minute within what it can give: %d', (asked, given) => {
    expect(tempoWithin(asked)).toBe(given);
  });

  it('falls once a beat: at 120 beats a minute every half second', () => {
    const { due, next } = clicksUntil(12.2, { next: 10, now: 9.9, bpm: 120 });
    expect(due).toEqual([10, 10.5, 11, 11.5, 12]);
    expect(next).toBe(12.5);
    expect(clicksUntil(12.4, { next, now: 12.2, bpm: 120 })).toEqual({ due: [], next: 12.5 });
  });

  it('leaves out what a sleeping page has missed, and keeps the beat', () => {
    expect(clicksUntil(20.2, { next: 10, now: 20.1, bpm: 60 })).toEqual({ due: [], next: 21 });
    expect(clicksUntil(21.1, { next: 10, now: 20.9, bpm: 60 })).toEqual({ due: [21], next: 22 });
  });

  it('misses no click and doubles none, however it is planned', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 208 }),
        fc.array(fc.double({ min: 0.01, max: 0.19, noNaN: true }), { minLength: 1, maxLength: 60 }),
        (bpm, waits) => {
          let now = 0;
          let next = 0.1;
          const all: number[] = [];
          for (const wait of waits) {
            const planned = clicksUntil(now + 0.2, { next, now, bpm });
            all.push(...planned.due);
            next = planned.next;
            now += wait;
          }
          all.forEach((at, index) => expect(at).toBeCloseTo(0.1 + (index * 60) / bpm, 6));
        },
      ),
    );
  });
});
