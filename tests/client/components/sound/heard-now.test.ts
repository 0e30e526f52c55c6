import { describe, expect, it } from 'vitest';
import { heardNow, nothingHeard, type HeardNow } from '../../../../client/components/sound/heard-now.ts';
import type { EarEvent } from '../../../../client/listening/events.ts';
import { isTooLoud } from '../../../../client/listening/room.ts';

function level(at: number, loudness: number, clipped = false): EarEvent {
  return { kind: 'level', at, loudness, floor: -60, clipped };
}

function tuning(at: number, frequency: number, clarity = 0.99): EarEvent {
  return { kind: 'tuning', at, frequency, clarity };
}

const after = (...events: readonly EarEvent[]): HeardNow => events.reduce(heardNow, nothingHeard);

describe('what the sound check shows', () => {
  it('is the last clear look at a string, for as long as a peg is turned', () => {
    const heard = [level(1, -20), tuning(1.1, 110.2), tuning(1.2, 110.1), tuning(1.3, 221, 0.93)];
    expect(after(...heard).tuning?.frequency).toBe(110.1);
    expect(after(...heard, level(3.6, -60)).tuning?.frequency).toBe(110.1);
    expect(after(...heard, level(3.8, -60)).tuning).toBeNull();
  });

  it('calls the level by its loudest moment of late: a string’s beginning, not its end', () => {
    expect(after(level(1, -20), level(2, -55)).level).toBe('good');
    expect(after(level(1, -1, true), level(2, -20)).level).toBe('clipped');
    expect(after(level(1, -1, true), level(4.5, -58)).level).toBe('silent');
  });

  it('remembers for a while how loud the guitar is, to judge the room by', () => {
    const heard = after(level(1, -12), ...Array.from({ length: 50 }, (_, n) => level(1.1 + n / 10, -60)));
    expect(heard.guitar).toBeCloseTo(-17, 6);
    expect(isTooLoud(-40)).toBe(true);
    expect(isTooLoud(-40, heard.guitar)).toBe(false);
  });

  it('is untouched by what is heard for an answer', () => {
    const struck: EarEvent = { kind: 'struck', at: 2, onset: 2 };
    expect(after(level(1, -20), struck)).toEqual(after(level(1, -20)));
  });
});
