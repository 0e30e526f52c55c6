import { invariant, known } from '../lib/assert.ts';
import {
  letters,
  octave,
  pitchClass,
  pitchClassOf,
  type Alteration,
  type NoteName,
  type PitchClass,
} from './pitch.ts';

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
  readonly alteration: Alteration;
  readonly semitones: number;
}

/** Every degree that can be written, worked out once: judging looks degrees up more than anything else. */
const degrees: ReadonlyMap<Degree, ParsedDegree> = new Map(
  Array.from({ length: highestNumber }, (_, index) => index + 1).flatMap((number) =>
    accidentals.map(([sign, alteration]) => {
      const octaves = Math.floor((number - 1) / 7);
      const step = majorScale[(number - 1) % 7] ?? 0;
      return [
        sign + String(number),
        { number, alteration, semitones: octave * octaves + step + alteration },
      ] as const;
    }),
  ),
);

function parseDegree(degree: Degree): ParsedDegree {
  return known(degrees.get(degree), `degree ${degree}`);
}

/** The degrees, 1 to 7 with at most one accidental, so many semitones above the root, flat first: 6 is ♭5, ♯4. */
export function degreesAbove(semitones: number): readonly Degree[] {
  return [...degrees]
    .filter(([, { number, alteration }]) => number <= 7 && Math.abs(alteration) <= 1)
    .filter(([, { semitones: own }]) => pitchClass(own - semitones) === 0)
    .sort(([, a], [, b]) => b.number - a.number)
    .map(([degree]) => degree);
}

/** The number of a degree: 3 of `"b3"`. */
export function numberIn(degree: Degree): number {
  return parseDegree(degree).number;
}

/** What its accidentals add to the major scale's degree: −1 of `"b3"`. */
export function alterationIn(degree: Degree): Alteration {
  return parseDegree(degree).alteration;
}

/** `semitonesOf("b3")` is 3, `semitonesOf("9")` is 14. */
export function semitonesOf(degree: Degree): number {
  return parseDegree(degree).semitones;
}

/** The pitch class of a degree above a root, however it is spelled: the `"b3"` of D is 5. */
export function pitchClassOn(root: NoteName, degree: Degree): PitchClass {
  return pitchClass(pitchClassOf(root) + semitonesOf(degree));
}

/**
 * The note that stands on a degree of a root, spelled by its letter: the `"b3"` of E flat is G flat.
 * Undefined where it would need a triple accidental; respell the root then.
 */
export function noteOnDegree(root: NoteName, degree: Degree): NoteName | undefined {
  const { number, semitones } = parseDegree(degree);
  const letter = letters[(letters.indexOf(root.letter) + number - 1) % letters.length];
  invariant(letter, 'seven letters');
  const wanted = pitchClass(pitchClassOf(root) + semitones);
  const natural = pitchClassOf({ letter, alteration: 0 });
  const alteration = pitchClass(wanted - natural + 6) - 6;
  if (alteration < -2 || alteration > 2) return undefined;
  return { letter, alteration: alteration as Alteration };
}

/** Writes a degree: `degreeFrom(3, -1)` is `"b3"`; undefined beyond 13 or a double accidental. */
export function degreeFrom(number: number, alteration: number): Degree | undefined {
  const sign = accidentals.find(([, semitones]) => semitones === alteration)?.[0];
  const degree = sign === undefined ? '' : sign + String(number);
  return degrees.has(degree) ? degree : undefined;
}

/** The degree, 1 to 7, that a spelled note is above a root: G flat is the `"b3"` of E flat. */
export function degreeOf(root: NoteName, name: NoteName): Degree | undefined {
  const steps = letters.indexOf(name.letter) - letters.indexOf(root.letter);
  const number = ((steps + letters.length) % letters.length) + 1;
  return accidentals
    .map(([sign]) => sign + String(number))
    .find((degree) => noteOnDegree(root, degree)?.alteration === name.alteration);
}
