import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Answer } from '../../shared/exercise/answer.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { build, find, name, places, scale } from '../support/exercises.ts';
import { chord, line, playedEMinor } from '../support/heard.ts';
import { classOfTwo, type LiveClass } from '../support/live-class.ts';
import type { Screen } from '../support/people.ts';

let live: LiveClass;
let kaya: Screen;
let bram: Screen;

beforeEach(async () => ({ live, kaya, bram } = await classOfTwo()));
afterEach(() => live.stop());

const flatE = { letter: 'E', alteration: -1 } as const;

/** E minor pentatonic round fret 5 of string 2, upwards: strings 6 to 1 (common practice, no source). */
const pentatonicUp = places(
  ...([
    [6, 5],
    [6, 7],
    [5, 5],
    [5, 7],
    [4, 5],
    [4, 7],
    [3, 4],
    [3, 7],
    [2, 5],
    [2, 8],
    [1, 5],
    [1, 7],
  ] as const),
);

describe('VIEW: the question and never its answer', () => {
  interface Asked {
    readonly exercise: Exercise;
    readonly right: Answer;
    /** What would give it away, in any naming. */
    readonly secrets: readonly RegExp[];
    /** What the task's own words hold of the neck. */
    readonly input: object;
  }

  const asked: Readonly<Record<string, Asked>> = {
    'the note at a place': {
      exercise: name('Eb', 4),
      right: { places: [], named: { kind: 'note', note: { letter: 'D', alteration: 1 } } },
      // String 2, fret 4: D♯ or E♭, German Dis or Es, solfège ré♯ or mi♭.
      secrets: [/E♭|D♯|\bEs\b|\bDis\b|mi♭|ré♯/i, /"letter"/, /"range":\{/],
      input: { kind: 'name', place: place(2, 4), wanted: 'note' },
    },
    'a scale upwards': {
      exercise: { ...scale('E', 'minor-pentatonic', 1, 5), order: 'up' },
      right: { places: pentatonicUp },
      secrets: [/"fret"/, /"string"/, /"range":\{/, /fret 5\b/],
      input: { ordered: true, marksRoot: false },
    },
    'a chord with its root marked': {
      exercise: build('E', 'minor', { marksRoot: true }),
      right: { places: places([3, 4], [2, 5], [1, 3]), root: place(2, 5) },
      secrets: [/"fret"/, /"string"/, /"root":/, /fret 5\b/],
      input: { marksRoot: true, ordered: false },
    },
    'a chord that is played': {
      exercise: build('E', 'minor'),
      right: playedEMinor,
      secrets: [/"heard"/, /"pitchClass"/, /"way"/, /"fret"/, /"string"/, /fret 5\b/],
      input: { playing: { as: 'chord', taps: ['root'] } },
    },
  };

  test.each(Object.entries(asked))(
    'VIEW-2: %s travels to nobody before the reveal, in no naming',
    async (_, { exercise, right, secrets, input }) => {
      await live.ask(exercise);
      expect(await live.give(kaya, right)).toEqual({ ok: true, late: false });
      await live.board.until(({ board }) => board?.stage.kind === 'open' && board.stage.done === 1);
      await live.hold();
      for (const screen of [bram, live.board]) {
        const never = [...secrets, /"notes"/, /"degree"/, /"verdict":\{/, /"exercise"/, /"share"/];
        for (const secret of never) expect(screen.heard.filter((text) => secret.test(text))).toEqual([]);
      }
      // A Stand holds what its own student gave, and no more of it than that.
      const own = kaya.heard.filter((text) => text.startsWith('stand:own')).map((text) => text.slice(10));
      for (const text of own)
        expect(JSON.parse(text)).toMatchObject({ view: { verdict: null, accepted: false } });
      expect(kaya.own?.answer).toMatchObject(right);
      const stage = bram.shared?.stage;
      expect(stage?.kind === 'held' && stage.task).toMatchObject({ input, range: null });
      expect(Object.keys(stage?.kind === 'held' ? stage.task.wording : {})).toHaveLength(3);

      await live.reveal();
      await kaya.until((screen) => screen.own?.verdict?.kind === 'right');
      // The same scan finds it now: what it looks for does travel.
      for (const screen of [bram, live.board])
        expect(screen.heard.some((text) => secrets.some((secret) => secret.test(text)))).toBe(true);
    },
  );
});

describe('EDGE: what can’t be an answer to this exercise', () => {
  const note = { kind: 'note', note: flatE };
  const degree = { kind: 'degree', degree: 'b3' };
  const triad = places([3, 4], [2, 5], [1, 3]);

  test.each([
    ['places for a name', name('Eb', 4), { places: places([2, 4]), named: note }, 'places-not-asked'],
    ['a degree for a note', name('Eb', 4), { named: degree }, 'other-name-asked'],
    ['a note for a degree', name('C', 4, { wanted: 'degree' }), { named: note }, 'other-name-asked'],
    ['a root mark on a name', name('Eb', 4), { named: note, root: place(2, 4) }, 'root-not-asked'],
    ['a finger for a name', name('Eb', 4), { named: note, finger: 1 }, 'finger-not-asked'],
    ['a name for places', find('D'), { places: places([2, 3]), named: note }, 'name-not-asked'],
    ['a root mark unasked', find('D'), { places: places([2, 3]), root: place(2, 3) }, 'root-not-asked'],
    ['a finger unasked', build('E', 'minor'), { places: triad, finger: 2 }, 'finger-not-asked'],
    [
      'a root mark beside the answer',
      build('E', 'minor', { marksRoot: true }),
      { places: triad, root: place(2, 17) },
      'root-not-placed',
    ],
    ['a note of no letter', name('Eb', 4), { named: { kind: 'note', note: { letter: 'H' } } }, 'malformed'],
    ['a degree of no kind', name('Eb', 4), { named: { kind: 'degree', degree: '99' } }, 'malformed'],
    ['a line for a chord', build('E', 'minor'), { places: [], heard: line(64, 67, 71) }, 'played-otherwise'],
    ['a chord for a note', find('D'), { places: places([2, 3]), heard: chord(2) }, 'played-otherwise'],
    ['a name that is played', name('Eb', 4), { places: [], heard: line(63) }, 'played-otherwise'],
    [
      'every place of a note, played',
      find('D', { wanted: 'every' }),
      { places: [], heard: line(62) },
      'played-otherwise',
    ],
    [
      'more taps than are asked for',
      build('E', 'minor'),
      { places: triad, heard: chord(4, 7, 11) },
      'tapped-too-much',
    ],
    [
      'a lowest tone that was not heard',
      build('E', 'minor'),
      { places: places([2, 5]), heard: { ...chord(4, 7, 11), lowest: 1 } },
      'malformed',
    ],
    ['a tone of no name', build('E', 'minor'), { places: [], heard: chord(12) }, 'malformed'],
    ['a fifth finger', build('E', 'minor'), { places: triad, finger: 5 }, 'malformed'],
  ])('EDGE-1: %s is refused with a sentence, and nothing breaks', async (_, exercise, answer, code) => {
    await live.ask(exercise);
    const refused = await live.give(kaya, answer);
    expect(refused).toEqual({ ok: false, error: { code, message: expect.stringMatching(/^[A-Z].+\.$/) } });
    expect(live.student('Kaya').answer).toBeNull();
    const studentId = live.student('Edda').id;
    expect(await live.desk.ask({ kind: 'enter', studentId, places: [], ...answer })).toEqual(refused);
    // Taken back whole is always possible.
    expect(await live.give(kaya, { places: [] })).toEqual({ ok: true, late: false });
  });

  test('HEARD-2: what was played is judged with its taps, and comes back after a restart', async () => {
    await live.ask(build('E', 'minor'));
    const answer = playedEMinor;
    expect(await live.give(kaya, answer)).toEqual({ ok: true, late: false });
    expect(await live.answerOf('Kaya')).toMatchObject({ ...answer, verdict: { kind: 'right' } });
    await live.restart();
    expect(kaya.own).toMatchObject({ answer });
  });

  test('ANSWER-1, ANSWER-2: all that an answer carries reaches the Desk and comes back after a restart', async () => {
    await live.ask(build('E', 'minor', { marksRoot: true }));
    const answer: Answer = { places: triad, root: place(2, 5) };
    await live.give(kaya, answer);
    expect(await live.answerOf('Kaya')).toMatchObject({ ...answer, verdict: { kind: 'right' } });
    await live.restart();
    expect(kaya.own).toMatchObject({ answer });
  });

  test('ANSWER-5: a name without a place is an answer, and counts', async () => {
    await live.ask(name('Eb', 4));
    await live.give(kaya, { named: note });
    await live.give(bram, { places: [] });
    const studentId = live.student('Edda').id;
    const entered = {
      kind: 'enter',
      studentId,
      places: [],
      named: { kind: 'note', note: { letter: 'B', alteration: 0 } },
    };
    expect(await live.desk.ask(entered)).toEqual({ ok: true });
    await live.desk.until(({ desk }) => desk?.rounds.at(-1)?.share.of === 2);
    expect(live.desk.desk?.rounds.at(-1)?.share).toEqual({ right: 1, of: 2 });
  });
});

describe('PATTERN: the same slip in several rounds', () => {
  /** Kaya takes the fret of string 6 each time (D 10, C 8); Bram is right (D 3, C 1). */
  async function play(root: string, kayas: number, brams: number): Promise<void> {
    await live.ask(find(root));
    await live.give(kaya, { places: places([2, kayas]) });
    await live.give(bram, { places: places([2, brams]) });
    await live.hold();
    await live.reveal();
  }

  test('the Desk is told from the second reveal on, of rounds that count', async () => {
    const pattern = () => live.student('Kaya').pattern;
    await play('D', 10, 3);
    expect(pattern()).toBeNull();
    await play('C', 8, 1);
    expect(pattern()).toEqual({ cause: 'low-string-map', rounds: 2, of: 2 });
    expect(live.student('Bram').pattern).toBeNull();
    expect(live.student('Edda').pattern).toBeNull();

    await live.desk.ask({ kind: 'void' });
    await live.desk.until(() => pattern() === null);
    await live.desk.ask({ kind: 'undo' });
    await live.desk.until(() => pattern() !== null);
    const [studentId, roundId] = [live.student('Kaya').id, live.roundId];
    await live.desk.ask({ kind: 'accept', roundId, studentId, accepted: true });
    await live.desk.until(() => pattern() === null);
    // Nobody but the teacher hears of it.
    for (const screen of live.others)
      expect(screen.heard.filter((text) => text.includes('"pattern"'))).toEqual([]);
  });

  test('the class has a pattern of its own', async () => {
    await play('D', 10, 10);
    expect(live.desk.desk?.pattern).toBeNull();
    await play('C', 8, 8);
    expect(live.desk.desk?.pattern).toMatchObject({ cause: 'low-string-map', rounds: 2, of: 2 });
  });
});
