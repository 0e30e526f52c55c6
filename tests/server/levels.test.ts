import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { answerKey } from '../../shared/exercise/key.ts';
import type { Answer } from '../../shared/exercise/answer.ts';
import { build, find, places, scale } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';
import type { Screen } from '../support/people.ts';

const first = find('D');
const second = build('E', 'minor');
const third = scale('E', 'minor-pentatonic', 1, 5);
const levels = [first, second, third] as const;

/** D on string 2 is fret 3; the close triad on strings 3, 2, 1 round fret 5 is 4, 5, 3 (computed in standard tuning). */
const right: Readonly<Record<'first' | 'second', Answer>> = {
  first: { places: places([2, 3]) },
  second: { places: places([3, 4], [2, 5], [1, 3]), level: 2 },
};
const rightThird: Answer = { places: answerKey(third).map((note) => note.place), level: 3 };

let live: LiveClass;
let kaya: Screen;
let bram: Screen;
let edda: Screen;

beforeEach(async () => {
  live = await LiveClass.start();
  kaya = await live.seat('Kaya');
  bram = await live.seat('Bram');
  edda = await live.seat('Edda');
});

afterEach(async () => {
  await live.stop();
});

const lastRound = () => live.desk.desk?.rounds.at(-1);
const answerOf = (name: string) => live.student(name).answer;
const answered = (...names: readonly string[]) =>
  live.desk.until(() => names.every((name) => answerOf(name)?.done === true));

