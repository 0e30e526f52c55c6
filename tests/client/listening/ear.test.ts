import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { Ear } from '../../../client/listening/ear.ts';
import type { EarEvent, ListenFor } from '../../../client/listening/events.ts';
import { loadNet, type Net } from '../../../client/listening/net.ts';
import { frequencyOf, pitchClass, type MidiNote } from '../../../shared/theory/pitch.ts';
import { Random } from '../../support/random.ts';
import { arpeggio, evenHand, line, note, strum } from '../../support/sound/mix.ts';
import { mutedStrums } from '../../support/sound/muted.ts';
import { resampled } from '../../support/sound/resample.ts';
import { inRoom } from '../../support/sound/rooms.ts';
import {
  guitarNames,
  loadGuitars,
  sampleRate,
  type Guitar,
  type GuitarName,
} from '../../support/sound/samples.ts';
import { speech, voices } from '../../support/sound/speech.ts';

let guitars: Readonly<Record<GuitarName, Guitar>>;
let net: Net;
beforeAll(async () => {
  guitars = await loadGuitars();
  const file = readFileSync(new URL('../../../client/listening/weights.bin', import.meta.url));
  net = loadNet(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength) as ArrayBuffer);
});

const hand = () => evenHand(new Random(1));
const newEar = (rate = sampleRate) => new Ear({ sampleRate: rate, lowest: 40 as MidiNote, net });

function hear(samples: Float32Array, mode: ListenFor, ear = newEar(), chunk = 1024): readonly EarEvent[] {
  ear.listenFor(mode);
  const events: EarEvent[] = [];
  for (let at = 0; at < samples.length; at += chunk)
    events.push(...ear.feed(samples.subarray(at, at + chunk)));
  return events;
}

const only = <Kind extends EarEvent['kind']>(events: readonly EarEvent[], kind: Kind) =>
  events.filter((event): event is EarEvent & { readonly kind: Kind } => event.kind === kind);
const pitchesIn = (events: readonly EarEvent[]) => only(events, 'note').map(({ pitch }) => pitch);
const verdictsIn = (events: readonly EarEvent[]) => only(events, 'chord').filter(({ isFinal }) => isFinal);
const classesOf = (pitches: readonly number[]) =>
  [...new Set(pitches.map((pitch) => pitchClass(pitch)))].sort((a, b) => a - b);

describe.each(guitarNames)('Single notes of the %s guitar', (name) => {
  it.each([40, 45, 50, 52, 57, 64, 69, 74])(
    'hear note %i as itself, once, within a quarter of a second',
    (pitch) => {
      const played = note(guitars[name], pitch, hand(), { before: 0.5 });
      const events = hear(inRoom(played.samples, 'microphone-like', pitch), 'line');
      const [heard, ...more] = only(events, 'note');
      expect([heard?.pitch, more]).toEqual([pitch, []]);
      expect(Math.abs((heard?.onset ?? 0) - 0.5)).toBeLessThan(0.015);
      expect(heard?.at ?? Infinity).toBeLessThan(0.75);
      expect(Math.abs(heard?.cents ?? Infinity)).toBeLessThan(20);
    },
  );

  it('say at once that something was struck', () => {
    const played = note(guitars[name], 55, hand(), { before: 0.5 });
    const [first] = only(hear(played.samples, 'line'), 'struck');
    expect(first?.at ?? Infinity).toBeLessThan(0.56);
  });
});

