import { explain, type Explanation } from '../../../shared/exercise/explain.ts';
import type { StandOwnView, StandStage } from '../../../shared/protocol/views.ts';
import type { Place } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';

export type RevealedStage = Extract<StandStage, { readonly kind: 'revealed' }>;

/** What a student reads at the reveal. */
export function explanationOf(
  stage: RevealedStage,
  places: readonly Place[],
  { verdict, accepted }: StandOwnView,
  naming: NoteNaming,
): Explanation {
  if (verdict === null || places.length === 0)
    return {
      heading: 'Here it is',
      text: 'Nothing came from you this time. Play it once from the chart.',
      tryThis: '',
    };
  if (accepted && verdict.kind !== 'right')
    return { heading: 'Counted as right', text: 'Your teacher takes what you placed as right.', tryThis: '' };
  const words = explain(stage.reveal.exercise, { places }, verdict, naming);
  // Its heading says all of the text.
  return verdict.kind === 'unclear' ? { ...words, text: '' } : words;
}
