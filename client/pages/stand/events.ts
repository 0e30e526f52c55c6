import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Level } from '../../../shared/exercise/levels.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';

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

/** What is given has changed, or the student says done, or takes that back. */
export class AnswerEvent extends Event {
  static readonly eventName = 'stand-answer';
  constructor(
    readonly answer: Answer,
    readonly done: boolean,
    /** For a screen reader. */
    readonly words: string,
  ) {
    super(AnswerEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The student goes to another level of the exercise. */
export class LevelEvent extends Event {
  static readonly eventName = 'stand-level';
  constructor(readonly level: Level) {
    super(LevelEvent.eventName, { bubbles: true, composed: true });
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

/** The student's own note names; null for the class's. */
export class NamingEvent extends Event {
  static readonly eventName = 'stand-naming';
  constructor(readonly naming: NoteNaming | null) {
    super(NamingEvent.eventName, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'stand-join': JoinEvent;
    'stand-answer': AnswerEvent;
    'stand-level': LevelEvent;
    'stand-leave': LeaveEvent;
    'stand-alias': AliasEvent;
    'stand-naming': NamingEvent;
  }
}
