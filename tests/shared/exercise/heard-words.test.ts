import { describe, expect, test, vi } from 'vitest';
import type { Answer } from '../../../shared/exercise/answer.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { explain, explainForClass } from '../../../shared/exercise/explain.ts';
import { heardWords } from '../../../shared/exercise/heard-words.ts';
import type { Heard } from '../../../shared/exercise/heard.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { scaleDegrees } from '../../../shared/theory/chord.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';
import type { PitchClass } from '../../../shared/theory/pitch.ts';
import { build, find, places, scale } from '../../support/exercises.ts';
import { chord, line } from '../../support/heard.ts';
import { pitchAt, tapsOf } from './heard-answers.ts';
import { exercisesFor, note } from './making.ts';

// Many exercises are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const anywhere = { strictness: 'anywhere', voicing: { kind: 'any' } } as const;

function said(exercise: Exercise, answer: Answer, naming: NoteNaming = 'english'): readonly string[] {
  const { heading, text, tryThis } = explain(exercise, answer, judge(exercise, answer), naming);
  return [heading, text, tryThis];
}

const taps = places([2, 5]);
const em = build('E', 'minor');

// Source: computed from the tuning and the formulas of MusicXML 4.0 `kind`.
describe('HEARD-10: what was heard, what it was, and what to try', () => {
  test.each<[string, Exercise, Answer, readonly string[]]>([
    [
      'a chord that is right',
      em,
      { places: taps, heard: chord(4, 7, 11) },
      ['Every tone is right', 'Heard: E, G, B. E minor.', ''],
    ],
    [
      'the other third',
      build('A', 'minor', { ...anywhere }),
      { places: [], heard: chord(9, 1, 4) },
      [
        'The major third came in',
        'Heard: A, C♯, E. The third is a half step high: that was the major.',
        'Lower the third by one fret.',
      ],
    ],
    [
      'a tone that is missing',
      em,
      { places: taps, heard: chord(4, 7) },
      ['Not all of it yet', 'Heard: E, G. The fifth was not heard.', 'E minor: E, G, B.'],
    ],
    [
      'a tone that is foreign',
      em,
      { places: taps, heard: chord(4, 7, 11, 1) },
      ['One note more', 'Heard: E, G, B, C♯. C♯ is not part of E minor.', 'E minor: E, G, B.'],
    ],
    [
      'one string a fret off, on a step that is counted like the others',
      em,
      { places: taps, heard: chord(4, 7, 0) },
      [
        'The step that is not like the others',
        'Heard: E, G, C. The fifth is one fret high: string 3 to 2 is four frets, not five.',
        '',
      ],
    ],
    [
      'a fifth that may be left out, a half step high',
      build('C', '7', { ...anywhere }),
      { places: [], heard: chord(0, 4, 8, 10) },
      ['One fret beside', 'Heard: C, E, A♭, B♭. The fifth is a half step high.', 'C7: C, E, G, B♭.'],
    ],
    [
      'everything a half step low, without a tap that says why',
      build('A', 'minor', { ...anywhere }),
      { places: [], heard: chord(8, 11, 3) },
      ['One fret beside', 'Heard: B, D♯, G♯. All of it is a half step low.', 'Move up one fret.'],
    ],
    [
      'the fret of string 6, which the tap tells',
      em,
      { places: places([2, 12]), heard: chord(11, 2, 6) },
      [
        'The fret of another string',
        'Heard: F♯, B, D. Fret 12 is the E of string 6.',
        'On string 2 it is fret 5.',
      ],
    ],
    [
      'a tap that is missing',
      em,
      { places: [], heard: chord(4, 7, 11) },
      [
        'One tap is missing',
        'Heard: E, G, B. The notes are right. The root was not tapped.',
        'Tap where E lies.',
      ],
    ],
    [
      'the lowest note, not tapped',
      build('C', 'major', { ...anywhere, bass: note('E') }),
      { places: [], heard: chord(0, 4, 7) },
      [
        'One tap is missing',
        'Heard: C, E, G. The notes are right. The lowest one was not tapped.',
        'Tap where the lowest note lies.',
      ],
    ],
    [
      'the relative’s root, tapped',
      em,
      { places: places([2, 8]), heard: chord(4, 7, 11) },
      [
        'The relative’s root',
        'Heard: E, G, B. The notes are right. The mark is on the root of the relative major.',
        'The root is E.',
      ],
    ],
    [
      'a note on its string',
      find('D'),
      { places: places([2, 1]), heard: line(62) },
      ['That is the place', 'Heard: D. String 2, fret 3 is D.', ''],
    ],
    [
      'a note where string 6 has it',
      find('D'),
      { places: places([2, 1]), heard: line(69) },
      ['The fret of another string', 'Heard: A. Fret 10 is the D of string 6.', 'On string 2 it is fret 3.'],
    ],
    [
      'a note anywhere',
      find('Eb', { strictness: 'anywhere' }),
      { places: [], heard: line(63) },
      ['That is the note', 'Heard: E♭. E♭.', ''],
    ],
    [
      'a note a half step beside',
      find('Eb', { strictness: 'anywhere' }),
      { places: [], heard: line(64) },
      ['One fret beside', 'Heard: E. The note is a half step high.', 'Move down one fret.'],
    ],
    [
      'the right note, its string unsaid',
      find('D'),
      { places: [], heard: line(62) },
      ['One tap is missing', 'Heard: D. The note is right. Its string was not tapped.', 'Tap where it lies.'],
    ],
  ])('%s', (_, exercise, answer, words) => {
    expect(said(exercise, answer)).toEqual(words);
  });

  test('notes are in the reader’s naming', () => {
    const exercise = build('A', 'minor', { ...anywhere });
    const answer = { places: [], heard: chord(9, 1, 4) };
    expect(said(exercise, answer, 'german')[1]).toMatch(/^Heard: A, Cis, E\./);
    expect(said(exercise, answer, 'solfege')[1]).toMatch(/^Heard: la, do♯, mi\./);
  });

  test('the first note of a line that went otherwise', () => {
    const exercise: ScaleExercise = { ...scale('C', 'major', 2, 13), order: 'up' };
    const up = answerKey(exercise)
      .map((one) => pitchAt(exercise, one.place))
      .sort((a, b) => a - b);
    const at = up.findIndex((pitch) => pitch % 12 === 0);
    const after = (...pitches: readonly number[]) =>
      said(exercise, { places: places([2, 13]), heard: line(...pitches) })[1];
    expect(after(...up.with(at, (up[at] ?? 0) + 1))).toBe('After B comes C; C♯ was heard.');
    expect(after(...up.toSpliced(at, 1))).toBe('After B comes C; D was heard.');
    expect(after(...up.slice(0, at))).toMatch(/After B comes C\.$/);
    expect(after(...up, (up.at(-1) ?? 0) + 1)).toMatch(/ is the last note; .+ was heard after it\.$/);
    expect(after(...up.with(0, (up[0] ?? 0) - 1))).toMatch(/ comes first; .+ was heard\.$/);
    const free: ScaleExercise = { ...scale('C', 'major', 2, 13) };
    const wrong = { places: places([2, 13]), heard: line(...up.with(at, (up[at] ?? 0) + 1)) };
    expect(said(free, wrong)[1]).toBe('C♯ was heard, not C.');
  });

  test('a whole line a half step off, and a tone of the scale in another octave', () => {
    const exercise = scale('C', 'major', 2, 13);
    const up = answerKey(exercise)
      .map((one) => pitchAt(exercise, one.place))
      .sort((a, b) => a - b);
    const told = (...pitches: readonly number[]) =>
      said(exercise, { places: places([2, 13]), heard: line(...pitches) });
    expect(told(...up.map((pitch) => pitch + 1)).slice(1)).toEqual([
      'All of it is a half step high.',
      'Move down one fret.',
    ]);
    // String 6, fret 12 is its lowest note.
    expect(told(40, ...up)[1]).toBe('E was heard, in an octave that is not asked for.');
  });

  test('an inversion is told where the lowest tone is known', () => {
    const inverted: Heard = { ...chord(4, 7, 11), ...{ lowest: 7 as PitchClass } };
    expect(said(build('E', 'minor', { ...anywhere }), { places: [], heard: inverted })[1]).toBe(
      'Heard: E, G, B. E minor, inverted: ♭3 sounds lowest.',
    );
  });

  test('the other third is spelled as a third, a slash’s bass called the bass', () => {
    const text = (exercise: Exercise, ...tones: readonly number[]) =>
      said(exercise, { places: [], heard: chord(...tones) })[1];
    expect(text(build('C', 'maj7', { ...anywhere }), 0, 3, 7, 11)).toMatch(/^Heard: C, E♭, G, B\. The third/);
    expect(text(build('F', 'm6', { ...anywhere, bass: note('A') }), 5, 8, 0, 2, 10)).toMatch(
      /The bass is a half/,
    );
  });

  test('every sentence is whole and short, for any exercise, near and far from right', () => {
    let count = 0;
    for (const exercise of exercisesFor(['Eb'], ['minor', '7'], ['natural-minor'])) {
      if (!checkExercise(exercise).ok) continue;
      const key = answerKey(exercise).map((one) => one.place);
      const pitches = [...new Set(key.map((spot) => pitchAt(exercise, spot)))].sort((a, b) => a - b);
      const heards: readonly Heard[] = [-1, 0, 1, 2, 3].flatMap((by) => {
        const moved = [
          pitches.map((pitch) => pitch + by),
          pitches.with(0, (pitches[0] ?? 60) + by),
          pitches.slice(1),
        ];
        return moved
          .filter((some) => some.length > 0)
          .map((some) =>
            exercise.kind === 'build' ? chord(...new Set(some.map((p) => p % 12))) : line(...some),
          );
      });
      for (const heard of heards)
        for (const tapped of [tapsOf(exercise, key), [], key.slice(0, 1)]) {
          const answer = { places: tapped, heard };
          const verdict = judge(exercise, answer);
          const [heading = '', text = '', tryThis = ''] = said(exercise, answer);
          const words = `${text} ${tryThis}`.trim();
          count += 1;
          const isSound =
            heading !== '' &&
            words.split(/\s+/).length < 25 &&
            !/[{}!]|undefined|\s\s|Strings? \.| ,/.test(words);
          if (!isSound) expect([exercise, answer, words]).toBe('whole and short');
          if (verdict.kind !== 'slip') continue;
          expect(explainForClass(exercise, verdict, 'english')).toMatch(/^[a-z“A-G].+\.$/);
        }
    }
    expect(count).toBeGreaterThan(2000);
  });
});

describe('HEARD-11: live, before the reveal', () => {
  test('each note has one name, whatever is asked', () => {
    expect(heardWords(chord(9, 1, 4), 'english')).toBe('Heard: A, C♯, E');
    expect(heardWords(chord(10, 1, 5), 'german')).toBe('Heard: B, Cis, F');
    expect(heardWords(line(60, 60, 62), 'english')).toBe('Heard: C, D');
    // The lowest first, where it is known.
    expect(heardWords({ ...chord(9, 1, 4), lowest: 4 } as Heard, 'english')).toBe('Heard: E, A, C♯');
  });

  test('of a long line the last notes', () => {
    expect(heardWords(line(60, 62, 64, 65, 67, 69, 71, 72, 74, 76), 'english')).toBe(
      'Heard: … E, F, G, A, B, C, D, E',
    );
  });

  test('in a key that may be known notes are named in its light, a chord from its root', () => {
    const key = { root: note('Bb'), degrees: scaleDegrees('natural-minor') };
    expect(heardWords(chord(5, 1, 10), 'english', key)).toBe('Heard: B♭, D♭, F');
    expect(formatName(key.root, 'english')).toBe('B♭');
  });
});
