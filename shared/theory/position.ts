import { degreeAt } from './chord.ts';
import type { ShapeNote } from './shape.ts';
import {
  midiAt,
  pitchClassAt,
  place,
  stringNumbers,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
} from './fretboard.ts';
import type { NoteName } from './pitch.ts';
import { scaleTable, type ScaleId } from './tables/scales.ts';

/** The frets under a hand; one finger a fret. */
const handFrets = 4;

export interface Position {
  /** One place for each pitch, as a chart shows it: inside the hand, else the index stretched back. */
  readonly notes: readonly ShapeNote[];
  /** Every place that may stand for one of these pitches: in the hand or one fret to either side (schools differ). */
  readonly accepted: readonly Place[];
}

/**
 * The position round a root: the hand's four frets with `rootFinger` on the root, every scale pitch from the
 * lowest under it on the lowest string to the highest on string 1. A pitch that falls between two strings a fourth
 * apart is stretched for. Undefined where the hand would lie before the nut or past the last fret.
 */
export function positionAt(
  instrument: Instrument,
  root: NoteName,
  scale: ScaleId,
  rootPlace: Place,
  rootFinger: number,
): Position | undefined {
  const low = rootPlace.fret - (rootFinger - 1);
  const high = low + handFrets - 1;
  if (low < 0 || high > instrument.fretCount) return undefined;
  const inHand = scalePlaces(instrument, root, scale, { low: low as Fret, high: high as Fret });
  const lowest = extreme(instrument, inHand, Math.max(...stringNumbers(instrument)), Math.min);
  const highest = extreme(instrument, inHand, 1, Math.max);
  const reach = scalePlaces(instrument, root, scale, {
    low: Math.max(0, low - 1) as Fret,
    high: Math.min(instrument.fretCount, high + 1) as Fret,
  });
  const byPitch = new Map<number, ShapeNote>();
  const preference = [inHand, reach.filter((note) => note.place.fret < low), reach];
  for (const notes of preference) {
    for (const note of notes) {
      const pitch = midiAt(instrument, note.place);
      if (pitch < lowest || pitch > highest || byPitch.has(pitch)) continue;
      byPitch.set(pitch, { ...note, finger: Math.min(4, Math.max(1, note.place.fret - low + 1)) });
    }
  }
  const notes = [...byPitch].sort(([a], [b]) => a - b).map(([, note]) => note);
  const accepted = reach.map((note) => note.place).filter((spot) => byPitch.has(midiAt(instrument, spot)));
  return { notes, accepted };
}

function extreme(
  instrument: Instrument,
  notes: readonly ShapeNote[],
  string: number,
  choose: (...pitches: number[]) => number,
): number {
  return choose(
    ...notes.filter((note) => note.place.string === string).map((note) => midiAt(instrument, note.place)),
  );
}

/** Every place inside the range that sounds a tone of the scale, string by string. */
export function scalePlaces(
  instrument: Instrument,
  root: NoteName,
  scale: ScaleId,
  range: FretRange,
): readonly ShapeNote[] {
  return stringNumbers(instrument).flatMap((string) => {
    const notes: ShapeNote[] = [];
    for (let fret: number = range.low; fret <= range.high; fret += 1) {
      const spot = place(string, fret);
      const degree = degreeAt(root, scaleTable[scale], pitchClassAt(instrument, spot));
      if (degree !== undefined) notes.push({ place: spot, degree, finger: 0, optional: false });
    }
    return notes;
  });
}
