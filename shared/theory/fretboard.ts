import { known } from '../lib/assert.ts';
import type { Brand } from '../lib/brand.ts';
import { midiOf, parsePitch, pitchClass, type MidiNote, type Pitch, type PitchClass } from './pitch.ts';
import { tuningTable, type TuningId } from './tables/tunings.ts';

/** 1 is the thinnest, highest string (MusicXML `string`). */
export type StringNumber = Brand<number, 'StringNumber'>;

/** 0 is the open string. */
export type Fret = Brand<number, 'Fret'>;

/** One spot on the neck. */
export interface Place {
  readonly string: StringNumber;
  readonly fret: Fret;
}

/** Lowest and highest fret, both included. */
export interface FretRange {
  readonly low: Fret;
  readonly high: Fret;
}

/** A fretted instrument as data: nothing in logic may assume six strings or standard tuning. */
export interface Instrument {
  readonly id: string;
  /** Index 0 is string 1. */
  readonly openStrings: readonly Pitch[];
  readonly fretCount: number;
  /** Nut to bridge, in millimetres. */
  readonly scaleLengthMm: number;
  /** Frets with a position mark, and those with a double one. */
  readonly marks: readonly number[];
  readonly doubleMarks: readonly number[];
}

function openStrings(id: TuningId): readonly Pitch[] {
  return tuningTable[id].map((text) => known(parsePitch(text), `pitch ${text}`));
}

/** The six-string guitar in standard tuning; 648 mm is a usual scale length. */
export const standardGuitar: Instrument = {
  id: 'guitar',
  openStrings: openStrings('standard'),
  fretCount: 19,
  scaleLengthMm: 648,
  marks: [3, 5, 7, 9, 12, 15, 17, 19],
  doubleMarks: [12],
};

const instruments: readonly Instrument[] = [standardGuitar];

export type InstrumentId = string;

/** The instrument with this id, or undefined. */
export function instrumentById(id: InstrumentId): Instrument | undefined {
  return instruments.find((instrument) => instrument.id === id);
}

/** String numbers from 1 (highest) to the last. */
export function stringNumbers(instrument: Instrument): readonly StringNumber[] {
  return instrument.openStrings.map((_, index) => (index + 1) as StringNumber);
}

/** The sounding note at a place: string 2, fret 1 is 60 in standard tuning. */
export function midiAt(instrument: Instrument, place: Place): MidiNote {
  const open = known(instrument.openStrings[place.string - 1], `string ${String(place.string)}`);
  return (midiOf(open) + place.fret) as MidiNote;
}

/** The pitch class at a place. */
export function pitchClassAt(instrument: Instrument, place: Place): PitchClass {
  return pitchClass(midiAt(instrument, place));
}

/** Whether the place exists on the instrument. */
export function isOnNeck(instrument: Instrument, place: Place): boolean {
  return (
    place.string >= 1 &&
    place.string <= instrument.openStrings.length &&
    place.fret >= 0 &&
    place.fret <= instrument.fretCount
  );
}

/** Distance from nut to fret wire in the unit of `scaleLength`: L(1 − 2^(−n/12)) (equal temperament). */
export function fretDistance(scaleLength: number, fret: number): number {
  return scaleLength * (1 - 2 ** (-fret / 12));
}

/** Whether two places are the same spot. */
export function samePlace(a: Place, b: Place): boolean {
  return a.string === b.string && a.fret === b.fret;
}

/** The places without repetitions, in their order. */
export function distinct(places: readonly Place[]): readonly Place[] {
  return places.filter((spot, index) => places.findIndex((other) => samePlace(other, spot)) === index);
}

/** A place from plain numbers: `place(2, 5)`. For tables and tests; input from outside is parsed in `protocol`. */
export function place(string: number, fret: number): Place {
  return { string: string as StringNumber, fret: fret as Fret };
}
