import { chordDegrees } from '../../../../shared/theory/chord.ts';
import { chordNames, type ChordNames } from '../../../../shared/theory/tables/chord-names.ts';
import { chordTable, type ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import { scaleNames } from '../../../../shared/theory/tables/scale-names.ts';
import { scaleTable, type ScaleId } from '../../../../shared/theory/tables/scales.ts';
import type { Choice, ChoiceGroup } from './choice-field.ts';

/** Choices in a select: what a class meets most in front, the rest by what they are made of. */
export interface Choices {
  readonly choices: readonly Choice[];
  readonly groups: readonly ChoiceGroup[];
}

const usualQualities: readonly string[] = [
  'major',
  'minor',
  '7',
  'maj7',
  'm7',
  'm7b5',
  'dim',
  'aug',
  'sus2',
  'sus4',
  '5',
];

const qualities = Object.keys(chordTable) as readonly ChordQuality[];
const scales = Object.keys(scaleTable) as readonly ScaleId[];

export const qualityChoices: Choices = inGroups(
  qualities.filter((quality) => usualQualities.includes(quality)).sort(by(usualQualities)),
  qualities.filter((quality) => !usualQualities.includes(quality)),
  (quality) => [quality, listed(chordNames[quality])],
  (quality) => chordFamily(chordDegrees(quality).map(numberOf)),
  ['Triads', 'Sixths', 'Sevenths', 'Added notes', 'Ninths', 'Elevenths', 'Thirteenths'],
);

/** "m7 · minor seventh": the sign and how it is said. */
function listed({ symbol, words }: ChordNames): string {
  return symbol === '' || symbol === 'm' ? words : `${symbol} · ${words}`;
}

function chordFamily(numbers: readonly number[]): string {
  if (numbers.includes(7)) {
    const most = Math.max(...numbers);
    return most === 13 ? 'Thirteenths' : most === 11 ? 'Elevenths' : most === 9 ? 'Ninths' : 'Sevenths';
  }
  if (numbers.includes(6)) return 'Sixths';
  return numbers.length > 3 ? 'Added notes' : 'Triads';
}

const usualScales: readonly string[] = [
  'minor-pentatonic',
  'major-pentatonic',
  'blues',
  'major',
  'natural-minor',
  'harmonic-minor',
  'melodic-minor',
];
const modes: readonly string[] = ['dorian', 'phrygian', 'lydian', 'mixolydian', 'locrian'];

/** Chord tones one after another, for the chords that a class meets most. */
const arpeggios: ChoiceGroup = {
  words: 'Arpeggios',
  choices: qualityChoicesOf(usualQualities.filter((quality) => quality !== '5')),
};

function qualityChoicesOf(of: readonly string[]): readonly Choice[] {
  return qualities
    .filter((quality) => of.includes(quality))
    .sort(by(of))
    .map((quality) => [`arpeggio-${quality}`, `${listed(chordNames[quality])} arpeggio`]);
}

const ofScales: Choices = inGroups(
  scales.filter((scale) => usualScales.includes(scale)).sort(by(usualScales)),
  scales.filter((scale) => !usualScales.includes(scale)),
  (scale) => [scale, scaleNames[scale]],
  (scale) => (modes.includes(scale) ? 'Modes' : 'Other scales'),
  ['Modes', 'Other scales'],
);

export const scaleChoices: Choices = { ...ofScales, groups: [...ofScales.groups, arpeggios] };

function inGroups<T extends string>(
  usual: readonly T[],
  others: readonly T[],
  choice: (one: T) => Choice,
  family: (one: T) => string,
  families: readonly string[],
): Choices {
  const groups = families.map((words) => ({
    words,
    choices: others.filter((one) => family(one) === words).map(choice),
  }));
  return { choices: usual.map(choice), groups: groups.filter(({ choices }) => choices.length > 0) };
}

/** Order of a list. */
function by(list: readonly string[]) {
  return (a: string, b: string) => list.indexOf(a) - list.indexOf(b);
}

/** The number in a degree: 9 in ♭9. */
function numberOf(degree: string): number {
  return Number(/\d+/.exec(degree)?.[0]);
}
