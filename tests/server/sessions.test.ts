import Sqlite from 'better-sqlite3';
import { once } from 'node:events';
import { dirname } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { purgeHourly } from '../../server/purging.ts';
import { openStore } from '../../server/store/sqlite/open-store.ts';
import type { Time } from '../../shared/protocol/ids.ts';
import { HandClock } from '../support/hand-clock.ts';
import { LiveServer } from '../support/live-server.ts';
import { join, Screen, TeacherBrowser } from '../support/people.ts';
import { runTypescript } from './store/run-typescript.ts';

const passphrase = 'seven short steps';
let server: LiveServer;
let teacher: TeacherBrowser;
let classId: string;
let desk: Screen;
const screens: Screen[] = [];

beforeEach(async () => {
  server = await LiveServer.start();
  teacher = new TeacherBrowser(server);
  await teacher.setUp();
  ({ desk, classId } = await teacher.openClass(await teacher.makeGroup(['Kaya'])));
  screens.push(desk);
});
afterEach(async () => {
  for (const screen of screens.splice(0)) screen.close();
  await server.stop();
});

async function signIn(name = 'Mara'): Promise<TeacherBrowser> {
  const browser = new TeacherBrowser(server);
  expect((await browser.call('POST', 'sign-in', { name, passphrase })).status).toBe(200);
  return browser;
}

async function deskOf(browser: TeacherBrowser): Promise<Screen> {
  const screen = new Screen(server, { role: 'desk', classId }, { cookie: browser.cookie });
  screens.push(screen);
  await screen.until(({ desk: view }) => view !== undefined);
  return screen;
}

/** Resolves once the server ended the screen; it may not come back. */
async function ends(screen: Screen): Promise<void> {
  const reason = await new Promise((resolve) => screen.socket.once('disconnect', resolve));
  expect(reason).toBe('io server disconnect');
  const refusal = screen.refusal();
  screen.socket.connect();
  expect(await refusal).toBe('not-signed-in');
}

