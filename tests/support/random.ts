/** Random numbers that a seed repeats. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, not including, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to, not including, `count`. */
  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(from: readonly [T, ...T[]] | readonly T[]): T {
    return from[this.below(from.length)] as T;
  }

  shuffled<T>(all: readonly T[]): T[] {
    const mixed = [...all];
    for (let at = mixed.length - 1; at > 0; at -= 1) {
      const other = this.below(at + 1);
      [mixed[at], mixed[other]] = [mixed[other] as T, mixed[at] as T];
    }
    return mixed;
  }
}
