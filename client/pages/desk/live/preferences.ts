import { browserStore } from '../../../lib/key-store.ts';
import {
  letterActions,
  usualKeys,
  usualLetters,
  withLetter,
  type KeySettings,
  type Letters,
} from './keys.ts';

/** What this browser remembers of how the teacher likes the Desk. */
export interface Preferences {
  readonly keys: KeySettings;
  /** Names and answer key are hidden, for a shared screen. */
  readonly hiding: boolean;
}

const entry = 'rootcall.desk';
const usual: Preferences = { keys: usualKeys, hiding: false };

/** Reads what `stored` kept; whatever is missing or unreadable is as usual. */
export function preferencesIn(stored: string | null): Preferences {
  try {
    const kept: unknown = JSON.parse(stored ?? 'null');
    if (typeof kept !== 'object' || kept === null) return usual;
    const { letters, pedal, letterOf, hiding } = kept as Readonly<Record<string, unknown>>;
    return {
      keys: { letters: letters !== false, pedal: pedal !== false, letterOf: lettersIn(letterOf) },
      hiding: hiding === true,
    };
  } catch {
    return usual;
  }
}

/** Only as a whole: letters of which some were lost could do two things. */
function lettersIn(kept: unknown): Letters {
  if (typeof kept !== 'object' || kept === null) return usualLetters;
  // Kept before turns had a letter: the usual one, or another that is free.
  const turn = [...'tbcdefgijl'].find((letter) => !Object.values(kept).includes(letter));
  const read: Readonly<Record<string, unknown>> = { turn, ...kept };
  // Taken up from none, so that letters which changed places don't stand in each other's way.
  let letters = Object.fromEntries(letterActions.map((action) => [action, ''])) as Letters;
  for (const action of letterActions) {
    const letter = withLetter(letters, action, String(read[action]));
    if (!letter.ok) return usualLetters;
    letters = letter.value;
  }
  return letters;
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
