import { sampleRate } from './samples.ts';

/** Second-order filters after the Audio EQ Cookbook (W3C Note, webaudio.github.io/Audio-EQ-Cookbook). */
export interface Filter {
  readonly kind: 'high-pass' | 'low-pass' | 'peak';
  readonly frequency: number;
  readonly q: number;
  /** Of a peak. */
  readonly decibels?: number;
}

interface Coefficients {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number, number];
}

function coefficients({ kind, frequency, q, decibels = 0 }: Filter): Coefficients {
  const w = (2 * Math.PI * frequency) / sampleRate;
  const [cos, alpha] = [Math.cos(w), Math.sin(w) / (2 * q)];
  const gain = 10 ** (decibels / 40);
  switch (kind) {
    case 'high-pass':
      return { b: [(1 + cos) / 2, -(1 + cos), (1 + cos) / 2], a: [1 + alpha, -2 * cos, 1 - alpha] };
    case 'low-pass':
      return { b: [(1 - cos) / 2, 1 - cos, (1 - cos) / 2], a: [1 + alpha, -2 * cos, 1 - alpha] };
    case 'peak':
      return {
        b: [1 + alpha * gain, -2 * cos, 1 - alpha * gain],
        a: [1 + alpha / gain, -2 * cos, 1 - alpha / gain],
      };
  }
}

/** The sound through one filter after another. */
export function filtered(samples: Float32Array, filters: readonly Filter[]): Float32Array {
  return filters.reduce((sound, filter) => throughOne(sound, coefficients(filter)), samples);
}

function throughOne(samples: Float32Array, { b, a }: Coefficients): Float32Array {
  const [b0, b1, b2, a1, a2] = [b[0] / a[0], b[1] / a[0], b[2] / a[0], a[1] / a[0], a[2] / a[0]];
  const result = new Float32Array(samples.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let at = 0; at < samples.length; at += 1) {
    const x = samples[at] ?? 0;
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    result[at] = y;
  }
  return result;
}
