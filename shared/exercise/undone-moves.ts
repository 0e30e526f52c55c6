import { isOnNeck, pitchClassAt, place, type Place } from '../theory/fretboard.ts';
import { pitchClassOn, semitonesOf, type Degree } from '../theory/interval.ts';
import type { BuildExercise, Exercise } from './exercise.ts';
import type { Explanation } from './explanations.ts';
import { movesFor, type Move } from './hypotheses.ts';
import { arePlacesRight } from './right.ts';
import { acceptedRoots, instrumentOf, toneAt } from './roots.ts';
import { isMinorLike, twinsOf } from './twins.ts';

/** A slip whose undoing makes the answer right, however the chord is voiced. */
export function undoneMoves(exercise: BuildExercise, places: readonly Place[]): readonly Explanation[] {
  const instrument = instrumentOf(exercise);
  const roots = acceptedRoots(exercise);
  const onString = roots.filter((spot) => spot.string === exercise.rootString);
  const moves = [
    ...movesFor(exercise, onString.length > 0 ? onString : roots.slice(0, 1), places),
    ...otherThird(exercise, places),
  ];
  return moves.flatMap(({ cause, cost, to, back }): Explanation[] => {
    const meant = places.map(back);
    if (!meant.every((spot) => isOnNeck(instrument, spot)) || !arePlacesRight(exercise, meant)) return [];
    const notes = meant.map((spot) => ({
      place: spot,
      degree: toneAt(exercise, spot) ?? '1',
      finger: 0,
      optional: false,
    }));
    const moved = meant.map((from) => ({ from, to: to(from) }));
    return [{ cause, cost, target: { notes, accepted: meant }, moved }];
  });
}

/** The thirds moved back, in a chord with the other one. */
function otherThird(exercise: BuildExercise, places: readonly Place[]): readonly Move[] {
  const frets = semitonesOf('3') - semitonesOf('b3');
  const own = isMinorLike(exercise) ? 'b3' : '3';
  // Where its own third sounds, the other one is not what was played for it.
  if (places.some((spot) => isTone(exercise, spot, own))) return [];
  return twinsOf(exercise).map(({ cause }): Move => {
    const [from, to, by] =
      cause === 'major-for-minor' ? (['b3', '3', frets] as const) : (['3', 'b3', -frets] as const);
    const moved = (degree: Degree, by: number) => (spot: Place) =>
      isTone(exercise, spot, degree) ? place(spot.string, spot.fret + by) : spot;
    return { cause, cost: 1, to: moved(from, by), back: moved(to, -by) };
  });
}

function isTone(exercise: Exercise, spot: Place, degree: Degree): boolean {
  return pitchClassAt(instrumentOf(exercise), spot) === pitchClassOn(exercise.root, degree);
}
