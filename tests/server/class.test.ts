import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { build, find, places } from '../support/exercises.ts';
import { LiveServer } from '../support/live-server.ts';
import { join, Screen, sit, TeacherBrowser } from '../support/people.ts';

let server: LiveServer;
let teacher: TeacherBrowser;
let desk: Screen;
let groupId: string;
let screens: Screen[];

const code = () => desk.desk?.code ?? '';
const roundId = () => desk.desk?.rounds.at(-1)?.id ?? '';
const answerOf = (name: string) =>
  desk.desk?.students.find((student) => student.name === name)?.answer ?? null;
const lateOf = (name: string) => desk.desk?.students.find((student) => student.name === name)?.late ?? null;

async function seat(name: string): Promise<Screen> {
  const screen = await sit(server, code(), name);
  screens.push(screen);
  return screen;
}

async function askFind(): Promise<void> {
  const before = desk.desk?.rounds.length ?? 0;
  expect(await desk.ask({ kind: 'ask', exercise: find('D'), seconds: null })).toEqual({ ok: true });
  await desk.until(({ desk: view }) => (view?.rounds.length ?? 0) > before);
}

const place = (fret: number, sendId: string, done = false) => ({
  kind: 'place',
  roundId: roundId(),
  sendId,
  places: places([2, fret]),
  done,
});

beforeEach(async () => {
  server = await LiveServer.start();
  teacher = new TeacherBrowser(server);
  await teacher.setUp();
  groupId = await teacher.makeGroup(['Kaya', 'Bram', 'Edda']);
  ({ desk } = await teacher.openClass(groupId));
  screens = [desk];
});

afterEach(async () => {
  for (const screen of screens) screen.close();
  await server.stop();
});

