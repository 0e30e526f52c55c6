import { qualityIds } from '../../shared/theory/chord-name.ts';
import { chordDegrees } from '../../shared/theory/chord.ts';
import {
  alterationIn,
  degreeFrom,
  numberIn,
  semitonesOf,
  type Degree,
} from '../../shared/theory/interval.ts';
import { pitchClass } from '../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../shared/theory/tables/chords.ts';
import { chordKinds } from '../../shared/theory/tables/musicxml-kinds.ts';

/** A `degree` of MusicXML as a file has it. */
export interface ReadDegree {
  readonly type: string;
  readonly value: number;
  readonly alter: number;
}

/** An added seventh counts from a dominant chord's. */
const addedSeventh = -1;

/**
 * The quality that a `kind` with its degrees means, however a program spells it: `qualityOf('minor-seventh',
 * [{ type: 'alter', value: 5, alter: -1 }])` is "m7b5", as "half-diminished" is. Undefined where there is no such here.
 */
export function qualityOf(kind: string, degrees: readonly ReadDegree[]): ChordQuality | undefined {
  let tones = tonesOf(kind);
  for (const { type, value, alter } of degrees) {
    const own = tones?.find((tone) => numberIn(tone) === value);
    if (type === 'subtract') tones = tones?.filter((tone) => tone !== own);
    else {
      // What isn't there can't be altered; programs write that for a tone that they add.
      const from = type === 'alter' && own ? alterationIn(own) : value === 7 ? addedSeventh : 0;
      const tone = degreeFrom(value, from + alter);
      if (tone === undefined) return undefined;
      // Once, however often a file says it.
      tones = [
        ...(tones?.filter((other) => other !== tone && (type !== 'alter' || other !== own)) ?? []),
        tone,
      ];
    }
  }
  const wanted = tones && soundOf(tones);
  return qualityIds.find((quality) => soundOf(chordDegrees(quality)) === wanted);
}

/** What the kind alone is made of; `other` is spelled by its degrees. */
function tonesOf(kind: string): readonly Degree[] | undefined {
  if (kind === 'other') return ['1'];
  const plain = qualityIds.find(
    (quality) => chordKinds[quality].kind === kind && chordKinds[quality].degrees.length === 0,
  );
  return plain && chordDegrees(plain);
}

/** Over one root a set of tones is one chord: an added 2 is the 9. */
function soundOf(degrees: readonly Degree[]): string {
  return [...new Set(degrees.map((degree) => pitchClass(semitonesOf(degree))))].sort().join(' ');
}
