import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fineCount, spectraOf } from '../client/listening/bins.ts';
import { lowestNote, noteCount } from '../client/listening/net.ts';
import { Random } from '../tests/support/random.ts';
import { anyNotes, chordPool, wronged, type Strung } from './chords.ts';
import { openNotes, type Guitar } from './notes.ts';
import { add, between, heardInRoom, hum, lay, loudness, noise, rate, ratioOf } from './sound.ts';

/**
 * Mixes sounds from a seed and writes what the net is trained on: of each look its bins and what is right for each output,
 * 0, 255, or 128 where neither would be fair. `mix.ts COUNT SEED` writes training/cache/looks-SEED-….raw.
 */
const [count = 1000, seed = 1] = process.argv.slice(2).map(Number);
const cache = join(import.meta.dirname, 'cache');
const random = new Random(1000 + seed);
const notes = openNotes(cache);
const pool = chordPool();
console.log(`${pool.flat().length} chords in ${pool.length} qualities`);

/** The onset, and how much sound there is, in samples. */
const onset = Math.round(0.5 * rate);
const length = Math.round(0.94 * rate);
const outputs = noteCount + 12;
const rowLength = 2 * fineCount + outputs;

interface Scene {
  readonly sound: Float32Array;
  /** Notes struck from the onset on, each `after` so many seconds. */
  readonly struck: readonly { readonly note: number; readonly after: number }[];
  readonly looks: readonly number[];
}

/** Plays a string at `at` seconds from the onset; stopped after a while where `until` is given. */
function play(
  into: Float32Array,
  guitar: Guitar,
  {
    note,
    at,
    decibels,
    cents,
    until,
  }: { note: number; at: number; decibels: number; cents: number; until?: number },
): void {
  const gain = ratioOf(decibels);
  const end = until === undefined ? Infinity : (until - at) * rate;
  const fade = between(random, 0.006, 0.04) * rate;
  lay(into, onset + at * rate, guitar.note(random, note), 2 ** (cents / 1200), (since) =>
    since < end ? gain : gain * Math.max(0, 1 - (since - end) / fade),
  );
}

interface Hand {
  readonly cents: () => number;
  readonly decibels: () => number;
}

function newHand(): Hand {
  const all = random.chance(0.5) ? between(random, -20, 20) : between(random, -4, 4);
  const [out, uneven] = [between(random, 0, 6), between(random, 0, 5)];
  return {
    cents: () => all + between(random, -out, out),
    decibels: () => between(random, -uneven, uneven),
  };
}

/** From the lowest string up or down; where each string sounds, from 0 on. */
function strum(
  into: Float32Array,
  guitar: Guitar,
  hand: Hand,
  chord: readonly Strung[],
  {
    at = 0,
    level = 0,
    spread = 0.06 * random.next(),
    until,
  }: { at?: number; level?: number; spread?: number; until?: number } = {},
): readonly { note: number; after: number }[] {
  const order = random.chance(0.7) ? chord : chord.toReversed();
  const tilt = between(random, -3, 3) / 5;
  return order.map(({ string, note }, index) => {
    const after = at + (spread * index) / Math.max(1, order.length - 1);
    const decibels = level + hand.decibels() + tilt * (string - 3.5);
    play(into, guitar, {
      note,
      at: after,
      decibels,
      cents: hand.cents(),
      ...(until === undefined ? {} : { until }),
    });
    return { note, after };
  });
}

function anyChord(): readonly Strung[] {
  const chord = random.pick(random.pick(pool));
  const capo = random.chance(0.15) ? 1 + random.below(4) : random.chance(0.06) ? -1 - random.below(2) : 0;
  const moved = chord.map(({ string, note }) => ({ string, note: note + capo }));
  return moved.every(({ note }) => note >= 38 && note <= 88) ? moved : chord;
}

/** What may still sound from before: another chord or the same one, ringing on, or stopped just before the onset. */
function before(into: Float32Array, guitar: Guitar, hand: Hand, chord: readonly Strung[]): void {
  const kind = random.next();
  if (kind < 0.4) return;
  const at = -between(random, 0.25, 1);
  if (kind < 0.6) strum(into, guitar, hand, anyChord(), { at, level: between(random, -25, -8) });
  else if (kind < 0.85) {
    // The hand takes most of it away, and the rest rings on.
    const ringing = new Float32Array(length);
    strum(ringing, guitar, newHand(), anyChord(), { at, level: between(random, -4, 2) });
    const left = ratioOf(between(random, -24, -11));
    const from = onset + between(random, -0.1, 0.02) * rate;
    const taken = between(random, 0.02, 0.11) * rate;
    for (let index = 0; index < length; index += 1) {
      const share = Math.min(1, Math.max(0, (index - from) / taken));
      into[index] = (into[index] as number) + left ** share * (ringing[index] as number);
    }
  }
  // Struck again, strings stop sounding as they did.
  else
    strum(into, guitar, hand, kind < 0.94 ? chord : anyChord(), {
      at,
      level: between(random, -6, 2),
      until: between(random, -0.12, 0.01),
    });
}

