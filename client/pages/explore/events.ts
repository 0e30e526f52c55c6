import type { Ideas } from './ideas.ts';
import type { Settings } from './settings.ts';
import type { Place } from '../../../shared/theory/fretboard.ts';

export type Stage = 'root' | 'see' | 'quiz' | 'settings';

/** All that the page knows besides the settings: where one is, the root, what is looked for, and which of it is seen. */
export interface Exploring {
  readonly stage: Stage;
  readonly place: Place | null;
  readonly ideas: Ideas;
  readonly index: number;
}

/** Something of it changes; whoever listens takes it in, and says the words to a screen reader. */
export class ExploringEvent extends Event {
  static readonly eventName = 'exploring';

  constructor(
    readonly change: Partial<Exploring>,
    readonly words = '',
  ) {
    super(ExploringEvent.eventName, { bubbles: true, composed: true });
  }
}

export class SettingsEvent extends Event {
  static readonly eventName = 'explore-settings';

  constructor(readonly change: Partial<Settings>) {
    super(SettingsEvent.eventName, { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    exploring: ExploringEvent;
    'explore-settings': SettingsEvent;
  }
}
