import { isEmpty, type Answer } from '../../shared/exercise/answer.ts';
import { levelOf, type Level } from '../../shared/exercise/levels.ts';
import type { RoundId } from '../../shared/protocol/ids.ts';
import type { KeyStore } from '../lib/key-store.ts';
import { readAnswer } from './stored-answer.ts';

export const levelKey = 'rootcall.level';

interface Kept {
  readonly roundId: string;
  readonly level: Level;
  /** What was placed in this round, at each level that the student went to. */
  readonly placed: readonly Answer[];
}

const nothing: Kept = { roundId: '', level: 1, placed: [] };

/**
 * The level that this student plays, kept for the next round with levels; and for the round that is on, what was placed
 * at each of them. Only one of these is sent.
 */
export class LevelChoice {
  readonly #storage: KeyStore;

  constructor(storage: KeyStore) {
    this.#storage = storage;
  }

  /** The level to show, of so many: the one chosen in this round, else the one answered, else the one of the round before. */
  levelIn(roundId: RoundId, answer: Answer | null, count: number): Level {
    const kept = this.#kept;
    const level = answer && kept.roundId !== roundId ? levelOf(answer) : kept.level;
    return Math.min(level, count) as Level;
  }

  placedAt(roundId: RoundId, level: Level): Answer | null {
    return this.#of(roundId).find((answer) => levelOf(answer) === level && !isEmpty(answer)) ?? null;
  }

  choose(roundId: RoundId, level: Level): void {
    this.#keep({ roundId, level, placed: this.#of(roundId) });
  }

  /** What is given now at its level, which is the one that is played, of so many. */
  place(roundId: RoundId, answer: Answer, count: number): void {
    const { level: before } = this.#kept;
    const level = levelOf(answer);
    const others = this.#of(roundId).filter((other) => levelOf(other) !== level);
    // Who plays the third level does so again where it is asked again.
    this.#keep({
      roundId,
      level: level === count && before > count ? before : level,
      placed: [...others, answer],
    });
  }

  clear(): void {
    this.#storage.remove(levelKey);
  }

  #of(roundId: RoundId): readonly Answer[] {
    const { placed, ...kept } = this.#kept;
    return kept.roundId === roundId ? placed : [];
  }

  get #kept(): Kept {
    try {
      const { roundId, level, placed } = JSON.parse(this.#storage.get(levelKey) ?? '{}') as Partial<Kept>;
      if (typeof roundId !== 'string' || !(level === 1 || level === 2 || level === 3)) return nothing;
      const answers = Array.isArray(placed) ? (placed as readonly object[]).map(readAnswer) : [];
      return { roundId, level, placed: answers.filter((answer) => answer !== null) };
    } catch {
      return nothing;
    }
  }

  #keep(kept: Kept): void {
    this.#storage.set(levelKey, JSON.stringify(kept));
  }
}
