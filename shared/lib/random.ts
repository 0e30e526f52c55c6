/** The state of a generator: any whole number starts one, and the same one gives the same numbers. */
export type RandomState = number;

/**
 * A number from 0 up to 1, and the state that gives the next: `const [number, next] = nextRandom(7)`.
 * The method is mulberry32 (public domain): 2^32 numbers before they repeat, enough to vary exercises, no secret.
 */
export function nextRandom(state: RandomState): readonly [number, RandomState] {
  const next = (state + 0x6d2b79f5) | 0;
  let mixed = Math.imul(next ^ (next >>> 15), next | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return [((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32, next];
}

/** The items in another order, each order as likely (Fisher and Yates): `shuffled(['a', 'b', 'c'], 7)`. */
export function shuffled<T>(items: readonly T[], seed: RandomState): readonly T[] {
  const order = [...items];
  let state = seed;
  for (let last = order.length - 1; last > 0; last -= 1) {
    const [number, next] = nextRandom(state);
    state = next;
    const other = Math.floor(number * (last + 1));
    const [from, to] = [order[last] as T, order[other] as T];
    order[last] = to;
    order[other] = from;
  }
  return order;
}
