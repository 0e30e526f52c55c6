import { isOnNeck, pitchClassAt, place, stringNumbers } from '../theory/fretboard.ts';
import type { Named } from './answer.ts';
import type { NameExercise } from './exercise.ts';
import { pitchClassNamed } from './right.ts';
import { instrumentOf } from './roots.ts';
import type { SlipCause } from './verdict.ts';

/**
 * The string from which a name came by this cause: it has that name at the same fret. For "D" at string 2, fret 10 and
 * `low-string-map` it is 6; undefined where no such string has it.
 */
export function stringNamed(exercise: NameExercise, named: Named, cause: SlipCause): number | undefined {
  const instrument = instrumentOf(exercise);
  const { string, fret } = exercise.place;
  const last = stringNumbers(instrument).length;
  return stringsBy(cause, string, last).find((other) => {
    const spot = place(other, fret);
    return (
      other !== string &&
      isOnNeck(instrument, spot) &&
      pitchClassAt(instrument, spot) === pitchClassNamed(exercise, named)
    );
  });
}

/** The last string belongs to the map learnt first: only that says why. */
function stringsBy(cause: SlipCause, string: number, last: number): readonly number[] {
  switch (cause) {
    case 'low-string-map':
      return [last];
    case 'strings-reversed':
      return [last + 1 - string].filter((other) => other !== last);
    case 'next-string':
      return [string + 1, string - 1].filter((other) => other !== last);
    default:
      return [];
  }
}
