import { noteOnDegree, semitonesOf, type Degree } from './interval.ts';
import { pitchClass, pitchClassOf, type NoteName, type PitchClass } from './pitch.ts';
import { chordTable, type ChordQuality } from './tables/chords.ts';
import { scaleTable, type ScaleId } from './tables/scales.ts';

/** Degrees of a chord quality: `chordDegrees('minor')` is 1, ♭3, 5. */
export function chordDegrees(quality: ChordQuality): readonly Degree[] {
  return chordTable[quality].degrees;
}

/** Degrees of a scale. */
export function scaleDegrees(scale: ScaleId): readonly Degree[] {
  return scaleTable[scale];
}

/** The notes on these degrees, spelled from the root; undefined where one would need a triple accidental. */
export function notesOn(root: NoteName, degrees: readonly Degree[]): readonly NoteName[] | undefined {
  const notes = degrees.map((degree) => noteOnDegree(root, degree));
  return notes.every((note) => note !== undefined) ? notes : undefined;
}

/** The degree that a pitch class has above the root, or undefined where it is foreign. */
export function degreeAt(
  root: NoteName,
  degrees: readonly Degree[],
  sounding: PitchClass,
): Degree | undefined {
  const above = pitchClass(sounding - pitchClassOf(root));
  return degrees.find((degree) => pitchClass(semitonesOf(degree)) === above);
}
