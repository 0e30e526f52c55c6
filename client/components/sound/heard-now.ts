import type { EarEvent } from '../../listening/events.ts';
import { levelOf, type Level } from '../../listening/room.ts';

/** What the sound check shows: the last moments of what was heard. */
export interface HeardNow {
  /** The frequency of the string that sounds, in hertz, and when it was heard. */
  readonly tuning: { readonly frequency: number; readonly at: number } | null;
  readonly levels: readonly (EarEvent & { readonly kind: 'level' })[];
  /** In dB of full scale; null before anything was heard. */
  readonly loudness: number | null;
  readonly floor: number | null;
  /** How loud the guitar was of late, in dB of full scale. */
  readonly guitar: number;
  readonly level: Level;
}

export const nothingHeard: HeardNow = {
  tuning: null,
  levels: [],
  loudness: null,
  floor: null,
  guitar: -Infinity,
  level: 'silent',
};

/** The words for the level hold for so long, in seconds: a string's beginning decides, not its end. */
const holds = 3;
/** A string keeps its reading for so long after it was heard, in seconds: turning a peg takes both hands. */
const stays = 2.5;
/** A look less clear is some cents off, or an octave, as measured with sampled guitars that die away in noise. */
const clear = 0.98;
/** How loud the guitar was is forgotten by so many dB with each level. */
const forgets = 0.1;

export function heardNow(before: HeardNow, event: EarEvent): HeardNow {
  if (event.kind === 'tuning') return event.clarity < clear ? before : { ...before, tuning: event };
  if (event.kind !== 'level') return before;
  const { at, loudness, floor } = event;
  const levels = [...before.levels.filter((level) => at - level.at < holds), event];
  const loudest = {
    loudness: Math.max(...levels.map((level) => level.loudness)),
    clipped: levels.some(({ clipped }) => clipped),
  };
  const tuning = before.tuning && at - before.tuning.at < stays ? before.tuning : null;
  const guitar = Math.max(before.guitar - forgets, loudness);
  return { tuning, levels, loudness, floor, guitar, level: levelOf(loudest, floor) };
}
