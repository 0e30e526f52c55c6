import type { Degree } from './interval.ts';
import { letters, type Alteration, type Letter, type NoteName } from './pitch.ts';

/** The system in which a person reads and writes note names. */
export type NoteNaming = 'english' | 'german' | 'solfege';

const signs: Readonly<Record<Alteration, string>> = { [-2]: '𝄫', [-1]: '♭', 0: '', 1: '♯', 2: '𝄪' };
const syllables: Readonly<Record<Letter, string>> = {
  C: 'do',
  D: 're',
  E: 'mi',
  F: 'fa',
  G: 'sol',
  A: 'la',
  B: 'si',
};
const germanEndings: Readonly<Record<Alteration, string>> = {
  [-2]: 'eses',
  [-1]: 'es',
  0: '',
  1: 'is',
  2: 'isis',
};
const alterations: readonly Alteration[] = [-2, -1, 0, 1, 2];

/** E flat is "E♭", "Es" or "mi♭". German names B flat "B" and B natural "H" (common practice, no source). */
export function formatName(name: NoteName, naming: NoteNaming): string {
  switch (naming) {
    case 'english':
      return name.letter + signs[name.alteration];
    case 'solfege':
      return syllables[name.letter] + signs[name.alteration];
    case 'german':
      return germanName(name);
  }
}

function germanName({ letter, alteration }: NoteName): string {
  if (letter === 'B')
    return alteration === -1 ? 'B' : alteration === -2 ? 'Heses' : `H${germanEndings[alteration]}`;
  const vowel = letter === 'A' || letter === 'E';
  if (vowel && alteration === -2) return `${letter}ses`;
  if (vowel && alteration === -1) return `${letter}s`;
  return letter + germanEndings[alteration];
}

/**
 * Reads what `formatName` writes in the same system, and the signs as ASCII: "Eb", "fa#"; undefined where it is no such
 * name. German names hold no signs; "ré" is "re".
 */
export function parseName(text: string, naming: NoteNaming): NoteName | undefined {
  return readings[naming].get(text.trim().toLowerCase().replace('é', 'e'));
}

const asciiSigns: Readonly<Record<Alteration, string>> = { [-2]: 'bb', [-1]: 'b', 0: '', 1: '#', 2: '##' };

/** Every way to write each name, worked out once. */
const readings: Readonly<Record<NoteNaming, ReadonlyMap<string, NoteName>>> = {
  english: readingsOf('english'),
  german: readingsOf('german'),
  solfege: readingsOf('solfege'),
};

function readingsOf(naming: NoteNaming): ReadonlyMap<string, NoteName> {
  return new Map(
    letters.flatMap((letter) =>
      alterations.flatMap((alteration) => {
        const name = { letter, alteration };
        const stem = formatName({ letter, alteration: 0 }, naming);
        const ways = [
          formatName(name, naming),
          ...(naming === 'german' ? [] : [stem + asciiSigns[alteration]]),
        ];
        return ways.map((way) => [way.toLowerCase(), name] as const);
      }),
    ),
  );
}

/** A degree as a chart writes it: `degreeSign("b3")` is "♭3", and the root is "R". */
export function degreeSign(degree: Degree): string {
  return degree === '1' ? 'R' : degree.replaceAll('b', '♭').replaceAll('#', '♯');
}
