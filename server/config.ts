import { existsSync, readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as v from 'valibot';
import { failure, success, type Result } from '../shared/lib/result.ts';

/** All that can be set from outside; the rest of the server never reads the environment. */
export interface Config {
  /** 0 takes any free port. */
  readonly port: number;
  readonly host: string;
  readonly dataDir: string;
  /** How the server is reached from outside, e.g. behind a reverse proxy; without a trailing slash. */
  readonly publicUrl: string | null;
  /** Express's `trust proxy`. */
  readonly trustProxy: string | number | boolean | null;
  readonly logLevel: string;
  readonly https: boolean;
  /** Opens /metrics to other machines; without one only this machine reads them. */
  readonly metricsToken: string | null;
  /** Which build of the pages is served. */
  readonly build: string;
  readonly version: string;
  readonly clientDir: string;
}

const portSchema = v.pipe(v.string(), v.regex(/^\d+$/), v.transform(Number), v.maxValue(65_535));
/** Pages, links and cookies all start at the root: an address with a path would lead nowhere. */
const publicUrlSchema = v.pipe(
  v.string(),
  v.check((text) => {
    if (!URL.canParse(text)) return false;
    const { protocol, pathname, search, hash } = new URL(text);
    return /^https?:$/.test(protocol) && pathname === '/' && search === '' && hash === '';
  }),
  v.transform((text) => new URL(text).origin),
);
const trustProxySchema = v.pipe(v.string(), v.check(isTrustProxy), v.transform(readTrustProxy));
const environmentSchema = v.object({
  PORT: v.optional(portSchema, '8080'),
  HOST: v.optional(v.string(), '0.0.0.0'),
  DATA_DIR: v.optional(v.string(), 'data'),
  PUBLIC_URL: v.optional(publicUrlSchema),
  TRUST_PROXY: v.optional(trustProxySchema),
  LOG_LEVEL: v.optional(v.picklist(['silent', 'fatal', 'error', 'warn', 'info', 'debug', 'trace']), 'warn'),
  HTTPS: v.optional(v.picklist(['0', '1']), '0'),
  METRICS_TOKEN: v.optional(v.pipe(v.string(), v.minLength(16))),
});

const hints: Readonly<Record<string, string>> = {
  PORT: 'a number from 0 to 65535',
  PUBLIC_URL: 'an address that starts with http:// or https://, without a path',
  TRUST_PROXY: 'how many proxies there are, or their addresses (loopback, uniquelocal, 10.0.0.0/8)',
  LOG_LEVEL: 'silent, fatal, error, warn, info, debug or trace',
  HTTPS: '0 or 1',
  METRICS_TOKEN: 'at least 16 characters',
};

/** Reads the environment; the failure is one line for a person. */
export function loadConfig(
  environment: NodeJS.ProcessEnv = process.env,
  args: readonly string[] = process.argv.slice(2),
): Result<Config, string> {
  // Service files set a variable to nothing to leave it out.
  const given = Object.fromEntries(Object.entries(environment).filter(([, text]) => text !== ''));
  const parsed = v.safeParse(environmentSchema, given);
  if (!parsed.success) {
    const name = String(parsed.issues[0].path?.[0].key);
    // A secret has no place on a terminal or in a journal.
    const value = name === 'METRICS_TOKEN' ? 'this' : JSON.stringify(given[name]);
    return failure(`${name} can't be ${value}: it takes ${hints[name] ?? 'text'}.`);
  }
  const { PORT, HOST, DATA_DIR, PUBLIC_URL, TRUST_PROXY, LOG_LEVEL, HTTPS, METRICS_TOKEN } = parsed.output;
  const root = projectRoot();
  return success({
    port: PORT,
    host: HOST,
    dataDir: resolve(root, DATA_DIR),
    publicUrl: PUBLIC_URL ?? null,
    trustProxy: TRUST_PROXY ?? null,
    logLevel: LOG_LEVEL,
    https: HTTPS === '1' || args.includes('--https'),
    metricsToken: METRICS_TOKEN ?? null,
    build: readField(resolve(root, 'dist/build.json'), 'build') ?? 'dev',
    version: readField(resolve(root, 'package.json'), 'version') ?? '0.0.0',
    clientDir: resolve(root, 'dist/client'),
  });
}

/** The project's folder, whether this runs from its source or from `dist`. */
function projectRoot(): string {
  const above = fileURLToPath(new URL('..', import.meta.url));
  return existsSync(resolve(above, 'package.json')) ? above : resolve(above, '..');
}

/** What Express takes: true, a number of proxies, or a list of addresses and networks. */
function isTrustProxy(text: string): boolean {
  return (
    /^(true|false|\d+)$/.test(text) ||
    text.split(',').every((part) => {
      const [address = '', size = '32', ...rest] = part.trim().split('/');
      if (/^(loopback|linklocal|uniquelocal)$/.test(part.trim())) return true;
      const largest = { 0: -1, 4: 32, 6: 128 }[isIP(address)] ?? -1;
      return rest.length === 0 && /^\d+$/.test(size) && Number(size) <= largest;
    })
  );
}

function readTrustProxy(text: string): string | number | boolean {
  if (text === 'true' || text === 'false') return text === 'true';
  return /^\d+$/.test(text) ? Number(text) : text;
}

function readField(file: string, field: string): string | undefined {
  try {
    const content = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
    const value = content[field];
    return typeof value === 'string' ? value : undefined;
  } catch {
    return undefined;
  }
}

/** The one file of the store. */
export function storePath({ dataDir }: Pick<Config, 'dataDir'>): string {
  return join(dataDir, 'rootcall.db');
}
