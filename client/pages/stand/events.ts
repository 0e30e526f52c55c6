import type { Place } from '../../../shared/theory/fretboard.ts';

/** The student gives code and name. */
export class JoinEvent extends Event {
  static readonly eventName = 'stand-join';
  constructor(
    readonly code: string,
    readonly name: string,
  ) {
    super(JoinEvent.eventName, { bubbles: true, composed: true });
  }
}

/** What is placed has changed, or the student says done, or takes that back. */
export class AnswerEvent extends Event {
  static readonly eventName = 'stand-answer';
  constructor(
    readonly places: readonly Place[],
    readonly done: boolean,
    /** For a screen reader. */
    readonly words: string,
  ) {
    super(AnswerEvent.eventName, { bubbles: true, composed: true });
  }
}

/** "Not me": the device is to be free again. */
export class LeaveEvent extends Event {
  static readonly eventName = 'stand-leave';
  constructor() {
    super(LeaveEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The name for the list at the end of the class; null for none. */
export class AliasEvent extends Event {
  static readonly eventName = 'stand-alias';
  constructor(readonly alias: string | null) {
    super(AliasEvent.eventName, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'stand-join': JoinEvent;
    'stand-answer': AnswerEvent;
    'stand-leave': LeaveEvent;
    'stand-alias': AliasEvent;
  }
}
