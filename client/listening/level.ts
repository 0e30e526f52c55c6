/** Digital silence and what is softer counts as this, in decibels of full scale. */
export const silence = -100;
/** A room is at most so loud until more is known of it: what is heard first may be a string. */
const quiet = -50;
/** The floor rises so slowly that a melody doesn't lift it, in decibels a block. */
const rise = 0.05;
/** So many blocks pass before anything counts: a microphone that opens knocks. */
const learning = 3;
/** As even as this over so many blocks, no string sounds: that is the room. */
const even = 3;
const evenFor = 20;

/** How loud it is and how loud the room is by itself, block by block of a tenth of a second. */
export class Level {
  readonly #recent: number[] = [];
  #floor: number | undefined;
  #blocks = 0;

  /** The room has been heard for a moment. */
  get isKnown(): boolean {
    return this.#blocks >= learning;
  }

  /** The room's own noise in decibels of full scale. */
  get floor(): number {
    return this.#floor ?? silence;
  }

  /** Something was struck: what is even from now on may be the room, what was before was not. */
  struck(): void {
    this.#recent.length = 0;
  }

  /** Takes the next block, and says how loud it is. */
  next(block: Float32Array): { readonly loudness: number; readonly clipped: boolean } {
    this.#blocks += 1;
    const loudness = decibelsOf(block);
    // A microphone that has only just been opened gives nothing at all: that is not the room.
    if (loudness > silence) this.#follow(loudness);
    return { loudness, clipped: block.some((value) => Math.abs(value) >= 0.999) };
  }

  #follow(loudness: number): void {
    this.#recent.push(loudness);
    if (this.#recent.length > evenFor) this.#recent.shift();
    const least = Math.min(...this.#recent);
    const isEven = this.#recent.length === evenFor && Math.max(...this.#recent) - least < even;
    const risen = Math.min(loudness, (this.#floor ?? quiet) + rise);
    this.#floor = isEven ? least : risen;
  }
}

/** Loudness in decibels of full scale. */
export function decibelsOf(samples: Float32Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return Math.max(silence, 10 * Math.log10(sum / Math.max(1, samples.length)));
}
