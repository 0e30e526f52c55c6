import { describe, expect, it } from 'vitest';
import { foretell, play, writeScript } from '../support/random-class.ts';

/** Against a model of a few lines; the same class in several orders of arrival, some of them all at once. */
describe('ANSWER-1, ANSWER-4, ROUND-2: classes at random come out as foretold, whoever comes first', () => {
  const seeds = Array.from({ length: 25 }, (_, index) => index + 1);
  it.each(seeds)('seed %i', async (seed) => {
    const script = writeScript(seed);
    const expected = foretell(script);
    for (const order of [1, 2, 3]) {
      const { live, stored } = await play(script, order);
      expect(live).toEqual(expected);
      expect(stored).toEqual(expected);
    }
  });
});
