import type { Random } from '../random.ts';
import { sampleRate, type Guitar } from './samples.ts';

/** A note that sounds in it, from its true onset on, in seconds. */
export interface TrueNote {
  readonly pitch: number;
  readonly onset: number;
}

export interface Sound {
  readonly samples: Float32Array;
  readonly notes: readonly TrueNote[];
}

/** How each string is played: so many cents off, so many decibels softer or louder. */
export interface Touch {
  readonly cents: number;
  readonly decibels: number;
}

/** The hand that plays: for each string anew. */
export type Hand = () => Touch;

/** In tune, the strings within a decibel of each other. */
export const evenHand =
  (random: Random): Hand =>
  () => ({ cents: 0, decibels: 2 * random.next() - 1 });

/** Each string up to 5 cents out, all of them up to 18, up to 4 dB softer or louder. */
export function roughHand(random: Random): Hand {
  const between = (range: number) => range * (2 * random.next() - 1);
  const all = between(18);
  return () => ({ cents: all + between(5), decibels: between(4) });
}

/** A note to lay into a mix; where `until` is given, the string is stopped then. */
interface Struck extends TrueNote {
  readonly until?: number;
}

const stopping = 0.02;

function mixed(guitar: Guitar, struck: readonly Struck[], seconds: number, hand: Hand): Sound {
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (const { pitch, onset, until = Infinity } of struck) {
    const { cents, decibels } = hand();
    const gain = 10 ** (decibels / 20);
    const sound = guitar.note(pitch, cents, Math.min(until, seconds) - onset + stopping);
    const start = Math.round(onset * sampleRate);
    const end = Math.min(
      sound.length,
      samples.length - start,
      Math.round((until - onset + stopping) * sampleRate),
    );
    const fadeFrom = Math.round((until - onset) * sampleRate);
    for (let at = 0; at < end; at += 1) {
      const fade = at < fadeFrom ? 1 : 1 - (at - fadeFrom) / (stopping * sampleRate);
      samples[start + at] = (samples[start + at] ?? 0) + gain * fade * (sound[at] ?? 0);
    }
  }
  return { samples, notes: struck.map(({ pitch, onset }) => ({ pitch, onset })) };
}

export interface When {
  /** Silence before the first onset, in seconds. */
  readonly before?: number;
  /** How long the sound goes on after the last onset, in seconds. */
  readonly ring?: number;
}

/** One note. */
export function note(
  guitar: Guitar,
  pitch: number,
  hand: Hand,
  { before = 0.3, ring = 1 }: When = {},
): Sound {
  return mixed(guitar, [{ pitch, onset: before }], before + ring, hand);
}

/** All strings within `spread` seconds, in the order given. */
export function strum(
  guitar: Guitar,
  pitches: readonly number[],
  hand: Hand,
  { before = 0.3, ring = 1, spread = 0.03 }: When & { readonly spread?: number } = {},
): Sound {
  const step = spread / Math.max(1, pitches.length - 1);
  const struck = pitches.map((pitch, at) => ({ pitch, onset: before + at * step }));
  return mixed(guitar, struck, before + ring, hand);
}

/** One string after another, `gap` seconds apart, all ringing on. */
export function arpeggio(
  guitar: Guitar,
  pitches: readonly number[],
  hand: Hand,
  { before = 0.3, ring = 1, gap = 0.25 }: When & { readonly gap?: number } = {},
): Sound {
  const struck = pitches.map((pitch, at) => ({ pitch, onset: before + at * gap }));
  return mixed(guitar, struck, before + gap * (pitches.length - 1) + ring, hand);
}

/** Notes one after another, `gap` seconds apart; each ends where the next begins, or `ringing` so much later. */
export function line(
  guitar: Guitar,
  pitches: readonly number[],
  hand: Hand,
  {
    before = 0.3,
    ring = 1,
    gap = 0.25,
    ringing = 0,
  }: When & { readonly gap?: number; readonly ringing?: number } = {},
): Sound {
  const struck = pitches.map((pitch, at) => {
    const onset = before + at * gap;
    return at === pitches.length - 1 ? { pitch, onset } : { pitch, onset, until: onset + gap + ringing };
  });
  return mixed(guitar, struck, before + gap * (pitches.length - 1) + ring, hand);
}

/** The first sound, and the second so many decibels louder or softer, `from` seconds in; the first one's notes. */
export function over(sound: Sound, other: Float32Array, decibels: number, from = 0): Sound {
  const gain = 10 ** (decibels / 20);
  const samples = sound.samples.slice();
  const start = Math.round(from * sampleRate);
  const end = Math.min(samples.length, start + other.length);
  for (let at = start; at < end; at += 1) samples[at] = (samples[at] ?? 0) + gain * (other[at - start] ?? 0);
  return { ...sound, samples };
}

/** One after the other, the onsets moved along. */
export function joined(sounds: readonly Sound[]): Sound {
  const samples = new Float32Array(sounds.reduce((sum, sound) => sum + sound.samples.length, 0));
  const notes: TrueNote[] = [];
  let start = 0;
  for (const sound of sounds) {
    samples.set(sound.samples, start);
    const seconds = start / sampleRate;
    notes.push(...sound.notes.map((one) => ({ ...one, onset: one.onset + seconds })));
    start += sound.samples.length;
  }
  return { samples, notes };
}
