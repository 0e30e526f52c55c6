import { answerKey } from '../../../shared/exercise/key.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { proposalsFrom, type Proposal, type RootAt, type Wish } from '../../../shared/exercise/proposals.ts';
import { known } from '../../../shared/lib/assert.ts';
import { instrumentById, type Instrument, type Place } from '../../../shared/theory/fretboard.ts';
import { pitchClassOf } from '../../../shared/theory/pitch.ts';
import { everyPlaceOf, note, qualities, scales } from './making.ts';

/** Proposals for tests, from every place of a root on a neck. */

/** Six strings and otherwise: more, fewer, re-entrant, in fifths, and with a capo. */
export const necks = [
  'guitar',
  'guitar-drop-d',
  'guitar-7',
  'bass-4',
  'ukulele',
  'mandolin',
  'guitar+capo=3',
] as const;

export const neck = (id: string): Instrument => known(instrumentById(id), id);

export const chordWishes: readonly Wish[] = qualities.map((quality) => ({ kind: 'chord', quality }));
export const arpeggioWishes: readonly Wish[] = (['major', 'minor', 'm7b5', '9', '13', '5'] as const).map(
  (quality) => ({ kind: 'scale', tones: `arpeggio-${quality}` }),
);
export const scaleWishes: readonly Wish[] = scales.map((tones) => ({ kind: 'scale', tones }));
export const everyWish = [...chordWishes, ...scaleWishes, ...arpeggioWishes];

export interface Proposed {
  readonly at: RootAt;
  readonly wish: Wish;
  readonly proposals: readonly Proposal[];
}

/** From every place on the neck that sounds the root. */
export function proposedOn(
  id: string,
  root: string,
  wishes: readonly Wish[] = everyWish,
): readonly Proposed[] {
  const instrument = neck(id);
  const sounding = pitchClassOf(note(root));
  return everyPlaceOf(instrument)
    .filter(({ midi }) => midi % 12 === sounding)
    .flatMap(({ place }) => {
      const at = { instrument, root: note(root), place };
      return wishes.map((wish) => ({ at, wish, proposals: proposalsFrom(at, wish) }));
    });
}

/** The places of a key. */
export const keyPlaces = (exercise: Exercise): readonly Place[] =>
  answerKey(exercise).map(({ place }) => place);

/** Places as text, in no order. */
export const written = (places: readonly Place[]): string =>
  places
    .map(({ string, fret }) => `${String(string)}.${String(fret)}`)
    .sort()
    .join(' ');
