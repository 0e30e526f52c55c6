import { instrumentById, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import { instrumentName } from '../../../../shared/theory/instrument.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';

/** How each naming calls the notes, for a teacher to choose from. */
export const namingWords: Readonly<Record<NoteNaming, string>> = {
  english: 'C D E F G A B, with B♭ and F♯',
  german: 'C D E F G A H, with B and Fis',
  solfege: 'do re mi fa sol la si, with si♭ and fa♯',
};

export const languageWords: Readonly<Record<string, string>> = { en: 'English' };

/** What stands below a group's name: its school and what it plays. */
export function groupLine(
  { school, instrument }: { readonly school: string; readonly instrument: InstrumentId },
  naming: NoteNaming,
): string {
  const neck = instrumentById(instrument);
  return [school, neck ? instrumentName(neck, naming) : ''].filter((part) => part !== '').join(' · ');
}

/** A day in the reader's own way of writing it. */
export function dayOf(time: number): string {
  return new Date(time).toLocaleDateString(undefined, { day: 'numeric', month: 'long', year: 'numeric' });
}

/** `2027-07-31`, as a date field wants it, in the reader's own time zone. */
export function dateField(time: number): string {
  const date = new Date(time);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(date.getFullYear())}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** The end of that day, in milliseconds UTC; NaN where the field is empty. */
export function timeOfField(text: string): number {
  return new Date(`${text}T23:59:59`).getTime();
}

/** Names from pasted lines: one a line, without blanks and repeats; a column of seat numbers is not read. */
export function namesIn(text: string): readonly string[] {
  const names = text.split(/\r?\n/).map((line) => line.replace(/\s+/g, ' ').trim());
  return [...new Set(names.filter((name) => name !== ''))];
}
