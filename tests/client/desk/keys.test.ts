import { describe, expect, test } from 'vitest';
import { keyActionOf, type KeyPress } from '../../../client/pages/desk/live/keys.ts';

const on = { letters: true, pedal: true };

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
    const noLetters = { letters: false, pedal: true };
    expect(keyActionOf(press('h'), noLetters)).toBeNull();
    expect(keyActionOf(press('PageDown'), noLetters)).toBe('sensible');
    const noPedal = { letters: true, pedal: false };
    expect(keyActionOf(press('h'), noPedal)).toBe('hold');
    expect(keyActionOf(press('PageDown'), noPedal)).toBeNull();
  });
});
