import { describe, expect, it } from 'vitest';
import { keyTo, type KeyBox } from '../../../client/components/key-grid.ts';

/** Seven letters over three accidentals, as the keypad lies on a phone. */
const keys: readonly KeyBox[] = [
  ...Array.from({ length: 7 }, (_, at) => ({ x: 25 + 50 * at, y: 20 })),
  ...Array.from({ length: 3 }, (_, at) => ({ x: 25 + 50 * at, y: 70 })),
];

describe('arrow keys on a keypad', () => {
  it('go on and back in order, over the end of a row', () => {
    expect(keyTo(keys, 6, 'ArrowRight')).toBe(7);
    expect(keyTo(keys, 7, 'ArrowLeft')).toBe(6);
  });

  it('go to the nearest key of the row below or above', () => {
    expect(keyTo(keys, 1, 'ArrowDown')).toBe(8);
    expect(keyTo(keys, 6, 'ArrowDown')).toBe(9);
    expect(keyTo(keys, 9, 'ArrowUp')).toBe(2);
  });

  it('stay at the edges, and reach both ends', () => {
    expect([keyTo(keys, 0, 'ArrowLeft'), keyTo(keys, 9, 'ArrowRight')]).toEqual([0, 9]);
    expect([keyTo(keys, 3, 'ArrowUp'), keyTo(keys, 8, 'ArrowDown')]).toEqual([3, 8]);
    expect([keyTo(keys, 4, 'Home'), keyTo(keys, 4, 'End')]).toEqual([0, 9]);
  });

  it('leave other keys to the page', () => {
    expect([keyTo(keys, 4, 'Enter'), keyTo(keys, 4, 'a'), keyTo([], 0, 'Home')]).toEqual([null, null, null]);
  });
});
