import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { codeTries } from '../../server/routes/guard.ts';
import { codeLength, codeLetters, newClassCode } from '../../server/secrets.ts';
import { known } from '../../shared/lib/assert.ts';
import type { StudentId } from '../../shared/protocol/ids.ts';
import { find, places } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';
import { join, Screen, sit } from '../support/people.ts';

let live: LiveClass;
const screens: Screen[] = [];
beforeEach(async () => {
  live = await LiveClass.start();
});
afterEach(async () => {
  for (const screen of screens.splice(0)) screen.close();
  await live.stop();
});

const code = () => known(live.desk.desk, 'view').code;
const set = (settings: object) =>
  live.desk.ask({
    kind: 'set-class',
    settings: { autoAdmit: false, score: 'class', ranking: false, ...settings },
  });

/** A device that keeps what the server gives it, as a browser does. */
class Phone {
  token = '';
  #cookie = '';

  async join(name: string): Promise<string | undefined> {
    const response = await fetch(`${live.server.url}/api/join`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: this.#cookie },
      body: JSON.stringify({ code: code(), name }),
    });
    const [cookie] = response.headers.getSetCookie();
    if (cookie) this.#cookie = cookie.split(';')[0] ?? '';
    const { token, error } = (await response.json()) as { token?: string; error?: { code: string } };
    this.token = token ?? '';
    return error?.code;
  }

  async open(): Promise<Screen> {
    const screen = new Screen(live.server, { role: 'stand', token: this.token });
    screens.push(screen);
    await screen.until(({ own, shared }) => own !== undefined && shared !== undefined);
    return screen;
  }

  async sit(name: string): Promise<Screen> {
    expect(await this.join(name)).toBeUndefined();
    return this.open();
  }
}

describe('SEAT-4: a locked class', () => {
  test('lets nobody new in and nobody ask, and says so; a device with a seat comes back', async () => {
    const phone = new Phone();
    const before = await phone.sit('Kaya');
    await set({ locked: true });
    for (const name of ['Bram', 'Somebody New', 'Kaya']) {
      const refusal = await join(live.server, code(), name);
      expect(refusal).toEqual({
        error: { code: 'class-locked', message: 'This class is locked. Ask your teacher to let you in.' },
      });
    }
    expect(live.desk.desk?.asking).toEqual([]);
    before.close();
    expect((await phone.open()).own?.seat).toBe('in');

    await live.server.restart();
    expect(await join(live.server, code(), 'Bram')).toMatchObject({ error: { code: 'class-locked' } });
    await live.desk.until(({ socket }) => socket.connected);
    await set({ locked: false });
    expect((await new Phone().sit('Bram')).own?.seat).toBe('in');
  });
});

describe('SEAT-6: who was sent away', () => {
  async function sendAway(phone: Phone, name: string): Promise<void> {
    await set({ autoAdmit: true });
    const screen = await phone.sit(name);
    expect(screen.own?.seat).toBe('in');
    await live.desk.until(({ desk }) => desk?.students.some((student) => student.name === name) ?? false);
    await live.desk.ask({ kind: 'remove', studentId: live.student(name).id });
    await screen.until(({ own }) => own?.seat === 'gone');
    screen.close();
  }

  test('has no use for the old token', async () => {
    const phone = new Phone();
    await sendAway(phone, 'Intruder');
    const again = new Screen(live.server, { role: 'stand', token: phone.token });
    screens.push(again);
    expect(await again.refusal()).toBe('seat-unknown');
  });

  test('hears nothing more of the class, though the line is open', async () => {
    const kaya = await live.seat('Kaya');
    const away = await new Phone().sit('Bram');
    await live.desk.ask({ kind: 'remove', studentId: live.student('Bram').id });
    await away.until(({ own }) => own?.seat === 'gone');
    await live.desk.ask({ kind: 'ask', exercise: find('D'), seconds: null });
    await kaya.until(({ shared }) => shared?.stage.kind === 'open');
    expect(await away.give({ kind: 'leave' })).toMatchObject({ error: { code: 'seat-unknown' } });
    expect(away.heard.filter((text) => text.includes('Find D'))).toEqual([]);
  });

  test('needs the nod under the same name, also where new names come in by themselves', async () => {
    await sendAway(new Phone(), 'Intruder');
    const other = await new Phone().sit('IntrudеR');
    expect(other.own).toMatchObject({ seat: 'asking', reason: 'refused' });
    await live.desk.until(({ desk }) => desk?.asking.length === 1);
    expect(live.desk.desk?.asking).toMatchObject([{ reason: 'refused' }]);
    await live.desk.ask({ kind: 'admit-new' });
    expect((await new Phone().sit('Innocent')).own?.seat).toBe('in');
    expect(other.own?.seat).toBe('asking');
  });

  test('needs it on the same device under any name, after a restart and after “not me”', async () => {
    const phone = new Phone();
    await sendAway(phone, 'Intruder');
    await live.server.restart();
    const asNew = await phone.sit('Innocent');
    expect(asNew.own).toMatchObject({ seat: 'asking', reason: 'refused' });
    expect(await asNew.give({ kind: 'leave' })).toMatchObject({ ok: true });
    const asBram = await phone.sit('Bram');
    expect(asBram.own).toMatchObject({ seat: 'asking', reason: 'refused' });
  });

  test('stays sent away when the name is taken off the register, and the name is forgotten', async () => {
    const phone = new Phone();
    await sendAway(phone, 'Intruder');
    await live.teacher.call('DELETE', `students/${live.student('Intruder').id}`);
    expect((await phone.sit('Innocent')).own).toMatchObject({ seat: 'asking', reason: 'refused' });
    expect((await new Phone().sit('Intruder')).own?.seat).toBe('in');
  });

  test('comes in again with the teacher’s nod', async () => {
    const phone = new Phone();
    await sendAway(phone, 'Kaya');
    const again = await phone.sit('Kaya');
    await live.desk.until(({ desk }) => desk?.asking.length === 1);
    const seatId = live.desk.desk?.asking[0]?.seatId;
    expect(await live.desk.ask({ kind: 'admit', seatId })).toEqual({ ok: true });
    await again.until(({ own }) => own?.seat === 'in');
    expect(again.own?.name).toBe('Kaya');
  });
});

