import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Answer } from '../../shared/exercise/answer.ts';
import { known } from '../../shared/lib/assert.ts';
import type { ClassSettings } from '../../shared/protocol/commands.ts';
import type { StudentId } from '../../shared/protocol/ids.ts';
import { build, find, places } from '../support/exercises.ts';
import { line, playedEMajor, playedEMinor } from '../support/heard.ts';
import { classOfTwo, type LiveClass } from '../support/live-class.ts';
import type { Screen } from '../support/people.ts';

let live: LiveClass;
let kaya: Screen;
let bram: Screen;

beforeEach(async () => ({ live, kaya, bram } = await classOfTwo()));
afterEach(() => live.stop());

const settings: ClassSettings = { autoAdmit: false, score: 'class', ranking: false };
const idOf = (name: string) => live.student(name).id;

async function play(playing: ClassSettings['playing']): Promise<void> {
  const chosen = playing === undefined ? settings : { ...settings, playing };
  expect(await live.desk.ask({ kind: 'set-class', settings: chosen })).toEqual({ ok: true });
  await live.desk.until(({ desk }) => desk?.settings.playing === playing);
}

async function giveTurn(studentId: StudentId | null): Promise<void> {
  expect(await live.desk.ask({ kind: 'give-turn', studentId })).toEqual({ ok: true });
  await turnIs(studentId);
}

const turnIs = (studentId: StudentId | null) => live.desk.until(({ desk }) => desk?.turn === studentId);
const told = (stand: Screen, playing: string) => stand.until(({ own }) => own?.playing === playing);

describe('TURN-2: the turn', () => {
  test('is one student’s at most, until it is given on or taken back', async () => {
    await play('turns');
    expect(live.desk.desk?.turn).toBeNull();
    await Promise.all([told(kaya, 'wait'), told(bram, 'wait')]);
    await giveTurn(idOf('Kaya'));
    await told(kaya, 'turn');
    await giveTurn(idOf('Bram'));
    await Promise.all([told(kaya, 'wait'), told(bram, 'turn')]);
    await giveTurn(null);
    await told(bram, 'wait');
  });

  test('is given only where playing goes by turns, to somebody on the register', async () => {
    const give = (studentId: string) => live.desk.ask({ kind: 'give-turn', studentId });
    for (const playing of [undefined, 'off', 'on'] as const) {
      await play(playing);
      expect(await give(idOf('Kaya'))).toMatchObject({ ok: false, error: { code: 'no-turns' } });
    }
    await play('turns');
    expect(await give('nobody')).toMatchObject({ ok: false, error: { code: 'student-unknown' } });
    expect(live.desk.desk?.turn).toBeNull();
  });

  test('comes back with a restart', async () => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    await told(kaya, 'turn');
    await live.restart();
    await told(kaya, 'turn');
  });

  test.each(['off', 'on'] as const)('ends where playing is %s', async (playing) => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    await play(playing);
    await Promise.all([turnIs(null), told(kaya, playing)]);
    await play('turns');
    expect(live.desk.desk?.turn).toBeNull();
  });

  test('stays where another setting changes, or another student goes', async () => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    await live.desk.ask({ kind: 'set-class', settings: { ...settings, playing: 'turns', locked: true } });
    await live.desk.ask({ kind: 'remove', studentId: idOf('Bram') });
    await live.desk.until(() => live.student('Bram').presence === 'absent');
    expect(live.desk.desk?.turn).toBe(idOf('Kaya'));
  });

  test('ends with the student’s removal from the class', async () => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    await live.desk.ask({ kind: 'remove', studentId: idOf('Kaya') });
    await turnIs(null);
  });

  test('ends with the student’s removal from the register', async () => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    expect((await live.teacher.call('DELETE', `students/${idOf('Kaya')}`)).status).toBe(200);
    await turnIs(null);
  });

  test('ends with the class', async () => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    await live.desk.ask({ kind: 'close' });
    await turnIs(null);
  });

  test('stays with two students made one', async () => {
    await play('turns');
    await giveTurn(idOf('Kaya'));
    const into = idOf('Edda');
    await live.teacher.call('POST', `students/${idOf('Kaya')}/merge`, { into });
    await turnIs(into);
    await told(kaya, 'turn');
    expect(kaya.own?.name).toBe('Edda');
  });
});

