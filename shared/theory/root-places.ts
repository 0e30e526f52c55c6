import { pitchClassAt, place, stringNumbers, type Instrument, type Place } from './fretboard.ts';
import { pitchClassOf, type NoteName } from './pitch.ts';

/**
 * The places of a root on every string, from string 1 on, the lowest fret first: of C on a guitar `everyString(…)[1]`
 * is fret 1 and fret 13 of string 2.
 */
export function everyString(instrument: Instrument, root: NoteName): readonly (readonly Place[])[] {
  const frets = Array.from({ length: instrument.fretCount + 1 }, (_, fret) => fret);
  return stringNumbers(instrument).map((string) =>
    frets
      .map((fret) => place(string, fret))
      .filter((spot) => pitchClassAt(instrument, spot) === pitchClassOf(root)),
  );
}
