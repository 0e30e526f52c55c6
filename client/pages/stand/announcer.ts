import type { StandOwnView, StandSharedView } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { answerTo, stageAt, type AnswerSource } from './answer.ts';
import { explanationOf } from './explanation.ts';
import { countingWords, heldWords, levelWords, stageWords, standingWords } from './words.ts';

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
  if (stage.kind !== 'open' && stage.kind !== 'revealed') return stageWords(stage, naming);
  const { answer, level } = answerTo(source, own, stage);
  const which = levelWords(level, stage.harder.length + 1);
  if (stage.kind === 'revealed') {
    const { heading, text, tryThis } = explanationOf(stageAt(stage, level).reveal, answer, own, naming);
    return [`${which}${heading}.`, text, tryThis].filter(Boolean).join(' ');
  }
  return which + stageWords({ ...stageAt(stage, level), seconds: own.seconds ?? stage.seconds }, naming);
}

function standingSentence(source: AnswerSource, shared: StandSharedView, own: StandOwnView): string {
  const { stage } = shared;
  if (stage.kind !== 'open' && stage.kind !== 'held') return '';
  const { answer, standing, level, counting } = answerTo(source, own, stage);
  const input = stageAt(stage, level).task.input.kind;
  // After the hold nothing is the student's to change; before it, the tap itself was said already.
  if (!isOpen(shared, own)) return heldWords(standing, input, answer);
  if (counting !== null) return countingWords(counting, input);
  return standing === 'placed' ? '' : standingWords(standing);
}