describe('AUTH-5: the session cookie', () => {
  async function cookieOf(from: LiveServer, path: string, body: object): Promise<string> {
    const response = await fetch(`${from.url}/api/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    return response.headers.getSetCookie()[0] ?? '';
  }

  test('is for no script and no other site, and lasts a term', async () => {
    const cookie = await cookieOf(server, 'sign-in', { name: 'Mara', passphrase });
    expect(cookie.split('; ').slice(1).sort()).toEqual([
      expect.stringMatching(/^Expires=/),
      'HttpOnly',
      'Max-Age=10368000',
      'Path=/',
      'SameSite=Strict',
    ]);
  });

  test('travels by HTTPS only, where that is how the server is reached', async () => {
    const secure = await LiveServer.start({ publicUrl: 'https://rootcall.example' });
    try {
      const token = await secure.setUpToken();
      expect(await cookieOf(secure, 'set-up', { token, name: 'Mara', passphrase })).toMatch(
        /; HttpOnly; Secure; SameSite=Strict$/,
      );
    } finally {
      await secure.stop();
    }
  });

  test('of a Stand opens nothing: it only goes back to the door', async () => {
    const code = desk.desk?.code ?? '';
    const cookie = await cookieOf(server, 'join', { code, name: 'Kaya' });
    expect(cookie.split('; ').slice(1).sort()).toEqual(['HttpOnly', 'Path=/api/join', 'SameSite=Strict']);
    const stand = new Screen(server, { role: 'stand', token: 'made-up' }, { cookie });
    screens.push(stand);
    expect(await stand.refusal()).toBe('seat-unknown');
  });
});

describe('AUTH-6: what a session opened ends with it', () => {
  test('signing out ends this browser’s Desk at once, and no other', async () => {
    const other = await deskOf(await signIn());
    const before = desk.heard.length;
    const ended = ends(desk);
    await teacher.call('POST', 'sign-out', {});
    await ended;
    expect((await teacher.call('GET', 'groups')).status).toBe(401);
    expect(await other.ask({ kind: 'show-nothing' })).toEqual({ ok: true });
    await join(server, other.desk?.code ?? '', 'Hani');
    await other.until(({ desk: view }) => view?.asking.length === 1);
    expect(desk.heard.slice(before).filter((text) => text.includes('Hani'))).toEqual([]);
  });

  test('signing out everywhere ends every Desk of the teacher, and no colleague’s session', async () => {
    const { link } = (await teacher.call<{ link: string }>('POST', 'invitations', {})).body;
    const colleague = new TeacherBrowser(server);
    await colleague.call('POST', 'set-up', { token: link.split('#')[1], name: 'Ines', passphrase });
    const browser = await signIn();
    const ended = [ends(desk), ends(await deskOf(browser))];
    expect((await browser.call('POST', 'sign-out-everywhere', {})).status).toBe(200);
    await Promise.all(ended);
    expect((await teacher.call('GET', 'groups')).status).toBe(401);
    expect((await colleague.call('GET', 'groups')).status).toBe(200);
  });

  test('a new passphrase ends every Desk of the teacher, though another process sets it', async () => {
    const ended = ends(desk);
    const child = runTypescript('server/passphrase.ts', [], { DATA_DIR: dirname(server.storePath) });
    child.stdin.end('nine long strings\n');
    const [code] = (await once(child, 'close')) as [number];
    expect(code).toBe(0);
    await ended;
    const old = await new TeacherBrowser(server).call('POST', 'sign-in', { name: 'Mara', passphrase });
    expect(old.status).toBe(401);
  }, 30_000);
});

describe('AUTH-7: what is over is deleted', () => {
  function kept(table: string): readonly unknown[] {
    const connection = new Sqlite(server.storePath, { readonly: true });
    try {
      return connection.prepare(`select token_hash from ${table} order by 1`).pluck().all();
    } finally {
      connection.close();
    }
  }

  test('sessions and set-up links whose time is over go when the server starts', async () => {
    const me = await teacher.call<{ teacher: { id: never } }>('GET', 'me');
    const store = openStore({ path: server.storePath });
    const teacherId = me.body.teacher.id;
    const [past, coming] = [Date.now() - 1, Date.now() + 60_000] as Time[];
    for (const [tokenHash, expiresAt = past] of [
      ['over', past],
      ['open', coming],
    ] as const) {
      await store.teachers.openSession({ tokenHash, teacherId, expiresAt: expiresAt as Time });
      await store.teachers.addInvitation(tokenHash, expiresAt as Time);
    }
    await store.close();
    expect(kept('sessions')).toContain('over');
    await server.restart();
    expect(kept('sessions')).toEqual(expect.arrayContaining(['open']));
    expect(kept('sessions')).not.toContain('over');
    expect(kept('invitations')).toEqual(['open']);
  });

  test('and every hour, also after an hour in which the store failed', async () => {
    const me = await teacher.call<{ teacher: { id: never } }>('GET', 'me');
    const teacherId = me.body.teacher.id;
    const store = openStore({ path: server.storePath });
    const clock = new HandClock(Date.now() as Time);
    const minutes = (count: number) => (clock.now() + count * 60_000) as Time;
    const ends = { over: minutes(0), first: minutes(30), second: minutes(90), fifth: minutes(270) };
    for (const [tokenHash, expiresAt] of Object.entries(ends)) {
      await store.teachers.openSession({ tokenHash, teacherId, expiresAt });
      await store.teachers.addInvitation(tokenHash, expiresAt);
    }
    const left = (table: string) => kept(table).filter((tokenHash) => Object.hasOwn(ends, String(tokenHash)));
    const both = () => [left('sessions'), left('invitations')];
    const are = (...names: readonly string[]) => [names, names];

    const complaints: string[] = [];
    let broken = false;
    const teachers = {
      ...store.teachers,
      forgetExpired: async (now: Time) => {
        if (broken) throw new Error('no room');
        await store.teachers.forgetExpired(now);
      },
    };
    const log = {
      error: (_details: object, message: string) => void complaints.push(message),
      warn: () => undefined,
      info: () => undefined,
    };
    const gone = () => Promise.resolve();
    const stop = await purgeHourly({ teachers, groups: store.groups }, { clock, log, gone });
    expect(both()).toEqual(are('fifth', 'first', 'second'));
    clock.turn(3_599_000);
    expect(both()).toEqual(are('fifth', 'first', 'second'));
    clock.turn(1000);
    await expect.poll(both).toEqual(are('fifth', 'second'));

    broken = true;
    clock.turn(3_600_000);
    await expect.poll(() => complaints).toEqual(['what is over could not be deleted']);
    expect(both()).toEqual(are('fifth', 'second'));
    broken = false;
    clock.turn(3_600_000);
    await expect.poll(both).toEqual(are('fifth'));

    stop();
    expect(clock.waiting).toBe(0);
    await store.close();
  });
});
