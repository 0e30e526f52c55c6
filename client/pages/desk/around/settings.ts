import type { HandSize } from '../../../../shared/theory/hand.ts';
import { formsAlongNeck, type PositionForm } from '../../../../shared/theory/tables/position-names.ts';
import { browserStore } from '../../../lib/key-store.ts';

/** How this teacher wants it found; kept on the device. */
export interface Settings {
  /** What is called a stretch, and what can't be held. */
  readonly hand: HandSize;
  /** The form of position 1, for whom positions have numbers; null names them by form alone. */
  readonly firstPosition: PositionForm | null;
}

export const handWords: Readonly<Record<HandSize, string>> = {
  small: 'small',
  usual: 'usual',
  large: 'large',
};

const entry = 'rootcall.around';
const usual: Settings = { hand: 'usual', firstPosition: null };
const store = browserStore(() => localStorage);

/** Reads what was kept; whatever is missing or unreadable is as usual. */
export function settingsIn(stored: string | null): Settings {
  const [hand = '', first = ''] = (stored ?? '').split(' ');
  return {
    hand: Object.hasOwn(handWords, hand) ? (hand as HandSize) : usual.hand,
    firstPosition: formsAlongNeck.find((form) => form === first) ?? null,
  };
}

export function loadSettings(): Settings {
  return settingsIn(store.get(entry));
}

export function saveSettings({ hand, firstPosition }: Settings): void {
  store.set(entry, `${hand} ${firstPosition ?? ''}`);
}
