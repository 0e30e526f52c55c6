import { isEmpty, type Answer } from '../../../shared/exercise/answer.ts';
import type { explain as toExplain, Explanation } from '../../../shared/exercise/explain.ts';
import type { RevealView, StandOwnView, StandStage } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';

export type RevealedStage = Extract<StandStage, { readonly kind: 'revealed' }>;

let explain: typeof toExplain | null = null;

/**
 * The words for every slip: a good part of the Stand's script, needed at the reveal only, so they come after the
 * first look. False where the network fails them: they may be asked for again.
 */
export async function fetchExplanations(): Promise<boolean> {
  try {
    ({ explain } = await import('../../../shared/exercise/explain.ts'));
    return true;
  } catch {
    return false;
  }
}

const heading = 'Here it is';

/** What a student reads at the reveal. */
export function explanationOf(
  { exercise }: RevealView,
  answer: Answer,
  { verdict, accepted }: StandOwnView,
  naming: NoteNaming,
): Explanation {
  if (verdict === null || isEmpty(answer))
    return {
      heading,
      text: 'Nothing came from you this time. Play it once from the chart.',
      tryThis: '',
    };
  if (accepted && verdict.kind !== 'right')
    return { heading: 'Counted as right', text: 'Your teacher takes what you gave as right.', tryThis: '' };
  return explain?.(exercise, answer, verdict, naming) ?? { heading, text: '', tryThis: '' };
}
