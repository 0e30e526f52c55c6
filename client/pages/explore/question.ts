import { chartNotes } from '../../../shared/exercise/chart.ts';
import type { Exercise, NameExercise } from '../../../shared/exercise/exercise.ts';
import type { RootAt } from '../../../shared/exercise/proposals.ts';
import { place, stringNumbers, type Place } from '../../../shared/theory/fretboard.ts';
import { octave } from '../../../shared/theory/pitch.ts';
import type { Ideas } from './ideas.ts';
import { from, likeIn, seenFrom, type Seen } from './seen.ts';

/** What a quiz asks: what is seen, or the same kind of it from any root. */
export type Scope = 'this' | 'any';

/** A number from 0 up to 1. */
export type Random = () => number;

/** What to ask next; undefined where nothing is seen. `before` does not come twice in a row if there is another. */
export function questionOf(
  at: RootAt,
  ideas: Ideas,
  seen: Seen | undefined,
  scope: Scope,
  before: Exercise | null,
  random: Random,
): Exercise | undefined {
  if (!seen) return undefined;
  if (seen.chart.kind === 'map') return degreeAsked(at, ideas, scope, before, random);
  return scope === 'this' ? seen.chart : (likeElsewhere(at, ideas, seen, before, random) ?? seen.chart);
}

/** Places that are looked at for the same shape: each costs a phone some time. */
const mostTried = 8;

/** The same shape or position on the same string from another root, else what comes nearest to it. */
function likeElsewhere(
  { instrument, place: { string } }: RootAt,
  ideas: Ideas,
  seen: Seen,
  before: Exercise | null,
  random: Random,
): Exercise | undefined {
  const frets = Array.from({ length: instrument.fretCount }, (_, index) => index);
  const last = before?.range?.low;
  // Twelve frets on it is the same root.
  const isLast = (fret: number) => last !== undefined && (fret - last) % octave === 0;
  const others = shuffled(frets, random).filter((fret) => !isLast(fret));
  let nearest: Exercise | undefined;
  for (const fret of others.slice(0, mostTried)) {
    const all = seenFrom(from(instrument, place(string, fret), ideas), ideas);
    const like = all[likeIn(all, seen)];
    if (!like || like.chart.kind === 'map') continue;
    if (like.name === seen.name) return like.chart;
    nearest ??= like.chart;
  }
  return nearest;
}

/** On a map: what a place is of the root. */
function degreeAsked(
  { instrument, place: here }: RootAt,
  ideas: Ideas,
  scope: Scope,
  before: Exercise | null,
  random: Random,
): NameExercise | undefined {
  const root = scope === 'this' ? here : anyPlace(instrument, random);
  const at = from(instrument, root, ideas);
  const map = seenFrom(at, ideas).at(-1);
  const notes = map ? chartNotes(map.chart).filter(({ degree }) => degree !== '1') : [];
  const [note] = shuffled(notes, random).filter(({ place: spot }) => !isAsked(before, spot));
  if (!note) return undefined;
  const { string, fret } = note.place;
  return {
    kind: 'name',
    instrument: instrument.id,
    root: at.root,
    rootString: string,
    strictness: 'place',
    range: { low: fret, high: fret },
    place: note.place,
    wanted: 'degree',
  };
}

function isAsked(before: Exercise | null, spot: Place): boolean {
  return before?.kind === 'name' && before.place.string === spot.string && before.place.fret === spot.fret;
}

function anyPlace(instrument: RootAt['instrument'], random: Random): Place {
  const strings = stringNumbers(instrument).length;
  return place(1 + Math.floor(random() * strings), Math.floor(random() * instrument.fretCount));
}

function shuffled<T>(all: readonly T[], random: Random): readonly T[] {
  return all
    .map((one) => ({ one, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);
}