function chordScene(): Scene {
  const sound = new Float32Array(length);
  const guitar = notes.guitar(random);
  const hand = newHand();
  const kind = random.next();
  const chord =
    kind < 0.6
      ? anyChord()
      : kind < 0.85
        ? wronged(random, anyChord())
        : anyNotes(random, 1 + random.below(6));
  before(sound, guitar, hand, chord);
  const struck = strum(sound, guitar, hand, chord);
  if (random.chance(0.35)) ringAlong(sound, guitar, struck);
  if (random.chance(0.08)) dampedStrings(sound, guitar, between(random, -15, -3));
  if (random.chance(0.16))
    strum(sound, notes.guitar(random), newHand(), anyChord(), {
      at: between(random, -0.5, 0.3),
      level: between(random, -18, -11),
    });
  return { sound, struck, looks: [0.25, 0.4] };
}

/** One note, others ringing from before: the last ones of a line, or any; the same string struck again among them. */
function noteScene(): Scene {
  const sound = new Float32Array(length);
  const guitar = notes.guitar(random);
  const hand = newHand();
  const note = 40 + random.below(random.chance(0.5) ? 25 : 49);
  for (const { other, at, until } of random.chance(0.5) ? lineBefore(note) : anyBefore(note)) {
    if (other < 40 || other > 88) continue;
    play(sound, guitar, {
      note: other,
      at,
      decibels: between(random, -7, 2),
      cents: hand.cents(),
      ...(until === undefined ? {} : { until }),
    });
  }
  play(sound, guitar, { note, at: 0, decibels: 0, cents: hand.cents() });
  const struck = [{ note, after: 0 }];
  if (random.chance(0.35)) ringAlong(sound, guitar, struck);
  const shortest = random.chance(0.75) ? 0.2 : between(random, 0.1, 0.2);
  return { sound, struck, looks: [shortest, random.chance(0.5) ? 0.25 : 0.4] };
}

type Earlier = readonly { readonly other: number; readonly at: number; readonly until?: number }[];

/** At one pace, in steps and small leaps, each ringing on as long into the next ones. */
function lineBefore(note: number): Earlier {
  const gap = between(random, 0.12, 0.5);
  const ringing = random.chance(0.3) ? between(random, 0, 0.1) : between(random, 0.1, 1.2);
  let other = note;
  return Array.from({ length: 1 + random.below(5) }, (_, index) => {
    other += random.below(15) - 7;
    const at = -gap * (index + 1);
    return { other, at, until: at + gap + ringing };
  });
}

function anyBefore(note: number): Earlier {
  let at = 0;
  return Array.from({ length: random.below(5) }, () => {
    at -= between(random, 0.11, 0.5);
    const near = random.chance(0.3) ? random.pick([-24, -12, -19, -7, 7, 12, 19]) : random.below(25) - 12;
    return {
      other: note + near,
      at,
      ...(near === 0 || random.chance(0.3) ? { until: between(random, -0.05, 0.15) } : {}),
    };
  });
}

/** A chord string by string, slower than a strum. */
function arpeggioScene(): Scene {
  const sound = new Float32Array(length);
  const guitar = notes.guitar(random);
  const hand = newHand();
  const chord = anyChord();
  const gap = between(random, 0.06, 0.3);
  const first = random.below(chord.length);
  const struck = chord.flatMap(({ note }, index) => {
    const after = (index - first) * gap;
    play(sound, guitar, { note, at: after, decibels: hand.decibels(), cents: hand.cents() });
    return after < 0 ? [] : [{ note, after }];
  });
  return { sound, struck, looks: [0.2, 0.4] };
}

/** Strings under a damping hand: a knock and hardly a tone. */
function dampedStrings(into: Float32Array, guitar: Guitar, level: number): void {
  const dies = between(random, 0.006, 0.035) * rate;
  const spread = between(random, 0, 0.05);
  for (let string = 0; string < 6; string += 1) {
    const note = [40, 45, 50, 55, 59, 64][string] as number;
    const gain = 0.6 * ratioOf(level + between(random, -6, 3));
    const own = dies * between(random, 0.6, 1.4);
    lay(
      into,
      onset + (spread * rate * string) / 6,
      guitar.note(random, note + random.below(13)),
      1,
      (since) => gain * Math.exp(-since / own),
    );
  }
  knock(into, level);
}

