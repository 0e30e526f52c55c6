import type { Degree } from './interval.ts';
import { chordTable, type ChordQuality } from './tables/chords.ts';

/** What the tones that sound make of a chord. */
export type ChordSound =
  | {
      readonly ok: true;
      /** Degrees that are left out by permission. */
      readonly omitted: readonly Degree[];
      /** The lowest pitch is not the root. */
      readonly inversion: boolean;
    }
  | {
      readonly ok: false;
      /** Degrees that would have to sound; what may stay silent anyway is not among them. */
      readonly missing: readonly Degree[];
    };

/** Without its fifth a sixth chord is another root's triad, C6 that of A minor, unless its own root is lowest. */
const fifthHangsOnBass: ReadonlySet<ChordQuality> = new Set(['6', 'm6']);

/** A dominant 11 rubs its 3 against the 11: it may lose the 3 where the 9 stays. */
const mayLoseThird: ReadonlySet<ChordQuality> = new Set(['11']);

const fewestForFifth = 4;
const fewestForRoot = 5;

/**
 * Whether these degrees, of which `bass` is the lowest pitch, are the chord (SPEC CHORD): `chordSounds('9', ['3',
 * 'b7', '9', '1'], { bass: '1' })` is right and leaves the fifth out. Degrees outside the formula are the caller's to
 * refuse; `bass` is undefined where the lowest pitch is a slash bass outside the formula.
 */
export function chordSounds(
  quality: ChordQuality,
  sounding: readonly Degree[],
  { bass }: { readonly bass: Degree | undefined },
): ChordSound {
  const { degrees } = chordTable[quality];
  const silent = degrees.filter((degree) => !sounding.includes(degree));
  const missing = mustSound(quality, silent, bass === '1');
  if (missing.length > 0) return { ok: false, missing };
  return { ok: true, omitted: silent, inversion: bass !== '1' };
}

function mustSound(quality: ChordQuality, silent: readonly Degree[], rootLowest: boolean): readonly Degree[] {
  const { degrees, optional } = chordTable[quality];
  const missing = silent.filter((degree) => {
    if (degree === '1') return degrees.length < fewestForRoot;
    if (degree === '5')
      return degrees.length < fewestForFifth || (fifthHangsOnBass.has(quality) && !rootLowest);
    if (degree === '3' && mayLoseThird.has(quality)) return silent.includes('9');
    return !optional.includes(degree);
  });
  // The root goes only where nothing else is left out.
  const leftOut = silent.filter((degree) => !missing.includes(degree));
  return leftOut.includes('1') && leftOut.length > 1 ? ['1', ...missing] : missing;
}

/**
 * The degrees that are always there in a voicing that we make up: the chord sounds with them alone, whichever of
 * them is lowest. `neededDegrees('13')` is 1, 3, ♭7, 13.
 */
export function neededDegrees(quality: ChordQuality): readonly Degree[] {
  const { degrees, optional } = chordTable[quality];
  const fifthIsFree = degrees.length >= fewestForFifth && !fifthHangsOnBass.has(quality);
  return degrees.filter((degree) => !optional.includes(degree) && !(degree === '5' && fifthIsFree));
}
