import { explain } from '../../../shared/exercise/explain.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import type { Place } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';

export interface Explanation {
  readonly heading: string;
  readonly text: string;
  readonly tryThis: string | null;
}

/** What a student reads at the reveal. */
export function explanationOf(
  exercise: Exercise,
  places: readonly Place[],
  verdict: Verdict | null,
  accepted: boolean,
  naming: NoteNaming,
): Explanation {
  if (verdict === null || places.length === 0)
    return {
      heading: 'Here it is',
      text: 'Nothing came from you this time. Play it once from the chart.',
      tryThis: null,
    };
  if (accepted && verdict.kind !== 'right')
    return {
      heading: 'Counted as right',
      text: 'Your teacher takes what you placed as right.',
      tryThis: null,
    };
  return explain(exercise, { places }, verdict, naming);
}
