import type { StandOwnView, StandSharedView } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { answerTo, type AnswerSource } from './answer.ts';
import { explanationOf } from './explanation.ts';
import { heldWords, stageWords, standingWords } from './words.ts';

/** Says, for a screen reader, what has changed since it spoke last: the class's step, and how far the answer is. */
export class Announcer {
  #stage = '';
  #standing = '';

  /** In the student's own note names. Null where nothing new is to be said. */
  next(
    source: AnswerSource,
    shared: StandSharedView | null,
    own: StandOwnView | null,
    naming: NoteNaming,
  ): string | null {
    if (!shared || own?.seat !== 'in') return null;
    const stage = stageSentence(source, shared, own, naming);
    const standing = standingSentence(source, shared, own);
    const moved = stage !== this.#stage;
    if (!moved && standing === this.#standing) return null;
    this.#stage = stage;
    this.#standing = standing;
    // In one breath: of two sayings at once, the second may drown the first.
    const said = moved ? [stage, standing] : [standing];
    return said.filter(Boolean).join(' ') || null;
  }
}

function isOpen({ stage }: StandSharedView, { timeUp }: StandOwnView): boolean {
  return stage.kind === 'open' && !timeUp;
}

function stageSentence(
  source: AnswerSource,
  { stage }: StandSharedView,
  own: StandOwnView,
  naming: NoteNaming,
): string {
  if (stage.kind === 'open' && own.timeUp) return 'Time is up.';
  if (stage.kind === 'open') return stageWords({ ...stage, seconds: own.seconds ?? stage.seconds }, naming);
  if (stage.kind !== 'revealed') return stageWords(stage, naming);
  const { answer } = answerTo(source, own, stage.roundId);
  const { heading, text, tryThis } = explanationOf(stage, answer, own, naming);
  return [`${heading}.`, text, tryThis].filter(Boolean).join(' ');
}

function standingSentence(source: AnswerSource, shared: StandSharedView, own: StandOwnView): string {
  const { stage } = shared;
  if (stage.kind !== 'open' && stage.kind !== 'held') return '';
  const { standing } = answerTo(source, own, stage.roundId);
  // After the hold nothing is the student's to change; before it, the tap itself was said already.
  if (!isOpen(shared, own)) return heldWords(standing, stage.task.input.kind);
  return standing === 'placed' ? '' : standingWords(standing);
}
