import { isEmpty, type Answer } from '../../../shared/exercise/answer.ts';
import type { HeardTone } from '../../../shared/exercise/heard.ts';
import { tapsAlone } from './heard-answer.ts';
import type { PlayedEvent } from './play-events.ts';

/** What a screen knows of its answer's being heard: tones before their verdict, and what had been placed before. */
export class HeardHere {
  hint: readonly HeardTone[] = [];
  #before: Answer | null = null;

  /** Another question. */
  forget(): void {
    this.hint = [];
    this.#before = null;
  }

  /** What was heard, taken into the answer that there is; the same one where nothing but a hint has changed. */
  take({ answer, hint }: PlayedEvent, now: Answer): Answer {
    this.hint = hint;
    if (answer !== now && !now.heard && !isEmpty(now)) this.#before = now;
    return answer;
  }

  /** Takes back what was heard: what was placed before is there again. */
  again(now: Answer): Answer {
    const before = this.#before ?? tapsAlone(now);
    this.#before = null;
    return before;
  }
}
