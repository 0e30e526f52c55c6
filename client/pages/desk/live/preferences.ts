import { browserStore } from '../../../lib/key-store.ts';
import type { KeySettings } from './keys.ts';

/** What this browser remembers of how the teacher likes the Desk. */
export interface Preferences {
  readonly keys: KeySettings;
  /** Names and answer key are hidden, for a shared screen. */
  readonly hiding: boolean;
}

const entry = 'rootcall.desk';
const usual: Preferences = { keys: { letters: true, pedal: true }, hiding: false };

/** Reads what `stored` kept; whatever is missing or unreadable is as usual. */
export function preferencesIn(stored: string | null): Preferences {
  try {
    const kept: unknown = JSON.parse(stored ?? 'null');
    if (typeof kept !== 'object' || kept === null) return usual;
    const { letters = true, pedal = true, hiding = false } = kept as Readonly<Record<string, unknown>>;
    return { keys: { letters: letters !== false, pedal: pedal !== false }, hiding: hiding === true };
  } catch {
    return usual;
  }
}

export function storedText({ keys, hiding }: Preferences): string {
  return JSON.stringify({ ...keys, hiding });
}

const store = browserStore(() => localStorage);

export function loadPreferences(): Preferences {
  return preferencesIn(store.get(entry));
}

export function savePreferences(preferences: Preferences): void {
  store.set(entry, storedText(preferences));
}
