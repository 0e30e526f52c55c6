import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { namedDegrees, type Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise, Finger } from '../../../shared/exercise/exercise.ts';
import { explain, explainForClass } from '../../../shared/exercise/explain.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { messageTexts, say } from '../../../shared/exercise/messages.ts';
import { slipCauses, slipHeadings, slipName } from '../../../shared/exercise/slip-names.ts';
import type { SlipCause } from '../../../shared/exercise/verdict.ts';
import { place, type Place } from '../../../shared/theory/fretboard.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';
import { build, find, name, places, scale } from '../../support/exercises.ts';
import { anAnswered, instrumentIds, instrumentOf, seed } from './arbitraries.ts';
import { note, oneAnswer, range, roots, slipsOf, strings } from './making.ts';
import { walked } from './walked.ts';

// Many answers are explained: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const namings: readonly NoteNaming[] = ['english', 'german', 'solfege'];
const blame =
  /\b(wrong\w*|fail\w*|mistak\w*|errors?|bad\w*|incorrect\w*|sorry|unfortunately|careful\w*|just|only)\b/i;
const praise = /\b(great|good|well done|perfect|excellent|bravo|super|nice\w*|correct|clever|brilliant)\b/i;

describe('MSG-3: every sentence', () => {
  test('blames nobody, praises nobody, and does not shout', () => {
    const texts = [...messageTexts, ...Object.values(slipHeadings)];
    expect(texts.length).toBeGreaterThan(150);
    for (const text of texts) {
      // "Only" tells of a place in one sentence, and of nobody.
      expect(text.replace('only on string', '')).not.toMatch(blame);
      expect(text).not.toMatch(praise);
      expect(text).not.toMatch(/!|top string|bottom|\bleft\b|\bright (string|hand|side)/i);
    }
  });

  test('its slots are names in braces', () => {
    for (const text of messageTexts) expect(text.replace(/\{[A-Za-z]+\}/g, '')).not.toMatch(/[{}]|undefined/);
  });

  test('a slot with a capital begins a sentence', () => {
    expect(say('right-place', { place: 'string 2, fret 3', subject: 'D' })).toBe('String 2, fret 3 is D.');
    for (const text of messageTexts)
      for (const { index } of text.matchAll(/\{[A-Z]/g)) expect(text.slice(0, index)).toMatch(/^$|[.:] $/);
  });

  test('a slip has a name for the Desk and a heading for the Stand, on every instrument', () => {
    for (const cause of slipCauses) {
      expect(slipHeadings[cause]).toMatch(/^[A-Z]/);
      for (const id of instrumentIds) expect(slipName(cause, instrumentOf(id))).toMatch(/^[A-Z][^{}!]*$/);
    }
    const guitar = instrumentOf('guitar');
    expect(slipName('low-string-map', guitar)).toBe('String-6 map');
    expect(slipName('low-string-box', guitar)).toBe('Box from string 6');
    expect(slipName('short-step', guitar)).toBe('String-3-to-2 step');
    expect(slipName('low-string-map', instrumentOf('guitar-7'))).toBe('String-7 map');
    expect(slipName('low-string-map', instrumentOf('ukulele'))).toBe('String-4 map');
    // Two steps of open G are unlike the others: none of them gives the name.
    expect(slipName('short-step', instrumentOf('guitar-open-g'))).toBe('Uneven string step');
  });
});

const count = (text: string) => text.split(/\s+/).filter(Boolean).length;
const untold = /undefined|NaN|[{}]|!| {2}|\.\.| \.|\bfret 0\b|\b1 (notes|frets|strings)\b|\bno frets\b/;

/** What is said amiss, or nothing (MSG-1, MSG-3). */
function amiss(exercise: Exercise, answer: Answer, naming: NoteNaming): string | undefined {
  const verdict = judge(exercise, answer);
  const { heading, text, tryThis } = explain(exercise, answer, verdict, naming);
  const body = `${text} ${tryThis}`.trim();
  const isSentences = [text, tryThis].every((part) => part === '' || part.endsWith('.'));
  const isSaid =
    heading !== '' && text !== '' && isSentences && /^[A-Z♭♯\d]|^(do|re|mi|fa|sol|la|si)/.test(text);
  if (
    !isSaid ||
    count(body) >= 25 ||
    untold.test(`${heading} ${body}`) ||
    blame.test(text.replace('only on string', ''))
  )
    return `${heading} | ${text} | ${tryThis}`;
  if (verdict.kind !== 'slip') return undefined;
  const forClass = explainForClass(exercise, verdict, naming);
  const isWell = /^([a-z]|[A-H][♭♯]? |[A-H](is|es|s)? )/.test(forClass) && forClass.endsWith('.');
  return isWell && !untold.test(forClass) && !blame.test(forClass) && count(forClass) < 25
    ? undefined
    : `${verdict.cause}, for the class: ${forClass}`;
}

const someName = fc.constantFrom(...roots).map((text) => ({ kind: 'note' as const, note: note(text) }));
const someDegree = fc.constantFrom(...namedDegrees).map((degree) => ({ kind: 'degree' as const, degree }));

describe('MSG-1…3: what a Stand says, and what the class hears', () => {
  test('every slip made on purpose, in every naming', () => {
    const astray = new Set<string>();
    let said = 0;
    for (const exercise of walked) {
      const key = oneAnswer(exercise, answerKey(exercise));
      for (const [index, slip] of slipsOf(exercise, key).entries()) {
        said += 1;
        const words = amiss(exercise, { places: slip.places }, namings[index % 3] ?? 'english');
        if (words !== undefined) astray.add(words);
      }
    }
    expect([...astray]).toEqual([]);
    expect(said).toBeGreaterThan(20_000);
  });

  test('any answer to any exercise on any instrument', () => {
    const causes = new Set<SlipCause>();
    fc.assert(
      fc.property(
        anAnswered,
        fc.constantFrom(...namings),
        fc.oneof(someName, someDegree),
        fc.option(fc.nat(20), { nil: undefined }),
        fc.constantFrom<Finger | undefined>(1, 2, 3, 4, undefined),
        ({ exercise, places: given }, naming, named, at, finger) => {
          const root = at === undefined ? undefined : given[at % Math.max(1, given.length)];
          const answer: Answer =
            exercise.kind === 'name'
              ? { places: [], named }
              : { places: given, ...(root ? { root } : {}), ...(finger ? { finger } : {}) };
          const verdict = judge(exercise, answer);
          if (verdict.kind === 'slip') causes.add(verdict.cause);
          expect([exercise, answer, amiss(exercise, answer, naming)]).toEqual([exercise, answer, undefined]);
        },
      ),
      { numRuns: 3000, seed },
    );
    expect(causes.size).toBeGreaterThan(20);
  });

  test('MSG-2: a note that is named, in the reader’s own naming', () => {
    const asked = name('Bb', 11);
    const answer: Answer = { places: [], named: { kind: 'note', note: note('B') } };
    for (const naming of namings)
      expect(explain(asked, answer, judge(asked, answer), naming).tryThis).toBe(
        `String 2, fret 11 is ${formatName(note('Bb'), naming)}.`,
      );
  });

  const said = (exercise: Exercise, given: Place[], naming: NoteNaming = 'english') => {
    const { heading, text, tryThis } = explain(
      exercise,
      { places: given },
      judge(exercise, { places: given }),
      naming,
    );
    return [heading, text, tryThis];
  };

  test.each<[Exercise, Place[], string[]]>([
    [
      build('E', 'minor'),
      places([3, 5], [2, 5], [1, 3]),
      [
        'The step that is not like the others',
        'Strings 2 and 1 are right. String 3 is one fret high: string 3 to 2 is four frets, not five.',
        'Try fret 4.',
      ],
    ],
    [
      build('C', 'major', { voicing: { kind: 'form', form: 'C', full: false } }),
      places([5, 4], [4, 3], [3, 1], [2, 1], [1, 0]),
      [
        'The step that is not like the others',
        'Two strings are right. Strings 5 to 3 are one fret high: string 3 to 2 is four frets, not five.',
        'One fret down.',
      ],
    ],
    [
      find('C'),
      places([2, 8]),
      ['The fret of another string', 'Fret 8 is the C of string 6.', 'On string 2 it is fret 1.'],
    ],
    [
      build('E', 'minor'),
      places([3, 4], [2, 5], [1, 4]),
      [
        'The major third came in',
        'Strings 3 and 2 are right. This sounds major: the third is one fret high.',
        'Try string 1, fret 3.',
      ],
    ],
    [
      build('E', 'minor'),
      places([4, 4], [5, 5], [6, 3]),
      [
        'The strings, counted from the other side',
        'The frets are right, on the opposite strings.',
        'String 1 is the one nearest the floor: count from there.',
      ],
    ],
    [build('E', 'minor'), places([3, 4], [2, 5], [1, 3]), ['All three are right', 'E minor.', '']],
    // On the strings asked for: they are no other ones.
    [
      build('A', 'm7', {
        rootString: strings(6)[0],
        voicing: { kind: 'family', family: 'drop-3', strings: strings(6, 4, 3, 2) },
      }),
      places([6, 5], [4, 5], [3, 5], [2, 8]),
      [
        'The right notes, another form',
        'The notes are Am7, stacked in another way.',
        'Try string 2, fret 5.',
      ],
    ],
    // Three frets along one string some notes stand for others that are there: no root was marked.
    [
      {
        ...scale('C', 'arpeggio-m7', 1, 1),
        strictness: 'range',
        range: range(0, 12),
        oneString: true,
      },
      places([2, 4], [2, 7], [2, 11], [2, 14]),
      [
        'The relative’s root',
        'The pattern is right, three frets from its root: this belongs to the relative major.',
        'Add string 2, fret 1.',
      ],
    ],
    [
      build('E', 'minor'),
      places([3, 5], [2, 6], [1, 4]),
      ['One fret beside', 'The form is right, one fret high.', 'Move down one fret.'],
    ],
    [
      build('E', '7', { voicing: { kind: 'any' } }),
      places([2, 5], [1, 4]),
      ['Not all of it yet', 'Strings 2 and 1 are right. D is missing.', 'Add string 3, fret 7.'],
    ],
    [
      find('D', { strictness: 'place', range: range(0, 11) }),
      places([2, 15]),
      ['The right note, an octave away', 'This is D, twelve frets above the one asked for.', 'Try fret 3.'],
    ],
    [
      build('E', 'minor'),
      places([3, 4], [2, 5], [1, 3], [1, 5]),
      ['One note more', 'String 1 holds two notes, and one of them sounds.', 'Keep one of them.'],
    ],
  ])('%#', (exercise, given, words) => {
    expect(said(exercise, given)).toEqual(words);
  });

  test('MSG-2: notes in the reader’s own naming', () => {
    expect(said(find('Bb'), places([2, 6]), 'german')[1]).toBe('Fret 6 is the B of string 6.');
    expect(said(find('B'), places([2, 7]), 'german')[1]).toBe('Fret 7 is the H of string 6.');
    expect(said(find('Eb'), places([2, 11]), 'solfege')[1]).toBe('Fret 11 is the mi♭ of string 6.');
  });

  test('unclear: neither cause is said, the question is', () => {
    const exercise = build('C', 'minor', {
      strictness: 'anywhere',
      voicing: { kind: 'strings', strings: strings(3, 2, 1) },
    });
    expect(said(exercise, places([3, 9], [2, 8], [1, 8]))).toEqual([
      'Two explanations fit',
      'Strings 2 and 1 are right.',
      'Say where string 3 should be.',
    ]);
  });

  // Source: computed from the tuning. Three frets up from string 2 to string 6: E♭ is fret 4, and fret 11.
  test('the map of string 6 is told by the root, whatever else lies on its string', () => {
    const exercise = scale('Eb', 'major', 2, 4);
    const mapped = answerKey(exercise).map((one) => place(one.place.string, one.place.fret + 7));
    expect(said(exercise, mapped)).toEqual([
      'The fret of another string',
      'Fret 11 is the E♭ of string 6.',
      'On string 2 it is fret 4.',
    ]);
  });

  test('and by the string on which it was placed, where any will do', () => {
    const exercise = find('Eb', { strictness: 'anywhere', rootString: strings(1)[0] });
    const given = places([4, 11]);
    expect(said(exercise, given).slice(1)).toEqual([
      'Fret 11 is the E♭ of string 6.',
      'On string 4 it is fret 1.',
    ]);
    const verdict = judge(exercise, { places: given });
    expect(verdict.kind === 'slip' && explainForClass(exercise, verdict, 'english')).toBe(
      'that fret is E♭ on string 6. On string 4 it lies elsewhere.',
    );
  });

  test('many places that are right are counted, not told one by one', () => {
    const every = find('D', { strictness: 'anywhere', wanted: 'every' });
    expect(
      said(
        every,
        answerKey(every).map((one) => one.place),
      ),
    ).toEqual(['All of them are right', 'All ten are D.', '']);
  });

  // The hand of somebody who put one note on each side of a string, far from what was asked.
  test('a step between strings is told only where places are that step away', () => {
    const exercise = build('Eb', 'sus4', {
      rootString: strings(1)[0],
      voicing: { kind: 'any' },
      range: range(1, 12),
    });
    expect(said(exercise, places([1, 0], [3, 14])).join(' ')).not.toContain('step');
  });

  test('the class hears one sentence on each slip', () => {
    const onString3 = { marks: [], corrections: [{ from: place(3, 5), to: place(3, 4) }], missing: [] };
    const exercise = build('E', 'minor');
    const heard = (cause: SlipCause) =>
      explainForClass(exercise, { kind: 'slip', cause, ...onString3 }, 'english');
    expect(heard('short-step')).toBe(
      'string 3, one fret high. From string 3 to string 2 is four frets, not five.',
    );
    expect(new Set(slipCauses.map(heard)).size).toBeGreaterThan(25);
    for (const cause of slipCauses) expect(count(heard(cause))).toBeLessThan(25);
  });
});
