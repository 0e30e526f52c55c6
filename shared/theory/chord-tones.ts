import { known } from '../lib/assert.ts';
import { neededDegrees } from './chord-rule.ts';
import { chordDegrees, degreeAt } from './chord.ts';
import { degreeOf, degreesAbove, type Degree } from './interval.ts';
import { octave, pitchClass, pitchClassOf, type NoteName, type PitchClass } from './pitch.ts';
import type { ChordQuality } from './tables/chords.ts';

/** A chord to be voiced; a bass of its own has to be the lowest pitch. */
export interface ChordWish {
  readonly root: NoteName;
  readonly quality: ChordQuality;
  readonly bass?: NoteName | undefined;
}

/** The bit of the root, that of the first degree. */
export const rootBit = 1;

/**
 * The tones of a chord as bits, in the order of its degrees, a bass from outside the chord the last: of C major
 * `bitAt(64)` is 2, the bit of the third. A foreign pitch has none, 0.
 */
export function tonesOf({ root, quality, bass }: ChordWish) {
  const degrees = chordDegrees(quality);
  const bassClass = bass && pitchClassOf(bass);
  const foreignBit = 1 << degrees.length;
  const inChord = (sounding: PitchClass) => degreeAt(root, degrees, sounding);
  const foreign =
    bass && bassClass !== undefined && inChord(bassClass) === undefined
      ? foreignDegree(root, bass)
      : undefined;
  const bits = Array.from({ length: octave }, (_, sounding) => {
    const degree = inChord(sounding as PitchClass);
    if (degree !== undefined) return 1 << degrees.indexOf(degree);
    return sounding === bassClass ? foreignBit : 0;
  });
  const bitAt = (midi: number) => bits[midi % octave] ?? 0;
  const needed = neededDegrees(quality).reduce((mask, degree) => mask | (1 << degrees.indexOf(degree)), 0);
  return {
    bitAt,
    needed,
    silentIn: (mask: number) => bitCount(~mask & ((1 << degrees.length) - 1)),
    degreeAt: (sounding: PitchClass): Degree => known(inChord(sounding) ?? foreign, 'a degree'),
    /** A bass from outside the chord sounds once. */
    mayStandOn: (lowest: number, pitches: readonly number[]) =>
      bassClass === undefined ||
      (pitchClass(lowest) === bassClass &&
        (foreign === undefined || pitches.filter((midi) => bitAt(midi) === foreignBit).length === 1)),
  };
}

/** By its letter where that can be said, else by its sound. */
function foreignDegree(root: NoteName, bass: NoteName): Degree {
  const [bySound] = degreesAbove(pitchClassOf(bass) - pitchClassOf(root));
  return known(degreeOf(root, bass) ?? bySound, 'a degree of the bass');
}

/** How many bits are set. */
function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count += 1;
  return count;
}
