import { describe, expect, test } from 'vitest';
import {
  keyActionOf,
  usualKeys,
  usualLetters,
  withLetter,
  type KeyPress,
} from '../../../client/pages/desk/live/keys.ts';

const on = usualKeys;

function press(key: string, fields: Partial<KeyPress> = {}): KeyPress {
  return { key, repeat: false, modified: false, typing: false, ...fields };
}

describe('keys at the Desk', () => {
  test.each([
    ['a', 'ask'],
    ['H', 'hold'],
    ['r', 'reveal'],
    ['n', 'next'],
    ['v', 'void'],
    ['u', 'undo'],
    ['s', 'students'],
    ['k', 'hide'],
    ['t', 'turn'],
    ['PageDown', 'sensible'],
    ['PageUp', 'back'],
  ])('%s is %s', (key, action) => {
    expect(keyActionOf(press(key), on)).toBe(action);
  });

  test.each(['x', 'Enter', ' ', 'Escape', 'ArrowDown', 'constructor'])('%s is not ours', (key) => {
    expect(keyActionOf(press(key), on)).toBeNull();
  });

  test.each(['a', 'PageDown'])('%s stays with what has the focus, and with the browser', (key) => {
    expect(keyActionOf(press(key, { typing: true }), on)).toBeNull();
    expect(keyActionOf(press(key, { modified: true }), on)).toBeNull();
    expect(keyActionOf(press(key, { repeat: true }), on)).toBeNull();
  });

  test('letters and pedal are switched off apart (WCAG 2.2, 2.1.4)', () => {
    const noLetters = { ...usualKeys, letters: false };
    expect(keyActionOf(press('h'), noLetters)).toBeNull();
    expect(keyActionOf(press('PageDown'), noLetters)).toBe('sensible');
    const noPedal = { ...usualKeys, pedal: false };
    expect(keyActionOf(press('h'), noPedal)).toBe('hold');
    expect(keyActionOf(press('PageDown'), noPedal)).toBeNull();
  });

  test('a key can be changed to any letter or digit that is free (WCAG 2.2, 2.1.4)', () => {
    const changed = withLetter(usualLetters, 'hold', ' Ж ');
    const letterOf = changed.ok ? changed.value : usualLetters;
    const settings = { ...usualKeys, letterOf };
    expect(keyActionOf(press('ж'), settings)).toBe('hold');
    expect(keyActionOf(press('h'), settings)).toBeNull();
    expect(keyActionOf(press('r'), settings)).toBe('reveal');
    expect(withLetter(letterOf, 'reveal', 'h').ok).toBe(true);
    expect(withLetter(letterOf, 'hold', 'ж').ok).toBe(true);
  });

  test('a conflict is said with the step that has the key, and nothing is changed', () => {
    expect(withLetter(usualLetters, 'hold', 'R')).toEqual({ ok: false, error: 'R is Reveal already.' });
    for (const typed of ['', ' ', 'ab', '-', 'PageUp'])
      expect(withLetter(usualLetters, 'hold', typed)).toEqual({
        ok: false,
        error: 'Take one letter or digit.',
      });
  });
});
