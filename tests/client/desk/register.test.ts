import { expect, test } from 'vitest';
import { dateField, groupLine, namesIn, timeOfField } from '../../../client/pages/desk/group/words.ts';
import { usualKeys, usualLetters } from '../../../client/pages/desk/live/keys.ts';
import { preferencesIn, storedText } from '../../../client/pages/desk/live/preferences.ts';
import { clockText } from '../../../client/pages/desk/live/clock-text.ts';

test('names are read from pasted lines, without blanks and repeats', () => {
  expect(namesIn('Amara\r\n  Bram \n\nCeleste\tde  Wit\nBram\n')).toEqual([
    'Amara',
    'Bram',
    'Celeste de Wit',
  ]);
  expect(namesIn(' \n')).toEqual([]);
});

test('a purge date survives its field', () => {
  const time = new Date(2027, 6, 31, 12).getTime();
  expect(dateField(time)).toBe('2027-07-31');
  expect(dateField(timeOfField('2027-07-31'))).toBe('2027-07-31');
  expect(timeOfField('')).toBeNaN();
});

test('what a browser remembers comes back, and rubbish is as usual', () => {
  const swapped = { ...usualLetters, ask: 'h', hold: 'a', next: '7' };
  const kept = { keys: { letters: false, pedal: true, letterOf: swapped }, hiding: true };
  expect(preferencesIn(storedText(kept))).toEqual(kept);
  const twice = JSON.stringify({ letterOf: { ...usualLetters, ask: 'h' } });
  for (const rubbish of [null, '', '{', '3', 'null', '{"letters":1}', '{"letterOf":{"ask":"x"}}', twice])
    expect(preferencesIn(rubbish)).toEqual({ keys: usualKeys, hiding: false });
  const before = preferencesIn('{"letters":false,"pedal":true,"hiding":true}');
  expect(before).toEqual({ keys: { ...usualKeys, letters: false }, hiding: true });
});

test('letters chosen before turns had one stay; turns take theirs, or another that is free', () => {
  const { turn: _turn, ...chosen } = { ...usualLetters, hold: '7' };
  const letters = (kept: object) => preferencesIn(JSON.stringify({ letterOf: kept })).keys.letterOf;
  expect(letters(chosen)).toEqual({ ...chosen, turn: 't' });
  expect(letters({ ...chosen, hold: 't' })).toEqual({ ...chosen, hold: 't', turn: 'b' });
});

test('time is told in minutes and seconds', () => {
  expect(clockText(100_000)).toBe('1:40');
  expect(clockText(-5)).toBe('0:00');
  expect(clockText(3_600_000)).toBe('60:00');
});

test('a group says its school and what it plays', () => {
  const school = 'Alderwick Community Music School';
  expect(groupLine({ school, instrument: 'ukulele' }, 'english')).toBe(`${school} · Ukulele`);
  expect(groupLine({ school: '', instrument: 'guitar-7+capo=2' }, 'english')).toMatch(/capo 2$/);
  expect(groupLine({ school, instrument: 'custom:E4-H3-G3' }, 'english')).toBe(school);
});
