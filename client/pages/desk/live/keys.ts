import type { Step } from './steps.ts';

/** What a key asks for. `sensible`: the next sensible step, whatever it is · `back`: one step back. */
export type KeyAction = Step | 'sensible' | 'back' | 'students' | 'hide';

export interface KeySettings {
  /** Single letters (WCAG 2.1.4 wants a way to switch them off). */
  readonly letters: boolean;
  /** Page Up and Page Down, which page-turn pedals send. */
  readonly pedal: boolean;
}

/** What matters of a key press, apart from the browser's event. */
export interface KeyPress {
  readonly key: string;
  readonly repeat: boolean;
  /** Ctrl, Alt or Meta is held. */
  readonly modified: boolean;
  /** The key goes to something that takes text or has keys of its own. */
  readonly typing: boolean;
}

const letterActions: Readonly<Record<string, KeyAction>> = {
  a: 'ask',
  h: 'hold',
  r: 'reveal',
  n: 'next',
  v: 'void',
  u: 'undo',
  s: 'students',
  k: 'hide',
};

const pedalActions: Readonly<Record<string, KeyAction>> = { PageDown: 'sensible', PageUp: 'back' };

/** The action of a key press, or null where it isn't ours. */
export function keyActionOf(press: KeyPress, settings: KeySettings): KeyAction | null {
  if (press.typing || press.modified || press.repeat) return null;
  if (settings.pedal && Object.hasOwn(pedalActions, press.key)) return pedalActions[press.key] ?? null;
  const letter = press.key.toLowerCase();
  if (settings.letters && Object.hasOwn(letterActions, letter)) return letterActions[letter] ?? null;
  return null;
}

/** Pedals bounce: a second press this soon after one that did something is the same press, in milliseconds. */
export const pedalPause = 400;

const textTypes = new Set(['checkbox', 'radio', 'button', 'submit', 'range', 'color']);

/** Whether a key press there belongs to what has the focus. */
export function takesText(target: EventTarget | undefined): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (
    target.isContentEditable ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement
  )
    return true;
  return target instanceof HTMLInputElement && !textTypes.has(target.type);
}

/** The key press behind a browser's event. */
export function pressOf(event: KeyboardEvent): KeyPress {
  return {
    key: event.key,
    repeat: event.repeat,
    modified: event.ctrlKey || event.altKey || event.metaKey,
    typing: event.defaultPrevented || takesText(event.composedPath()[0]),
  };
}
