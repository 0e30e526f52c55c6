import FFT from 'fft.js';
import { binCount } from './net.ts';

/** The lowest bin's pitch, D2: a whole tone below a guitar's lowest string. */
const lowestBin = 38;
const binsPerSemitone = 3;
/** From MIDI 38 to 106. */
export const fineCount = 204;
/** The longest look, in seconds: what 16384 samples are at 44.1 kHz. */
const longest = 0.3715;
/** Sound before the onset that may already hold the attack, since onsets are found to within some milliseconds. */
const gap = 0.04;
/** How far below the strongest bin one still counts, as a ratio of magnitudes. */
const floor = 1000;

/** The sound before a look that it needs, in seconds. */
export const lookBack = longest + gap;

/** Where a look begins, as an index, and how long it is, in seconds. */
export interface Look {
  readonly samples: Float32Array;
  readonly onsetAt: number;
  readonly sampleRate: number;
  readonly length: number;
}

/**
 * What sounds since the onset, three bins a semitone, and after it what sounded in an equal stretch before, one bin a semitone,
 * from which the net tells what is new from what still rings. Both 0 to 1 on a logarithmic scale, 1 the strongest bin since
 * the onset.
 */
export function binsOf(look: Look): Float32Array {
  const { now, before } = spectraOf(look);
  const bins = new Float32Array(binCount);
  bins.set(now);
  for (let semitone = 0; fineCount + semitone < binCount; semitone += 1) {
    // The bin of the pitch itself and its two neighbours.
    const middle = semitone * binsPerSemitone;
    bins[fineCount + semitone] = Math.max(
      before.at(middle - 1) ?? 0,
      before[middle] ?? 0,
      before[middle + 1] ?? 0,
    );
  }
  return bins;
}

/** The bins of the same sound, so many semitones higher. */
export function movedBins(bins: Float32Array, by: number): Float32Array {
  const moved = new Float32Array(binCount);
  for (let bin = 0; bin < fineCount; bin += 1) {
    const from = bin - by * binsPerSemitone;
    if (from >= 0 && from < fineCount) moved[bin] = bins[from] ?? 0;
  }
  for (let bin = fineCount; bin < binCount; bin += 1)
    if (bin - by >= fineCount) moved[bin] = bins[bin - by] ?? 0;
  return moved;
}

/** Both of them three bins a semitone. */
export function spectraOf({ samples, onsetAt, sampleRate, length }: Look): {
  readonly now: Float32Array;
  readonly before: Float32Array;
} {
  const plan = planFor(sampleRate);
  const size = Math.min(Math.round(length * sampleRate), plan.longest);
  const now = pooled(plan, samples, Math.round(onsetAt + length * sampleRate) - size, size);
  const before = pooled(plan, samples, Math.round(onsetAt - gap * sampleRate) - size, size);
  const strongest = now.reduce((most, power) => Math.max(most, power), 1e-12);
  const scaled = (power: number) =>
    Math.min(1, Math.log1p(floor * Math.sqrt(power / strongest)) / Math.log1p(floor));
  return { now: now.map(scaled), before: before.map(scaled) };
}

interface Plan {
  readonly fft: FFT;
  readonly longest: number;
  /** Of each bin: the first line of the spectrum that belongs to it, and the weights from there on. */
  readonly pools: readonly { readonly from: number; readonly weights: Float32Array }[];
  /** Hann windows by their size. */
  readonly windows: Map<number, Float32Array>;
  readonly windowed: Float32Array;
  readonly spectrum: Float32Array;
}

const plans = new Map<number, Plan>();

function planFor(sampleRate: number): Plan {
  const known = plans.get(sampleRate);
  if (known) return known;
  const size = 2 ** Math.ceil(Math.log2(0.34 * sampleRate));
  const plan: Plan = {
    fft: new FFT(size),
    longest: Math.min(size, Math.round(longest * sampleRate)),
    pools: Array.from({ length: fineCount }, (_, bin) => poolOf(bin, sampleRate / size)),
    windows: new Map(),
    windowed: new Float32Array(size),
    spectrum: new Float32Array(2 * size),
  };
  plans.set(sampleRate, plan);
  return plan;
}

/** A triangle that reaches to the neighbouring bins, or to the neighbouring lines where those lie further apart. */
function poolOf(bin: number, spacing: number): { from: number; weights: Float32Array } {
  const frequency = 440 * 2 ** ((lowestBin + bin / binsPerSemitone - 69) / 12);
  const centre = frequency / spacing;
  const reach = Math.max(1, centre * (2 ** (1 / (12 * binsPerSemitone)) - 1));
  const from = Math.ceil(centre - reach);
  const count = Math.floor(centre + reach) - from + 1;
  // High partials are weak on a guitar: lifted, they count like the low ones.
  const lift = frequency / 440;
  const weights = Float32Array.from(
    { length: count },
    (_, line) => lift * Math.max(0, 1 - Math.abs(from + line - centre) / reach),
  );
  return { from, weights };
}

/** The power in each bin of `size` samples from `from` on, under a Hann window; silence lies outside the samples. */
function pooled(plan: Plan, samples: Float32Array, from: number, size: number): Float32Array {
  const { fft, windowed, spectrum, pools } = plan;
  const window = windowFor(plan, size);
  windowed.fill(0);
  for (let at = Math.max(0, -from); at < size && from + at < samples.length; at += 1)
    windowed[at] = (samples[from + at] ?? 0) * (window[at] ?? 0);
  fft.realTransform(spectrum, windowed);
  return Float32Array.from(pools, ({ from: first, weights }) => {
    let power = 0;
    for (let line = 0; line < weights.length; line += 1) {
      const real = spectrum[2 * (first + line)] ?? 0;
      const imaginary = spectrum[2 * (first + line) + 1] ?? 0;
      power += (weights[line] ?? 0) * (real * real + imaginary * imaginary);
    }
    return power;
  });
}

function windowFor({ windows }: Plan, size: number): Float32Array {
  const known = windows.get(size);
  if (known) return known;
  const window = new Float32Array(size).map((_, at) => 0.5 - 0.5 * Math.cos((2 * Math.PI * at) / size));
  windows.set(size, window);
  return window;
}
