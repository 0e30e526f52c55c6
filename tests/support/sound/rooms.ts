import { Random } from '../random.ts';
import { filtered, type Filter } from './filters.ts';
import { rootMeanSquare, sampleRate } from './samples.ts';

export const conditions = ['clean', 'microphone-like', 'hard'] as const;
export type Condition = (typeof conditions)[number];

/**
 * What the sound becomes on its way: clean, only a level · microphone-like, a small room, a laptop's microphone and 30 dB of
 * noise · hard, a livelier room, some overdrive, 15 to 25 dB of noise. What the hand does in "hard" is `roughHand`, and
 * `stillRinging` what sounded before.
 */
export function inRoom(samples: Float32Array, condition: Condition, seed: number): Float32Array {
  const random = new Random(seed);
  const between = (low: number, high: number) => low + (high - low) * random.next();
  switch (condition) {
    case 'clean':
      return atLevel(samples, between(0.2, 0.7));
    case 'microphone-like': {
      const heard = filtered(reflected(samples, random, 0.25, -14), laptop(random));
      return atLevel(noisy(heard, 30, random), between(0.05, 0.4));
    }
    case 'hard': {
      const driven = overdriven(samples, random.chance(0.5) ? between(1, 4) : 0);
      const heard = filtered(reflected(driven, random, 0.4, -9), laptop(random));
      return atLevel(noisy(heard, between(15, 25), random), between(0.05, 0.5));
    }
  }
}

/** No low end, a weak top, a bump where the housing resonates. */
function laptop(random: Random): readonly Filter[] {
  const between = (low: number, high: number) => low + (high - low) * random.next();
  return [
    { kind: 'high-pass', frequency: between(90, 160), q: 0.707 },
    { kind: 'low-pass', frequency: between(5000, 9000), q: 0.707 },
    { kind: 'peak', frequency: between(500, 3500), q: between(1, 3), decibels: between(3, 9) },
  ];
}

/** Some 80 reflections that die away by 60 dB in `dies` seconds, together `decibels` beside the sound itself. */
function reflected(samples: Float32Array, random: Random, dies: number, decibels: number): Float32Array {
  const taps = Array.from({ length: 80 }, () => {
    const time = 0.003 + dies * random.next() ** 1.5;
    return {
      delay: Math.round(time * sampleRate),
      gain: (random.chance(0.5) ? 1 : -1) * 10 ** ((-3 * time) / dies),
    };
  });
  const power = Math.sqrt(taps.reduce((sum, { gain }) => sum + gain * gain, 0));
  const wet = 10 ** (decibels / 20) / power;
  const result = samples.slice();
  for (const { delay, gain } of taps) {
    const share = gain * wet;
    for (let at = delay; at < result.length; at += 1)
      result[at] = (result[at] as number) + share * (samples[at - delay] as number);
  }
  return result;
}

function overdriven(samples: Float32Array, drive: number): Float32Array {
  if (drive === 0) return samples;
  const gain = drive / peakOf(samples);
  return samples.map((value) => Math.tanh(value * gain));
}

/** Noise so many decibels below the loudest 300 ms: half of it like air, half like a fan. */
function noisy(samples: Float32Array, decibels: number, random: Random): Float32Array {
  const level = loudest(samples) * 10 ** (-decibels / 20);
  const white = Float32Array.from(samples, () => gauss(random));
  const fan = filtered(white, [{ kind: 'low-pass', frequency: 400, q: 0.707 }]);
  const fanGain = (Math.SQRT1_2 * level) / Math.max(1e-9, rootMeanSquare(fan));
  return samples.map(
    (value, at) => value + Math.SQRT1_2 * level * (white[at] ?? 0) + fanGain * (fan[at] ?? 0),
  );
}

/** Nearly normal and one wide: four even ones together. */
function gauss(random: Random): number {
  let sum = -2;
  for (let at = 0; at < 4; at += 1) sum += random.next();
  return sum * Math.sqrt(3);
}

function loudest(samples: Float32Array): number {
  const length = Math.round(0.3 * sampleRate);
  let most = rootMeanSquare(samples.subarray(0, length));
  for (let start = length; start < samples.length; start += length)
    most = Math.max(most, rootMeanSquare(samples.subarray(start, start + length)));
  return most;
}

/** The sound with its highest peak there. */
export function atLevel(samples: Float32Array, peak: number): Float32Array {
  const gain = peak / Math.max(1e-9, peakOf(samples));
  return samples.map((value) => value * gain);
}

function peakOf(samples: Float32Array): number {
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  return peak;
}

/**
 * The end of a chord that sounded before, to lay under a new one: it rings on from where it is, at the onset of the new one
 * the hand takes most of it away, and what is left (12 to 20 dB less) rings on.
 */
export function stillRinging(before: Float32Array, onset: number, random: Random): Float32Array {
  const left = 10 ** (-(12 + 8 * random.next()) / 20);
  const [from, taken] = [onset * sampleRate, 0.1 * sampleRate];
  return before.map((value, at) => {
    const share = Math.min(1, Math.max(0, (at - from) / taken));
    return value * left ** share;
  });
}
