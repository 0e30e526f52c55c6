import type { Heard, HeardTone } from '../../shared/exercise/heard.ts';
import {
  holds,
  midiAt,
  place,
  stringNumbers,
  type Instrument,
  type Place,
} from '../../shared/theory/fretboard.ts';
import { pitchClass, type MidiNote } from '../../shared/theory/pitch.ts';
import type { HeardLook, HeardMark } from './state.ts';

/**
 * Every place that sounds what was heard: a line's pitches as they are, the last one strongest, a chord's tones in every
 * octave. Places of `candidates` are those of which one is to be tapped.
 */
export function heardMarks(
  instrument: Instrument,
  heard: Heard | undefined,
  hint: readonly HeardTone[],
  candidates: readonly Place[],
): readonly HeardMark[] {
  if (!heard && hint.length === 0) return [];
  const look = lookOf(heard, hint);
  return allPlaces(instrument).flatMap((spot): readonly HeardMark[] => {
    const here = holds(candidates, spot) ? 'candidate' : look(midiAt(instrument, spot));
    return here ? [{ place: spot, look: here }] : [];
  });
}

function lookOf(
  heard: Heard | undefined,
  hint: readonly HeardTone[],
): (midi: MidiNote) => HeardLook | undefined {
  if (hint.length > 0) {
    const hinted = new Set(hint.map((tone) => tone.pitchClass));
    return (midi) => (hinted.has(pitchClass(midi)) ? 'hint' : undefined);
  }
  if (heard?.kind === 'line') {
    const pitches = new Set(heard.pitches.map(({ pitch }) => pitch));
    const last = heard.pitches.at(-1)?.pitch;
    return (midi) => (midi === last ? 'newest' : pitches.has(midi) ? 'heard' : undefined);
  }
  const tones = new Set(heard?.tones.map((tone) => tone.pitchClass));
  return (midi) => (tones.has(pitchClass(midi)) ? 'heard' : undefined);
}

/** The places that sound just this pitch. */
export function placesSounding(instrument: Instrument, pitch: MidiNote): readonly Place[] {
  return allPlaces(instrument).filter((spot) => midiAt(instrument, spot) === pitch);
}

function allPlaces(instrument: Instrument): readonly Place[] {
  return stringNumbers(instrument).flatMap((string) =>
    Array.from({ length: instrument.fretCount + 1 }, (_, fret) => place(string, fret)),
  );
}
