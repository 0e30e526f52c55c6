import { invariant, known } from '../lib/assert.ts';
import { letters, pitchClassOf, pitchClass, type Alteration, type NoteName } from './pitch.ts';

/**
 * A degree above a root, as a chart writes it: `"1"`, `"b3"`, `"5"`, `"b7"`, `"9"`.
 * The number counts letters (1 = the root's own), the accidentals alter the major scale's degree.
 */
export type Degree = string;

const majorScale = [0, 2, 4, 5, 7, 9, 11] as const;
const accidentals = [
  ['bb', -2],
  ['b', -1],
  ['', 0],
  ['#', 1],
  ['##', 2],
] as const;
const highestNumber = 13;

interface ParsedDegree {
  readonly number: number;
  readonly semitones: number;
}

/** Every degree that can be written, worked out once: judging looks degrees up more than anything else. */
const degrees: ReadonlyMap<Degree, ParsedDegree> = new Map(
  Array.from({ length: highestNumber }, (_, index) => index + 1).flatMap((number) =>
    accidentals.map(([sign, alteration]) => {
      const octaves = Math.floor((number - 1) / 7);
      const step = majorScale[(number - 1) % 7] ?? 0;
      return [sign + String(number), { number, semitones: 12 * octaves + step + alteration }] as const;
    }),
  ),
);

function parseDegree(degree: Degree): ParsedDegree {
  return known(degrees.get(degree), `degree ${degree}`);
}

/** `semitonesOf("b3")` is 3, `semitonesOf("9")` is 14. */
export function semitonesOf(degree: Degree): number {
  return parseDegree(degree).semitones;
}

/**
 * The note that stands on a degree of a root, spelled by its letter: the `"b3"` of E flat is G flat.
 * Undefined where it would need a triple accidental; respell the root then.
 */
export function noteOnDegree(root: NoteName, degree: Degree): NoteName | undefined {
  const { number, semitones } = parseDegree(degree);
  const letter = letters[(letters.indexOf(root.letter) + number - 1) % 7];
  invariant(letter, 'seven letters');
  const wanted = pitchClass(pitchClassOf(root) + semitones);
  const natural = pitchClassOf({ letter, alteration: 0 });
  const alteration = pitchClass(wanted - natural + 6) - 6;
  if (alteration < -2 || alteration > 2) return undefined;
  return { letter, alteration: alteration as Alteration };
}