function knock(into: Float32Array, level: number): void {
  const burst = noise(random, length);
  const gain = (2500 * ratioOf(level)) / loudness(burst);
  const dies = between(random, 0.004, 0.06) * rate;
  for (let at = onset; at < length; at += 1)
    into[at] = (into[at] as number) + gain * Math.exp((onset - at) / dies) * (burst[at] as number);
}

/** Strings that ring along with an overtone of what was struck: softly, and nobody played them. */
function ringAlong(into: Float32Array, guitar: Guitar, struck: Scene['struck']): void {
  for (const { note, after } of struck) {
    const along = note + random.pick([12, 19, 19, 24, 28]);
    if (along > 88 || random.chance(0.5)) continue;
    play(into, guitar, {
      note: along,
      at: after,
      decibels: between(random, -26, -13),
      cents: between(random, -3, 3),
    });
  }
}

/** Nothing that was played: talk, damped strings, knocks, hum, noise; at times while a chord rings on. */
function otherScene(): Scene {
  const sound = new Float32Array(length);
  const kind = random.next();
  if (kind < 0.6) add(sound, notes.speech(random, length, onset), 1);
  else if (kind < 0.8) dampedStrings(sound, notes.guitar(random), 0);
  else if (kind < 0.9) {
    knock(sound, 0);
    if (random.chance(0.4)) knock(sound, -6);
  } else if (kind < 0.95) add(sound, hum(random, length), 2500);
  else add(sound, noise(random, length), 2500);
  if (random.chance(0.3))
    strum(sound, notes.guitar(random), newHand(), anyChord(), {
      at: -between(random, 0.4, 1),
      level: between(random, -20, 3),
    });
  return { sound, struck: [], looks: [random.pick([0.2, 0.25]), 0.4] };
}

function anyScene(): Scene {
  const kind = random.next();
  if (kind < 0.5) return chordScene();
  if (kind < 0.74) return noteScene();
  if (kind < 0.81) return arpeggioScene();
  return otherScene();
}

/** What is right for each output, as long after the onset. */
function rightAfter(seconds: number, struck: Scene['struck']): Uint8Array {
  const right = new Uint8Array(outputs);
  // A string that is only just sounding can't be asked for, nor be foreign.
  const mark = (index: number, after: number) => {
    if (right[index] !== 255) right[index] = after < seconds - 0.13 ? 255 : 128;
  };
  for (const { note, after } of struck) {
    if (after > seconds) continue;
    const index = note - lowestNote;
    if (index >= 0 && index < noteCount) mark(index, after);
    mark(noteCount + (note % 12), after);
  }
  return right;
}

function around(sound: Float32Array): void {
  heardInRoom(sound, random);
  const level = loudness(sound, onset, onset + Math.round(0.3 * rate));
  const part = (other: Float32Array, decibels: number) =>
    add(sound, other, (level * ratioOf(decibels)) / Math.max(1e-9, loudness(other)));
  part(noise(random, length), -(random.chance(0.3) ? between(random, 45, 60) : between(random, 14, 42)));
  if (random.chance(0.15)) part(hum(random, length), -between(random, 10, 40));
  if (random.chance(0.08)) part(notes.speech(random, length), -between(random, 14, 30));
}

/** A file holds so many scenes: what is there can be trained on before all are. */
const inFile = 2500;
mkdirSync(cache, { recursive: true });
for (let file = 0; file * inFile < count; file += 1) {
  const bytes = new Uint8Array(inFile * 2 * rowLength);
  for (let scene = 0, at = 0; scene < inFile; scene += 1) {
    const { sound, struck, looks } = anyScene();
    around(sound);
    for (const seconds of looks) {
      // An onset is found a little early or late.
      const found = between(random, -0.012, 0.02);
      const spectra = spectraOf({
        samples: sound,
        onsetAt: onset + found * rate,
        sampleRate: rate,
        length: seconds,
      });
      for (let bin = 0; bin < fineCount; bin += 1) {
        bytes[at + bin] = Math.round(255 * (spectra.now[bin] ?? 0));
        bytes[at + fineCount + bin] = Math.round(255 * (spectra.before[bin] ?? 0));
      }
      bytes.set(rightAfter(seconds + found, struck), at + 2 * fineCount);
      at += rowLength;
    }
  }
  writeFileSync(join(cache, `looks-${seed}-${file}.raw`), bytes);
  console.log(`${(file + 1) * inFile} of ${count}`);
}
