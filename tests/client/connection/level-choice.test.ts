import { beforeEach, describe, expect, it } from 'vitest';
import { LevelChoice, levelKey } from '../../../client/connection/level-choice.ts';
import { memoryStore, type KeyStore } from '../../../client/lib/key-store.ts';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import { atLevel } from '../../../shared/exercise/levels.ts';
import type { RoundId } from '../../../shared/protocol/ids.ts';
import { place } from '../../../shared/theory/fretboard.ts';

const round = 'round-1' as RoundId;
const next = 'round-2' as RoundId;
const first: Answer = { places: [place(2, 3)] };
const second: Answer = { places: [place(3, 4), place(2, 5)], level: 2 };

let storage: KeyStore;
let levels: LevelChoice;
beforeEach(() => {
  storage = memoryStore();
  levels = new LevelChoice(storage);
});

describe('LEVEL-6: the level that a student plays', () => {
  it('is the first until another is chosen, and is kept for the next round', () => {
    expect(levels.levelIn(round, null, 3)).toBe(1);
    levels.choose(round, 3);
    expect(levels.levelIn(round, null, 3)).toBe(3);
    expect(levels.levelIn(next, null, 3)).toBe(3);
    expect(new LevelChoice(storage).levelIn(next, null, 3)).toBe(3);
  });

  it('is the hardest there is where fewer are asked, and the same again where more are', () => {
    levels.choose(round, 3);
    expect(levels.levelIn(next, null, 2)).toBe(2);
    levels.place(next, second, 2);
    expect(levels.levelIn('round-3' as RoundId, null, 3)).toBe(3);
  });

  it('is the one answered, where another device answered', () => {
    expect(levels.levelIn(round, second, 3)).toBe(2);
    levels.choose(round, 1);
    expect(levels.levelIn(round, second, 3)).toBe(1);
  });

  it('is the first again for the next student of the device', () => {
    levels.choose(round, 3);
    levels.clear();
    expect(levels.levelIn(next, null, 3)).toBe(1);
    expect(storage.keys()).toEqual([]);
  });
});

describe('LEVEL-6: what was placed at each level', () => {
  it('stays on the device, across a reload', () => {
    levels.place(round, first, 3);
    levels.choose(round, 2);
    levels.place(round, second, 3);
    const reloaded = new LevelChoice(storage);
    expect(reloaded.placedAt(round, 1)).toEqual(first);
    expect(reloaded.placedAt(round, 2)).toEqual(second);
    expect(reloaded.placedAt(round, 3)).toBeNull();
    expect(reloaded.levelIn(round, null, 3)).toBe(2);
  });

  it('is nothing once it was taken back, and in another round', () => {
    levels.place(round, second, 3);
    levels.place(round, atLevel(noAnswer, 2), 3);
    expect(levels.placedAt(round, 2)).toBeNull();
    levels.place(round, second, 3);
    expect(levels.placedAt(next, 2)).toBeNull();
  });

  it.each([
    '',
    '{',
    '{"roundId":"round-1","level":4}',
    '{"roundId":"round-1","level":2,"placed":[{"places":7}]}',
  ])('is nothing where the storage holds something else: %s', (text) => {
    storage.set(levelKey, text);
    expect(levels.placedAt(round, 2)).toBeNull();
  });
});
