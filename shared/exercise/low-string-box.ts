import { pitchClassAt, place, stringNumbers, type Place } from '../theory/fretboard.ts';
import { positionAt } from '../theory/position.ts';
import { degreesAbove, noteOnDegree } from '../theory/interval.ts';
import type { Exercise } from './exercise.ts';
import type { Hypothesis } from './hypotheses.ts';
import { instrumentOf } from './roots.ts';
import type { Target } from './targets.ts';
import { isMinorLike } from './twins.ts';

/**
 * A correct pattern of another root: hung from the last string, at the fret where the root lies on the string asked
 * for.
 */
export function lowStringBoxes(exercise: Exercise, { notes }: Target): readonly Hypothesis[] {
  if (exercise.kind !== 'scale') return [];
  const instrument = instrumentOf(exercise);
  const last = stringNumbers(instrument).at(-1);
  const root = notes.find((note) => note.degree === '1' && note.place.string === exercise.rootString);
  if (!root || last === undefined || last === exercise.rootString) return [];
  const hung = place(last, root.place.fret);
  const [degree = '1'] = degreesAbove(pitchClassAt(instrument, hung));
  const name = noteOnDegree({ letter: 'C', alteration: 0 }, degree);
  const position = name && positionAt(instrument, name, exercise.scale, hung, isMinorLike(exercise) ? 1 : 2);
  if (!position) return [];
  const moved = position.notes.map(({ place: to }) => ({ from: nearestTo(to, notes), to }));
  return [{ cause: 'low-string-box', cost: 1, moved }];
}

/** The note that a place of the box stands for: the nearest on its string. */
function nearestTo(to: Place, notes: Target['notes']): Place {
  const distance = ({ place: spot }: Target['notes'][number]) =>
    Math.abs(spot.fret - to.fret) + handReach * Math.abs(spot.string - to.string);
  return notes.reduce((nearest, note) => (distance(note) < distance(nearest) ? note : nearest)).place;
}

/** A string away counts for more than any stretch on the same one. */
const handReach = 10;
