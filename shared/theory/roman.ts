import { failure, success, type Result } from '../lib/result.ts';
import { parseQuality, type NamedChord } from './chord-name.ts';
import { alterationIn, degreeFrom, degreeOf, noteOnDegree, numberIn, type Degree } from './interval.ts';
import { formatName } from './naming.ts';
import type { NoteName } from './pitch.ts';
import { chordNames } from './tables/chord-names.ts';
import { chordTable, type ChordQuality } from './tables/chords.ts';
import { scaleTable } from './tables/scales.ts';

/** The key that a roman numeral counts in. */
export interface RomanKey {
  readonly tonic: NoteName;
  readonly mode: 'major' | 'minor';
}

const numerals = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;
const leadingTone: Degree = '7';

/** Signs after a numeral that stand for a whole quality; after others the numeral's case gives the third. */
const figures: readonly (readonly [figure: string, quality: ChordQuality])[] = [
  ['°', 'dim'],
  ['°7', 'dim7'],
  ['ø7', 'm7b5'],
  ['+', 'aug'],
];
const diminished: ReadonlySet<ChordQuality> = new Set(['dim', 'dim7', 'm7b5']);

/**
 * The degree of a numeral without accidental: III, VI and VII of a minor key are its own; a diminished vii there
 * stands on the leading tone.
 */
function ownDegree(mode: RomanKey['mode'], number: number, quality: ChordQuality): Degree {
  if (number === 7 && diminished.has(quality)) return leadingTone;
  return scaleTable[mode === 'major' ? 'major' : 'natural-minor'][number - 1] ?? '1';
}

/**
 * The chord of a numeral: in C major V7 is G7 and ♭VII B♭, in A minor VII is G and vii°7 G♯dim7. An accidental alters
 * the key's own degree. The failure is a sentence for a person.
 */
export function romanChord(key: RomanKey, numeral: string): Result<NamedChord, string> {
  const [, sign = '', roman = '', figure = ''] = /^([b♭#♯]?)([iv]+|[IV]+)(.*)$/.exec(numeral.trim()) ?? [];
  const number = numerals.findIndex((one) => one === roman.toUpperCase()) + 1;
  if (number === 0) return failure(`“${numeral}” is no roman numeral from I to VII.`);
  const isUpper = roman === roman.toUpperCase();
  const quality = qualityOf(isUpper, figure.replace(/^o/, '°'));
  if (!quality) return failure(`“${figure}” after ${roman} is no chord known here.`);
  const own = ownDegree(key.mode, number, quality);
  const shift = sign === '' ? 0 : 'b♭'.includes(sign) ? -1 : 1;
  // Both are in use for what the plain numeral says already, and mean another note if they are taken at their word.
  const isDoubled =
    key.mode === 'minor' && ((shift < 0 && alterationIn(own) < 0) || (shift > 0 && own === leadingTone));
  if (isDoubled) return failure(`In a minor key ${roman}${figure} needs no ${shift < 0 ? '♭' : '♯'}.`);
  const degree = degreeFrom(number, alterationIn(own) + shift);
  const root = degree === undefined ? undefined : noteOnDegree(key.tonic, degree);
  if (!root)
    return failure(`${numeral} of ${formatName(key.tonic, 'english')} would need a triple accidental.`);
  return success({ root, quality });
}

function qualityOf(isUpper: boolean, figure: string): ChordQuality | undefined {
  const whole = figures.find(([one]) => one === figure || (one === 'ø7' && figure === 'ø'));
  if (whole) return isUpper === (whole[1] === 'aug') ? whole[1] : undefined;
  const quality = parseQuality((isUpper ? '' : 'm') + figure);
  if (quality && isUpper !== hasMinorThird(quality)) return quality;
  // Written out, "IIm7" and "viidim7", the figure says the third itself.
  const written = parseQuality(figure);
  return written && hasMinorThird(written) ? written : undefined;
}

function hasMinorThird(quality: ChordQuality): boolean {
  return chordTable[quality].degrees.includes('b3');
}

/** The numeral of a chord in a key, the inverse of `romanChord`: G7 in C major is "V7"; undefined where none says it. */
export function romanOf(key: RomanKey, { root, quality }: NamedChord): string | undefined {
  const degree = degreeOf(key.tonic, root);
  if (degree === undefined) return undefined;
  const number = numberIn(degree);
  const shift = alterationIn(degree) - alterationIn(ownDegree(key.mode, number, quality));
  const sign = { [-1]: '♭', 0: '', 1: '♯' }[shift];
  const roman = numerals[number - 1] ?? 'I';
  const isMinor = hasMinorThird(quality);
  const symbol = chordNames[quality].symbol;
  const figure =
    figures.find(([, one]) => one === quality)?.[0] ?? (isMinor ? symbol.replace(/^m/, '') : symbol);
  const numeral = `${sign ?? ''}${isMinor ? roman.toLowerCase() : roman}${figure}`;
  const back = sign === undefined ? undefined : romanChord(key, numeral);
  return back?.ok && back.value.quality === quality ? numeral : undefined;
}
