import { expect, test } from 'vitest';
import { nextRandom, shuffled } from '../../../shared/lib/random.ts';

test('GENERATE-1: the numbers of mulberry32 (computed apart, in Python)', () => {
  const [first, state] = nextRandom(1);
  expect(first).toBe(0.6270739405881613);
  expect(nextRandom(state)[0]).toBe(0.002735721180215478);
});

test('numbers lie from 0 up to 1 and are spread evenly', () => {
  let state = 7;
  const tenths = Array.from({ length: 10 }, () => 0);
  for (let drawn = 0; drawn < 10_000; drawn += 1) {
    const [number, next] = nextRandom(state);
    state = next;
    const tenth = Math.floor(number * 10);
    tenths[tenth] = (tenths[tenth] ?? NaN) + 1;
  }
  for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
});

test('a shuffle keeps every item, and each order comes as often', () => {
  const orders = Array.from({ length: 6000 }, (_, seed) => shuffled(['a', 'b', 'c'], seed).join(''));
  expect(new Set(orders).size).toBe(6);
  const counts = [...new Set(orders)].map((one) => orders.filter((order) => order === one).length);
  for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(150);
});
