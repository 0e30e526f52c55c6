import { failure, success, type Result } from '../lib/result.ts';
import { shortened } from '../lib/shortened.ts';
import { appliedChord, numbered, type NumberedChord } from './applied-chord.ts';
import { formatChordName, parseChordName, type NamedChord } from './chord-name.ts';
import { formatName, parseName, type NoteNaming } from './naming.ts';
import type { RomanKey } from './roman.ts';

/** Chords in one progression; a page of music rarely holds more. */
export const mostChords = 32;

/** "sol## m(maj7)♭5/sol##" has 21. */
const longestChord = 24;

/** A word, or a part of one between hyphens. */
interface Part {
  readonly text: string;
  /** What stands before it; nothing at a bar, a comma or a dash, which always separate. */
  readonly glue: '' | ' ' | '-';
  /** The whole word, for the sentence that refuses it. */
  readonly word: string;
}

/**
 * Reads chords in a row, as numerals of the key, as names in a reader's own system, or mixed: "ii7 V7 I",
 * "Dm7 | G7, C/E", "ii-V-I", "I V7/V V". The failure is one sentence that names the word it stopped at.
 *
 * Gaps and hyphens belong to a chord where one chord can be read across them, and separate where none can: "C-7 F-7"
 * and "C-7-F-7" are Cm7 Fm7, "C-A-F" three chords, "re m7" one. Bars, commas, longer dashes and a hyphen with a gap on
 * either side always separate.
 */
export function parseProgression(
  text: string,
  key: RomanKey,
  naming: NoteNaming,
): Result<readonly NumberedChord[], string> {
  const parts = partsOf(text);
  const chords: NumberedChord[] = [];
  let next = 0;
  for (const [at, part] of parts.entries()) {
    if (at < next) continue;
    const found = longestFrom(parts, at, (one) => readChord(one, key, naming));
    // A hyphen before or after a chord that it doesn't belong to.
    if (!found && part.text === '') continue;
    if (!found) return failure(refusal(part, key, naming));
    if (chords.length === mostChords)
      return failure(
        `“${shortened(part.word)}” is one chord too many: a progression has at most ${String(mostChords)}.`,
      );
    chords.push(found.chord);
    next = at + found.parts;
  }
  return chords.length > 0 ? success(chords) : failure(`There is no chord yet: ${advice(naming)}.`);
}

function partsOf(text: string): readonly Part[] {
  // A minus or a hyphen that breaks no line is a hyphen.
  const even = ` ${text} `.replaceAll(/\s+/g, ' ').replaceAll(/[−‐‑]/g, '-');
  return even.split(/[|,–—]|-{2,}| - /).flatMap((group) =>
    group
      .split(' ')
      .filter((word) => word !== '')
      .flatMap((word, index) =>
        word.split('-').map((part, inWord): Part => {
          const glue = inWord > 0 ? '-' : index > 0 ? ' ' : '';
          return { text: part, glue, word };
        }),
      ),
  );
}

/** The chord that takes in the most parts from here on, three at most: "C", "/" and "G". */
function longestFrom(
  parts: readonly Part[],
  at: number,
  read: (text: string) => Result<NumberedChord, string>,
): { readonly chord: NumberedChord; readonly parts: number } | undefined {
  for (let count = 3; count > 0; count -= 1) {
    const own = parts.slice(at, at + count);
    if (own.length < count || own.some((part, index) => index > 0 && part.glue === '')) continue;
    const chord = read(own.map((part, index) => (index > 0 ? part.glue : '') + part.text).join(''));
    if (chord.ok && !isAlteration(parts[at + count])) return { chord: chord.value, parts: count };
  }
  return undefined;
}

/** The "b5" of "C-b5" is no chord of its own, though "b5" alone would be one. */
function isAlteration(part: Part | undefined): boolean {
  return part?.glue === '-' && /^[b♭#♯]?\d/.test(part.text);
}

function readChord(text: string, key: RomanKey, naming: NoteNaming): Result<NumberedChord, string> {
  if (text.length > longestChord) return failure('');
  if (!isNumeral(text)) {
    const named = parseChordName(text, naming);
    return named.ok ? success(numbered(key, named.value)) : named;
  }
  const slash = text.lastIndexOf('/');
  const bass = slash < 0 ? undefined : parseName(text.slice(slash + 1), naming);
  const chord = appliedChord(key, bass ? text.slice(0, slash) : text);
  return chord.ok ? success({ ...chord.value, ...(bass && { bass }) }) : chord;
}

/** No note name of any system starts with I or V. */
function isNumeral(text: string): boolean {
  return /^[b♭#♯]?[iv]/i.test(text);
}

function refusal({ text, word }: Part, key: RomanKey, naming: NoteNaming): string {
  const read = isNumeral(text) ? readChord(text, key, naming) : undefined;
  const why = !read || read.ok ? '' : read.error.replace(/\.$/, '').replace(/^In /, 'in ');
  return `“${shortened(word)}” is not understood${why && ` (${why})`}: ${advice(naming)}.`;
}

function advice(naming: NoteNaming): string {
  const example: readonly NamedChord[] = [
    { root: { letter: 'D', alteration: 0 }, quality: 'm7' },
    { root: { letter: 'G', alteration: 0 }, quality: '7' },
    { root: { letter: 'C', alteration: 0 }, quality: 'major' },
  ];
  return `write chords like ${formatProgression(example, naming)}, numerals like ii7 V7 I, or both`;
}

/** The names of the chords with gaps between, as `parseProgression` reads them: "Dm7 G7 C/E". */
export function formatProgression(chords: readonly NamedChord[], naming: NoteNaming): string {
  return chords.map((chord) => formatChordName(chord, naming)).join(' ');
}

/** The same in numerals, "ii7 V7 I/E"; a chord that no numeral says keeps its name. */
export function formatNumerals(chords: readonly NumberedChord[], naming: NoteNaming): string {
  return chords
    .map((chord) => {
      if (chord.numeral === undefined) return formatChordName(chord, naming);
      return chord.numeral + (chord.bass ? `/${formatName(chord.bass, naming)}` : '');
    })
    .join(' ');
}
