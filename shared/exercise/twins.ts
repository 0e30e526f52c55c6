import { chordDegrees, scaleDegrees } from '../theory/chord.ts';
import type { Degree } from '../theory/interval.ts';
import { chordTable, type ChordQuality } from '../theory/tables/chords.ts';
import type { ScaleId } from '../theory/tables/scales.ts';
import { toneDegrees, type ToneSetId } from '../theory/tone-sets.ts';
import type { BuildExercise, Exercise, ScaleExercise } from './exercise.ts';
import type { SlipCause } from './verdict.ts';

/** The scale with the other third that a student is likely to take for this one (common practice, no source). */
const scalePairs: readonly (readonly [major: ScaleId, minor: ScaleId])[] = [
  ['major', 'natural-minor'],
  ['major-pentatonic', 'minor-pentatonic'],
  ['major', 'melodic-minor'],
  ['mixolydian', 'dorian'],
  ['harmonic-major', 'harmonic-minor'],
  ['phrygian-dominant', 'phrygian'],
  ['major-blues', 'blues'],
];

/** The relative of a mode isn't three frets away: that of D dorian is C major. */
const modes: ReadonlySet<ToneSetId> = new Set<ToneSetId>([
  'dorian',
  'phrygian',
  'lydian',
  'mixolydian',
  'lydian-dominant',
  'phrygian-dominant',
]);

/** Whether what is asked has a relative: a third and a perfect fifth over its root, and no mode. */
export function hasRelative(exercise: BuildExercise | ScaleExercise): boolean {
  if (exercise.kind === 'scale' && modes.has(exercise.scale)) return false;
  const degrees = exercise.kind === 'build' ? chordDegrees(exercise.quality) : toneDegrees(exercise.scale);
  return degrees.includes('5') && (degrees.includes('3') || degrees.includes('b3'));
}

export interface Twin {
  /** Undefined where only the third is exchanged. */
  readonly scale?: ScaleId;
  readonly degrees: readonly Degree[];
  /** What playing it is called. */
  readonly cause: SlipCause;
}

/** Whether what is asked has a minor third. */
export function isMinorLike(exercise: BuildExercise | ScaleExercise): boolean {
  const degrees = exercise.kind === 'build' ? chordDegrees(exercise.quality) : toneDegrees(exercise.scale);
  return degrees.includes('b3');
}

/** Each chord or scale that has the other third and else stands for this one. */
export function twinsOf(exercise: Exercise): readonly Twin[] {
  if (exercise.kind !== 'build' && exercise.kind !== 'scale') return [];
  const cause = isMinorLike(exercise) ? 'major-for-minor' : 'minor-for-major';
  if (exercise.kind === 'build') {
    const degrees = withOtherThird(chordDegrees(exercise.quality));
    return degrees && isChord(degrees) ? [{ degrees, cause }] : [];
  }
  const thirdAlone = withOtherThird(toneDegrees(exercise.scale));
  const others: readonly Twin[] = thirdAlone ? [{ degrees: thirdAlone, cause }] : [];
  return scalePairs
    .filter((pair) => pair.some((one) => one === exercise.scale))
    .map(([major, minor]) => (major === exercise.scale ? minor : major))
    .map((scale): Twin => ({ scale, degrees: scaleDegrees(scale), cause }))
    .concat(others);
}

function withOtherThird(degrees: readonly Degree[]): readonly Degree[] | undefined {
  if (degrees.includes('3')) return degrees.map((degree) => (degree === '3' ? 'b3' : degree));
  return degrees.includes('b3') ? degrees.map((degree) => (degree === 'b3' ? '3' : degree)) : undefined;
}

function isChord(degrees: readonly Degree[]): boolean {
  return (Object.keys(chordTable) as ChordQuality[]).some(
    (quality) => chordDegrees(quality).join() === degrees.join(),
  );
}
