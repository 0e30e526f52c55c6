import { once } from 'node:events';
import { connect, type AddressInfo } from 'node:net';
import { io } from 'socket.io-client';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createServerFor } from '../../server/http-server.ts';
import { usualLimits } from '../../server/limits.ts';
import { known } from '../../shared/lib/assert.ts';
import { networkCheck } from '../../shared/protocol/network-check.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { find } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';
import type { LiveServerOptions } from '../support/live-server.ts';
import { join, Screen } from '../support/people.ts';
import { RawLine } from '../support/raw-line.ts';
import { RawStand } from '../support/raw-stand.ts';

interface Summary {
  readonly connected: Readonly<Record<'stand' | 'desk' | 'board', number>>;
}

describe('limits, with a neighbour in the class who notices nothing', { timeout: 60_000 }, () => {
  async function start(options: LiveServerOptions = {}): Promise<LiveClass> {
    const live = await LiveClass.start(undefined, options);
    onTestFinished(() => live.stop());
    return live;
  }

  function line(live: LiveClass, headers = {}): RawLine {
    const raw = new RawLine(live.server, headers);
    onTestFinished(() => raw.end());
    return raw;
  }

  async function token(live: LiveClass, name: string): Promise<string> {
    return known((await join(live.server, live.desk.desk?.code ?? '', name)).token, 'a token');
  }

  async function refusals(live: LiveClass, limit: string): Promise<number> {
    const text = await (await fetch(`${live.server.url}/metrics`)).text();
    return Number(new RegExp(`^rootcall_refused_total\\{limit="${limit}"\\} (\\d+)$`, 'm').exec(text)?.[1]);
  }

  /** The neighbour answers, is safe, and was never cut off. */
  async function neighbour(live: LiveClass): Promise<() => Promise<void>> {
    const stand = await live.seat('Bram');
    let cuts = 0;
    stand.socket.on('disconnect', () => (cuts += 1));
    await live.ask(find('D'));
    return async () => {
      expect(await live.give(stand, { places: [place(2, 3)] })).toEqual({ ok: true, late: false });
      expect(cuts).toBe(0);
    };
  }

  it('cuts off a message of more than 16 kB, and reads one just below', async () => {
    const live = await start();
    const isWell = await neighbour(live);
    const raw = line(live);
    await raw.enter({ role: 'stand', token: await token(live, 'Edda') }, 'stand:own');
    const message = (size: number) => {
      const frame = ['stand:command', { kind: 'leave', filler: '' }];
      return `420${JSON.stringify(frame)}`.replace(
        '""',
        `"${'x'.repeat(size - JSON.stringify(frame).length - 3)}"`,
      );
    };
    raw.socket.send(message(usualLimits.messageBytes));
    await expect
      .poll(() => raw.heard.some((text) => text.startsWith('430') && text.includes('malformed')))
      .toBe(true);
    raw.socket.send(message(usualLimits.messageBytes + 1));
    // RFC 6455, 7.4.1: 1009, the message is too big.
    expect(await raw.closed()).toBe(1009);
    await isWell();
  });

  it('turns away a page of another site', async () => {
    const live = await start();
    expect(await line(live, { origin: 'http://elsewhere.example' }).status()).toBe(403);
    expect(await refusals(live, 'origin')).toBe(1);
    expect(await line(live, { origin: live.server.url }).status()).toBe(101);
  });

  it('answers more handshakes than it can take in with 503, and lets them in a moment later', async () => {
    const live = await start({ limits: { handshakesPerSecond: 5 } });
    const isWell = await neighbour(live);
    const statuses = await Promise.all(Array.from({ length: 20 }, () => line(live).status()));
    expect(new Set(statuses)).toEqual(new Set([101, 503]));
    expect(await refusals(live, 'handshakes')).toBe(statuses.filter((status) => status === 503).length);
    await isWell();
    await expect.poll(() => line(live).status()).toBe(101);
  });

  it('lets in all who come again when they are asked to, and says so where they never may', async () => {
    const live = await start({ limits: { handshakesPerSecond: 5 } });
    const port = Number(new URL(live.server.url).port);
    const auth = { role: 'board', code: live.desk.desk?.code };
    const boards = await Promise.all(Array.from({ length: 15 }, () => RawStand.open(port, auth)));
    for (const board of boards) onTestFinished(() => board.close());
    expect((await summary(live)).connected.board).toBe(16);
    expect(await refusals(live, 'handshakes')).toBeGreaterThan(0);
    await expect(RawStand.open(port, { ...auth, code: 'XXXXXX' })).rejects.toThrow('unknown-code');

    const before = await refusals(live, 'handshakes');
    const busy = await Promise.allSettled(
      Array.from({ length: 15 }, () => RawStand.open(port, auth, { tries: 0 })),
    );
    const refused = busy.filter(({ status }) => status === 'rejected');
    expect(refused.length).toBeGreaterThan(0);
    expect(await refusals(live, 'handshakes')).toBe(before + refused.length);
  });

  it('says in words why it turns a handshake away, where the page can read them', async () => {
    const live = await start({ limits: { handshakesPerSecond: 3 } });
    const polling = `${live.server.url}/socket.io/?EIO=4&transport=polling`;
    const replies = await Promise.all(Array.from({ length: 9 }, () => fetch(polling)));
    const busy = known(
      replies.find(({ status }) => status === 503),
      'a refusal',
    );
    expect(busy.headers.get('retry-after')).toBe('1');
    expect(await busy.json()).toEqual({
      error: { code: 'server-busy', message: 'The server is busy. This page tries again by itself.' },
    });
  });

  it('lets nobody new in while the event loop is late, and everybody once it is not', async () => {
    const live = await start();
    const isWell = await neighbour(live);
    const stall = (milliseconds: number) => {
      const until = performance.now() + milliseconds;
      while (performance.now() < until) Math.sqrt(until);
    };
    // One long stall that is over shuts out nobody.
    stall(1500);
    expect(await line(live).status()).toBe(101);
    const stalling = setInterval(() => stall(300), 1);
    onTestFinished(() => clearInterval(stalling));
    await expect.poll(() => line(live).status(), { timeout: 20_000 }).toBe(503);
    clearInterval(stalling);
    expect(await refusals(live, 'lag')).toBeGreaterThan(0);
    await isWell();
    await expect.poll(() => line(live).status(), { timeout: 10_000, interval: 200 }).toBe(101);
  });

  it('keeps the three newest screens of a seat, and tells the oldest why it goes', async () => {
    const live = await start();
    const isWell = await neighbour(live);
    const auth = { role: 'stand', token: await token(live, 'Edda') };
    let farewell = '';
    const screens: Screen[] = [];
    for (let n = 0; n < 4; n += 1) {
      const screen = new Screen(live.server, auth);
      onTestFinished(() => screen.close());
      if (n === 0) screen.socket.on('farewell', ({ code }) => (farewell = code));
      screens.push(screen);
      await screen.until(({ own }) => own !== undefined);
    }
    await expect.poll(() => screens.map(({ socket }) => socket.connected)).toEqual([false, true, true, true]);
    expect(farewell).toBe('open-elsewhere');
    await isWell();
  });

  it('opens 20 Boards of a class, and the next once one is closed', async () => {
    const live = await start();
    const isWell = await neighbour(live);
    const board = () => {
      const screen = new Screen(live.server, { role: 'board', code: live.desk.desk?.code });
      onTestFinished(() => screen.close());
      return screen;
    };
    const heard = await Promise.all(
      Array.from({ length: 25 }, () => {
        const screen = board();
        return Promise.race([screen.refusal(), screen.until(({ board: view }) => view !== undefined)]);
      }),
    );
    // One is open from the start.
    expect(heard.filter((why) => why === undefined)).toHaveLength(19);
    expect(heard.filter((why) => why === 'boards-full')).toHaveLength(6);
    expect(await refusals(live, 'boards')).toBe(6);
    expect(live.board.socket.connected).toBe(true);
    await isWell();
    // Another class has its own.
    const { desk } = await live.teacher.openClass(await live.teacher.makeGroup(['Hani']));
    onTestFinished(() => desk.close());
    const other = new Screen(live.server, { role: 'board', code: desk.desk?.code });
    onTestFinished(() => other.close());
    await other.until(({ board: view }) => view !== undefined);

    live.board.close();
    await expect.poll(async () => (await summary(live)).connected.board).toBe(20);
    await board().until(({ board: view }) => view !== undefined);
  });

  it('takes 20 commands at once from a seat, however many screens it has, and the next later', async () => {
    const live = await start();
    const isWell = await neighbour(live);
    const auth = { role: 'stand', token: await token(live, 'Edda') };
    const screens = [new Screen(live.server, auth), new Screen(live.server, auth)];
    for (const screen of screens) {
      onTestFinished(() => screen.close());
      await screen.until(({ own }) => own !== undefined);
    }
    const replies = await Promise.all(
      Array.from({ length: 40 }, (_, n) => screens[n % 2]?.give({ kind: 'set-alias', alias: null })),
    );
    const refused = replies.filter((reply) => reply?.ok === false && reply.error.code === 'too-fast');
    // Fewer only where this machine is so slow that the next window has begun.
    expect(refused.length).toBeLessThanOrEqual(20);
    expect(refused.length).toBeGreaterThan(0);
    await isWell();
    await expect
      .poll(() => screens[0]?.give({ kind: 'set-alias', alias: null }), { timeout: 5000, interval: 300 })
      .toMatchObject({ ok: true });
  });

  it('cuts off a line that floods it, whatever it sends', async () => {
    const live = await start();
    const isWell = await neighbour(live);
    for (const packet of ['42["nothing-of-ours"]', '3']) {
      const before = await refusals(live, 'flood');
      const flood = line(live);
      await flood.enter({ role: 'stand', token: await token(live, 'Edda') }, 'stand:own');
      for (let n = 0; n < 1000; n += 1) flood.socket.send(packet);
      await flood.closed();
      expect(await refusals(live, 'flood')).toBe(before + 1);
    }
    await isWell();
  });

  it('ends an HTTP request that takes for ever to say what it wants', async () => {
    const http = await createServerFor(
      { https: false, dataDir: '' },
      { ...usualLimits, headersWithin: 100, stalledEvery: 50 },
    );
    onTestFinished(() => void http.close());
    http.on('request', (_request, response) => void response.end('heard'));
    await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve));
    const { port } = http.address() as AddressInfo;
    const slow = connect(port, '127.0.0.1');
    slow.write('GET / HTTP/1.1\r\nhost: ');
    // RFC 9110, 15.5.9: 408, the server did not receive a complete request in time.
    expect(String(await once(slow, 'data'))).toMatch(/^HTTP\/1\.1 408 /);
    expect(await (await fetch(`http://127.0.0.1:${String(port)}`)).text()).toBe('heard');
  });

  it('drops a screen that reads no more once 256 kB wait for it, and keeps one that reads', async () => {
    const live = await start({ limits: { unsentEvery: 50 } });
    for (let hundred = 0; hundred < 6; hundred += 1) {
      const names = Array.from({ length: 100 }, (_, n) => `Seat ${String(hundred)}-${String(n)}`);
      await live.teacher.call('POST', `groups/${live.groupId}/students`, { names });
    }
    const isWell = await neighbour(live);
    const { classId, desk } = await live.teacher.openClass(live.groupId);
    desk.close();
    const sleeper = line(live, { cookie: live.teacher.cookie });
    await sleeper.enter({ role: 'desk', classId }, 'desk:view');
    sleeper.stopReading();
    let published = 0;
    live.desk.socket.on('desk:view', () => (published += 1));
    // The machine's own buffers hold a few megabytes before anything waits here.
    while ((await refusals(live, 'unsent')) === 0) await changeSomething(live);
    expect(await refusals(live, 'unsent')).toBe(1);
    expect(published).toBeGreaterThan(2);
    expect((await summary(live)).connected.desk).toBe(1);
    await isWell();
  });

  /** Each change is told to every Desk with all its students. */
  async function changeSomething(live: LiveClass): Promise<void> {
    const score = live.desk.desk?.settings.score === 'off' ? 'class' : 'off';
    await live.desk.ask({ kind: 'set-class', settings: { autoAdmit: true, score, ranking: false } });
    await live.desk.until(({ desk }) => desk?.settings.score === score);
  }

  async function summary(live: LiveClass): Promise<Summary> {
    return (await (await fetch(`${live.server.url}/healthz`)).json()) as Summary;
  }

  it('ends a line that says nothing after it opened', async () => {
    const live = await start({ limits: { connectWithin: 100 } });
    const isWell = await neighbour(live);
    const silent = line(live);
    expect(await silent.status()).toBe(101);
    await silent.closed();
    await isWell();
  });

  it('ends a line that does not answer a ping', async () => {
    const live = await start({ limits: { pingEvery: 100, pongWithin: 200 } });
    const isWell = await neighbour(live);
    const dead = line(live);
    await dead.enter({ role: 'board', code: live.desk.desk?.code }, 'board:view');
    expect((await summary(live)).connected.board).toBe(2);
    dead.stopReading();
    await expect.poll(async () => (await summary(live)).connected.board, { timeout: 5000 }).toBe(1);
    await isWell();
  });

  it('takes no more commands of a class than may wait, and serves the others', async () => {
    const live = await start({ limits: { commandsPerClass: 2 } });
    const stand = await live.seat('Bram');
    await live.ask(find('D'));
    const replies = await Promise.all(
      Array.from({ length: 6 }, () => live.give(stand, { places: [place(2, 3)] })),
    );
    const codes = replies.map((reply) => (reply.ok ? 'ok' : reply.error.code));
    expect(new Set(codes)).toEqual(new Set(['ok', 'server-busy']));
    expect(await live.give(stand, { places: [place(2, 3)] })).toEqual({ ok: true, late: false });
  });

  it('tells a device that tries its line the time, and nothing of any class', async () => {
    const live = await start();
    const check = io(live.server.url + networkCheck, { forceNew: true, reconnection: false });
    onTestFinished(() => void check.close());
    const heard: string[] = [];
    check.onAny((event: string) => heard.push(event));
    const now = (await check.timeout(5000).emitWithAck('clock')) as number;
    expect(Math.abs(now - Date.now())).toBeLessThan(1000);
    await live.ask(find('D'));
    await check.timeout(5000).emitWithAck('clock');
    expect(heard).toEqual([]);
    expect((await summary(live)).connected).toEqual({
      stand: 0,
      desk: 1,
      board: 1,
    });
  });
});
