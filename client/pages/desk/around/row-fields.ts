import type { RowWish } from '../../../../shared/exercise/progression-row.ts';
import { familyWords } from '../../../../shared/exercise/wording.ts';
import { success, type Result } from '../../../../shared/lib/result.ts';
import { chordDegrees } from '../../../../shared/theory/chord.ts';
import { familyIds, type Family } from '../../../../shared/theory/families.ts';
import type { Fret, FretRange, StringNumber } from '../../../../shared/theory/fretboard.ts';
import { formatKey, parseKey } from '../../../../shared/theory/key-name.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { parseProgression } from '../../../../shared/theory/progression.ts';
import type { Choice } from '../maker/choice-field.ts';
import type { AroundFields } from './fields.ts';

/** What the progression's fields hold, as typed and chosen. */
export interface RowFields {
  readonly key: string;
  readonly chords: string;
  /** Null where the hand is to move least. */
  readonly rootString: StringNumber | null;
  readonly family: Family;
  /** The highest and lowest fret of the hand; null for the whole neck. */
  readonly range: FretRange | null;
}

export const usualRange: FretRange = { low: 0 as Fret, high: 14 as Fret };

/** In the key of the root that is nearest. */
export function firstRow({ root, rootString, quality }: AroundFields, naming: NoteNaming): RowFields {
  const mode = chordDegrees(quality).includes('b3') ? 'minor' : 'major';
  return {
    key: formatKey({ tonic: root, mode }, naming),
    chords: mode === 'minor' ? 'i iv V7 i' : 'ii7 V7 Imaj7',
    rootString,
    family: 'form',
    range: usualRange,
  };
}

export const familyChoices: readonly Choice[] = familyIds.map((family) => [
  family,
  family === 'form' ? 'forms' : `${familyWords[family]}s`,
]);

const ranges: readonly (readonly [low: number, high: number])[] = [
  [0, 14],
  [0, 5],
  [2, 7],
  [5, 10],
  [7, 12],
];

export const wholeNeck = 'whole';

export const rangeChoices: readonly Choice[] = [
  ...ranges.map(([low, high]): Choice => [
    `${String(low)}-${String(high)}`,
    `frets ${String(low)} to ${String(high)}`,
  ]),
  [wholeNeck, 'the whole neck'],
];

export function rangeText(range: FretRange | null): string {
  return range ? `${String(range.low)}-${String(range.high)}` : wholeNeck;
}

export function rangeOf(text: string): FretRange | null {
  const [low, high] = text.split('-').map(Number);
  return low === undefined || high === undefined ? null : { low: low as Fret, high: high as Fret };
}

/** What is to be laid out, or the sentence that belongs beside one of the fields. */
export function readRow(
  { key, chords, rootString, family, range }: RowFields,
  naming: NoteNaming,
  fretCount: number,
): Result<Omit<RowWish, 'instrument'>, { readonly field: 'key' | 'chords'; readonly sentence: string }> {
  const inKey = parseKey(key, naming);
  if (!inKey.ok) return { ok: false, error: { field: 'key', sentence: inKey.error } };
  const read = parseProgression(chords, inKey.value, naming);
  if (!read.ok) return { ok: false, error: { field: 'chords', sentence: read.error } };
  const neck = { low: 0 as Fret, high: fretCount as Fret };
  return success({ chords: read.value, rootString, family, range: range ?? neck, naming });
}