test('TURN-3: no Stand and no Board learns whose turn it is', async () => {
  await play('turns');
  await giveTurn(idOf('Kaya'));
  await told(kaya, 'turn');
  await giveTurn(idOf('Edda'));
  await told(kaya, 'wait');
  const names = new Map([
    [kaya, /Bram|Edda/],
    [bram, /Kaya|Edda/],
    [live.board, /Kaya|Bram|Edda|"turn"|playing/],
  ]);
  for (const [screen, others] of names) {
    const ids = live.desk.desk?.students.map(({ id }) => id) ?? [];
    for (const text of screen.heard) {
      expect(text).not.toMatch(others);
      expect(ids.filter((id) => text.includes(id))).toEqual([]);
    }
  }
  // Bram's own line never changed: it is told once that it waits, and no more.
  expect(bram.heard.filter((text) => text.includes('"wait"'))).toHaveLength(1);
});

describe('TURN-1: how a class plays', () => {
  test('a group’s next class starts as its latest one left it', async () => {
    expect(live.desk.desk?.settings.playing).toBeUndefined();
    await play('turns');
    await live.desk.ask({ kind: 'close' });
    await live.desk.until(({ desk }) => desk?.closed === true);
    const { desk } = await live.teacher.openClass(live.groupId);
    expect(desk.desk?.settings).toEqual({ ...settings, playing: 'turns' });
    desk.close();
  });

  test.each([
    ['off', undefined],
    ['by turns', 'turns'],
  ] as const)('what was played while playing is %s and nobody’s turn counts', async (_, playing) => {
    await play(playing);
    await live.ask(build('E', 'minor'));
    expect(await live.give(kaya, playedEMinor)).toEqual({ ok: true, late: false });
    expect(await live.answerOf('Kaya')).toMatchObject({ ...playedEMinor, verdict: { kind: 'right' } });
  });
});

describe('a played answer in class', () => {
  test('VIEW-2: before the reveal nothing of what somebody played reaches another Stand or the Board', async () => {
    await play('on');
    await live.ask(build('E', 'minor'));
    await live.give(kaya, playedEMajor);
    await live.board.until(({ board }) => board?.stage.kind === 'open' && board.stage.done === 1);
    await live.hold();
    // What was heard, where it was tapped, how it came, and what came of it.
    const played = /"heard"|"pitchClass"|"tones"|"fret"|"way"|"verdict":\{/;
    for (const screen of [bram, live.board])
      expect(screen.heard.filter((text) => played.test(text))).toEqual([]);
    expect(kaya.heard.filter((text) => text.includes('"verdict":{'))).toEqual([]);

    await live.reveal();
    await kaya.until(({ own }) => own?.verdict !== null);
    expect(kaya.own?.verdict).toMatchObject({ kind: 'slip', cause: 'major-for-minor' });
    // The reveal tells the key, and the slip of nobody by name.
    const whose = /"way"|"confidence"|Kaya/;
    for (const screen of [bram, live.board])
      expect(screen.heard.filter((text) => whose.test(text))).toEqual([]);
  });

  test('ANSWER-1, ANSWER-2: it is judged, kept and comes back after a restart', async () => {
    await play('on');
    await live.ask(find('D'));
    // D4 is MIDI 62: string 2, fret 3.
    const found: Answer = { places: places([2, 3]), heard: line(62), way: 'play' };
    await live.give(kaya, found);
    // The same pitch on string 3, fret 7: the string that was tapped is part of the answer.
    await live.give(bram, { ...found, places: places([3, 7]) });
    await live.answerOf('Bram');
    await live.restart();
    expect(kaya.own).toMatchObject({ answer: found });
    expect(live.student('Kaya').answer).toMatchObject({ ...found, verdict: { kind: 'right' } });
    expect(live.student('Bram').answer?.verdict).toMatchObject({ cause: 'right-note-wrong-string' });
  });

  test('TURN-6: the Board’s example is a tapped answer, though a played one came first', async () => {
    await play('on');
    await live.ask(build('E', 'minor'));
    await live.give(kaya, playedEMajor);
    await live.answerOf('Kaya');
    // G sharp on string 3 is fret 1 and, inside the triad round fret 5, string 1, fret 4 (MIDI 68).
    await live.give(bram, { places: places([3, 4], [2, 5], [1, 4]) });
    await live.answerOf('Bram');
    await live.hold();
    await live.reveal();
    const stage = known(live.board.board?.stage, 'stage');
    const slip = stage.kind === 'revealed' ? stage.slip : null;
    expect(slip).toMatchObject({ count: 2, example: { cause: 'major-for-minor' } });
    expect(slip?.example.corrections).toEqual([{ from: places([1, 4])[0], to: places([1, 3])[0] }]);
  });
});
