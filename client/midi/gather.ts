import type { Heard } from '../../shared/exercise/heard.ts';
import {
  isOnNeck,
  place,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../shared/theory/fretboard.ts';
import { midiOf, pitchClass, type MidiNote } from '../../shared/theory/pitch.ts';
import type { MidiEvent } from './midi-events.ts';

/** A strum's strings follow each other within so many milliseconds, and all of them within so many. */
const nextString = 60;
const wholeStrum = 400;

export interface GatheredNote {
  readonly pitch: MidiNote;
  readonly channel: number;
  readonly string: StringNumber | undefined;
  readonly at: number;
  readonly isHeld: boolean;
}

/** What was played so far, in its order: of a chord the tones that sound together, of a line all its notes. */
export type Gathered = readonly GatheredNote[];

export const nothingPlayed: Gathered = [];

/**
 * Takes in what an instrument plays. Notes make a chord if an earlier one is still held when the next begins, or if they
 * follow as a strum does; the next chord begins where neither is so, or a string is struck again.
 */
export function gather(gathered: Gathered, event: MidiEvent, as: Heard['kind']): Gathered {
  switch (event.kind) {
    case 'on': {
      const { pitch, channel, string, at } = event;
      const note: GatheredNote = { pitch, channel, string, at, isHeld: true };
      return as === 'line' || belongs(gathered, note) ? [...gathered, note] : [note];
    }
    case 'off':
      return gathered.map((note) => (isSame(note, event) ? { ...note, isHeld: false } : note));
    case 'strings':
      return gathered.map((note) => ({ ...note, string: event.strings.get(note.channel) }));
  }
}

function belongs(gathered: Gathered, next: GatheredNote): boolean {
  const [first] = gathered;
  const last = gathered.at(-1);
  if (!first || !last || gathered.some((note) => isStruckAgain(note, next))) return false;
  const isStrum = next.at - last.at <= nextString && next.at - first.at <= wholeStrum;
  return isStrum || gathered.some(({ isHeld }) => isHeld);
}

function isStruckAgain(note: GatheredNote, next: GatheredNote): boolean {
  return isSame(note, next) || (note.string !== undefined && note.string === next.string);
}

type Sounding = Pick<GatheredNote, 'channel' | 'pitch'>;

function isSame(one: Sounding, other: Sounding): boolean {
  return one.channel === other.channel && one.pitch === other.pitch;
}

/** Where it was played, if the instrument tells each string; else null. */
export function placesPlayed(gathered: Gathered, instrument: Instrument): readonly Place[] | null {
  const places = gathered.map(({ pitch, string }) => {
    const open = string === undefined ? undefined : instrument.openStrings[string - 1];
    return string === undefined || !open ? null : place(string, pitch - midiOf(open));
  });
  const known = places.filter((spot) => spot !== null && isOnNeck(instrument, spot));
  return known.length === places.length ? (known as readonly Place[]) : null;
}

/** What was played as what was heard: MIDI leaves no doubt about a pitch, and of a chord it tells the lowest tone. */
export function asHeard(gathered: Gathered, as: Heard['kind']): Heard {
  const [first] = gathered;
  if (as === 'line') {
    const began = first?.at ?? 0;
    return {
      kind: 'line',
      pitches: gathered.map(({ pitch, at }) => ({ pitch, at: Math.round(at - began), confidence: 1 })),
    };
  }
  const tones = [...new Set(gathered.map(({ pitch }) => pitchClass(pitch)))];
  const lowest = Math.min(...gathered.map(({ pitch }) => pitch));
  return {
    kind: 'chord',
    tones: tones.map((tone) => ({ pitchClass: tone, confidence: 1 })),
    ...(first && { lowest: pitchClass(lowest) }),
  };
}
