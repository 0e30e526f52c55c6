import { Random } from '../random.ts';
import { filtered } from './filters.ts';
import type { Sound } from './mix.ts';
import { sampleRate, type Guitar } from './samples.ts';

/** What the left hand lies on: the open strings, low to high. */
const strings = [40, 45, 50, 55, 59, 64];

/**
 * Strumming of strings that a hand damps, `perSecond` strokes a second: each string a burst of noise and a tone that is
 * gone within 15 to 30 ms.
 */
export function mutedStrums(guitar: Guitar, seconds: number, seed: number, perSecond = 4): Sound {
  const random = new Random(seed);
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (let onset = 0.3; onset < seconds - 0.3; onset += (0.9 + 0.2 * random.next()) / perSecond)
    stroke(samples, guitar, onset, random);
  return { samples, notes: [] };
}

function stroke(samples: Float32Array, guitar: Guitar, onset: number, random: Random): void {
  const length = Math.round(0.25 * sampleRate);
  const order = random.chance(0.5) ? strings : strings.toReversed();
  order.forEach((pitch, at) => {
    const start = Math.round((onset + 0.005 * at) * sampleRate);
    const dies = (0.015 + 0.015 * random.next()) * sampleRate;
    const tone = guitar.note(pitch);
    const noise = filtered(
      Float32Array.from({ length }, () => random.next() - 0.5),
      [
        { kind: 'high-pass', frequency: 120, q: 0.7 },
        { kind: 'peak', frequency: 300 + 1500 * random.next(), q: 2, decibels: 12 },
        { kind: 'low-pass', frequency: 4000, q: 0.7 },
      ],
    );
    for (let index = 0; index < length; index += 1) {
      const value = (tone[index] ?? 0) + 0.5 * (noise[index] ?? 0);
      samples[start + index] = (samples[start + index] ?? 0) + value * Math.exp(-index / dies);
    }
  });
}
