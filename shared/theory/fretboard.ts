import { known } from '../lib/assert.ts';
import { perObject } from '../lib/per-object.ts';
import type { Brand } from '../lib/brand.ts';
import { parseInstrument, tuningIds } from './instrument-id.ts';
import type { InstrumentSpec } from './instrument.ts';
import { midiOf, octave, pitchClass, type MidiNote, type Pitch, type PitchClass } from './pitch.ts';
import type { InstrumentFamily } from './tables/tunings.ts';

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

/** What travels and is stored: a tuning or its strings, and options; see `instrument-id.ts`. */
export type InstrumentId = string;

/** A fretted instrument as data: nothing in logic may assume six strings or standard tuning. */
export interface Instrument {
  readonly id: InstrumentId;
  /** What it was made from, counted from the nut. */
  readonly spec: InstrumentSpec;
  /** Without the capo; `instrumentName` says it whole. */
  readonly name: string;
  readonly family: InstrumentFamily;
  /** Index 0 is string 1. What sounds at fret 0, with the capo on. */
  readonly openStrings: readonly Pitch[];
  /** Frets that can be played, counted from the capo. */
  readonly fretCount: number;
  /** Nut, or capo, to bridge, in millimetres. */
  readonly scaleLengthMm: number;
  /** Frets with a position mark, and those with a double one. */
  readonly marks: readonly number[];
  readonly doubleMarks: readonly number[];
  /** The fret, from the nut, at which a capo sits; 0 is none. */
  readonly capo: number;
  /** What the same strings sound in the family's usual tuning without capo; undefined where that is what they sound. */
  readonly homeStrings: readonly MidiNote[] | undefined;
}

const ofTable: ReadonlyMap<InstrumentId, Instrument> = new Map(
  tuningIds.flatMap((id) => {
    const parsed = parseInstrument(id);
    return parsed.ok ? [[id, parsed.value] as const] : [];
  }),
);

/** Others asked for lately, so that one id is one object; bounded, for ids come from outside. */
const lately = new Map<InstrumentId, Instrument>();
const remembered = 100;

/** The instrument that an id means, or undefined: `instrumentById('guitar-drop-d+capo=2')`. */
export function instrumentById(id: InstrumentId): Instrument | undefined {
  const found = ofTable.get(id) ?? lately.get(id);
  if (found) return found;
  const parsed = parseInstrument(id);
  if (!parsed.ok) return undefined;
  const [oldest] = lately.keys();
  if (lately.size >= remembered && oldest !== undefined) lately.delete(oldest);
  lately.set(id, parsed.value);
  return parsed.value;
}

/** The six-string guitar in standard tuning; 648 mm is a usual scale length. */
export const standardGuitar: Instrument = known(instrumentById('guitar'), 'guitar');

/** String numbers from 1 (highest) to the last. */
export function stringNumbers(instrument: Instrument): readonly StringNumber[] {
  return instrument.openStrings.map((_, index) => (index + 1) as StringNumber);
}

/** Worked out once: judging asks for it more than for anything else. */
const openMidi = perObject((instrument: Instrument): readonly number[] => instrument.openStrings.map(midiOf));

/** The sounding note at a place: string 2, fret 1 is 60 in standard tuning. */
export function midiAt(instrument: Instrument, place: Place): MidiNote {
  const open = openMidi(instrument)[place.string - 1];
  if (open === undefined) throw new Error(`no string ${String(place.string)}`);
  return (open + place.fret) as MidiNote;
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
  return scaleLength * (1 - 2 ** (-fret / octave));
}

/** Whether two places are the same spot. */
export function samePlace(a: Place, b: Place): boolean {
  return a.string === b.string && a.fret === b.fret;
}

/** Whether the place is among them. */
export function holds(places: readonly Place[], spot: Place): boolean {
  return places.some((other) => samePlace(other, spot));
}

/** The places without repetitions, in their order. */
export function distinct(places: readonly Place[]): readonly Place[] {
  return places.filter((spot, index) => places.findIndex((other) => samePlace(other, spot)) === index);
}

/** A place from plain numbers: `place(2, 5)`. For tables and tests; input from outside is parsed in `protocol`. */
export function place(string: number, fret: number): Place {
  return { string: string as StringNumber, fret: fret as Fret };
}
