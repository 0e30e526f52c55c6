import type { HeardTone } from '../../shared/exercise/heard.ts';
import type { PitchClass } from '../../shared/theory/pitch.ts';
import { binsOf } from './bins.ts';
import { hearAround } from './hear-around.ts';
import { lowestNote, type Net } from './net.ts';

/** Sound around an onset, without a gap. */
export interface Struck {
  /** From 0.45 s before the onset on. */
  readonly samples: Float32Array;
  /** Index of the onset in `samples`. */
  readonly onsetAt: number;
  /** Samples a second. */
  readonly sampleRate: number;
  readonly net: Net;
}

export interface ChordHeard {
  /** Those that are more likely there than not. */
  readonly tones: readonly HeardTone[];
  /** Others that may be there all the same. */
  readonly faint: readonly HeardTone[];
  /** A tone that may be there or not: better heard again. */
  readonly isDoubtful: boolean;
  /** Two tones at least, and not speech, a knock or muted strings. */
  readonly isChord: boolean;
  /** By MIDI note from `lowestNote` on, 0 to 1. */
  readonly notes: Float32Array;
}

/** A tone is there from here on; the net is trained so that this is right. What may be another's twelfth, from there on. */
const there = 0.5;
const thereAsTwelfth = 0.8;
/** From here on it may be there. */
const perhaps = 0.1;
/** Between these, whether a tone is there is anybody's guess. */
const doubtful = { from: 0.35, to: 0.65 };

/** What was struck, 0.25 s after the onset (a hint) or 0.4 s after it (the verdict). */
export function hearChord({ length, ...struck }: Struck & { readonly length: 0.25 | 0.4 }): ChordHeard {
  const { notes, ...heard } = look(struck, length);
  const isSteady = length === 0.25 || areAlike(look(struck, 0.25).tones, heard.tones);
  const isChord = heard.tones.filter(isSure).length >= 2 && isSteady && ringsOn(struck, length);
  return { ...heard, isChord, notes };
}

function look(struck: Struck, length: number): Omit<ChordHeard, 'isChord'> {
  const { tones: chances, notes } = hearAround(struck.net, binsOf({ ...struck, length }));
  const all = [...chances].map((confidence, tone) => ({ pitchClass: tone as PitchClass, confidence }));
  const isThere = ({ pitchClass, confidence }: HeardTone) =>
    confidence >= (mayBeTwelfth(pitchClass, notes) ? thereAsTwelfth : there);
  const isDoubtful = chances.some((chance) => chance > doubtful.from && chance < doubtful.to);
  return {
    tones: all.filter(isThere),
    faint: all.filter((tone) => tone.confidence >= perhaps && !isThere(tone)),
    isDoubtful,
    notes,
  };
}

/** Some strings sound their twelfth nearly as strongly as themselves. */
function mayBeTwelfth(tone: PitchClass, notes: Float32Array): boolean {
  const strongest = [...notes.keys()]
    .filter((index) => (lowestNote + index) % 12 === tone)
    .reduce((best, index) => ((notes[index] ?? 0) > (notes[best] ?? 0) ? index : best));
  return (notes[strongest - 19] ?? 0) >= 0.5;
}

const isSure = ({ confidence }: HeardTone) => confidence >= doubtful.to;

/** Strings keep their pitch; a voice glides on: at least half of all tones are in both looks. */
function areAlike(early: readonly HeardTone[], late: readonly HeardTone[]): boolean {
  const both = late.filter((tone) => early.some(({ pitchClass }) => pitchClass === tone.pitchClass));
  return 2 * both.length >= early.length + late.length - both.length;
}

/** Damped strings are gone at once: what rings is at most so many times softer at the end of the look than after the attack. */
const mostFading = 16;

function ringsOn({ samples, onsetAt, sampleRate }: Struck, length: number): boolean {
  const loudness = (from: number, to: number) => {
    const part = samples.subarray(
      Math.round(onsetAt + from * sampleRate),
      Math.round(onsetAt + to * sampleRate),
    );
    return Math.sqrt(part.reduce((sum, value) => sum + value * value, 0) / Math.max(1, part.length));
  };
  return mostFading * loudness(length - 0.08, length) > loudness(0, 0.08);
}
