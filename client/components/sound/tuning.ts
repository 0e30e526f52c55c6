import { stringNumbers, type Instrument, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { frequencyOf, midiOf, type MidiNote } from '../../../shared/theory/pitch.ts';

/** A string that sounds, and how far it is off its note, in cents: above zero it is sharp. */
export interface Tuned {
  readonly string: StringNumber;
  readonly cents: number;
}

/** Off by no more cents, a string is called in tune (our own choice: finer than most pegs). */
export const inTune = 3;
/** The lowest string may be as many semitones too low. */
const slack = 3;

/** The lowest note to listen for while the strings are tuned. */
export function lowestToTune({ openStrings }: Instrument): MidiNote {
  return (Math.min(...openStrings.map(midiOf)) - slack) as MidiNote;
}

/** The string nearest to what sounds, in hertz, or the one that was chosen to be tuned. */
export function tunedString(
  frequency: number,
  instrument: Instrument,
  chosen: StringNumber | null,
): Tuned | undefined {
  const [nearest] = stringNumbers(instrument)
    .filter((string) => chosen === null || string === chosen)
    .map((string) => ({ string, cents: centsOff(frequency, instrument, string) }))
    .sort((a, b) => Math.abs(a.cents) - Math.abs(b.cents));
  return nearest;
}

function centsOff(frequency: number, { openStrings }: Instrument, string: StringNumber): number {
  const open = openStrings[string - 1];
  return open ? 1200 * Math.log2(frequency / frequencyOf(midiOf(open))) : Infinity;
}
