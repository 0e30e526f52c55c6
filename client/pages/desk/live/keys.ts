import { failure, success, type Result } from '../../../../shared/lib/result.ts';
import type { Step } from './steps.ts';

/** What a key asks for. `sensible`: the next sensible step, whatever it is · `back`: one step back. */
export type KeyAction = Step | 'sensible' | 'back' | 'students' | 'hide' | 'turn';

/** What single keys do; a pedal's two are not among it. */
export type LetterAction = Exclude<KeyAction, 'sensible' | 'back'>;
export type Letters = Readonly<Record<LetterAction, string>>;

export interface KeySettings {
  /** Single letters (WCAG 2.1.4 wants a way to switch them off, or to choose others). */
  readonly letters: boolean;
  /** Page Up and Page Down, which page-turn pedals send. */
  readonly pedal: boolean;
  /** The letter or digit of each action, in small letters. */
  readonly letterOf: Letters;
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

/** Each action with its usual letter and its words. */
const usual: Readonly<Record<LetterAction, readonly [letter: string, words: string]>> = {
  ask: ['a', 'Ask'],
  hold: ['h', 'Hold'],
  reveal: ['r', 'Reveal'],
  next: ['n', 'Next'],
  void: ['v', 'Void'],
  undo: ['u', 'Undo'],
  students: ['s', 'Students'],
  hide: ['k', 'Hide names'],
  turn: ['t', 'Next turn'],
};

export const letterActions = Object.keys(usual) as readonly LetterAction[];

export const usualLetters = Object.fromEntries(
  letterActions.map((action) => [action, usual[action][0]]),
) as Letters;

export const usualKeys: KeySettings = { letters: true, pedal: true, letterOf: usualLetters };

export function wordsOf(action: LetterAction): string {
  return usual[action][1];
}

/** The letters with another key for one action, or why it can't have that key. */
export function withLetter(letters: Letters, action: LetterAction, typed: string): Result<Letters, string> {
  const letter = typed.trim().toLowerCase();
  if (!/^[\p{L}\p{N}]$/u.test(letter)) return failure('Take one letter or digit.');
  const holder = letterActions.find((other) => other !== action && letters[other] === letter);
  if (holder) return failure(`${letter.toUpperCase()} is ${wordsOf(holder)} already.`);
  return success({ ...letters, [action]: letter });
}

const pedalActions: Readonly<Record<string, KeyAction>> = { PageDown: 'sensible', PageUp: 'back' };

/** The action of a key press, or null where it isn't ours. */
export function keyActionOf(press: KeyPress, settings: KeySettings): KeyAction | null {
  if (press.typing || press.modified || press.repeat) return null;
  if (settings.pedal && Object.hasOwn(pedalActions, press.key)) return pedalActions[press.key] ?? null;
  const letter = press.key.toLowerCase();
  if (!settings.letters) return null;
  return letterActions.find((action) => settings.letterOf[action] === letter) ?? null;
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
