import type { StandOwnView, StandSharedView } from '../../../shared/protocol/views.ts';
import { answerOf, type AnswerSource } from './answer.ts';
import { explanationOf } from './explanation.ts';
import { stageWords, standingWords, type Standing } from './words.ts';

/** Says, for a screen reader, what has changed since it spoke last: the class's step first, else how far the answer is. */
export class Announcer {
  #stage = '';
  #standing: Standing = 'nothing';

  /** Null where nothing new is to be said. */
  next(source: AnswerSource, shared: StandSharedView | null, own: StandOwnView | null): string | null {
    if (!shared || own?.seat !== 'in') return null;
    const stage = this.#stageSentence(source, shared, own);
    if (stage !== this.#stage) {
      this.#stage = stage;
      this.#standing = standingIn(source, shared, own);
      return stage;
    }
    const standing = standingIn(source, shared, own);
    if (standing === this.#standing) return null;
    this.#standing = standing;
    // The tap itself was said already.
    return standing === 'nothing' || standing === 'placed' ? null : standingWords(standing);
  }

  #stageSentence(source: AnswerSource, { stage, naming }: StandSharedView, own: StandOwnView): string {
    if (stage.kind === 'open' && own.timeUp) return 'Time is up.';
    if (stage.kind !== 'revealed') return stageWords(stage);
    const { places } = answerOf(source, own, stage.roundId);
    const { heading, text, tryThis } = explanationOf(stage, places, own, naming);
    return [`${heading}.`, text, tryThis].filter(Boolean).join(' ');
  }
}

function standingIn(source: AnswerSource, { stage }: StandSharedView, own: StandOwnView): Standing {
  return stage.kind === 'open' || stage.kind === 'held'
    ? answerOf(source, own, stage.roundId).standing
    : 'nothing';
}
