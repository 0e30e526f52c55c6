import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadConfig } from '../../server/config.ts';

describe('the settings', () => {
  it('need none', () => {
    expect(loadConfig({}, [])).toMatchObject({
      ok: true,
      value: {
        port: 8080,
        host: '0.0.0.0',
        dataDir: resolve('data'),
        publicUrl: null,
        trustProxy: null,
        logLevel: 'warn',
        https: false,
        metricsToken: null,
      },
    });
  });

  it('count as left out where they are empty', () => {
    expect(loadConfig({ PORT: '', PUBLIC_URL: '', TRUST_PROXY: '' }, [])).toEqual(loadConfig({}, []));
  });

  it.each([
    [{ PUBLIC_URL: 'https://rootcall.example/' }, { publicUrl: 'https://rootcall.example' }],
    [{ PUBLIC_URL: 'http://192.168.1.5:8080' }, { publicUrl: 'http://192.168.1.5:8080' }],
    [{ TRUST_PROXY: '1' }, { trustProxy: 1 }],
    [{ TRUST_PROXY: 'true' }, { trustProxy: true }],
    [{ TRUST_PROXY: 'loopback, 10.0.0.0/8, fd00::/8' }, { trustProxy: 'loopback, 10.0.0.0/8, fd00::/8' }],
    [{ DATA_DIR: '/srv/rootcall' }, { dataDir: '/srv/rootcall' }],
    [{ HTTPS: '1' }, { https: true }],
    [{ METRICS_TOKEN: 'sixteen-or-more-' }, { metricsToken: 'sixteen-or-more-' }],
  ])('take %o', (environment, value) => {
    expect(loadConfig(environment, [])).toMatchObject({ ok: true, value });
  });

  it('take --https from the command line', () => {
    expect(loadConfig({}, ['--https'])).toMatchObject({ ok: true, value: { https: true } });
  });

  it.each([
    ['PORT', '70000'],
    ['PORT', '80a'],
    ['PORT', '-1'],
    ['PUBLIC_URL', 'rootcall.example'],
    ['PUBLIC_URL', 'ftp://rootcall.example'],
    ['PUBLIC_URL', 'https://rootcall.example/music'],
    ['TRUST_PROXY', 'everybody'],
    ['TRUST_PROXY', '10.0.0.0/33'],
    ['LOG_LEVEL', 'loud'],
    ['HTTPS', 'yes'],
  ])('refuse %s=%s in one line that names it', (name, text) => {
    const loaded = loadConfig({ [name]: text }, []);
    expect(loaded).toEqual({
      ok: false,
      error: expect.stringMatching(`^${name} can't be "${text}": [^\n]+$`),
    });
  });

  it('refuse a short METRICS_TOKEN without repeating it', () => {
    expect(loadConfig({ METRICS_TOKEN: 'short' }, [])).toEqual({
      ok: false,
      error: "METRICS_TOKEN can't be this: it takes at least 16 characters.",
    });
  });
});
