import { midiAt, samePlace, type Place } from '../theory/fretboard.ts';
import type { Exercise, ScaleOrder } from './exercise.ts';
import { pitchClass, type MidiNote } from '../theory/pitch.ts';
import { toneAt, toneOf, instrumentOf } from './roots.ts';

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
    places.map((place) => ({ place, pitch: midiAt(instrument, place) })),
  );
}

/** The same of pitches that were heard; a note that comes twice in a row was only picked twice (SPEC HEARD-6). */
export function isPitchInOrder(exercise: Exercise, pitches: readonly MidiNote[]): boolean {
  if (exercise.kind !== 'scale' || exercise.order === undefined) return true;
  const [first] = pitches;
  if (first === undefined) return false;
  if (exercise.coverage === 'every-tone' && toneOf(exercise, pitchClass(first)) !== '1') return false;
  return follows(
    exercise.order,
    pickedOnce(pitches).map((pitch) => ({ place: null, pitch })),
  );
}

/** Without the notes that only repeat the one before. */
export function pickedOnce(pitches: readonly MidiNote[]): readonly MidiNote[] {
  return pitches.filter((pitch, at) => pitch !== pitches[at - 1]);
}

interface Sounding {
  /** Null where it isn't known. */
  readonly place: Place | null;
  readonly pitch: number;
}

function follows(order: ScaleOrder, spots: readonly Sounding[]): boolean {
  const pitches = spots.map(({ pitch }) => pitch);
  switch (order) {
    case 'up':
      return isRising(spots);
    case 'down':
      return isRising([...spots].reverse());
    case 'up-and-down': {
      const highest = Math.max(...pitches);
      // The turn may be given twice, as it is played by some.
      const up = spots.slice(0, pitches.indexOf(highest) + 1);
      const back = spots.slice(pitches.lastIndexOf(highest)).reverse();
      const isSame =
        up.length === back.length && up.every((spot, index) => spot.pitch === back[index]?.pitch);
      return isSame && isRising(up) && isRising(back);
    }
  }
}

/** Each higher than the one before; the same pitch on another string may follow. */
function isRising(spots: readonly Sounding[]): boolean {
  return spots.every((spot, index) => {
    const before = spots[index - 1];
    if (!before || spot.pitch > before.pitch) return true;
    if (!spot.place || !before.place) return false;
    return spot.pitch === before.pitch && !samePlace(spot.place, before.place);
  });
}
