import express from 'express';
import { createServer, type Server } from 'node:http';
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { pino } from 'pino';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../server/app.ts';
import { loadConfig, type Config } from '../../server/config.ts';

describe('the pages and what stands around them', () => {
  let clientDir: string;
  const servers: Server[] = [];

  beforeAll(() => {
    clientDir = mkdtempSync(join(tmpdir(), 'rootcall-pages-'));
    for (const name of ['index', 'desk', 'board', 'check', 'explore', 'sound'])
      writeFileSync(join(clientDir, `${name}.html`), `<title>${name}</title>`);
    mkdirSync(join(clientDir, 'assets'));
    const script = join(clientDir, 'assets/stand-a1b2c3.js');
    writeFileSync(script, 'export {};');
    writeFileSync(`${script}.gz`, gzipSync('export {};'));
    writeFileSync(`${script}.br`, brotliCompressSync('export {};'));
    writeFileSync(join(clientDir, 'mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  });
  afterAll(() => rmSync(clientDir, { recursive: true }));
  afterEach(() => {
    for (const server of servers.splice(0)) {
      server.close();
      server.closeAllConnections();
    }
  });

  async function serve(environment: Readonly<Record<string, string>> = {}): Promise<string> {
    const loaded = loadConfig(environment, []);
    if (!loaded.ok) throw new Error(loaded.error);
    const config: Config = { ...loaded.value, clientDir };
    const api = express.Router();
    api.post('/echo', (request, response) => void response.json(request.body));
    api.get('/who', (request, response) => void response.json({ ip: request.ip, secure: request.secure }));
    api.get('/bug', () => {
      throw new Error('the inside of the house');
    });
    const health = async () => ({ store: { kind: 'sqlite', schema: 1 } });
    const metrics = { contentType: 'text/plain', text: async () => '# nothing' };
    const server = createServer(createApp({ config, api, health, metrics, log: pino({ level: 'silent' }) }));
    servers.push(server);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`;
  }

  function post(address: string, body: string): Promise<Response> {
    return fetch(address, { method: 'POST', body, headers: { 'content-type': 'application/json' } });
  }

  it('gives each path its page, and lets no browser keep it unasked', async () => {
    const address = await serve();
    const pages = {
      '/': 'index',
      '/join': 'index',
      '/join/BCDFGH': 'index',
      '/desk': 'desk',
      '/desk/groups/7': 'desk',
      '/board': 'board',
      '/board/BCDFGH': 'board',
      '/check': 'check',
      '/explore': 'explore',
      '/sound': 'sound',
    };
    for (const [path, name] of Object.entries(pages)) {
      const response = await fetch(address + path);
      expect(await response.text(), path).toBe(`<title>${name}</title>`);
      expect(response.headers.get('cache-control'), path).toBe('no-cache');
    }
  });

  it('lets hashed files be kept for good, and the others be asked for again', async () => {
    const address = await serve();
    const hashed = await fetch(`${address}/assets/stand-a1b2c3.js`);
    expect(hashed.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    const named = await fetch(`${address}/mark.svg`);
    expect(named.headers.get('cache-control')).toBe('no-cache');
  });

  it.each([
    ['br, gzip', 'br', '.br'],
    ['gzip, deflate', 'gzip', '.gz'],
    ['identity', null, ''],
  ])(
    'gives a browser that takes “%s” the smallest of a file that it can read',
    async (takes, encoding, twin) => {
      const path = '/assets/stand-a1b2c3.js';
      const response = await fetch((await serve()) + path, { headers: { 'accept-encoding': takes } });
      expect(response.headers.get('content-encoding')).toBe(encoding);
      expect(response.headers.get('content-type')).toMatch(/^text\/javascript/);
      expect(response.headers.get('vary')).toContain('accept-encoding');
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect(response.headers.get('content-length')).toBe(String(statSync(clientDir + path + twin).size));
      expect(await response.text()).toBe('export {};');
    },
  );

  it('works over plain HTTP by address: nothing sends a phone to HTTPS', async () => {
    const { headers } = await fetch(await serve());
    expect(headers.get('content-security-policy')).not.toContain('upgrade-insecure-requests');
    for (const name of ['strict-transport-security', 'cross-origin-opener-policy', 'origin-agent-cluster'])
      expect(headers.has(name), name).toBe(false);
  });

  it('allows scripts, styles and connections of its own only, and no frame around it', async () => {
    const { headers } = await fetch(await serve());
    const policy = headers.get('content-security-policy')?.split(';') ?? [];
    expect(policy).toEqual(
      expect.arrayContaining([
        "default-src 'self'",
        "script-src 'self'",
        "style-src 'self'",
        "connect-src 'self'",
        "img-src 'self' data:",
        "frame-ancestors 'none'",
      ]),
    );
    expect(policy.join(' ')).not.toMatch(/unsafe|https?:|\*/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.has('x-powered-by')).toBe(false);
  });

  it('gives microphone and MIDI to its own pages alone, and asks for nothing else of a device', async () => {
    const { headers } = await fetch(await serve());
    const policy = headers.get('permissions-policy')?.split(', ') ?? [];
    expect(policy).toEqual(expect.arrayContaining(['microphone=(self)', 'midi=(self)', 'camera=()']));
    expect(policy.join(' ')).not.toContain('*');
  });

  it('keeps browsers on HTTPS where the public address is, and not for a home-made certificate', async () => {
    const strict = async (environment: Record<string, string>) =>
      (await fetch(await serve(environment))).headers.get('strict-transport-security');
    expect(await strict({ PUBLIC_URL: 'https://rootcall.example' })).toMatch(/^max-age=\d+$/);
    expect(await strict({ HTTPS: '1' })).toBeNull();
  });

  it('tells its health, version and store, and lets nobody keep the answer', async () => {
    const response = await fetch(`${await serve()}/healthz`);
    expect(await response.json()).toEqual({
      status: 'ok',
      version: expect.stringMatching(/^\d+\.\d+\.\d+/),
      build: expect.any(String),
      store: { kind: 'sqlite', schema: 1 },
    });
    expect(response.headers.get('cache-control')).toBe('no-store');
  });

  it('reads JSON up to 16 kB and refuses the rest in one shape', async () => {
    const address = `${await serve()}/api/echo`;
    const small = JSON.stringify({ text: 'x'.repeat(16_000) });
    expect(await (await post(address, small)).text()).toBe(small);

    const large = await post(address, JSON.stringify({ text: 'x'.repeat(17_000) }));
    expect(large.status).toBe(413);
    expect(await large.json()).toEqual({ error: { code: 'too-long', message: expect.any(String) } });

    const broken = await post(address, '{"text":');
    expect(broken.status).toBe(400);
    expect(await broken.json()).toEqual({ error: { code: 'malformed', message: expect.any(String) } });
  });

  it('answers an unknown path for programs in JSON and for people with a way back', async () => {
    const address = await serve();
    const api = await fetch(`${address}/api/nothing-here`);
    expect(api.status).toBe(404);
    expect(await api.json()).toEqual({ error: { code: 'not-found', message: expect.any(String) } });

    const page = await fetch(`${address}/nothing-here`);
    expect(page.status).toBe(404);
    expect(page.headers.get('content-type')).toContain('text/html');
    expect(await page.text()).toContain('<a href="/">');
  });

  it('says nothing of its inside when it meets a bug', async () => {
    const response = await fetch(`${await serve()}/api/bug`);
    expect(response.status).toBe(500);
    const said = await response.text();
    expect(JSON.parse(said)).toEqual({ error: { code: 'server-failed', message: expect.any(String) } });
    expect(said).not.toContain('inside of the house');
  });

  it.each(['/%E0%A4%A', '/join/%E0%A4%A', '/assets/..%2f..%2fpackage.json', '/assets/%00'])(
    'refuses the path %s and goes on',
    async (path) => {
      const address = await serve();
      const response = await fetch(address + path);
      expect(response.status).toBeGreaterThanOrEqual(400);
      expect(response.status).toBeLessThan(500);
      expect((await fetch(address)).status).toBe(200);
    },
  );

  it('believes what a proxy says about the visitor only where it is told to', async () => {
    const headers = { 'x-forwarded-for': '203.0.113.9', 'x-forwarded-proto': 'https' };
    const alone = await fetch(`${await serve()}/api/who`, { headers });
    expect(await alone.json()).toEqual({ ip: '127.0.0.1', secure: false });
    const behind = await fetch(`${await serve({ TRUST_PROXY: 'loopback' })}/api/who`, { headers });
    expect(await behind.json()).toEqual({ ip: '203.0.113.9', secure: true });
  });
});
