import { describe, expect, it } from 'vitest';
import { isTooLoud, levelOf } from '../../../client/listening/room.ts';

describe('how loud it is', () => {
  it.each([
    [{ loudness: -65, clipped: false }, -70, 'silent'],
    [{ loudness: -50, clipped: false }, -70, 'quiet'],
    [{ loudness: -25, clipped: false }, -70, 'good'],
    [{ loudness: -25, clipped: false }, -30, 'silent'],
    [{ loudness: -3, clipped: true }, -70, 'clipped'],
  ] as const)('%o over a room at %d dB is “%s”', (loudest, floor, level) => {
    expect(levelOf(loudest, floor)).toBe(level);
  });

  it('is too loud where a guitar stands out by less than 15 dB', () => {
    expect(isTooLoud(-46)).toBe(false);
    expect(isTooLoud(-44)).toBe(true);
    // One that was heard louder than usual may have a louder room.
    expect(isTooLoud(-44, -20)).toBe(false);
    expect(isTooLoud(-34, -20)).toBe(true);
    // A soft one is not held against the room.
    expect(isTooLoud(-60, -55)).toBe(false);
  });
});
