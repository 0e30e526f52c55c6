import { answerOf, type Answer } from '../../shared/exercise/answer.ts';
import type { Input } from '../../shared/exercise/input.ts';
import { holds, samePlace, type Place } from '../../shared/theory/fretboard.ts';
import { toggled } from './state.ts';

/** Taps and keys → what a student gives. Pure: an answer comes in, the next one goes out. */

export type PlacesInput = Extract<Input, { readonly kind: 'places' }>;

/** As many as travel in one answer. */
const mostPlaces = 120;

/** The answer with other places; a root that is not among them any more is no longer marked. */
function withPlaces(answer: Answer, places: readonly Place[]): Answer {
  const { root, ...rest } = answer;
  return root && holds(places, root) ? { ...rest, root, places } : { ...rest, places };
}

/** After a tap on a place: added or taken back; in an order, added again or, if it was the last, taken back. */
export function tapped(answer: Answer, place: Place, input: PlacesInput): Answer {
  const { places } = answer;
  if (!input.ordered) {
    const next = toggled(places, place, input.perString);
    return next.length > mostPlaces ? answer : withPlaces(answer, next);
  }
  const last = places.at(-1);
  if (last && samePlace(last, place)) return takenBack(answer);
  return places.length < mostPlaces ? { ...answer, places: [...places, place] } : answer;
}

/** Without the place that was given last. */
export function takenBack(answer: Answer): Answer {
  return withPlaces(answer, answer.places.slice(0, -1));
}

/** One of the notes marked as the root, or, if it was, no longer; a place that holds no note can't be marked. */
export function rootMarked(answer: Answer, place: Place): Answer {
  if (!holds(answer.places, place)) return answer;
  const { root, ...rest } = answerOf(answer);
  return root && samePlace(root, place) ? rest : { ...rest, root: place };
}

/** When a place was visited, counted from 1: `[3, 11]`. */
export function visitsTo(places: readonly Place[], place: Place): readonly number[] {
  return places.flatMap((other, at) => (samePlace(other, place) ? [at + 1] : []));
}

/** `ordinal(3)` is "3rd". */
export function ordinal(number: number): string {
  const teen = number % 100 >= 11 && number % 100 <= 13;
  const ending = teen ? undefined : ['th', 'st', 'nd', 'rd'][number % 10];
  return String(number) + (ending ?? 'th');
}
