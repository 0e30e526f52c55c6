import { midiAt, type Place } from '../theory/fretboard.ts';
import type { Exercise, ScaleOrder } from './exercise.ts';
import { toneAt, instrumentOf } from './roots.ts';

/**
 * Whether the places come in the order asked for (SPEC ORDER): by pitch, and from a root where every note name is
 * asked for once. True where no order is asked.
 */
export function isInOrder(exercise: Exercise, places: readonly Place[]): boolean {
  if (exercise.kind !== 'scale' || exercise.order === undefined) return true;
  const instrument = instrumentOf(exercise);
  const [first] = places;
  if (!first || (exercise.coverage === 'every-tone' && toneAt(exercise, first) !== '1')) return false;
  return follows(
    exercise.order,
    places.map((spot) => midiAt(instrument, spot)),
  );
}

function follows(order: ScaleOrder, pitches: readonly number[]): boolean {
  switch (order) {
    case 'up':
      return isRising(pitches);
    case 'down':
      return isRising([...pitches].reverse());
    case 'up-and-down': {
      const top = pitches.indexOf(Math.max(...pitches));
      const up = pitches.slice(0, top + 1);
      const back = [...pitches.slice(top)].reverse();
      return isRising(up) && up.length === back.length && up.every((pitch, index) => pitch === back[index]);
    }
  }
}

function isRising(pitches: readonly number[]): boolean {
  return pitches.every((pitch, index) => index === 0 || pitch > (pitches[index - 1] ?? pitch));
}
