import { chordDegrees } from '../../../shared/theory/chord.ts';
import { pitchClassAt, type Instrument, type Place } from '../../../shared/theory/fretboard.ts';
import type { Degree } from '../../../shared/theory/interval.ts';
import type { Layers } from '../../../shared/theory/neck-map.ts';
import { pitchClassOf, type NoteName } from '../../../shared/theory/pitch.ts';
import { scaleNames } from '../../../shared/theory/tables/scale-names.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { toneDegrees, type ToneSetId } from '../../../shared/theory/tone-sets.ts';
import { known } from '../../../shared/lib/assert.ts';
import { usualNames, usualRoots } from '../../../shared/exercise/usual-roots.ts';
import { qualityChoices, scaleChoices, type Choices } from '../desk/maker/qualities.ts';

/** What is looked for round a root. */
export type IdeaKind = 'chord' | 'pentatonic' | 'scale' | 'map';

/** For each kind, which one: all are kept, so that going back to a kind finds it as it was left. */
export interface Ideas {
  readonly kind: IdeaKind;
  readonly chord: ChordQuality;
  readonly pentatonic: ToneSetId;
  readonly scale: ToneSetId;
  readonly map: MapId;
}

export const ideaKinds: readonly (readonly [IdeaKind, string])[] = [
  ['chord', 'Chord'],
  ['pentatonic', 'Pentatonic'],
  ['scale', 'Scale'],
  ['map', 'Map'],
];

export const firstIdeas: Ideas = {
  kind: 'chord',
  chord: 'minor',
  pentatonic: 'minor-pentatonic',
  scale: 'natural-minor',
  map: 'minor',
};

/** Chord, pentatonic and scale that lie inside each other [common practice, no source]. */
export const maps = {
  minor: { chord: 'minor', pentatonic: 'minor-pentatonic', scale: 'natural-minor' },
  major: { chord: 'major', pentatonic: 'major-pentatonic', scale: 'major' },
  dorian: { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' },
  phrygian: { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'phrygian' },
  lydian: { chord: 'maj7', pentatonic: 'major-pentatonic', scale: 'lydian' },
  mixolydian: { chord: '7', pentatonic: 'major-pentatonic', scale: 'mixolydian' },
} as const satisfies Readonly<Record<string, Layers>>;

export type MapId = keyof typeof maps;

const pentatonics: readonly string[] = ['minor-pentatonic', 'major-pentatonic'];

/** What the one select offers for each kind. */
export const ideaChoices: Readonly<Record<IdeaKind, Choices>> = {
  chord: qualityChoices,
  pentatonic: { choices: scaleChoices.choices.filter(([value]) => pentatonics.includes(value)), groups: [] },
  scale: {
    choices: scaleChoices.choices.filter(([value]) => !pentatonics.includes(value)),
    groups: scaleChoices.groups,
  },
  map: {
    choices: Object.entries(maps).map(([id, { scale }]) => [id, `up to the ${scaleNames[scale]}`]),
    groups: [],
  },
};

/** The degrees of what is looked for, of a map those of its scale. */
export function degreesOf(ideas: Ideas): readonly Degree[] {
  switch (ideas.kind) {
    case 'chord':
      return chordDegrees(ideas.chord);
    case 'map':
      return toneDegrees(maps[ideas.map].scale);
    default:
      return toneDegrees(ideas[ideas.kind]);
  }
}

/** The root at a place, under the name that it has for what is looked for: E♭ for a major scale, D♯ for none. */
export function rootAt(instrument: Instrument, place: Place, ideas: Ideas): NoteName {
  const sounding = pitchClassAt(instrument, place);
  const named = usualRoots(degreesOf(ideas)).find((name) => pitchClassOf(name) === sounding);
  return named ?? known(usualNames(sounding)[0], 'a usual name');
}
