import type { Fret, FretRange, Instrument, Place, StringNumber } from '../../shared/theory/fretboard.ts';
import { holds, samePlace } from '../../shared/theory/fretboard.ts';
import { midiOf } from '../../shared/theory/pitch.ts';
import type { Correction } from '../../shared/exercise/verdict.ts';

/** `upright`: strings vertical, nut on top · `lying`: strings level, string 1 on top. */
export type NeckView = 'upright' | 'lying';

/** Wood takes taps, ink informs. */
export type NeckMaterial = 'wood' | 'ink';

/**
 * How a note is drawn in ink: played (a disc) · where it should be (a ring) · where it should not
 * (a ring struck through) · the one that is asked for by name · a string that stays silent (X) · an open string
 * that sounds (O) · on a map what the pentatonic adds to the chord (a thin ring), and what the scale adds (no rim).
 */
export type NoteLook = 'filled' | 'expected' | 'slip' | 'asked' | 'muted' | 'open' | 'pentatonic' | 'scale';

export interface NeckNote {
  readonly place: Place;
  readonly look: NoteLook;
  /** What stands inside: an interval such as `♭3`. */
  readonly label?: string | undefined;
  readonly root?: boolean | undefined;
  readonly finger?: number | undefined;
  /** May be left out: drawn with a broken rim. */
  readonly optional?: boolean | undefined;
  /** When it came, counted from 1, where an order is to be read. */
  readonly visits?: readonly number[] | undefined;
}

/** How many answers hold a place. */
export interface NeckHeat {
  readonly place: Place;
  readonly count: number;
  /** `count` as a share of all answers, 0 to 1. */
  readonly share: number;
  readonly expected: boolean;
  readonly root: boolean;
}

/** All that an inked chart shows. */
export interface InkMarks {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
  readonly heat: readonly NeckHeat[];
  readonly highlightString: StringNumber | null;
  readonly stringNames: readonly string[];
}

/**
 * What is known of a place where something was heard: it sounds what was played (`newest`: last), or would if the hint is
 * right, or it is one of those of which the student is asked to tap one.
 */
export type HeardLook = 'heard' | 'newest' | 'hint' | 'candidate';

export interface HeardMark {
  readonly place: Place;
  readonly look: HeardLook;
}

/** All that a wooden neck shows. */
export interface WoodMarks {
  readonly places: readonly Place[];
  /** Places that sound what was heard. */
  readonly heard: readonly HeardMark[];
  /** Whether each place shows when it was visited. */
  readonly ordered: boolean;
  /** The one of `places` that is marked as the root. */
  readonly root: Place | null;
  /** The place whose name is asked for. */
  readonly asked: Place | null;
  /** Places under a finger that has not lifted yet. */
  readonly pressed: readonly Place[];
  readonly sent: boolean;
  readonly stringNames: readonly string[];
}

/** A chart of fewer frets than this does not read as a neck. */
export const fewestFrets = 4;

/** The places after a tap: taken back if it was there, else added, in `one` instead of the string's other place. */
export function toggled(
  places: readonly Place[],
  place: Place,
  placesPerString: 'one' | 'many',
): readonly Place[] {
  if (holds(places, place)) return places.filter((other) => !samePlace(other, place));
  const kept =
    placesPerString === 'one' ? places.filter((other) => other.string !== place.string) : [...places];
  return [...kept, place];
}

/** The frets that a window offers on each string: always the open string, then the window's own. */
export function fretsShown(window: FretRange): readonly Fret[] {
  const frets = [0 as Fret];
  for (let fret = Math.max(1, window.low); fret <= window.high; fret += 1) frets.push(fret as Fret);
  return frets;
}

/** The window that holds these places, as a printed chart crops: from the nut if it is near, four frets at least. */
export function cropTo(instrument: Instrument, places: readonly Place[]): FretRange {
  const fretted = places.map((place) => place.fret).filter((fret) => fret > 0);
  if (fretted.length === 0) return { low: 1 as Fret, high: fewestFrets as Fret };
  const lowest = Math.min(...fretted);
  const nearNut = lowest <= 2 || (places.some((place) => place.fret === 0) && lowest <= 3);
  const low = nearNut ? 1 : lowest;
  const high = Math.min(instrument.fretCount, Math.max(...fretted, low + fewestFrets - 1));
  return { low: Math.max(1, Math.min(low, high - fewestFrets + 1)) as Fret, high: high as Fret };
}

/** Where the notes lie; a string that stays silent has none. */
export function notedPlaces(notes: readonly NeckNote[]): readonly Place[] {
  return notes.filter((note) => note.look !== 'muted').map((note) => note.place);
}

/** Every place that a chart's marks need to show. */
export function markedPlaces(marks: InkMarks): readonly Place[] {
  return [
    ...notedPlaces(marks.notes),
    ...marks.corrections.flatMap((correction) => [correction.from, correction.to]),
    ...marks.heat.map((heat) => heat.place),
  ];
}

/** The MIDI number of a string as it is strung: a capo makes it no thinner. */
function strungMidi(instrument: Instrument, string: StringNumber): number {
  const pitch = instrument.openStrings[string - 1];
  return pitch === undefined ? 0 : midiOf(pitch) - instrument.capo;
}

/** A string is wound with wire below G3, as on every steel-string set [common]. */
export function isWound(instrument: Instrument, string: StringNumber): boolean {
  return strungMidi(instrument, string) < 55;
}

/**
 * A string's thickness by its pitch, whichever number it has, given those of E4 and E2 (MIDI 64 and 40): lower
 * strings are thicker by the same factor for each semitone.
 */
export function stringWidth(
  instrument: Instrument,
  string: StringNumber,
  [thin, thick]: readonly [number, number],
): number {
  const below = Math.min(36, Math.max(-12, 64 - strungMidi(instrument, string)));
  return thin * (thick / thin) ** (below / 24);
}

/** "Capo 2", or nothing without one. */
export function capoWords({ capo }: Instrument): string {
  return capo === 0 ? '' : `Capo ${String(capo)}`;
}

/** How a screen reader names a place; never by its note. */
export function placeName(place: Place): string {
  return place.fret === 0
    ? `string ${String(place.string)}, open`
    : `string ${String(place.string)}, fret ${String(place.fret)}`;
}
