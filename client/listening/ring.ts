/** The last stretch of sound; an index counts samples since listening began. */
export class Ring {
  readonly #samples: Float32Array;
  #end = 0;

  /** Holds so many samples at least. */
  constructor(length: number) {
    this.#samples = new Float32Array(2 ** Math.ceil(Math.log2(length)));
  }

  /** One past the newest sample. */
  get end(): number {
    return this.#end;
  }

  push(samples: Float32Array): void {
    const start = this.#end % this.#samples.length;
    const first = Math.min(samples.length, this.#samples.length - start);
    this.#samples.set(samples.subarray(0, first), start);
    this.#samples.set(samples.subarray(first), 0);
    this.#end += samples.length;
  }

  /** Fills `into` with the samples from `from` on; silence lies before the first one. */
  read(from: number, into: Float32Array): Float32Array {
    const mask = this.#samples.length - 1;
    for (let at = 0; at < into.length; at += 1) {
      const index = from + at;
      into[at] = index < 0 ? 0 : (this.#samples[index & mask] ?? 0);
    }
    return into;
  }
}
