import type { FretRange, Place } from '../../shared/theory/fretboard.ts';

/** A place was tapped, or chosen by key. The neck holds no answer: whoever listens decides what is placed. */
export class PlaceToggledEvent extends Event {
  static readonly eventName = 'place-toggled';

  constructor(readonly place: Place) {
    super(PlaceToggledEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The key that marks a place as the root. */
export class RootMarkedEvent extends Event {
  static readonly eventName = 'root-marked';

  constructor(readonly place: Place) {
    super(RootMarkedEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The key that takes the last place back. */
export class TakenBackEvent extends Event {
  static readonly eventName = 'taken-back';

  constructor() {
    super(TakenBackEvent.eventName, { bubbles: true, composed: true });
  }
}

/** The windows that fit have changed: at first, and when the box has. The first one starts at the nut. */
export class WindowsFittedEvent extends Event {
  static readonly eventName = 'windows-fitted';

  constructor(readonly windows: readonly FretRange[]) {
    super(WindowsFittedEvent.eventName, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'place-toggled': PlaceToggledEvent;
    'root-marked': RootMarkedEvent;
    'taken-back': TakenBackEvent;
    'windows-fitted': WindowsFittedEvent;
  }
}