describe('SEAT-5: one name, one student', () => {
  test('a name that only looks different takes nobody’s place', async () => {
    await set({ autoAdmit: true });
    await new Phone().sit('Kaya');
    for (const name of ['Кауа', 'Ka\u200Bya', '\u202EKaya', 'KÁYA']) {
      const other = await new Phone().sit(name);
      expect(other.own).toMatchObject({ seat: 'asking', reason: 'move' });
    }
    expect(live.desk.desk?.students).toHaveLength(3);
  });

  test('the register takes each name once', async () => {
    await live.teacher.call('POST', `groups/${live.groupId}/students`, {
      names: ['Кауа', 'Br\u00ADam', 'Edda'],
    });
    const { body } = await live.teacher.call<{ students: unknown[] }>('GET', `groups/${live.groupId}`);
    expect(body.students).toHaveLength(3);
    const bram = `students/${live.student('Bram').id}`;
    expect(await live.teacher.call('PATCH', bram, { name: 'Kауa' })).toMatchObject({
      body: { error: { code: 'name-taken' } },
    });
    const rename = { kind: 'set-student', studentId: live.student('Bram').id };
    expect(await live.desk.ask({ ...rename, name: 'kaya' })).toMatchObject({ error: { code: 'name-taken' } });
  });

  test('a student is renamed in the class and on the register', async () => {
    const kaya = await live.seat('Kaya');
    const { id } = live.student('Kaya');
    expect(await live.desk.ask({ kind: 'set-student', studentId: id, name: 'Kaja' })).toEqual({ ok: true });
    await kaya.until(({ own }) => own?.name === 'Kaja');
    expect((await live.teacher.call('PATCH', `students/${id}`, { name: 'Kajsa' })).status).toBe(200);
    await kaya.until(({ own }) => own?.name === 'Kajsa');
    await live.desk.until(({ desk }) => desk?.students.some(({ name }) => name === 'Kajsa') ?? false);
    expect(live.student('Kajsa').id).toBe(id);
  });
});

describe('SEAT-7: two students are made one', () => {
  const merge = (from: StudentId, into: StudentId) =>
    live.teacher.call('POST', `students/${from}/merge`, { into });
  const fretOf = (name: string) => live.student(name).answer?.places[0]?.fret;

  test('answers and seat of the one go to the other, and the device goes on', async () => {
    const bram = await live.seat('Bram');
    await live.ask(find('D'));
    await live.give(bram, { places: places([2, 3]) });
    await live.desk.until(() => live.student('Bram').answer !== null);
    expect((await merge(live.student('Bram').id, live.student('Kaya').id)).status).toBe(200);
    await bram.until(({ own }) => own?.name === 'Kaya' && own.answer !== null);
    await live.desk.until(({ desk }) => desk?.students.length === 2);
    expect(fretOf('Kaya')).toBe(3);
    expect(await live.give(bram, { places: places([2, 15]) })).toEqual({ ok: true, late: false });
    await live.desk.until(() => fretOf('Kaya') === 15);
    await live.server.restart();
    await live.desk.until(({ socket }) => socket.connected);
    expect(fretOf('Kaya')).toBe(15);
  });

  test('where both answered a round the one counted later stays; the older device is closed', async () => {
    const kaya = await live.seat('Kaya');
    const bram = await live.seat('Bram');
    await live.ask(find('D'));
    await live.give(bram, { places: places([2, 4]) });
    await live.give(kaya, { places: places([2, 3]) });
    await live.desk.until(() => live.student('Kaya').answer !== null && live.student('Bram').answer !== null);
    await merge(live.student('Kaya').id, live.student('Bram').id);
    await live.desk.until(({ desk }) => desk?.students.length === 2);
    expect(fretOf('Bram')).toBe(3);
    expect(live.desk.desk?.rounds.at(-1)?.share).toEqual({ right: 1, of: 1 });
    await kaya.until(({ own }) => own?.seat === 'gone');
    expect(kaya.own?.reason).toBe('moved');
    expect(bram.own?.seat).toBe('in');
  });

  test('nobody is merged with themselves or with somebody of another group', async () => {
    const { id } = live.student('Kaya');
    const other = await live.teacher.makeGroup(['Orla']);
    const { body } = await live.teacher.call<{ students: { id: StudentId }[] }>('GET', `groups/${other}`);
    for (const into of [id, known(body.students[0], 'Orla').id])
      expect(await merge(id, into)).toMatchObject({ body: { error: { code: 'student-unknown' } } });
    expect(live.desk.desk?.students).toHaveLength(3);
  });
});

