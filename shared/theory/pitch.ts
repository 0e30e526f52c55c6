import type { Brand } from '../lib/brand.ts';

/** A note number of MIDI 1.0: 60 is C4, 69 is A4 (440 Hz, ISO 16:1975). */
export type MidiNote = Brand<number, 'MidiNote'>;

/** 0 (C) to 11 (B). */
export type PitchClass = Brand<number, 'PitchClass'>;

export type Letter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';
export const letters: readonly Letter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];

/** Semitones in an octave (equal temperament). */
export const octave = 12;

/** Semitones that the accidental adds: −2 is a double flat, 1 a sharp. */
export type Alteration = -2 | -1 | 0 | 1 | 2;

/** A spelled note without octave: E flat is `{ letter: 'E', alteration: -1 }`. */
export interface NoteName {
  readonly letter: Letter;
  readonly alteration: Alteration;
}

/** A spelled note in scientific octaves: the open second string is B3. */
export interface Pitch extends NoteName {
  readonly octave: number;
}

const semitoneOfLetter: Readonly<Record<Letter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** Wraps any whole number of semitones into 0…11: `pitchClass(-1)` is 11. */
export function pitchClass(semitones: number): PitchClass {
  return (((semitones % octave) + octave) % octave) as PitchClass;
}

/** `pitchClassOf` of E flat is 3. */
export function pitchClassOf(name: NoteName): PitchClass {
  return pitchClass(semitoneOfLetter[name.letter] + name.alteration);
}

/** `midiOf` of C4 is 60; of C♭4 it is 59, since the octave belongs to the letter. */
export function midiOf(pitch: Pitch): MidiNote {
  return (octave * (pitch.octave + 1) + semitoneOfLetter[pitch.letter] + pitch.alteration) as MidiNote;
}

/** The pitch of that name that sounds this note: C flat at 59 is C♭4. The name must fit the note. */
export function pitchNamed(name: NoteName, midi: MidiNote): Pitch {
  const number = (midi - semitoneOfLetter[name.letter] - name.alteration) / octave - 1;
  return { letter: name.letter, alteration: name.alteration, octave: number };
}

/** Frequency in hertz in equal temperament on A4 = 440 Hz (ISO 16:1975). */
export function frequencyOf(midi: MidiNote): number {
  return 440 * 2 ** ((midi - 69) / octave);
}

const notePattern = /^([A-G])(bb|##|b|#|)$/;
const alterationOf: Readonly<Record<string, Alteration>> = { bb: -2, b: -1, '': 0, '#': 1, '##': 2 };
const signOf: Readonly<Record<Alteration, string>> = { [-2]: 'bb', [-1]: 'b', 0: '', 1: '#', 2: '##' };

/**
 * Reads the storage form, ASCII and English (`"Eb"`, `"F##"`); anything else is undefined.
 * Names in a user's own system go through `naming.ts`.
 */
export function parseNoteName(text: string): NoteName | undefined {
  const match = notePattern.exec(text);
  const alteration = match && alterationOf[match[2] ?? ''];
  if (!match || alteration === undefined || alteration === null) return undefined;
  return { letter: match[1] as Letter, alteration };
}

/** The storage form: `"Eb"`. The inverse of `parseNoteName`. */
export function formatNoteName(name: NoteName): string {
  return name.letter + signOf[name.alteration];
}

/** Reads `"B3"` or `"Eb4"`; anything else is undefined. */
export function parsePitch(text: string): Pitch | undefined {
  const match = /^(.+?)(-?\d)$/.exec(text);
  const name = match?.[1] === undefined ? undefined : parseNoteName(match[1]);
  return name && { ...name, octave: Number(match?.[2]) };
}

/** `formatPitch` of the open second string is `"B3"`. */
export function formatPitch(pitch: Pitch): string {
  return formatNoteName(pitch) + String(pitch.octave);
}
