import type { FretRange, Place } from '../theory/fretboard.ts';

/** `list([3, 2, 1])` is "3, 2 and 1". */
export function list(items: readonly (string | number)[]): string {
  const last = String(items.at(-1) ?? '');
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** "String 3" or "Strings 2 and 1", lowest string first; three and more neighbours are "Strings 6 to 3". */
export function stringsText(places: readonly Place[]): string {
  const strings = [...new Set(places.map((spot) => spot.string))].sort((a, b) => b - a);
  const [lowest = 0] = strings;
  const highest = strings.at(-1) ?? 0;
  if (strings.length === 1) return `String ${String(lowest)}`;
  const isRun = strings.length > 2 && lowest - highest === strings.length - 1;
  return isRun ? `Strings ${String(lowest)} to ${String(highest)}` : `Strings ${list(strings)}`;
}

/** "string 2, fret 5" or "string 2, open". */
export function placeText({ string, fret }: Place): string {
  return `string ${String(string)}, ${fret === 0 ? 'open' : `fret ${String(fret)}`}`;
}

/** "fret 5" or "the open string". */
export function fretText({ fret }: Place): string {
  return fret === 0 ? 'the open string' : `fret ${String(fret)}`;
}

/** "frets 1 to 12" or "fret 5". */
export function rangeText({ low, high }: FretRange): string {
  return low === high ? `fret ${String(low)}` : `frets ${String(low)} to ${String(high)}`;
}

/** The first letter as a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The first letter small, where a sentence goes on after a colon. */
export function uncapital(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** How many words a person reads. */
export function wordCount(text: string): number {
  return text.split(/\s+/).filter((word) => word !== '').length;
}

const numberWords = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** `numberText(4)` is "four"; from eleven on in figures. */
export function numberText(count: number): string {
  return numberWords[count] ?? String(count);
}

/** "one fret", "four frets". */
export function fretsText(count: number): string {
  return `${numberText(count)} ${count === 1 ? 'fret' : 'frets'}`;
}