describe('SEAT-8: a token opens one seat', () => {
  test('whatever a Stand says of itself, the answer is that of its own seat', async () => {
    const kaya = await live.seat('Kaya');
    const bram = await live.seat('Bram');
    await live.ask(find('D'));
    const asKaya = { places: places([2, 4]), studentId: live.student('Kaya').id };
    expect(await live.give(bram, asKaya)).toMatchObject({ error: { code: 'malformed' } });
    const sendId = 'one-and-the-same';
    for (const [stand, fret] of [
      [kaya, 3],
      [bram, 4],
    ] as const)
      expect(await live.give(stand, { places: places([2, fret]), sendId })).toMatchObject({ ok: true });
    await live.desk.until(() => live.student('Kaya').answer !== null && live.student('Bram').answer !== null);
    expect(live.student('Kaya').answer?.places).toEqual(places([2, 3]));
    expect(live.student('Bram').answer?.places).toEqual(places([2, 4]));
    await kaya.until(({ own }) => own?.answer !== null);
    for (const stand of [kaya, bram])
      expect(stand.heard.filter((text) => text.includes(live.student('Kaya').id))).toEqual([]);
  });
});

describe('GUESS-2: how hard a code is to guess', () => {
  test('24 bits; 97 days for one address that never rests, 1 in 6,000 in a lesson', async () => {
    expect(new Set(codeLetters).size).toBe(codeLetters.length);
    const codes = codeLetters.length ** codeLength;
    expect(Math.log2(codes)).toBe(24);
    const perSecond = codeTries.points / codeTries.duration;
    const days = codes / 2 / perSecond / 86_400;
    expect(Math.round(days)).toBe(97);
    const lesson = 45 * 60;
    expect((perSecond * lesson) / codes).toBeLessThan(1 / 6000);
    const made = Array.from({ length: 2000 }, newClassCode);
    expect(new Set(made.join(''))).toEqual(new Set(codeLetters));
    expect(made.every((one) => one.length === codeLength)).toBe(true);
  });
});

describe('EDGE-2: hostile names', () => {
  const script = '<img src=x onerror=alert(1)>';

  test('are kept and told as plain text', async () => {
    await set({ autoAdmit: true });
    for (const [typed, kept] of [
      [script, script],
      ['\u202Egnihton\u202C', 'gnihton'],
      ['🎸👩‍🎤❤️', '🎸👩‍🎤❤️'],
      ["Robin'); drop table students;--", "Robin'); drop table students;--"],
      ['=1+1', '=1+1'],
    ] as const) {
      expect((await sitDown(typed)).own).toMatchObject({ seat: 'in', name: kept });
      await live.desk.until(({ desk }) => desk?.students.some(({ name }) => name === kept) ?? false);
    }
  });

  test.each([
    ['a name', 'POST', () => ['join', { code: code(), name: 'x'.repeat(10_000) }]],
    ['a pasted name', 'POST', () => [`groups/${live.groupId}/students`, { names: ['x'.repeat(10_000)] }]],
    ['a title', 'POST', () => [`groups/${live.groupId}/plans`, { title: 'x'.repeat(10_000), exercises: [] }]],
    ['a school', 'PATCH', () => [`groups/${live.groupId}`, { school: 'x'.repeat(10_000) }]],
    ['a group’s name', 'PATCH', () => [`groups/${live.groupId}`, { name: 'x'.repeat(10_000) }]],
    ['a language', 'PATCH', () => [`groups/${live.groupId}`, { language: 'x'.repeat(10_000) }]],
    ['an alias', 'PATCH', () => [`students/${live.student('Kaya').id}`, { alias: 'x'.repeat(10_000) }]],
  ] as const)('%s of 10,000 letters is too long', async (_what, method, request) => {
    const [path, body] = request();
    expect(await live.teacher.call(method, path as string, body as object)).toMatchObject({
      status: 400,
      body: { error: { code: 'too-long' } },
    });
  });

  test('a language is a tag and nothing else', async () => {
    for (const language of ['"><b>', 'en us', '', '\u202Een'])
      expect((await live.teacher.call('PATCH', `groups/${live.groupId}`, { language })).status).toBe(400);
  });

  async function sitDown(name: string): Promise<Screen> {
    const screen = await sit(live.server, code(), name);
    screens.push(screen);
    return screen;
  }
});
