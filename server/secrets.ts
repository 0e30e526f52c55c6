import { createHash, randomBytes, randomInt } from 'node:crypto';
import type { ClassCode } from '../shared/protocol/ids.ts';

/** A fresh random identifier, 128 bits. */
export function newId(): string {
  return randomBytes(16).toString('base64url');
}

/** A fresh secret that opens something (a session, a seat, a set-up link), 192 bits. */
export function newToken(): string {
  return randomBytes(24).toString('base64url');
}

/** What is kept of a token: its bits are random, so a plain digest is enough. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('base64url');
}

/** Letters that are not vowels (no words) and not mistaken for each other from the last row. */
export const codeLetters = 'BCDFHJKLMPRSTWXZ';

export const codeLength = 6;

/** One of 16.7 million. */
export function newClassCode(): ClassCode {
  let code = '';
  for (let n = 0; n < codeLength; n += 1) code += codeLetters.charAt(randomInt(codeLetters.length));
  return code as ClassCode;
}

/** A code as somebody typed it; undefined where it can't be one. */
export function readClassCode(typed: string): ClassCode | undefined {
  const code = typed.toUpperCase().replace(/[^A-Z]/g, '');
  return code.length === codeLength ? (code as ClassCode) : undefined;
}
