import { PitchDetector } from 'pitchy';
import { frequencyOf, type MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent } from './events.ts';
import { decibelsOf } from './level.ts';
import { hop } from './onset.ts';
import type { Sounding } from './sounding.ts';

/** Periods of the lowest note in one look: with more of them the frequency is told more finely. */
const periods = 6;
/** Hops from one look to the next, and looks of which the middle one counts. */
const every = 8;
const middleOf = 5;
const leastClarity = 0.9;
/** The string is so much louder than the room, in decibels. */
const aboveRoom = 6;

/** Follows the frequency of one string, ten times a second and more. */
export class Tuner {
  readonly #sounding: Sounding;
  readonly #detector: PitchDetector<Float32Array>;
  readonly #look: Float32Array;
  #looks: readonly (readonly [frequency: number, clarity: number])[] = [];

  constructor(sounding: Sounding, lowest: MidiNote) {
    this.#sounding = sounding;
    const length = (periods * sounding.sampleRate) / frequencyOf(lowest);
    this.#look = new Float32Array(2 ** Math.ceil(Math.log2(length)));
    this.#detector = PitchDetector.forFloat32Array(this.#look.length);
  }

  /** Samples in one look. */
  get length(): number {
    return this.#look.length;
  }

  forget(): void {
    this.#looks = [];
  }

  /** One hop later. */
  step(): readonly EarEvent[] {
    const { ring, level, sampleRate } = this.#sounding;
    if (ring.end % (every * hop) !== 0) return [];
    const look = ring.read(ring.end - this.#look.length, this.#look);
    if (decibelsOf(look) < level.floor + aboveRoom) {
      this.forget();
      return [];
    }
    const [frequency, clarity] = this.#detector.findPitch(look, sampleRate);
    if (clarity < leastClarity) return [];
    // Another string: what was heard of the one before doesn't count.
    const same = this.#looks.filter(([old]) => Math.abs(12 * Math.log2(old / frequency)) < 0.5);
    this.#looks = [...same, [frequency, clarity] as const].slice(-middleOf);
    const sorted = this.#looks.map(([one]) => one).sort((a, b) => a - b);
    const middle = sorted[sorted.length >> 1];
    if (middle === undefined || this.#looks.length < 3) return [];
    return [{ kind: 'tuning', at: ring.end / sampleRate, frequency: middle, clarity }];
  }
}
