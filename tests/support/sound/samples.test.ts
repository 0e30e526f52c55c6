import { PitchDetector } from 'pitchy';
import { beforeAll, describe, expect, it } from 'vitest';
import { frequencyOf, type MidiNote } from '../../../shared/theory/pitch.ts';
import { Random } from '../random.ts';
import { evenHand, joined, line, strum } from './mix.ts';
import { mutedStrums } from './muted.ts';
import { conditions, inRoom } from './rooms.ts';
import {
  guitarNames,
  loadGuitars,
  loudFor,
  loudness,
  rootMeanSquare,
  sampleRate,
  type Guitar,
  type GuitarName,
} from './samples.ts';
import { speech, voices } from './speech.ts';
import { wav } from './wav.ts';

let guitars: Readonly<Record<GuitarName, Guitar>>;
beforeAll(async () => {
  guitars = await loadGuitars();
});

function centsOff(sound: Float32Array, pitch: number): number {
  const from = Math.round(0.1 * sampleRate);
  const [frequency] = PitchDetector.forFloat32Array(4096).findPitch(
    sound.subarray(from, from + 4096),
    sampleRate,
  );
  return 1200 * Math.log2(frequency / frequencyOf(pitch as MidiNote));
}

describe.each(guitarNames)('The %s guitar', (name) => {
  it('sounds each recorded note within 15 cents of its name, and all of them equally loud', () => {
    const { recorded } = guitars[name];
    expect(recorded.size).toBeGreaterThan(15);
    for (const [pitch, sound] of recorded) {
      expect(Math.abs(centsOff(sound, pitch)), `note ${String(pitch)}`).toBeLessThan(15);
      expect(rootMeanSquare(sound.subarray(0, loudFor * sampleRate))).toBeCloseTo(loudness, 4);
    }
  });

  it('begins each recorded note at its onset', () => {
    for (const [pitch, sound] of guitars[name].recorded)
      expect(rootMeanSquare(sound.subarray(0, sampleRate / 50)), `note ${String(pitch)}`).toBeGreaterThan(
        0.02,
      );
  });

  it('sounds notes between the recorded ones, and cents off', () => {
    for (let pitch = 40; pitch <= 79; pitch += 5) {
      expect(Math.abs(centsOff(guitars[name].note(pitch), pitch)), `note ${String(pitch)}`).toBeLessThan(15);
      const off = centsOff(guitars[name].note(pitch, 30), pitch) - centsOff(guitars[name].note(pitch), pitch);
      expect(Math.abs(off - 30), `note ${String(pitch)} 30 cents up`).toBeLessThan(2);
    }
  });
});

describe('Mixes', () => {
  it('tell the true onsets, also of what is joined', () => {
    const hand = evenHand(new Random(1));
    const played = joined([
      line(guitars.nylon, [60, 62], hand, { before: 0.5, ring: 1, gap: 0.5 }),
      strum(guitars.nylon, [40, 47, 52], hand, { before: 0.5, ring: 1, spread: 0.03 }),
    ]);
    expect(played.notes.map((one) => Math.round(1000 * one.onset))).toEqual([500, 1000, 2500, 2515, 2530]);
    const quiet = played.samples.subarray(0, 0.5 * sampleRate);
    expect(rootMeanSquare(quiet)).toBe(0);
    const first = played.samples.subarray(0.5 * sampleRate, 0.52 * sampleRate);
    expect(rootMeanSquare(first)).toBeGreaterThan(0.02);
  });

  it.each(conditions)('come out of a %s room the same from the same seed, and never clipped', (condition) => {
    const { samples } = strum(guitars.electric, [45, 52, 57, 61, 64], evenHand(new Random(2)));
    const heard = inRoom(samples, condition, 3);
    expect(inRoom(samples, condition, 3)).toEqual(heard);
    expect(inRoom(samples, condition, 4)).not.toEqual(heard);
    expect(heard.every((value) => Math.abs(value) < 1)).toBe(true);
    // Before the chord there is silence, or the noise of the room.
    const noise = rootMeanSquare(heard.subarray(0, 0.28 * sampleRate));
    const sound = rootMeanSquare(heard.subarray(0.3 * sampleRate, 0.6 * sampleRate));
    const under = 20 * Math.log10(sound / noise);
    if (condition === 'clean') expect(under).toBe(Infinity);
    else
      expect(Math.abs(under - (condition === 'hard' ? 20 : 30))).toBeLessThan(condition === 'hard' ? 6 : 2);
  });
});

describe('What is no music', () => {
  it('is speech of half a minute and more in each voice', async () => {
    const [first] = voices;
    const talk = await speech(first);
    expect(talk.length / sampleRate).toBeGreaterThan(30);
    expect(rootMeanSquare(talk)).toBeGreaterThan(0.02);
  });

  it('is muted strings that are gone after a tenth of a second', () => {
    const { samples } = mutedStrums(guitars.acoustic, 2, 5, 1);
    const at = (from: number, to: number) =>
      rootMeanSquare(samples.subarray(from * sampleRate, to * sampleRate));
    expect(at(0.3, 0.35)).toBeGreaterThan(0.05);
    expect(at(0.55, 0.6)).toBeLessThan(0.0001);
  });
});

describe('A WAV file', () => {
  it('holds the samples as 16 bits, one channel, 44.1 kHz', () => {
    const bytes = Buffer.from(wav(Float32Array.of(0, 0.5, -1, 2)));
    expect(bytes.length).toBe(44 + 8);
    expect(bytes.toString('latin1', 0, 4) + bytes.toString('latin1', 8, 12)).toBe('RIFFWAVE');
    expect([bytes.readUInt16LE(22), bytes.readUInt32LE(24), bytes.readUInt16LE(34)]).toEqual([1, 44_100, 16]);
    expect([0, 1, 2, 3].map((at) => bytes.readInt16LE(44 + 2 * at))).toEqual([0, 16384, -32767, 32767]);
  });
});
