import {
  isOnNeck,
  pitchClassAt,
  place,
  stringNumbers,
  type Instrument,
  type Place,
  type StringNumber,
} from './fretboard.ts';
import { octave, pitchClass, pitchClassOf, type NoteName } from './pitch.ts';

/** Whether the place is on the neck and sounds the root: `isRootAt(standardGuitar, c, place(2, 1))` is true. */
export function isRootAt(instrument: Instrument, root: NoteName, spot: Place): boolean {
  return isOnNeck(instrument, spot) && pitchClassAt(instrument, spot) === pitchClassOf(root);
}

/** The places of a root on one string, the lowest fret first: of C on string 2 of a guitar fret 1 and fret 13. */
export function rootPlaces(instrument: Instrument, root: NoteName, string: StringNumber): readonly Place[] {
  const first = pitchClass(pitchClassOf(root) - pitchClassAt(instrument, place(string, 0)));
  const places: Place[] = [];
  for (let fret: number = first; fret <= instrument.fretCount; fret += octave)
    places.push(place(string, fret));
  return places;
}

/** The places of a root on every string, from string 1 on. */
export function everyString(instrument: Instrument, root: NoteName): readonly (readonly Place[])[] {
  return stringNumbers(instrument).map((string) => rootPlaces(instrument, root, string));
}
