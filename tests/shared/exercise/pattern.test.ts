import { describe, expect, test } from 'vitest';
import { classPatternOf, patternOf, patternText, type Pattern } from '../../../shared/exercise/pattern.ts';
import { wordCount } from '../../../shared/exercise/phrases.ts';
import { slipCauses } from '../../../shared/exercise/slip-names.ts';
import type { SlipCause, Verdict } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import { instrumentById } from '../../../shared/theory/fretboard.ts';

const right: Verdict = { kind: 'right' };
const slip = (cause: SlipCause): Verdict => ({
  kind: 'slip',
  cause,
  marks: [],
  corrections: [],
  missing: [],
});
const unclear = (...causes: readonly [SlipCause, SlipCause]): Verdict => ({
  kind: 'unclear',
  causes,
  marks: [],
  missing: [],
});

describe('what a student repeats', () => {
  test('PATTERN-1: one slip is no pattern, the same cause in two rounds is', () => {
    expect(patternOf([])).toBeNull();
    expect(patternOf([right, slip('nut-as-one'), right])).toBeNull();
    expect(patternOf([slip('short-step'), slip('nut-as-one')])).toBeNull();
    expect(patternOf([slip('nut-as-one'), right, slip('nut-as-one')])).toEqual({
      cause: 'nut-as-one',
      rounds: 2,
      of: 3,
    });
  });

  test('PATTERN-2: the most frequent goes first; of equals the one that came last', () => {
    const often = [
      slip('nut-as-one'),
      slip('short-step'),
      slip('short-step'),
      slip('nut-as-one'),
      slip('short-step'),
    ];
    expect(patternOf(often)).toEqual({ cause: 'short-step', rounds: 3, of: 5 });
    const equal = [slip('short-step'), slip('short-step'), slip('nut-as-one'), slip('nut-as-one')];
    expect(patternOf(equal)?.cause).toBe('nut-as-one');
    expect(patternOf([...equal].reverse())?.cause).toBe('short-step');
  });

  test.each(['missing-tone', 'extra-tone', 'other-place', 'other-name', 'one-fret-off'] as const)(
    'PATTERN-3: %s says only what happened and needs three rounds',
    (cause) => {
      expect(patternOf([slip(cause), slip(cause)])).toBeNull();
      expect(patternOf([slip(cause), slip(cause), slip(cause)])).toEqual({ cause, rounds: 3, of: 3 });
    },
  );

  test('PATTERN-4: an unclear verdict supports either cause, and makes no pattern alone', () => {
    const either = unclear('nut-as-one', 'mark-drift');
    expect(patternOf([either, either, either])).toBeNull();
    expect(patternOf([either, slip('mark-drift')])).toEqual({ cause: 'mark-drift', rounds: 2, of: 2 });
    expect(patternOf([slip('nut-as-one'), right, either])).toEqual({ cause: 'nut-as-one', rounds: 2, of: 3 });
    expect(patternOf([slip('short-step'), either])).toBeNull();
  });
});

describe('what the class repeats', () => {
  const times = (count: number, verdict: Verdict) => Array.from({ length: count }, () => verdict);
  const round = (slips: number, of: number, cause: SlipCause = 'low-string-map') => [
    ...times(slips, slip(cause)),
    ...times(of - slips, right),
  ];

  test('PATTERN-5: two students in each of two rounds', () => {
    expect(classPatternOf([round(2, 5), round(2, 5)])).toEqual({ cause: 'low-string-map', rounds: 2, of: 2 });
    expect(classPatternOf([round(2, 5), round(1, 5)])).toBeNull();
    expect(classPatternOf([round(2, 5)])).toBeNull();
    expect(classPatternOf([round(1, 1), round(1, 1)])).toBeNull();
  });

  test('PATTERN-5: in a larger class a quarter of those who answered', () => {
    expect(classPatternOf([round(6, 24), round(6, 24)])?.rounds).toBe(2);
    expect(classPatternOf([round(6, 25), round(6, 25)])).toBeNull();
    expect(classPatternOf([round(7, 25), round(7, 25)])?.rounds).toBe(2);
    expect(classPatternOf([round(2, 8), round(2, 9)])).toBeNull();
  });

  test('PATTERN-5: a round without an answer is none', () => {
    expect(classPatternOf([round(2, 4), [], round(2, 4)])).toEqual({
      cause: 'low-string-map',
      rounds: 2,
      of: 2,
    });
  });

  test('PATTERN-3, PATTERN-4: as with one student', () => {
    const what = round(3, 4, 'one-fret-off');
    expect(classPatternOf([what, what])).toBeNull();
    expect(classPatternOf([what, what, what])?.rounds).toBe(3);
    const either = times(4, unclear('nut-as-one', 'mark-drift'));
    expect(classPatternOf([either, either])).toBeNull();
    expect(classPatternOf([either, round(2, 4, 'mark-drift')])?.cause).toBe('mark-drift');
    const mixed = [slip('mark-drift'), unclear('nut-as-one', 'mark-drift'), right];
    expect(classPatternOf([mixed, mixed])?.cause).toBe('mark-drift');
  });
});

describe('PATTERN-6: one sentence for the Desk', () => {
  const guitar = known(instrumentById('guitar'), 'guitar');
  const pattern = (cause: SlipCause): Pattern => ({ cause, rounds: 3, of: 5 });

  test('with the numbers of the instrument', () => {
    expect(patternText(pattern('low-string-map'), 'student', guitar)).toBe(
      'The fret of string 6 came in 3 of 5 rounds.',
    );
    const bass = known(instrumentById('bass-5'), 'bass-5');
    expect(patternText(pattern('low-string-map'), 'class', bass)).toBe(
      'Several students: the fret of string 5 came in 3 of 5 rounds.',
    );
    expect(patternText(pattern('short-step'), 'student', guitar)).toBe(
      'The string-3-to-2 step was counted like the others in 3 of 5 rounds.',
    );
    expect(patternText(pattern('short-step'), 'student', bass)).not.toMatch(/\d-to-\d/);
  });

  test.each(slipCauses)('%s: under 20 words, without praise, blame or an open slot', (cause) => {
    for (const who of ['student', 'class'] as const) {
      const text = patternText({ cause, rounds: 20, of: 20 }, who, guitar);
      expect(wordCount(text)).toBeLessThan(20);
      expect(text).toMatch(/^[A-Z][^!{}]* in 20 of 20 rounds\.$/);
      expect(text).not.toMatch(/wrong|mistake|error|fail|bad|good|great|well done/i);
    }
  });
});
