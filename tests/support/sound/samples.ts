import { MPEGDecoder } from 'mpg123-decoder';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { known } from '../../../shared/lib/assert.ts';
import { midiOf, parsePitch } from '../../../shared/theory/pitch.ts';
import { resampled } from './resample.ts';

/** Samples a second of all sound here. */
export const sampleRate = 44_100;

export const guitarNames = ['acoustic', 'electric', 'nylon'] as const;
export type GuitarName = (typeof guitarNames)[number];

/** A sampled guitar, each of whose sounds begins at its acoustic onset. */
export interface Guitar {
  readonly name: GuitarName;
  /** What was recorded, by MIDI note. */
  readonly recorded: ReadonlyMap<number, Float32Array>;
  /** That note, so many cents off, for so many seconds; where it wasn't recorded, the nearest one played faster or slower. */
  note(pitch: number, cents?: number, seconds?: number): Float32Array;
}

/** The file that doesn't sound what it is called. */
const soundsOtherwise: Readonly<Record<string, string>> = { 'nylon/D5': 'D#5' };

/** So much of each file holds four seconds and more of sound. */
const bytesRead = 120_000;
const longest = 4;
/** Loudness of the first `loudFor` seconds, as root mean square, so that one string is as loud as another. */
export const loudness = 0.1;
export const loudFor = 0.3;

let loaded: Promise<Readonly<Record<GuitarName, Guitar>>> | undefined;

/** The three guitars that nothing is trained on, decoded once a process. */
export function loadGuitars(): Promise<Readonly<Record<GuitarName, Guitar>>> {
  loaded ??= decodeAll();
  return loaded;
}

async function decodeAll(): Promise<Readonly<Record<GuitarName, Guitar>>> {
  const decoder = new MPEGDecoder();
  await decoder.ready;
  const guitars: Guitar[] = [];
  for (const name of guitarNames) guitars.push(await decodeGuitar(decoder, name));
  decoder.free();
  return Object.fromEntries(guitars.map((guitar) => [guitar.name, guitar])) as Record<GuitarName, Guitar>;
}

async function decodeGuitar(decoder: MPEGDecoder, name: GuitarName): Promise<Guitar> {
  const packed = `tonejs-instrument-guitar-${name}-mp3`;
  const folder = dirname(createRequire(import.meta.url).resolve(`${packed}/package.json`));
  const recorded = new Map<number, Float32Array>();
  for (const file of readdirSync(folder).filter((each) => each.endsWith('.mp3'))) {
    const called = file.slice(0, -'.mp3'.length).replace('s', '#');
    const pitch = known(parsePitch(soundsOtherwise[`${name}/${called}`] ?? called), `pitch of ${file}`);
    await decoder.reset();
    const { channelData } = decoder.decode(readFileSync(join(folder, file)).subarray(0, bytesRead));
    recorded.set(midiOf(pitch), evenlyLoud(fromOnset(mono(channelData))));
  }
  return { name, recorded, note: noteOf(recorded) };
}

function noteOf(recorded: ReadonlyMap<number, Float32Array>): Guitar['note'] {
  const asked = new Map<number, Float32Array>();
  const pitches = [...recorded.keys()].sort((a, b) => a - b);
  return (pitch, cents = 0, seconds = longest) => {
    const nearest = pitches.reduce((best, one) =>
      Math.abs(one - pitch) < Math.abs(best - pitch) ? one : best,
    );
    const sound = known(recorded.get(nearest), 'recorded note');
    const off = 100 * (pitch - nearest) + cents;
    if (off === 0) return sound;
    const speed = 2 ** (off / 1200);
    // Whole semitones come again and again, a string a little out of tune only once.
    if (cents !== 0) return resampled(sound.subarray(0, Math.ceil(seconds * speed * sampleRate) + 16), speed);
    const before = asked.get(pitch);
    if (before) return before;
    const result = resampled(sound, speed);
    asked.set(pitch, result);
    return result;
  };
}

function mono(channels: readonly Float32Array[]): Float32Array {
  const [left = new Float32Array(0), right = left] = channels;
  return left.map((value, at) => (value + (right[at] ?? 0)) / 2);
}

/**
 * From where the attack first comes within 20 dB of its loudest millisecond: before it the files hold silence, the
 * decoder's delay and the finger laid on the string.
 */
function fromOnset(samples: Float32Array): Float32Array {
  const step = Math.round(sampleRate / 1000);
  const attack = Array.from({ length: 400 }, (_, at) =>
    rootMeanSquare(samples.subarray(at * step, (at + 1) * step)),
  );
  const loudest = Math.max(...attack);
  const onset = attack.findIndex((value) => value > loudest / 10) * step;
  const sound = samples.slice(onset, onset + longest * sampleRate);
  for (let at = 0; at < step; at += 1) sound[at] = ((sound[at] ?? 0) * at) / step;
  const end = Math.min(sound.length, Math.round(sampleRate / 10));
  for (let at = 1; at <= end; at += 1) {
    const index = sound.length - at;
    sound[index] = ((sound[index] ?? 0) * at) / end;
  }
  return sound;
}

function evenlyLoud(samples: Float32Array): Float32Array {
  const gain = loudness / rootMeanSquare(samples.subarray(0, loudFor * sampleRate));
  return samples.map((value) => value * gain);
}

/** How loud that is, as an amplitude. */
export function rootMeanSquare(samples: Float32Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return Math.sqrt(sum / Math.max(1, samples.length));
}
