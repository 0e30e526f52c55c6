import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Finger } from '../../../shared/exercise/exercise.ts';
import type { Place } from '../../../shared/theory/fretboard.ts';
import { rootMarked, takenBack, tapped, type PlacesInput } from '../../fretboard/placing.ts';
import { tappedFor, tapsAlone } from './heard-answer.ts';
import type { ChosenWay } from './ways.ts';
import { fingerWords, rootWords, tapForHeardWords, tapWords } from './words.ts';

/** What is given by hand → the next answer, and what a screen reader hears of it. Pure. */

export interface Given {
  readonly answer: Answer;
  readonly words: string;
}

/** While one plays, a tap goes with what was heard; else it takes its place. */
export function afterTap(before: Answer, spot: Place, input: PlacesInput, way: ChosenWay): Given {
  if (before.heard && input.playing && way !== 'tap') {
    const answer = tappedFor(before, spot, input.playing);
    return { answer, words: tapForHeardWords(before, answer, spot, input.playing) };
  }
  const alone = tapsAlone(before);
  const answer = tapped(alone, spot, input);
  return { answer, words: tapWords(alone, answer, spot, input) };
}

export function afterRootMark(before: Answer, spot: Place): Given {
  const answer = rootMarked(before, spot);
  return { answer, words: rootWords(before, answer) };
}

/** Null where there is no order, or nothing in it. */
export function afterTakingBack(before: Answer, input: PlacesInput): Given | null {
  const last = before.places.at(-1);
  if (!input.ordered || !last) return null;
  const answer = takenBack(before);
  return { answer, words: tapWords(before, answer, last, input) };
}

/** The finger that is named already is taken away. */
export function afterFinger({ finger: before, ...rest }: Answer, finger: Finger): Given {
  const answer = before === finger ? rest : { ...rest, finger };
  return { answer, words: fingerWords(answer) };
}
