import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { known } from '../shared/lib/assert.ts';
import type { Random } from '../tests/support/random.ts';
import { loudness, rate } from './sound.ts';

/** A guitar of render.py: one timbre. */
export interface Guitar {
  /** The note as the guitar plays it, now softer, now harder. */
  note(random: Random, midi: number): Int16Array;
}

export interface Notes {
  guitar(random: Random): Guitar;
  /** So many samples of talk, some louder than others; mostly a syllable sets in at `onset`, where that is given. */
  speech(random: Random, length: number, onset?: number): Float32Array;
}

interface Index {
  readonly length: number;
  readonly rows: readonly { readonly source: string; readonly note: number }[];
}

export function openNotes(cache: string): Notes {
  const { length, rows } = JSON.parse(readFileSync(join(cache, 'notes.json'), 'utf8')) as Index;
  const sound = samplesIn(join(cache, 'notes.raw'));
  const talk = samplesIn(join(cache, 'speech.raw'));
  const guitars = new Map<string, Map<number, number[]>>();
  rows.forEach(({ source, note }, index) => {
    const own = guitars.get(source) ?? new Map<number, number[]>();
    guitars.set(source, own.set(note, [...(own.get(note) ?? []), index]));
  });
  const computed = [...guitars.keys()].filter((source) => source.startsWith('strung'));
  const recorded = [...guitars.keys()].filter((source) => !source.startsWith('strung'));
  return {
    guitar: (random) => {
      const own = known(guitars.get(random.pick(random.chance(0.4) ? computed : recorded)), 'guitar');
      return {
        note: (chance, midi) => {
          const index = chance.pick(known(own.get(midi), 'note'));
          return sound.subarray(index * length, (index + 1) * length);
        },
      };
    },
    speech: (random, count, onset) => {
      const some = () => {
        const from = random.below(talk.length - count);
        return Float32Array.from(talk.subarray(from, from + count));
      };
      if (onset === undefined || random.chance(0.3)) return some();
      const parts = Array.from({ length: 12 }, some);
      return parts.reduce((best, part) => (rise(part, onset) > rise(best, onset) ? part : best));
    },
  };
}

/** How much louder it is just after than just before. */
function rise(sound: Float32Array, at: number): number {
  const length = Math.round(0.05 * rate);
  return loudness(sound, at, at + length) / (loudness(sound, at - length, at) + 100);
}

function samplesIn(path: string): Int16Array {
  const bytes = readFileSync(path);
  return new Int16Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 2);
}