describe('Notes in a row', () => {
  const scale = [48, 50, 52, 53, 55, 57, 59, 60];
  const upAndDown = [...scale, ...scale.toReversed().slice(1)];

  it('are heard in order, up and down', () => {
    const { samples } = line(guitars.acoustic, upAndDown, hand(), { before: 0.5, gap: 0.4 });
    expect(pitchesIn(hear(samples, 'line'))).toEqual(upAndDown);
  });

  it('count again where the same one is struck again', () => {
    const { samples } = line(guitars.nylon, [57, 57, 57], hand(), { before: 0.5, gap: 0.6 });
    expect(pitchesIn(hear(samples, 'line'))).toEqual([57, 57, 57]);
  });

  it('are heard where each rings on into the next two, and where one of them is struck again', () => {
    const pitches = [52, 55, 57, 57, 55, 52, 50, 47, 45, 47, 50, 52];
    const played = guitarNames.map((name) => {
      const { samples } = line(guitars[name], pitches, hand(), { before: 0.5, gap: 0.25, ringing: 0.5 });
      return pitchesIn(hear(inRoom(samples, 'microphone-like', 8), 'line'));
    });
    expect(played).toEqual([pitches, pitches, pitches]);
  });

  it('are heard in noise', () => {
    const { samples } = line(guitars.acoustic, scale, hand(), { before: 0.5, gap: 0.4 });
    expect(pitchesIn(hear(inRoom(samples, 'hard', 3), 'line'))).toEqual(scale);
  });

  it('are heard to the end of an even melody: it is no room that hums', () => {
    const pitches = Array.from({ length: 5 }, () => scale).flat();
    const { samples } = line(guitars.electric, pitches, hand(), { before: 0.5, gap: 0.25, ringing: 0.2 });
    expect(pitchesIn(hear(samples, 'line'))).toEqual(pitches);
  });

  it('are heard at 48 kHz too', () => {
    const { samples } = line(guitars.electric, scale, hand(), { before: 0.5, gap: 0.4 });
    expect(pitchesIn(hear(resampled(samples, 44_100 / 48_000), 'line', newEar(48_000)))).toEqual(scale);
  });

  it('are the same however the sound is cut', () => {
    const { samples } = line(guitars.electric, [52, 55, 59], hand(), { before: 0.5, gap: 0.4, ringing: 0.3 });
    const events = hear(samples, 'line');
    expect(pitchesIn(events)).toEqual([52, 55, 59]);
    for (const chunk of [1, 128, 1000, 48_000])
      expect(hear(samples, 'line', newEar(), chunk)).toEqual(events);
  });
});

describe('Chords', () => {
  const e = [40, 47, 52, 56, 59, 64];
  const a = [45, 52, 57, 60, 64];
  const c = [48, 52, 55, 60, 64];

  it.each(guitarNames)('strummed on the %s guitar are heard, with a hint first', (name) => {
    for (const pitches of [c, a]) {
      const { samples } = strum(guitars[name], pitches, hand(), { before: 0.5 });
      const events = only(hear(inRoom(samples, 'microphone-like', 3), 'chord'), 'chord');
      expect(events.map(({ isFinal }) => isFinal)).toEqual([false, true]);
      const [hint, verdict] = events;
      expect(verdict?.tones.map((tone) => tone.pitchClass)).toEqual(classesOf(pitches));
      expect(Math.abs((hint?.at ?? 0) - 0.75)).toBeLessThan(0.04);
      expect(Math.abs((verdict?.at ?? 0) - 0.9)).toBeLessThan(0.04);
    }
  });

  it('struck one string after another become one, tone by tone', () => {
    const { samples } = arpeggio(guitars.acoustic, a, hand(), { before: 0.5, gap: 0.6 });
    const verdicts = verdictsIn(hear(samples, 'chord'));
    expect(verdicts.at(-1)?.tones.map((tone) => tone.pitchClass)).toEqual(classesOf(a));
    expect(new Set(verdicts.map(({ onset }) => onset)).size).toBe(1);
  });

  it('replace what was strummed before', () => {
    const first = strum(guitars.electric, e, hand(), { before: 0.5, ring: 2 });
    const second = strum(guitars.electric, a, hand(), { before: 0, ring: 1 });
    const samples = new Float32Array(first.samples.length + second.samples.length);
    samples.set(first.samples);
    samples.set(second.samples, first.samples.length);
    const heard = verdictsIn(hear(samples, 'chord')).map(({ tones }) => tones.map((tone) => tone.pitchClass));
    expect([heard.at(0), heard.at(-1)]).toEqual([classesOf(e), classesOf(a)]);
  });

  it('need the weights: without them nothing is said', () => {
    const { samples } = strum(guitars.nylon, e, hand(), { before: 0.5 });
    const deaf = new Ear({ sampleRate, lowest: 40 as MidiNote, net: null });
    expect(only(hear(samples, 'chord', deaf), 'chord')).toEqual([]);
  });
});

