import { degreeAt } from './chord.ts';
import type { ShapeNote } from './shape.ts';
import {
  midiAt,
  pitchClassAt,
  place,
  samePlace,
  stringNumbers,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
} from './fretboard.ts';
import type { Degree } from './interval.ts';
import { octave, pitchClass, type NoteName } from './pitch.ts';
import { neighbourSteps, usualStep } from './string-steps.ts';
import { toneDegrees, type ToneSetId } from './tone-sets.ts';

const fingers = 4;
/** What a hand spans where strings lie a fifth apart; no usual tuning asks for more. */
const mostHandFrets = 6;

/**
 * The frets under a hand: one fewer than the usual step between strings, so that one pitch at most falls between two
 * of them; four on a guitar, six on a mandolin, and never fewer than one for each finger.
 */
export function handFrets(instrument: Instrument): number {
  const step = usualStep(neighbourSteps(instrument)) ?? 0;
  return Math.min(mostHandFrets, Math.max(fingers, step - 1));
}

/** How many frets above the index a finger lies, one each or spread evenly over a wider hand: `reachOf(4, 6)` is 5. */
export function reachOf(finger: number, frets: number): number {
  return Math.round(((finger - 1) * (frets - 1)) / (fingers - 1));
}

/**
 * The frets under a hand with this finger on the place, wherever the neck ends: `handAt(standardGuitar, place(2, 5), 2)`
 * is frets 4 to 7.
 */
export function handAt(instrument: Instrument, spot: Place, finger: number): FretRange {
  const frets = handFrets(instrument);
  const low = spot.fret - reachOf(finger, frets);
  return { low: low as Fret, high: (low + frets - 1) as Fret };
}

export interface Position {
  /** One place for each pitch, as a chart shows it: inside the hand, else the index stretched back. */
  readonly notes: readonly ShapeNote[];
  /**
   * Every place that may stand for one of these pitches, in the hand or one fret to either side (schools differ); and
   * those that the hand has to move for, of pitches between the lowest and the highest that no stretch reaches.
   */
  readonly accepted: readonly Place[];
}

/**
 * The position round a root: the hand's frets with `rootFinger` on the root, every pitch of the scale or arpeggio from
 * the lowest to the highest that lies under the hand. A pitch that falls between two strings is stretched for; one that
 * no stretch of a fret reaches (strings further apart than the usual step) isn't part of it. Undefined where the hand
 * would lie before the nut or past the last fret.
 *
 * Lowest and highest are meant by pitch, whichever string has them. On a re-entrant ukulele string 3 therefore starts
 * the position and string 1 ends it; string 4 repeats pitches that lie there already, and is as right as they are: the
 * chart shows the place on the string with the smallest number, the other is accepted.
 */
export function positionAt(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  rootPlace: Place,
  rootFinger: number,
): Position | undefined {
  const { low, high } = handAt(instrument, rootPlace, rootFinger);
  const frets = handFrets(instrument);
  // A finger needs a fret: the open string is stretched for, and nothing lies under the index before fret 1.
  if (low < 1 || high > instrument.fretCount) return undefined;
  const inHand = scalePlaces(instrument, root, tones, { low, high });
  const pitches = inHand.map((note) => midiAt(instrument, note.place));
  const lowest = Math.min(...pitches);
  const highest = Math.max(...pitches);
  const near = scalePlaces(instrument, root, tones, {
    low: Math.max(0, low - frets) as Fret,
    high: Math.min(instrument.fretCount, high + frets) as Fret,
  });
  const reach = near.filter(({ place: { fret } }) => fret >= low - 1 && fret <= high + 1);
  const byPitch = new Map<number, ShapeNote>();
  // The root stays on its string, whichever other string reaches its pitch.
  const atRoot = inHand.filter((note) => samePlace(note.place, rootPlace));
  const preference = [atRoot, inHand, reach.filter((note) => note.place.fret < low), reach];
  for (const notes of preference) {
    for (const note of notes) {
      const pitch = midiAt(instrument, note.place);
      if (pitch < lowest || pitch > highest || byPitch.has(pitch)) continue;
      byPitch.set(pitch, { ...note, finger: fingerAt(note.place.fret - low, high - low + 1) });
    }
  }
  const notes = [...byPitch].sort(([a], [b]) => a - b).map(([, note]) => note);
  const accepted = near.filter((note) => {
    const pitch = midiAt(instrument, note.place);
    return byPitch.has(pitch) ? reach.includes(note) : pitch > lowest && pitch < highest;
  });
  return { notes, accepted: accepted.map((note) => note.place) };
}

/** The finger for a fret so far above the index; the outer ones stretch. */
function fingerAt(offset: number, frets: number): number {
  let finger = 1;
  while (finger < fingers && reachOf(finger + 1, frets) <= offset) finger += 1;
  return finger;
}

/** Every place inside the range that sounds a tone of the scale or arpeggio, string by string. */
export function scalePlaces(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  range: FretRange,
): readonly ShapeNote[] {
  return placesOn(instrument, root, toneDegrees(tones), range);
}

/**
 * Every place inside the range that sounds one of the degrees, string by string: of `['1']` above E the open strings
 * 1 and 6 are two. Of two degrees that sound the same the first is the name.
 */
export function placesOn(
  instrument: Instrument,
  root: NoteName,
  degrees: readonly Degree[],
  range: FretRange,
): readonly ShapeNote[] {
  const degreeOn = Array.from({ length: octave }, (_, sounding) =>
    degreeAt(root, degrees, pitchClass(sounding)),
  );
  return stringNumbers(instrument).flatMap((string) => {
    const notes: ShapeNote[] = [];
    for (let fret: number = range.low; fret <= range.high; fret += 1) {
      const spot = place(string, fret);
      const degree = degreeOn[pitchClassAt(instrument, spot)];
      if (degree !== undefined) notes.push({ place: spot, degree, finger: 0, optional: false });
    }
    return notes;
  });
}
