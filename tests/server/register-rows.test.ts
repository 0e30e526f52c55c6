import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LiveServer } from '../support/live-server.ts';
import { TeacherBrowser } from '../support/people.ts';

let server: LiveServer;
let teacher: TeacherBrowser;

beforeAll(async () => {
  server = await LiveServer.start();
  teacher = new TeacherBrowser(server);
  await teacher.setUp();
});
afterAll(() => server.stop());

interface Row {
  readonly name: string;
  readonly seatNumber: number | null;
  readonly team: string | null;
  readonly moreTime: number;
}

async function registerOf(group: string): Promise<readonly Row[]> {
  const { body } = await teacher.call<{ students: readonly Row[] }>('GET', `groups/${group}`);
  return body.students.map(({ name, seatNumber, team, moreTime }) => ({ name, seatNumber, team, moreTime }));
}

const row = (name: string, fields: Partial<Row> = {}): Row => {
  return { name, seatNumber: null, team: null, moreTime: 1, ...fields };
};

describe('EXCHANGE-5: the rows of a table come onto the register in one request', () => {
  test('with all that they say; who is there stays as they are', async () => {
    const group = await teacher.makeGroup(['Amara']);
    const rows = [row('ÁMARA', { team: 'Oak' }), row('Bram', { seatNumber: 3, team: 'Elm', moreTime: 1.5 })];
    const reply = await teacher.call('POST', `groups/${group}/students`, { students: rows });
    expect(reply.status).toBe(200);
    // Those with a seat come first.
    expect(await registerOf(group)).toEqual([rows[1], row('Amara')]);
  });

  test('a whole register fits into one', async () => {
    const group = await teacher.makeGroup([]);
    const students = Array.from({ length: 300 }, (_, at) =>
      row(`${'ä'.repeat(36)}${String(at)}`, { seatNumber: at + 1, team: 'ö'.repeat(20), moreTime: 1.25 }),
    );
    expect((await teacher.call('POST', `groups/${group}/students`, { students })).status).toBe(200);
    expect(await registerOf(group)).toHaveLength(300);
  });

  const refused: readonly (readonly [string, readonly object[], number])[] = [
    ['a seat twice', [row('Bram', { seatNumber: 3 }), row('Celeste', { seatNumber: 3 })], 409],
    ['a seat that is taken', [row('Bram'), row('Celeste', { seatNumber: 7 })], 409],
    ['a name that is too long', [row('Bram'), row('x'.repeat(41))], 400],
    ['a seat that is none', [row('Bram'), row('Celeste', { seatNumber: 0 })], 400],
    ['more time that is not offered', [row('Bram'), row('Celeste', { moreTime: 9 })], 400],
    ['something else', [{ ...row('Bram'), alias: 'x' }], 400],
    ['nobody', [], 400],
    ['too many', Array.from({ length: 301 }, (_, at) => row(String(at))), 400],
  ];
  test.each(refused)('all or none: %s', async (_, students, status) => {
    const group = await teacher.makeGroup([]);
    const first = row('Amara', { seatNumber: 7 });
    await teacher.call('POST', `groups/${group}/students`, { students: [first] });
    const reply = await teacher.call('POST', `groups/${group}/students`, { students });
    expect(reply.status).toBe(status);
    expect(await registerOf(group)).toEqual([first]);
  });
});