describe('VIEW: nobody is told what they must not know', () => {
  test('VIEW-2, VIEW-3: before the reveal neither Stand nor Board holds the answer, a verdict or what others gave', async () => {
    const kaya = await seat('Kaya');
    const bram = await seat('Bram');
    const board = new Screen(server, { role: 'board', code: code() });
    screens.push(board);
    await board.until((screen) => screen.board !== undefined);
    await desk.ask({ kind: 'ask', exercise: build('E', 'minor'), seconds: null });
    await kaya.until(({ shared }) => shared?.stage.kind === 'open');
    await desk.until(({ desk: view }) => view?.rounds.length === 1);
    const right = {
      kind: 'place',
      roundId: roundId(),
      sendId: 'kaya-1',
      places: places([3, 4], [2, 5], [1, 3]),
      done: true,
    };
    expect(await kaya.give(right)).toEqual({ ok: true, late: false });
    await board.until(({ board: view }) => view?.stage.kind === 'open' && view.stage.done === 1);
    await desk.ask({ kind: 'hold' });
    await bram.until(({ shared }) => shared?.stage.kind === 'held');

    const secrets = [/"notes"/, /"degree"/, /"exercise"/, /"share"/, /"verdict":\{/, /"answers"/];
    for (const screen of [kaya, bram, board]) {
      for (const secret of secrets) expect(screen.heard.filter((text) => secret.test(text))).toEqual([]);
    }
    expect(bram.heard.filter((text) => /kaya-1|Kaya|"fret"/.test(text))).toEqual([]);
    const identifiers = desk.desk?.students.map(({ id }) => id) ?? [];
    const names = /Kaya|Bram|Edda|kaya-1/;
    await desk.ask({ kind: 'reveal' });
    await board.until(({ board: view }) => view?.stage.kind === 'revealed');
    await kaya.until(({ own }) => own?.verdict?.kind === 'right');
    expect(kaya.shared?.stage).toMatchObject({
      kind: 'revealed',
      reveal: { exercise: { quality: 'minor' } },
    });
    expect(
      board.heard.filter((text) => names.test(text) || identifiers.some((id) => text.includes(id))),
    ).toEqual([]);
  });
});

describe('ANSWER: one current answer, counted once', () => {
  test('ANSWER-1: a resend changes nothing, and an older send that comes again does not win', async () => {
    const kaya = await seat('Kaya');
    await askFind();
    for (const [fret, id] of [
      [5, 'first'],
      [3, 'second'],
      [5, 'first'],
    ] as const) {
      expect(await kaya.give(place(fret, id))).toEqual({ ok: true, late: false });
    }
    await desk.until(() => answerOf('Kaya')?.verdict.kind === 'right');
    expect(answerOf('Kaya')?.places).toEqual(places([2, 3]));
    expect(desk.desk?.rounds.at(-1)?.share).toEqual({ right: 1, of: 1 });
  });

  test('ANSWER-4: what comes after the reveal is kept as late, and counts only if the teacher says so', async () => {
    const kaya = await seat('Kaya');
    const bram = await seat('Bram');
    await askFind();
    await bram.give(place(3, 'bram-1', true));
    await desk.ask({ kind: 'hold' });
    await desk.ask({ kind: 'reveal' });
    expect(await kaya.give(place(3, 'kaya-late'))).toEqual({ ok: true, late: true });
    expect(await kaya.give(place(3, 'kaya-late'))).toEqual({ ok: true, late: true });
    expect(await bram.give(place(3, 'bram-1', true))).toEqual({ ok: true, late: false });
    await desk.until(() => lateOf('Kaya') !== null);
    expect(desk.desk?.rounds.at(-1)?.share).toEqual({ right: 1, of: 1 });
    const studentId = desk.desk?.students.find(({ name }) => name === 'Kaya')?.id;
    await desk.ask({ kind: 'count-late', roundId: roundId(), studentId, counted: true });
    await desk.until(({ desk: view }) => view?.rounds.at(-1)?.share.of === 2);
  });

  test('ANSWER-5: a slip can be accepted after all, and a student without a device can be entered', async () => {
    const kaya = await seat('Kaya');
    await askFind();
    await kaya.give(place(5, 'one', true));
    const id = (name: string) => desk.desk?.students.find((student) => student.name === name)?.id;
    await desk.ask({ kind: 'enter', studentId: id('Edda'), places: places([2, 3]) });
    await desk.until(() => answerOf('Edda') !== null && answerOf('Kaya') !== null);
    expect(desk.desk?.rounds.at(-1)?.share).toEqual({ right: 1, of: 2 });
    await desk.ask({ kind: 'accept', roundId: roundId(), studentId: id('Kaya'), accepted: true });
    await desk.until(({ desk: view }) => view?.rounds.at(-1)?.share.right === 2);
  });
});

describe('ROUND: the server decides, and forgets nothing', () => {
  test('VIEW-4, ANSWER-2: a restart in mid-round loses nothing, and every screen goes on by itself', async () => {
    const kaya = await seat('Kaya');
    await askFind();
    await kaya.give(place(3, 'before'));
    kaya.shared = undefined;
    desk.desk = undefined;
    await server.restart();
    await kaya.until(({ shared }) => shared?.stage.kind === 'open');
    await desk.until(({ desk: view }) => view !== undefined);
    expect(answerOf('Kaya')?.places).toEqual(places([2, 3]));
    expect(await kaya.give(place(15, 'after', true))).toEqual({ ok: true, late: false });
    await desk.until(() => answerOf('Kaya')?.done === true);
    expect(answerOf('Kaya')?.places).toEqual(places([2, 15]));
  });

  test('ROUND-2: a voided round leaves the screens and the score; undo brings it back', async () => {
    const kaya = await seat('Kaya');
    await askFind();
    await kaya.give(place(3, 'one', true));
    await desk.ask({ kind: 'void' });
    await kaya.until(({ shared }) => shared?.stage.kind === 'rest');
    expect(await kaya.give(place(4, 'two'))).toMatchObject({ ok: false, error: { code: 'round-voided' } });
    await desk.ask({ kind: 'undo' });
    await kaya.until(({ shared }) => shared?.stage.kind === 'open');
    await desk.ask({ kind: 'hold' });
    await desk.ask({ kind: 'reveal' });
    await desk.until(({ desk: view }) => view?.score.now.of === 1);
    expect(desk.desk?.score.now).toEqual({ right: 1, of: 1 });
  });

  test('ROUND-1, ROUND-2: a held round can be opened again, and a second round waits for the first', async () => {
    await askFind();
    expect(await desk.ask({ kind: 'ask', exercise: find('C'), seconds: null })).toMatchObject({
      error: { code: 'round-open' },
    });
    expect(await desk.ask({ kind: 'reveal' })).toMatchObject({ error: { code: 'round-not-held' } });
    await desk.ask({ kind: 'hold' });
    expect(await desk.ask({ kind: 'hold' })).toMatchObject({ error: { code: 'round-held' } });
    await desk.ask({ kind: 'undo' });
    await desk.until(({ desk: view }) => view?.rounds.at(-1)?.phase === 'open');
  });
});

describe('SEAT: who is who', () => {
  test('SEAT-1, SEAT-2: a new name waits for the nod, a taken name too, and a moved seat closes the old device', async () => {
    const newcomer = await seat('Ines');
    expect(newcomer.own).toMatchObject({ seat: 'asking', reason: 'new' });
    await desk.until(({ desk: view }) => view?.asking.length === 1);
    await desk.ask({ kind: 'admit', seatId: desk.desk?.asking[0]?.seatId });
    await newcomer.until(({ own }) => own?.seat === 'in');

    const first = await seat('kaya');
    expect(first.own).toMatchObject({ seat: 'in', name: 'Kaya' });
    const second = await seat('KAYA');
    expect(second.own).toMatchObject({ seat: 'asking', reason: 'move' });
    await desk.until(({ desk: view }) => view?.asking.length === 1);
    await desk.ask({ kind: 'admit', seatId: desk.desk?.asking[0]?.seatId });
    await second.until(({ own }) => own?.seat === 'in');
    await first.until(({ own }) => own?.seat === 'gone');
    expect(first.own?.reason).toBe('moved');
  });

  test('SEAT-2: new names are let in all at once, a name typed twice as one student', async () => {
    for (const name of ['Ines', 'Hani', 'ines']) await seat(name);
    await desk.until(({ desk: view }) => view?.asking.length === 3);
    expect(await desk.ask({ kind: 'admit-new' })).toEqual({ ok: true });
    await desk.until(({ desk: view }) => view?.asking.length === 1);
    expect(desk.desk?.asking[0]).toMatchObject({ name: 'ines', reason: 'move' });
    const present = desk.desk?.students.filter(({ presence }) => presence === 'here').map(({ name }) => name);
    expect(present).toEqual(expect.arrayContaining(['Ines', 'Hani']));
    expect(present).toHaveLength(2);
  });

  test('SEAT-3: "not me" frees the name at once', async () => {
    const first = await seat('Kaya');
    await first.give({ kind: 'leave' });
    const second = await seat('Kaya');
    expect(second.own).toMatchObject({ seat: 'in', name: 'Kaya' });
  });
});

describe('SHOW and SCORE', () => {
  test('ROUND-4: a chart or the teacher’s taps go to every Stand and the Board, not while a round is open', async () => {
    const kaya = await seat('Kaya');
    const board = new Screen(server, { role: 'board', code: code() });
    screens.push(board);
    await desk.ask({ kind: 'show-charts', charts: [build('E', 'minor')] });
    await kaya.until(({ shared }) => shared?.stage.kind === 'show');
    await board.until(({ board: view }) => view?.stage.kind === 'show');
    expect(kaya.shared?.stage).toMatchObject({
      show: { kind: 'chart', instrument: 'guitar', wording: { english: { title: 'E minor' } } },
    });
    await desk.ask({ kind: 'show-taps', places: places([2, 5]) });
    await board.until(({ board: view }) => view?.stage.kind === 'show' && view.stage.show.kind === 'taps');
    await desk.ask({ kind: 'show-nothing' });
    await kaya.until(({ shared }) => shared?.stage.kind === 'rest');
    await askFind();
    const refused = await desk.ask({ kind: 'show-taps', places: places([2, 3]) });
    expect(refused).toMatchObject({ error: { code: 'round-open' } });
  });

  test('ROUND-4: several charts are walked through one by one, and what can’t be shown changes nothing', async () => {
    const kaya = await seat('Kaya');
    const titleAt = () => {
      const stage = kaya.shared?.stage;
      return stage?.kind === 'show' && stage.show.kind === 'chart' ? stage.show.wording.english.title : null;
    };
    const charts = [build('E', 'minor'), build('A', 'minor')];
    await desk.ask({ kind: 'show-charts', charts });
    await kaya.until(() => titleAt() === 'E minor');
    await desk.ask({ kind: 'show-step', at: 1 });
    await kaya.until(() => titleAt() === 'A minor');
    expect(kaya.shared?.stage).toMatchObject({ show: { step: { number: 2, of: 2 } } });
    expect(await desk.ask({ kind: 'show-step', at: 2 })).toMatchObject({ error: { code: 'walk-ended' } });
    const impossible = {
      kind: 'show-charts',
      charts: [...charts, build('E', 'minor', { rootString: 9 as never })],
    };
    expect(await desk.ask(impossible)).toMatchObject({ error: { code: 'exercise-refused' } });
    expect(titleAt()).toBe('A minor');
    await desk.ask({ kind: 'show-nothing' });
    expect(await desk.ask({ kind: 'show-step', at: 0 })).toMatchObject({ error: { code: 'walk-ended' } });
  });

  test('VIEW-3: teams by share right; individuals at the end only, by alias and if wanted', async () => {
    const kaya = await seat('Kaya');
    const bram = await seat('Bram');
    const board = new Screen(server, { role: 'board', code: code() });
    screens.push(board);
    const id = (name: string) => desk.desk?.students.find((student) => student.name === name)?.id;
    await desk.ask({ kind: 'set-student', studentId: id('Kaya'), team: 'Oak' });
    await desk.ask({ kind: 'set-student', studentId: id('Bram'), team: 'Elm' });
    await desk.ask({ kind: 'set-class', settings: { autoAdmit: false, score: 'teams', ranking: true } });
    await kaya.until(({ shared }) => shared?.wantsAlias === true);
    await kaya.give({ kind: 'set-alias', alias: 'Lantern' });
    await askFind();
    await kaya.give(place(3, 'kaya-1', true));
    await bram.give(place(4, 'bram-1', true));
    await desk.ask({ kind: 'hold' });
    await desk.ask({ kind: 'reveal' });
    await desk.ask({ kind: 'next' });
    await board.until(({ board: view }) => view?.stage.kind === 'score');
    expect(board.board?.stage).toMatchObject({
      score: {
        now: { right: 1, of: 2 },
        before: null,
        teams: [
          { team: 'Oak', share: { right: 1, of: 1 } },
          { team: 'Elm', share: { right: 0, of: 1 } },
        ],
        ranking: [],
      },
    });
    await desk.ask({ kind: 'close' });
    await board.until(({ board: view }) => view?.stage.kind === 'over');
    expect(board.board?.stage).toMatchObject({
      score: { ranking: [{ alias: 'Lantern', share: { right: 1, of: 1 } }] },
    });
    expect(board.heard.filter((text) => /Kaya|Bram/.test(text))).toEqual([]);
    const next = await teacher.openClass(groupId);
    screens.push(next.desk);
    await next.desk.ask({ kind: 'ask', exercise: find('C'), seconds: null });
    await next.desk.ask({ kind: 'hold' });
    await next.desk.ask({ kind: 'reveal' });
    await next.desk.until(({ desk: view }) => view?.score.rows.length === 1);
    expect(next.desk.desk?.score.rows[0]?.before).toEqual({ right: 1, of: 2 });
  });
});

describe('EDGE: bad input gets a code and a sentence', () => {
  test('EDGE-1: at the door', async () => {
    expect(await join(server, 'BBBBBB', 'Kaya')).toMatchObject({ error: { code: 'unknown-code' } });
    expect(await join(server, code(), 'x'.repeat(10_000))).toMatchObject({ error: { code: 'too-long' } });
    expect(await join(server, code(), '   ')).toMatchObject({ error: { code: 'malformed' } });
    await desk.ask({ kind: 'close' });
    expect(await join(server, code(), 'Kaya')).toMatchObject({ error: { code: 'class-closed' } });
  });

  test('EDGE-1: on the wire', async () => {
    const kaya = await seat('Kaya');
    await askFind();
    expect(await kaya.give({ kind: 'place', nonsense: true })).toMatchObject({
      error: { code: 'malformed' },
    });
    expect(await kaya.give(place(99, 'far'))).toMatchObject({ error: { code: 'malformed' } });
    expect(await kaya.give(place(30, 'far'))).toMatchObject({ error: { code: 'off-the-neck' } });
    expect(await kaya.give({ ...place(3, 'x'), roundId: 'unheard-of' })).toMatchObject({
      error: { code: 'round-unknown' },
    });
    expect(await kaya.give({ kind: 'hold' })).toMatchObject({ error: { code: 'malformed' } });
    expect(await kaya.give(place(3, 'still-works'))).toEqual({ ok: true, late: false });
  });

  test('EDGE-1: nobody else gets to a Desk', async () => {
    const nobody = new Screen(server, { role: 'desk', classId: desk.desk?.classId });
    screens.push(nobody);
    expect(await nobody.refusal()).toBe('not-signed-in');
    const stranger = new Screen(server, { role: 'stand', token: 'made-up' });
    screens.push(stranger);
    expect(await stranger.refusal()).toBe('seat-unknown');
  });
});

describe('GUESS: codes can be tried a few times only', () => {
  test('GUESS-1: behind a proxy a guesser shuts out nobody else', async () => {
    const proxied = await LiveServer.start({ trustProxy: 1 });
    const board = (from: string) =>
      new Screen(proxied, { role: 'board', code: 'BBBBBB' }, { 'x-forwarded-for': from });
    try {
      for (let tries = 0; tries < 60; tries += 1) {
        const guess = board('203.0.113.5');
        expect(await guess.refusal()).toBe('unknown-code');
        guess.close();
      }
      const guesser = board('203.0.113.5');
      const other = board('203.0.113.6');
      screens.push(guesser, other);
      expect(await guesser.refusal()).toBe('too-many-tries');
      expect(await other.refusal()).toBe('unknown-code');
    } finally {
      await proxied.stop();
    }
  });
});
