import { io } from 'socket.io-client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ClassConnection, type ClassSocket } from '../../../client/connection/class-connection.ts';
import { find } from '../../support/exercises.ts';
import { LiveClass } from '../../support/live-class.ts';
import { join } from '../../support/people.ts';

/** The device's own line, on a real socket and a real server; only the browser's window is missing. */
describe('a screen’s line to its class', { timeout: 30_000 }, () => {
  let live: LiveClass;
  const lines: ClassConnection<'stand:own' | 'stand:shared'>[] = [];

  beforeEach(async () => {
    vi.stubGlobal('addEventListener', () => undefined);
    vi.stubGlobal('removeEventListener', () => undefined);
    vi.stubGlobal('document', { ...new EventTarget(), addEventListener() {}, removeEventListener() {} });
    live = await LiveClass.start();
  });
  afterEach(async () => {
    for (const line of lines.splice(0)) line.close();
    await live.stop();
    vi.unstubAllGlobals();
  });

  function open(token: string) {
    const options = { autoConnect: false, forceNew: true, transports: ['websocket'], reconnectionDelay: 50 };
    const socket: ClassSocket = io(live.server.url, { ...options, auth: { role: 'stand', token } });
    const line = new ClassConnection<'stand:own' | 'stand:shared'>(socket, 'stand:command', [
      'stand:own',
      'stand:shared',
    ]);
    lines.push(line);
    return line;
  }

  async function seat(): Promise<string> {
    return (await join(live.server, live.desk.desk?.code ?? '', 'Kaya')).token ?? '';
  }

  it('says that the server is being restarted, and comes back by itself', async () => {
    const line = open(await seat());
    await expect.poll(() => line.state).toBe('live');
    let said: string | undefined;
    line.subscribe(() => (said ??= line.state === 'lost' ? line.absence?.code : undefined));
    await live.server.restart();
    await expect.poll(() => line.state, { timeout: 10_000 }).toBe('live');
    expect(said).toBe('server-stopping');
    expect(line.absence).toBeNull();
    expect(line.refusal).toBeNull();
  });

  it('stops trying, and says why, once three newer screens have its place', async () => {
    const token = await seat();
    const first = open(token);
    await expect.poll(() => first.state).toBe('live');
    for (let n = 0; n < 3; n += 1) {
      const next = open(token);
      await expect.poll(() => next.state).toBe('live');
    }
    await expect.poll(() => first.refusal?.code).toBe('open-elsewhere');
    await live.ask(find('D'));
    await expect.poll(() => lines.map((line) => line.state)).toEqual(['lost', 'live', 'live', 'live']);
  });

  it('waits where a class has as many Boards as it may, and comes in once one is closed', async () => {
    const full = await LiveClass.start(undefined, { limits: { boardsPerClass: 1 } });
    const auth = { role: 'board', code: full.desk.desk?.code };
    const socket: ClassSocket = io(full.server.url, { autoConnect: false, transports: ['websocket'], auth });
    const line = new ClassConnection<'board:view'>(socket, 'desk:command', ['board:view']);
    try {
      await expect.poll(() => line.absence?.code).toBe('boards-full');
      expect(line.refusal).toBeNull();
      full.board.close();
      await expect.poll(() => line.state, { timeout: 10_000 }).toBe('live');
      expect(line.absence).toBeNull();
    } finally {
      line.close();
      await full.stop();
    }
  });

  it('refuses a command too long for the wire by itself, and keeps the line', async () => {
    const line = open(await seat());
    await expect.poll(() => line.state).toBe('live');
    expect(await line.send({ kind: 'set-alias', alias: 'ü'.repeat(9000) })).toMatchObject({
      ok: false,
      error: { code: 'too-long' },
    });
    expect(await line.send({ kind: 'set-alias', alias: null })).toMatchObject({ ok: true });
    expect(line.state).toBe('live');
  });
});
