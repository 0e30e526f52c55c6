import { randomBytes, scrypt, timingSafeEqual, type ScryptOptions } from 'node:crypto';

export const shortestPassphrase = 8;
export const longestPassphrase = 200;

/** 32 MB for each try; with p = 3 the least that OWASP's Password Storage Cheat Sheet advises for this N. */
const cost = { N: 2 ** 15, r: 8, p: 3 };
const hashBytes = 32;

/** Why a new passphrase can't be taken; undefined where it can. */
export function passphraseProblem(passphrase: string): string | undefined {
  const { length } = [...normal(passphrase)];
  if (length < shortestPassphrase) return `Use at least ${String(shortestPassphrase)} characters.`;
  if (length > longestPassphrase) return `Use at most ${String(longestPassphrase)} characters.`;
  return undefined;
}

/** What is kept of a passphrase: `scrypt$N$r$p$salt$hash`, so that the cost can be raised later. */
export async function hashPassphrase(passphrase: string): Promise<string> {
  const salt = randomBytes(16);
  const hash = await derive(passphrase, salt, cost);
  return ['scrypt', cost.N, cost.r, cost.p, salt.toString('base64url'), hash.toString('base64url')].join('$');
}

/** Takes as long for a name that nobody has (`undefined`), so that the time doesn't tell which names exist. */
export async function verifyPassphrase(passphrase: string, kept: string | undefined): Promise<boolean> {
  const known = kept === undefined ? undefined : parse(kept);
  const { salt, hash, ...options } = known ?? {
    ...cost,
    salt: Buffer.alloc(16),
    hash: Buffer.alloc(hashBytes),
  };
  const derived = await derive(passphrase, salt, options);
  return known !== undefined && derived.length === hash.length && timingSafeEqual(derived, hash);
}

function parse(kept: string) {
  const match = /^scrypt\$(\d+)\$(\d+)\$(\d+)\$([\w-]+)\$([\w-]+)$/.exec(kept);
  if (!match) return undefined;
  const [, N, r, p, salt = '', hash = ''] = match;
  return {
    N: Number(N),
    r: Number(r),
    p: Number(p),
    salt: Buffer.from(salt, 'base64url'),
    hash: Buffer.from(hash, 'base64url'),
  };
}

function derive(passphrase: string, salt: Buffer, options: typeof cost): Promise<Buffer> {
  // Node refuses more than 32 MB unless told; scrypt needs 128·N·r bytes and a little more.
  const bounded: ScryptOptions = { ...options, maxmem: 128 * options.N * options.r + 2 ** 20 };
  return new Promise((resolve, reject) => {
    scrypt(normal(passphrase), salt, hashBytes, bounded, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });
}

/** The same characters, however a keyboard puts them together. */
function normal(passphrase: string): string {
  return passphrase.normalize('NFKC');
}