describe('What is no music', () => {
  it('counts for nothing: 15 seconds of speech', async () => {
    const [voice] = voices;
    const talk = inRoom((await speech(voice)).subarray(0, 15 * sampleRate), 'microphone-like', 1);
    expect(pitchesIn(hear(talk, 'line'))).toEqual([]);
    expect(verdictsIn(hear(talk, 'chord'))).toEqual([]);
  });

  it('counts for nothing: muted strings', () => {
    const { samples } = mutedStrums(guitars.acoustic, 6, 5);
    const heard = inRoom(samples, 'microphone-like', 2);
    expect(pitchesIn(hear(heard, 'line'))).toEqual([]);
    expect(verdictsIn(hear(heard, 'chord'))).toEqual([]);
  });
});

describe('While the device itself sounds', () => {
  it('nothing that is struck or decided then counts', () => {
    const { samples } = line(guitars.nylon, [52, 55, 59, 64], hand(), { before: 0.5, gap: 0.6 });
    const ear = newEar();
    // From the second note to after the third was struck: the third is not decided either.
    ear.deafBetween(1.0, 1.75);
    expect(pitchesIn(hear(samples, 'line', ear))).toEqual([52, 64]);
  });

  it('no chord counts', () => {
    const { samples } = strum(guitars.nylon, [40, 47, 52, 56, 59, 64], hand(), { before: 0.5 });
    const ear = newEar();
    ear.deafBetween(0.8, 0.85);
    expect(verdictsIn(hear(samples, 'chord', ear))).toEqual([]);
  });
});

describe('Tuning', () => {
  it.each([40, 45, 50, 55, 59, 64])(
    'tells the frequency of string %i to a cent, several times a second',
    (pitch) => {
      const frequency = frequencyOf(pitch as MidiNote) * 2 ** (13 / 1200);
      const samples = Float32Array.from({ length: 1.5 * sampleRate }, (_, at) => {
        const t = at / sampleRate - 0.4;
        const partial = (n: number) => Math.sin(2 * Math.PI * n * frequency * t) / n;
        return t < 0 ? 0 : 0.2 * Math.exp(-t) * (partial(1) + partial(2) + partial(3) + partial(4));
      });
      const told = only(hear(samples, 'tuning'), 'tuning');
      expect(told.length).toBeGreaterThan(6);
      for (const one of told) expect(Math.abs(1200 * Math.log2(one.frequency / frequency))).toBeLessThan(1);
    },
  );

  it.each(guitarNames)('tells by how much a string of the %s guitar is off', (name) => {
    const middle = (cents: number) => {
      const sound = guitars[name].note(45, cents, 1.5);
      const told = only(hear(sound, 'tuning'), 'tuning')
        .map((one) => one.frequency)
        .sort((a, b) => a - b);
      return told[told.length >> 1] ?? 0;
    };
    for (const cents of [-22, 7])
      expect(1200 * Math.log2(middle(cents) / middle(0))).toBeCloseTo(cents, -0.3);
  });
});

describe('Level', () => {
  it('is told some ten times a second, with the floor of the room, and where it is clipped', () => {
    const random = new Random(4);
    const noise = Float32Array.from({ length: 4 * sampleRate }, () => 0.01 * (random.next() - 0.5));
    const levels = only(hear(noise, 'line'), 'level');
    expect(levels.length).toBe(40);
    // Even noise from −0.005 to 0.005: 20 log (0.005 / √3) = −50.8 dB.
    expect(levels.at(-1)?.floor).toBeCloseTo(-50.8, 0);
    expect(levels.some(({ clipped }) => clipped)).toBe(false);
    const loud = only(
      hear(
        noise.map((value) => Math.sign(value)),
        'line',
      ),
      'level',
    );
    expect(loud.at(-1)).toMatchObject({ clipped: true, loudness: 0 });
  });
});
