import { describe, expect, test } from 'vitest';
import * as v from 'valibot';
import { nameKey } from '../../shared/protocol/name-key.ts';
import { plainText } from '../../shared/protocol/plain-text.ts';
import { textSchema } from '../../shared/protocol/schemas.ts';

describe('EDGE-2: text that a person typed', () => {
  test.each([
    ['direction marks and overrides', '\u202EKaya\u202C\u2066\u200F\u061C', 'Kaya'],
    ['zero-width characters', '\uFEFFKa\u200B\u2060ya\u00AD', 'Kaya'],
    ['control characters', 'Ka\u0000ya\u001B[31m\u0085', 'Ka ya [31m'],
    ['line breaks', '  Ka\r\n\u2028ya\t', 'Ka ya'],
    ['half a character', 'Ka\uD83Dya', 'Ka ya'],
    ['tags that nobody sees', `Kaya${String.fromCodePoint(0xe0041, 0xe007f)}`, 'Kaya'],
    ['a joiner with nothing to join', 'Kaya\u200D', 'Kaya'],
    ['a pile of marks', `K${'\u0300'.repeat(50)}aya`, `K${'\u0300'.repeat(4)}aya`],
  ])('loses %s', (_what, typed, kept) => {
    expect(plainText(typed)).toBe(kept);
  });

  test.each([
    ['a tag of a page', '<script>alert(1)</script>'],
    ['a joined picture', '👩‍🎤'],
    ['a picture with its mark', '🎸❤️'],
    ['a tone of skin', '👍🏽'],
    ['a flag', '🇳🇴'],
    ['Persian with its joiner', 'می\u200Cخواهم'],
    ['Hebrew', 'נועה'],
    ['Hindi', 'प्रिया'],
  ])('keeps %s', (_what, typed) => {
    expect(plainText(typed)).toBe(typed);
  });

  test.each(['', ' ', '\u200B', '\u202E\u202C', '\u2800', '\u3164\u115F'])('%j is no text', (typed) => {
    expect(v.safeParse(textSchema(40), typed).success).toBe(false);
  });

  test('too long is refused, before it is looked at closely', () => {
    for (const long of ['x'.repeat(41), 'x'.repeat(10_000), '\u200B'.repeat(10_000)]) {
      const parsed = v.safeParse(textSchema(40), long);
      expect(parsed.issues?.[0].type).toBe('max_length');
    }
  });
});

describe('SEAT-5: names are compared by what is seen', () => {
  // Look-alikes: Unicode Technical Standard 39, confusables.txt.
  test.each([
    ['Kaya', 'KAYA'],
    ['Kaya', ' káyà '],
    ['Kaya', 'К\u0430у\u0430'],
    ['Kaya', 'Ka\u200Dya'],
    ['Kaya', 'Ｋａｙａ'],
    ['Edda', 'Εdda'],
    ['Bram', 'Вram'],
    ['Nino', 'Νίνο'],
    ['Ilse', 'İlse'],
    ['Ilse', 'ılse'],
  ])('%s is %s', (one, other) => {
    expect(nameKey(other)).toBe(nameKey(one));
  });

  test.each([
    ['Kaya', 'Maya'],
    ['Ali', 'All'],
    ['Anna 1', 'Anna 2'],
    ['Вера', 'Вира'],
    ['Ben', 'Ben B'],
    ['李', '王'],
    ['نور', 'نوره'],
  ])('%s is not %s', (one, other) => {
    expect(nameKey(other)).not.toBe(nameKey(one));
  });
});
