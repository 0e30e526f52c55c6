import { failure, success, type Result } from '../lib/result.ts';
import { chordDegrees } from './chord.ts';
import type { NamedChord } from './chord-name.ts';
import { romanChord, romanOf, type RomanKey } from './roman.ts';

/** A chord and how a numeral says it, where one does. */
export interface NumberedChord extends NamedChord {
  readonly numeral?: string;
}

/** A chord with its numeral in the key: D7 in C major is "II7". */
export function numbered(key: RomanKey, chord: NamedChord): NumberedChord {
  const numeral = romanOf(key, chord);
  return numeral === undefined ? chord : { ...chord, numeral };
}

/**
 * The chord of a numeral, also of one that leads to another chord of the key: "V7/V" in C major is D7, "vii°7/ii" is
 * C♯dim7. Only V and diminished vii lead: "IV/V" is as often meant as IV with another bass. The failure is a sentence.
 */
export function appliedChord(key: RomanKey, text: string): Result<NumberedChord, string> {
  const [, upper, lower] = /^(.+)\/([b♭#♯]?[iv].*)$/i.exec(text) ?? [];
  if (upper === undefined || lower === undefined) {
    const plain = romanChord(key, text);
    return plain.ok ? success(numbered(key, plain.value)) : plain;
  }
  if (!/^(V(?![Im-]|dim)|vii[°oø])/.test(upper))
    return failure('only V and vii° lead to another chord, and a bass is written as a note.');
  const target = romanChord(key, lower);
  if (!target.ok) return target;
  const local = keyOf(target.value);
  if (!local) return failure(`${lower} is neither a major nor a minor chord.`);
  const chord = romanChord(local, upper);
  if (!chord.ok) return chord;
  const parts = [romanOf(local, chord.value) ?? upper, romanOf(key, target.value) ?? lower];
  return success({ ...chord.value, numeral: parts.join('/') });
}

/** The key in which a chord is the tonic. */
function keyOf({ root, quality }: NamedChord): RomanKey | undefined {
  const degrees = chordDegrees(quality);
  if (!degrees.includes('5')) return undefined;
  const mode = degrees.includes('b3') ? 'minor' : degrees.includes('3') ? 'major' : undefined;
  return mode && { tonic: root, mode };
}