test('VIEW-2, LEVEL-3: before the reveal Stands and Board hold the words of every level and the answer of none', async () => {
  await live.ask(...levels);
  await live.give(kaya, right.second);
  await live.give(edda, rightThird);
  await live.board.until(({ board }) => board?.stage.kind === 'open' && board.stage.done === 2);
  await live.hold();
  const secrets = [/"notes"/, /"degree"/, /"verdict":\{/, /"exercise"/, /"share"/, /"fret"/, /"letter"/];
  for (const screen of [bram, live.board]) {
    const stage = screen.shared?.stage ?? screen.board?.stage;
    if (stage?.kind !== 'held') throw new Error('not held');
    expect([stage.task, ...stage.harder].map(({ wording }) => wording.english.title)).toEqual([
      'Find D',
      'Build E minor',
      'E minor pentatonic',
    ]);
    for (const secret of secrets) expect(screen.heard.filter((text) => secret.test(text))).toEqual([]);
  }
  await live.reveal();
  for (const screen of [bram, live.board]) {
    const stage = screen.shared?.stage ?? screen.board?.stage;
    if (stage?.kind !== 'revealed') throw new Error('not revealed');
    expect([stage.reveal, ...stage.harder.map((level) => level.reveal)]).toEqual(
      levels.map((exercise) => ({ exercise, notes: answerKey(exercise) })),
    );
  }
});

describe('LEVEL-1: an answer is judged by the level that it says', () => {
  test('and one that says none by the first, as an older page sends it', async () => {
    await live.ask(...levels);
    await live.give(kaya, right.first);
    await live.give(bram, right.second);
    await live.give(edda, { ...right.first, level: 3 });
    await answered('Kaya', 'Bram', 'Edda');
    expect(answerOf('Kaya')).toMatchObject({ places: right.first.places, verdict: { kind: 'right' } });
    expect(answerOf('Kaya')).not.toHaveProperty('level');
    expect(answerOf('Bram')).toMatchObject({ level: 2, verdict: { kind: 'right' } });
    expect(answerOf('Edda')?.verdict.kind).not.toBe('right');
  });

  test('and a level that is not asked is refused, from Stand and Desk', async () => {
    await live.ask(first, second);
    expect(await live.give(kaya, rightThird)).toMatchObject({ ok: false, error: { code: 'level-unknown' } });
    const entered = { kind: 'enter', studentId: live.student('Bram').id, ...rightThird };
    expect(await live.desk.ask(entered)).toMatchObject({ error: { code: 'level-unknown' } });
    expect(await live.desk.ask({ ...entered, ...right.second })).toEqual({ ok: true });
    await answered('Bram');
    expect(answerOf('Bram')).toMatchObject({ level: 2, by: 'teacher', verdict: { kind: 'right' } });
  });
});

describe('LEVEL-2: one current answer for each student, whatever its level', () => {
  const send = (id: string, answer: Answer) =>
    kaya.give({ kind: 'place', roundId: live.roundId, sendId: id, done: true, ...answer });

  test('ANSWER-1: the newest send wins, and a resend of an older level changes nothing', async () => {
    await live.ask(...levels);
    for (const [id, answer] of [
      ['one', right.first],
      ['two', right.second],
      ['one', right.first],
    ] as const)
      expect(await send(id, answer)).toEqual({ ok: true, late: false });
    await live.desk.until(() => answerOf('Kaya')?.level === 2);
    expect(lastRound()?.shares).toEqual([
      { right: 0, of: 0 },
      { right: 1, of: 1 },
      { right: 0, of: 0 },
    ]);
  });

  test('ANSWER-4: a late answer at another level is kept beside the one in time, and counts if the teacher says so', async () => {
    await live.ask(...levels);
    await send('in-time', right.first);
    await live.hold();
    await live.reveal();
    expect(await send('late', right.second)).toEqual({ ok: true, late: true });
    await live.desk.until(() => live.student('Kaya').late !== null);
    expect(lastRound()?.shares.map(({ of }) => of)).toEqual([1, 0, 0]);
    const studentId = live.student('Kaya').id;
    await live.desk.ask({ kind: 'count-late', roundId: live.roundId, studentId, counted: true });
    await live.desk.until(() => lastRound()?.shares[1]?.of === 1);
    expect(lastRound()?.shares.map(({ of }) => of)).toEqual([0, 1, 0]);
    await kaya.until(({ own }) => own?.answer?.level === 2 && own.verdict?.kind === 'right');
  });

  test('VIEW-4: a restart keeps the levels of the round and of the answer', async () => {
    await live.ask(...levels);
    await send('before', right.second);
    kaya.shared = undefined;
    kaya.own = undefined;
    await live.server.restart();
    await kaya.until(({ shared, own }) => shared?.stage.kind === 'open' && own?.answer?.level === 2);
    const stage = kaya.shared;
    expect(stage).toMatchObject({ stage: { harder: [{}, {}] } });
    expect(await send('after', rightThird)).toEqual({ ok: true, late: false });
    await kaya.until(({ own }) => own?.answer?.level === 3);
  });
});

describe('LEVEL-4: levels are counted apart', () => {
  test('on Desk and Board, with the slip of the level that shows it most', async () => {
    await live.ask(...levels);
    await live.give(kaya, right.first);
    // The short step forgotten: string 3 one fret too high.
    await live.give(bram, { places: places([3, 5], [2, 5], [1, 3]), level: 2 });
    await live.give(edda, right.second);
    await live.board.until(({ board }) => board?.stage.kind === 'open' && board.stage.done === 3);
    await live.hold();
    await live.reveal();
    expect(lastRound()).toMatchObject({
      share: { right: 2, of: 3 },
      shares: [
        { right: 1, of: 1 },
        { right: 1, of: 2 },
        { right: 0, of: 0 },
      ],
    });
    expect(live.board.board?.stage).toMatchObject({
      share: { right: 1, of: 1 },
      harder: [{ share: { right: 1, of: 2 } }, { share: { right: 0, of: 0 } }],
      slip: { count: 1, level: 2, example: { cause: 'short-step' } },
    });
    await bram.until(({ own }) => own?.verdict?.kind === 'slip' && own.verdict.cause === 'short-step');
  });

  test('in the score, a row for each level that somebody answered, held against its own last time', async () => {
    await live.ask(...levels);
    await live.give(kaya, right.second);
    await live.give(bram, right.second);
    await live.hold();
    await live.reveal();
    await live.next();
    expect(live.board.board?.stage).toMatchObject({
      score: {
        now: { right: 2, of: 2 },
        rows: [{ title: 'Second: Build E minor', now: { right: 2, of: 2 } }],
      },
    });
    await live.desk.ask({ kind: 'close' });
    const { desk } = await live.teacher.openClass(live.groupId);
    try {
      await desk.ask({ kind: 'ask', exercise: first, seconds: null });
      await desk.ask({ kind: 'hold' });
      await desk.ask({ kind: 'reveal' });
      await desk.ask({ kind: 'ask', exercise: second, seconds: null });
      await desk.ask({ kind: 'hold' });
      await desk.ask({ kind: 'reveal' });
      await desk.until((screen) => screen.desk?.score.rows.length === 2);
      expect(desk.desk?.score.rows).toMatchObject([
        { title: 'Find D', before: null },
        { title: 'Build E minor', before: { right: 2, of: 2 } },
      ]);
    } finally {
      desk.close();
    }
  });
});

test('LEVEL-5: asking again, taking back and undo keep all levels', async () => {
  await live.ask(...levels);
  await live.give(kaya, right.second);
  await live.desk.ask({ kind: 'void' });
  await kaya.until(({ shared }) => shared?.stage.kind === 'rest');
  await live.desk.ask({ kind: 'undo' });
  await kaya.until(({ shared, own }) => shared?.stage.kind === 'open' && own?.answer?.level === 2);
  await live.hold();
  await live.reveal();
  expect(await live.desk.ask({ kind: 'ask-again' })).toEqual({ ok: true });
  await kaya.until(({ shared }) => shared?.stage.kind === 'open');
  await live.desk.until(({ desk }) => desk?.rounds.length === 2);
  expect(lastRound()).toMatchObject({ exercise: first, harder: [second, third] });
  expect(await live.give(kaya, rightThird)).toEqual({ ok: true, late: false });
});

test('LEVEL-1: one level that can’t be asked, and the exercise is not asked', async () => {
  const impossible = { ...second, rootString: 9 };
  const asked = await live.desk.ask({ kind: 'ask', exercise: first, harder: [impossible], seconds: null });
  expect(asked).toMatchObject({ error: { code: 'exercise-refused' } });
  const four = await live.desk.ask({
    kind: 'ask',
    exercise: first,
    harder: [second, second, third],
    seconds: null,
  });
  expect(four).toMatchObject({ error: { code: 'malformed' } });
});
