import type { Random } from '../tests/support/random.ts';

/** Samples a second of everything here: half of a sound card's, which the bins do not need. */
export const rate = 22_050;

export const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * random.next();

export const ratioOf = (decibels: number): number => 10 ** (decibels / 20);

/** Adds the sound from `at` on, played so much faster, under a gain for each sample since `at`. */
export function lay(
  into: Float32Array,
  at: number,
  sound: Int16Array,
  speed: number,
  gainAt: (since: number) => number,
): void {
  const start = Math.round(at);
  const end = Math.min(into.length, start + Math.floor((sound.length - 1) / speed));
  for (let index = Math.max(0, start); index < end; index += 1) {
    const since = index - start;
    const from = since * speed;
    const whole = Math.floor(from);
    const left = sound[whole] as number;
    const value = left + (from - whole) * ((sound[whole + 1] as number) - left);
    into[index] = (into[index] as number) + gainAt(since) * value;
  }
}

export function loudness(sound: Float32Array, from = 0, to = sound.length): number {
  let sum = 0;
  for (let at = from; at < to; at += 1) sum += (sound[at] as number) ** 2;
  return Math.sqrt(sum / Math.max(1, to - from));
}

/** A filter of second order in place; the formulas of the W3C note "Audio EQ Cookbook". */
function filter(
  sound: Float32Array,
  kind: 'low-pass' | 'high-pass' | 'peak',
  frequency: number,
  q: number,
  decibels = 0,
): void {
  const angle = (2 * Math.PI * frequency) / rate;
  const cosine = Math.cos(angle);
  const alpha = Math.sin(angle) / (2 * q);
  const gain = 10 ** (decibels / 40);
  const [b0, b1, b2, a0, a2] =
    kind === 'peak'
      ? [1 + alpha * gain, -2 * cosine, 1 - alpha * gain, 1 + alpha / gain, 1 - alpha / gain]
      : kind === 'low-pass'
        ? [(1 - cosine) / 2, 1 - cosine, (1 - cosine) / 2, 1 + alpha, 1 - alpha]
        : [(1 + cosine) / 2, -1 - cosine, (1 + cosine) / 2, 1 + alpha, 1 - alpha];
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let at = 0; at < sound.length; at += 1) {
    const x = sound[at] as number;
    const y = (b0 * x + b1 * x1 + b2 * x2 + 2 * cosine * y1 - a2 * y2) / a0;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    sound[at] = y;
  }
}

/** White noise, with more or less of the top taken off. */
export function noise(random: Random, length: number): Float32Array {
  const dull = random.chance(0.3) ? 0 : between(random, 0.5, 0.985);
  let last = 0;
  const sound = new Float32Array(length);
  for (let at = 0; at < length; at += 1) {
    last = dull * last + (1 - dull) * (random.next() + random.next() - 1);
    sound[at] = last;
  }
  return sound;
}

/** Mains hum and its harmonics. */
export function hum(random: Random, length: number): Float32Array {
  const mains = random.chance(0.5) ? 50 : 60;
  const sound = new Float32Array(length);
  for (let harmonic = 1; harmonic <= 8; harmonic += 1) {
    const strength = random.next() / harmonic;
    const step = (2 * Math.PI * mains * harmonic * between(random, 0.998, 1.002)) / rate;
    const start = 6 * random.next();
    for (let at = 0; at < length; at += 1)
      sound[at] = (sound[at] as number) + strength * Math.sin(start + at * step);
  }
  return sound;
}

/** Adds a sound, so loud beside the first. */
export function add(into: Float32Array, other: Float32Array, ratio: number): void {
  for (let at = 0; at < into.length; at += 1) into[at] = (into[at] as number) + ratio * (other[at] as number);
}

/** What a room and a microphone make of it, in place. */
export function heardInRoom(sound: Float32Array, random: Random): void {
  if (random.chance(0.22)) {
    const drive = between(random, 0.5, 4) / Math.max(1e-9, loudness(sound) * 4);
    for (let at = 0; at < sound.length; at += 1) sound[at] = Math.tanh(drive * (sound[at] as number));
  }
  if (random.chance(0.6)) reflect(sound, random);
  if (random.chance(0.6)) filter(sound, 'high-pass', between(random, 60, 280), 0.707);
  if (random.chance(0.4)) filter(sound, 'low-pass', between(random, 2200, 9000), 0.707);
  for (let peaks = random.below(4); peaks > 0; peaks -= 1)
    filter(sound, 'peak', 120 * 40 ** random.next(), between(random, 0.7, 3), between(random, -9, 9));
}

/** Reflections, the later the softer. */
function reflect(sound: Float32Array, random: Random): void {
  const dies = between(random, 0.12, 0.5);
  const wet = ratioOf(between(random, -22, -7));
  const taps = Array.from({ length: 40 }, () => {
    const time = 0.002 + dies * random.next() ** 1.5;
    return {
      delay: Math.round(time * rate),
      gain: (random.chance(0.5) ? 1 : -1) * 10 ** ((-3 * time) / dies),
    };
  });
  const power = Math.sqrt(taps.reduce((sum, { gain }) => sum + gain * gain, 0));
  const dry = sound.slice();
  for (const { delay, gain } of taps) {
    const share = (gain * wet) / power;
    for (let at = delay; at < sound.length; at += 1)
      sound[at] = (sound[at] as number) + share * (dry[at - delay] as number);
  }
}
