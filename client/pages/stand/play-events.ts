import type { Answer } from '../../../shared/exercise/answer.ts';
import type { HeardTone } from '../../../shared/exercise/heard.ts';
import type { ChosenWay } from './ways.ts';

/** Something was heard; with a hint alone the answer is the one that was. */
export class PlayedEvent extends Event {
  static readonly eventName = 'stand-played';
  constructor(
    readonly answer: Answer,
    /** Tones before their verdict. */
    readonly hint: readonly HeardTone[],
    /** A chord was heard whole, and clearly: nothing more comes of this stroke. */
    readonly isFinal: boolean,
  ) {
    super(PlayedEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The student answers another way from now on. */
export class WayEvent extends Event {
  static readonly eventName = 'stand-way';
  constructor(readonly way: ChosenWay) {
    super(WayEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The student lets this page listen, or not any more. */
export class ListenEvent extends Event {
  static readonly eventName = 'stand-listen';
  constructor(readonly on: boolean) {
    super(ListenEvent.eventName, { bubbles: true, composed: true });
  }
}

/** What a screen reader is to hear of playing. */
export class SaidEvent extends Event {
  static readonly eventName = 'stand-said';
  constructor(readonly words: string) {
    super(SaidEvent.eventName, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'stand-played': PlayedEvent;
    'stand-way': WayEvent;
    'stand-listen': ListenEvent;
    'stand-said': SaidEvent;
  }
}
