import { known } from '../lib/assert.ts';
import { distinct, holds, pitchClassAt, type Place } from '../theory/fretboard.ts';
import { pitchClass, pitchClassOf } from '../theory/pitch.ts';
import { semitonesOf } from '../theory/interval.ts';
import type { Answer } from './answer.ts';
import { compare } from './comparison.ts';
import type { BuildExercise, Exercise, ScaleExercise } from './exercise.ts';
import { explanationsOf, nearestTarget, type Explanation } from './explanations.ts';
import { arePlacesRight, isRootMarked } from './right.ts';
import { nameSlip } from './name-slip.ts';
import { isInOrder } from './order.ts';
import { instrumentOf } from './roots.ts';
import { hasRelative, isMinorLike } from './twins.ts';
import type { SlipCause, SlipVerdict, Verdict } from './verdict.ts';

/** Explanations that differ by less explain equally well. */
const sameCost = 0.01;

/**
 * The one cause that explains the whole answer with the fewest assumptions (SPEC SLIP-1, SLIP-2). Two that explain
 * it equally well make it unclear.
 */
export function slipIn(exercise: Exercise, answer: Answer): Verdict {
  if (exercise.kind === 'name') return nameSlip(exercise, answer);
  const places = distinct(answer.places);
  if (arePlacesRight(exercise, places)) return slipBesides(exercise, answer);
  const { best, rival } = likeliest(explanationsOf(exercise, places));
  if (places.length === 0 || !best) {
    const target = known(nearestTarget(exercise, places), 'target of a checked exercise');
    return slip(places.length === 0 ? 'missing-tone' : 'other-place', { target }, places);
  }
  if (!rival) return slip(best.cause, best, places);
  const { marks, missing } = compare(best.target, places, best.moved);
  return { kind: 'unclear', causes: [best.cause, rival.cause], marks, missing };
}

/** Of these explanations the cheapest, and another cause that explains as well. */
export function likeliest<T extends Pick<Explanation, 'cause' | 'cost'>>(
  explanations: readonly T[],
): { readonly best?: T; readonly rival?: T } {
  const sorted = explanations.toSorted((a, b) => a.cost - b.cost);
  const [best] = sorted;
  const rival = best && sorted.find(({ cause, cost }) => cause !== best.cause && cost - best.cost < sameCost);
  return { ...(best ? { best } : {}), ...(rival ? { rival } : {}) };
}

function slip(
  cause: SlipCause,
  { target, moved }: Pick<Explanation, 'target' | 'moved'>,
  places: readonly Place[],
): SlipVerdict {
  return { kind: 'slip', cause, ...compare(target, places, moved) };
}

/** The places are right; what else was asked is not. */
function slipBesides(exercise: Exercise, answer: Answer): SlipVerdict {
  const places = distinct(answer.places);
  const marks = places.map((spot) => ({ place: spot, right: true }));
  const cause = !isInOrder(exercise, answer.places)
    ? 'wrong-order'
    : !isRootMarked(exercise, answer)
      ? rootMarkCause(exercise, answer)
      : 'wrong-finger';
  return { kind: 'slip', cause, marks, corrections: [], missing: [] };
}

/** The right notes with the relative's root marked, or another mark or none. */
function rootMarkCause(exercise: Exercise, { root, places }: Answer): SlipCause {
  return root && holds(places, root) ? markCause(exercise, root) : 'wrong-root-mark';
}

/** What it is to take this place, which doesn't sound the root, for the root. */
export function markCause(exercise: Exercise, root: Place): SlipCause {
  if (exercise.kind !== 'build' && exercise.kind !== 'scale') return 'wrong-root-mark';
  return hasRelative(exercise) && pitchClassAt(instrumentOf(exercise), root) === relativeOf(exercise)
    ? 'relative-root'
    : 'wrong-root-mark';
}

function relativeOf(exercise: BuildExercise | ScaleExercise): number {
  const towards = isMinorLike(exercise) ? semitonesOf('b3') : semitonesOf('6');
  return pitchClass(pitchClassOf(exercise.root) + towards);
}
