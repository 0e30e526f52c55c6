import FFT from 'fft.js';

/** Samples of one look at the spectrum, some 23 ms. */
export const lookLength = 1024;
/** Samples from one look to the next, some 6 ms. */
export const hop = 256;

/** Bands up to there, in hertz, and how many to an octave. */
const lowest = 80;
const highest = 9000;
const bandsInOctave = 24;
/** A band is compared with this many looks before. */
const lag = 3;
/** How far the loudest of the last seconds is above what hardly counts, in amplitude. */
const range = 200;
const fading = 0.9985;
/** The quietest of it rises so slowly; as long as nothing was louder, that many times as much counts as loud. */
const rising = 1.0005;
const aboveRoom = 30;
/** A peak is the highest of so many looks on both sides. */
export const reach = 4;
/** How far a peak is above nothing, and above the middle of the last looks; one that is less is soft, if not less than this. */
const least = 0.05;
const softest = 0.025;
const above = 1.6;
const remembered = 24;

export interface Peak {
  /** By how much the spectrum had grown, on average over its bands. */
  readonly growth: number;
  /** Too little to be sure of: a low string beside others that ring, or nothing. */
  readonly isSoft: boolean;
}

/** Hears when something is struck: where the spectrum grows at once in many bands. */
export class Onsets {
  readonly #fft = new FFT(lookLength);
  readonly #window = Float32Array.from(
    { length: lookLength },
    (_, at) => 0.5 - 0.5 * Math.cos((2 * Math.PI * at) / lookLength),
  );
  readonly #windowed = new Float32Array(lookLength);
  readonly #spectrum = new Float32Array(2 * lookLength);
  readonly #edges: readonly number[];
  readonly #before: Float32Array[] = [];
  readonly #growth: number[] = [];
  #loudest = 0;
  #quietest = Infinity;

  constructor(sampleRate: number) {
    this.#edges = edges(sampleRate);
  }

  /** Takes the next look; what was `reach` looks ago, if that was an onset. */
  next(look: Float32Array): Peak | undefined {
    const bands = this.#bands(look);
    const earlier = this.#before.length < lag ? undefined : this.#before.shift();
    this.#before.push(bands);
    this.#growth.push(earlier === undefined ? 0 : grown(earlier, bands));
    if (this.#growth.length > remembered) this.#growth.shift();
    return this.#peak();
  }

  #bands(look: Float32Array): Float32Array {
    for (let at = 0; at < lookLength; at += 1) this.#windowed[at] = (look[at] ?? 0) * (this.#window[at] ?? 0);
    this.#fft.realTransform(this.#spectrum, this.#windowed);
    const bands = new Float32Array(this.#edges.length - 1);
    let strongest = 0;
    for (let band = 0; band < bands.length; band += 1) {
      let power = 0;
      const end = this.#edges[band + 1] ?? 0;
      for (let line = this.#edges[band] ?? 0; line < end; line += 1)
        power += (this.#spectrum[2 * line] ?? 0) ** 2 + (this.#spectrum[2 * line + 1] ?? 0) ** 2;
      const amplitude = Math.sqrt(power);
      bands[band] = amplitude;
      if (amplitude > strongest) strongest = amplitude;
    }
    this.#quietest = Math.max(1e-6, Math.min(strongest, this.#quietest * rising));
    this.#loudest = Math.max(strongest, this.#loudest * fading, this.#quietest * aboveRoom);
    for (let band = 0; band < bands.length; band += 1)
      bands[band] = Math.log2(1 + (range * (bands[band] ?? 0)) / this.#loudest);
    return bands;
  }

  #peak(): Peak | undefined {
    const growth = this.#growth;
    const at = growth.length - 1 - reach;
    const value = growth[at] ?? 0;
    if (value < softest) return undefined;
    for (let other = Math.max(0, at - reach); other < growth.length; other += 1)
      if (other !== at && ((growth[other] ?? 0) > value || (other > at && growth[other] === value)))
        return undefined;
    const usual = [...growth].sort((a, b) => a - b)[growth.length >> 1] ?? 0;
    const isOver = (bound: number) => value >= bound && value > above * usual + bound;
    return isOver(softest) ? { growth: value, isSoft: !isOver(least) } : undefined;
  }
}

/** The lines of the spectrum where a band ends and the next begins. */
function edges(sampleRate: number): readonly number[] {
  const lines: number[] = [];
  for (let frequency = lowest; frequency <= highest; frequency *= 2 ** (1 / bandsInOctave)) {
    const line = Math.round((frequency * lookLength) / sampleRate);
    if (line > (lines.at(-1) ?? 0)) lines.push(line);
  }
  return lines;
}

/** By how much the bands have grown, on average; a neighbour's old value counts too, so that a moving tone is no onset. */
function grown(earlier: Float32Array, bands: Float32Array): number {
  let sum = 0;
  for (let band = 0; band < bands.length; band += 1) {
    const old = Math.max(earlier[band - 1] ?? 0, earlier[band] ?? 0, earlier[band + 1] ?? 0);
    sum += Math.max(0, (bands[band] ?? 0) - old);
  }
  return sum / bands.length;
}
