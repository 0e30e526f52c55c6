import { isDeepStrictEqual } from 'node:util';
import { foretell, play, writeScript } from '../support/random-class.ts';
import type { Report } from './report.ts';

/** Classes at random against a simple model, each in four orders of arrival. */
export async function randomClasses(count: number, seed: number): Promise<Report> {
  const otherwise: number[] = [];
  for (let index = 0; index < count; index += 1) {
    const script = writeScript(seed + index);
    const expected = foretell(script);
    for (const order of [1, 2, 3, 4]) {
      const { live, stored } = await play(script, order);
      if (!isDeepStrictEqual(live, expected) || !isDeepStrictEqual(stored, expected))
        otherwise.push(seed + index);
    }
  }
  return {
    ok: otherwise.length === 0,
    text:
      `${String(count)} classes at random, each in 4 orders of arrival: ${String(otherwise.length)} came out otherwise ` +
      `than the model says${otherwise.length > 0 ? ` (seeds ${[...new Set(otherwise)].slice(0, 10).join(', ')})` : ''}.`,
  };
}
