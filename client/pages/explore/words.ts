import { chartWordings } from '../../../shared/exercise/chart.ts';
import { capital } from '../../../shared/exercise/phrases.ts';
import type { RootAt } from '../../../shared/exercise/proposals.ts';
import { usualNames } from '../../../shared/exercise/usual-roots.ts';
import { pitchClassAt, type Instrument, type Place } from '../../../shared/theory/fretboard.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';
import type { PitchClass } from '../../../shared/theory/pitch.ts';
import { placeName } from '../../fretboard/state.ts';
import type { IdeaKind } from './ideas.ts';
import { spoken, type Seen } from './seen.ts';

/** "F♯ or G♭": what a note may be called. */
export function noteText(sounding: PitchClass, naming: NoteNaming): string {
  return usualNames(sounding)
    .map((name) => formatName(name, naming))
    .join(' or ');
}

/** "String 2, fret 10: A." */
export function placeWords(instrument: Instrument, place: Place, naming: NoteNaming): string {
  return `${capital(placeName(place))}: ${noteText(pitchClassAt(instrument, place), naming)}.`;
}

/** How a quiz goes so far; empty before its first answer. */
export function countWords({ right, asked }: { readonly right: number; readonly asked: number }): string {
  return asked === 0 ? '' : `${String(right)} of ${String(asked)} right`;
}

/**
 * Where playing is asked for. Pauses of 5 minutes after 25 and stopping at pain: musiciansway.com, July 2011; whoever
 * knows the player knows better.
 */
export const careWords =
  'Play it slowly, and rest for 5 minutes after 25. Stop if it hurts. Your teacher’s or doctor’s word comes first.';

/** What the select of each kind asks. */
export const whichWords: Readonly<Record<IdeaKind, string>> = {
  chord: 'Which chord',
  pentatonic: 'Which pentatonic',
  scale: 'Which scale or arpeggio',
  map: 'How far out',
};

/** What a screen reader hears when another chart comes: which, of how many, and its notes. */
export function seenWords(at: RootAt, all: readonly Seen[], index: number, naming: NoteNaming): string {
  const seen = all[index];
  if (!seen) return `${nothingWords} The root is on ${placeName(at.place)}.`;
  const { title } = chartWordings(seen.chart)[naming];
  const where = `root on ${placeName(at.place)}`;
  return `${title}, ${where}. ${seen.name}, ${String(index + 1)} of ${String(all.length)}. ${spoken(at, seen, naming)}.`;
}

export const nothingWords = 'Nothing of this is known from here. Try another string, or another kind.';
