import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { limitNames } from '../../server/limits.ts';
import { mayReadMetrics } from '../../server/metrics-access.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { find } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';

const token = 'sixteen-letters-or-more';

describe('what a monitor reads', () => {
  let live: LiveClass;
  beforeAll(async () => {
    live = await LiveClass.start(undefined, { metricsToken: token });
    const stands = [await live.seat('Kaya'), await live.seat('Bram')];
    for (const root of ['D', 'E'] as const) {
      await live.ask(find(root));
      for (const stand of stands) await live.give(stand, { places: [place(2, 3)] });
      await live.hold();
    }
    // Taken back and held again, it is still the same round.
    await live.desk.ask({ kind: 'undo' });
    await live.hold();
  });
  afterAll(() => live.stop());

  const read = async (headers = {}) => fetch(`${live.server.url}/metrics`, { headers });
  const value = (text: string, name: string) =>
    Number(
      text
        .split('\n')
        .find((line) => line.startsWith(`${name} `))
        ?.split(' ')[1],
    );

  it('counts screens, classes, rounds and answers', async () => {
    const text = await (await read()).text();
    expect(value(text, 'rootcall_connected{role="stand"}')).toBe(2);
    expect(value(text, 'rootcall_connected{role="desk"}')).toBe(1);
    expect(value(text, 'rootcall_connected{role="board"}')).toBe(1);
    expect(value(text, 'rootcall_open_classes')).toBe(1);
    expect(value(text, 'rootcall_rounds_total')).toBe(2);
    expect(value(text, 'rootcall_answers_total')).toBe(4);
  });

  it('times commits in a histogram, each in one bucket at least', async () => {
    const text = await (await read()).text();
    const count = value(text, 'rootcall_commit_seconds_count');
    expect(count).toBeGreaterThanOrEqual(8);
    expect(value(text, 'rootcall_commit_seconds_bucket{le="+Inf"}')).toBe(count);
    expect(value(text, 'rootcall_commit_seconds_sum')).toBeGreaterThan(0);
  });

  it('tells the lag of the event loop and the memory', async () => {
    const text = await (await read()).text();
    expect(value(text, 'rootcall_event_loop_lag_seconds')).toBeGreaterThanOrEqual(0);
    expect(value(text, 'rootcall_event_loop_lag_p99_seconds')).toBeLessThan(10);
    const rss = process.memoryUsage.rss();
    expect(value(text, 'process_resident_memory_bytes') / rss).toBeCloseTo(1, 0);
    for (const limit of limitNames)
      expect(value(text, `rootcall_refused_total{limit="${limit}"}`), limit).toBe(0);
  });

  it('is in the text format of Prometheus, named as such, and kept by nobody', async () => {
    const response = await read();
    // prometheus.io, "Exposition formats": text/plain, version 0.0.4.
    expect(response.headers.get('content-type')).toMatch(/^text\/plain; *version=0\.0\.4/);
    expect(response.headers.get('cache-control')).toBe('no-store');
    for (const line of (await response.text()).trim().split('\n'))
      if (line !== '')
        expect(line).toMatch(/^(# (HELP|TYPE) [a-z_0-9]+ .+|[a-z_0-9]+(\{[a-z]+="[^"]*"\})? [\d.e+-]+)$/);
  });

  it('holds nothing of anybody', async () => {
    const text = (await (await read()).text()) + (await (await fetch(`${live.server.url}/healthz`)).text());
    const { code = '', group = '', school = '' } = live.desk.desk ?? {};
    for (const word of ['Kaya', 'Bram', 'Edda', 'Mara', code, group, school, live.groupId, live.roundId]) {
      expect(word).not.toBe('');
      expect(text).not.toContain(word);
    }
  });

  it('gives a person the short of it at /healthz', async () => {
    expect(await (await fetch(`${live.server.url}/healthz`)).json()).toMatchObject({
      status: 'ok',
      connected: { stand: 2, desk: 1, board: 1 },
      rounds: 2,
      answers: 4,
      commitP99Ms: expect.any(Number),
      eventLoopLagP99Ms: expect.any(Number),
    });
  });

  it('is for this machine alone, not for whoever comes through a proxy on it', async () => {
    expect((await read()).status).toBe(200);
    for (const name of ['x-forwarded-for', 'forwarded', 'via', 'x-real-ip', 'x-forwarded-host']) {
      const response = await read({ [name]: '127.0.0.1' });
      expect(response.status, name).toBe(403);
      expect(await response.json()).toEqual({
        error: {
          code: 'not-allowed',
          message: 'Metrics are read on the server itself, or with METRICS_TOKEN.',
        },
      });
    }
  });

  it('is for whoever has the token', async () => {
    const forwarded = { 'x-forwarded-for': '203.0.113.9' };
    expect((await read({ ...forwarded, authorization: `Bearer ${token}` })).status).toBe(200);
    for (const authorization of [`Bearer ${token}x`, `Bearer ${token.slice(1)}`, 'Bearer ', token])
      expect((await read({ ...forwarded, authorization })).status, authorization).toBe(403);
  });

  it('is not for a neighbour in the network', () => {
    const from = (remoteAddress: string) =>
      mayReadMetrics({ socket: { remoteAddress } as never, headers: {} }, null);
    for (const address of ['127.0.0.1', '127.0.1.1', '::1', '::ffff:127.0.0.1'])
      expect(from(address), address).toBe(true);
    for (const address of ['192.168.1.20', '10.0.0.7', '203.0.113.9', '::ffff:192.168.1.20', 'fe80::1', ''])
      expect(from(address), address).toBe(false);
  });
});
