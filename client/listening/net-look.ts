import { binsOf, lookBack } from './bins.ts';
import { hearAround } from './hear-around.ts';
import { lowestNote, noteCount, type Net } from './net.ts';
import type { Onset, Sounding } from './sounding.ts';

/** The net's note is at least so likely; another one that likely was struck with it, unless it is so far away. */
const leastChance = 0.12;
const several = 0.7;
export const harmonics: readonly number[] = [0, 12, 19, 24];

/** How likely the net takes this note to have been struck at the onset; 1 where it knows nothing of it. */
export function chanceOf(sounding: Sounding, onset: Onset, pitch: number): number {
  const { ring, sampleRate, net } = sounding;
  const note = pitch - lowestNote;
  if (!net || note < 0 || note >= noteCount) return 1;
  const seconds = (ring.end - onset.at) / sampleRate;
  return net.hear(binsSince(sounding, onset, seconds)).notes[note] ?? 0;
}

/** The note that the net takes to be new; none where another one, no harmonic of it, is new as well. */
export function newestOf(
  sounding: Sounding,
  net: Net,
  onset: Onset,
  seconds: number,
): { readonly pitch: number; readonly clarity: number } | undefined {
  const { notes } = hearAround(net, binsSince(sounding, onset, seconds));
  const best = notes.reduce((index, chance, at) => (chance > (notes[index] ?? 0) ? at : index), 0);
  const clarity = notes[best] ?? 0;
  const isAlone = notes.every(
    (chance, at) => chance < several * clarity || harmonics.includes(Math.abs(at - best)),
  );
  return clarity >= leastChance && isAlone ? { pitch: lowestNote + best, clarity } : undefined;
}

function binsSince({ ring, sampleRate }: Sounding, { at }: Onset, length: number): Float32Array {
  const before = Math.ceil(lookBack * sampleRate);
  const samples = ring.read(at - before, new Float32Array(before + Math.round(length * sampleRate)));
  return binsOf({ samples, onsetAt: before, sampleRate, length });
}
