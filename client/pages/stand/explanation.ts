import { isEmpty, type Answer } from '../../../shared/exercise/answer.ts';
import { explain, type Explanation } from '../../../shared/exercise/explain.ts';
import type { StandOwnView, StandStage } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';

export type RevealedStage = Extract<StandStage, { readonly kind: 'revealed' }>;

/** What a student reads at the reveal. */
export function explanationOf(
  stage: RevealedStage,
  answer: Answer,
  { verdict, accepted }: StandOwnView,
  naming: NoteNaming,
): Explanation {
  if (verdict === null || isEmpty(answer))
    return {
      heading: 'Here it is',
      text: 'Nothing came from you this time. Play it once from the chart.',
      tryThis: '',
    };
  if (accepted && verdict.kind !== 'right')
    return { heading: 'Counted as right', text: 'Your teacher takes what you gave as right.', tryThis: '' };
  return explain(stage.reveal.exercise, answer, verdict, naming);
}
