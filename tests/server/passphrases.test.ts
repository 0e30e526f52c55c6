import { scryptSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { hashPassphrase, passphraseProblem, verifyPassphrase } from '../../server/passphrases.ts';

describe('passphrases', () => {
  it('verifies the passphrase that was hashed, and no other', async () => {
    const kept = await hashPassphrase('seven quiet herons');
    expect(await verifyPassphrase('seven quiet herons', kept)).toBe(true);
    expect(await verifyPassphrase('seven quiet heron', kept)).toBe(false);
    expect(await verifyPassphrase('', kept)).toBe(false);
  });

  it('keeps a fresh salt and what it cost beside the hash, and nothing of the passphrase', async () => {
    const [first, second] = await Promise.all([
      hashPassphrase('herons herons'),
      hashPassphrase('herons herons'),
    ]);
    expect(first).toMatch(/^scrypt\$32768\$8\$3\$[\w-]{22}\$[\w-]{43}$/);
    expect(first).not.toBe(second);
    expect(first).not.toContain('herons');
  });

  it('takes letters as the same however a keyboard composes them', async () => {
    const kept = await hashPassphrase('caf\u00e9 terrasse');
    expect(await verifyPassphrase('cafe\u0301 terrasse', kept)).toBe(true);
  });

  it('still verifies a hash of another cost', async () => {
    // RFC 7914, section 12, second test vector: scrypt("password", "NaCl", N=1024, r=8, p=16), here its first 32 bytes.
    const vector = 'fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162';
    expect(scryptSync('password', 'NaCl', 32, { N: 1024, r: 8, p: 16 }).toString('hex')).toBe(vector);
    const encoded = (bytes: Buffer) => bytes.toString('base64url');
    const kept = `scrypt$1024$8$16$${encoded(Buffer.from('NaCl'))}$${encoded(Buffer.from(vector, 'hex'))}`;
    expect(await verifyPassphrase('password', kept)).toBe(true);
    expect(await verifyPassphrase('Password', kept)).toBe(false);
  });

  it('verifies nothing against what is no hash, or for a name that nobody has', async () => {
    for (const kept of ['', 'plain', 'scrypt$1024$8$16$$', undefined]) {
      expect(await verifyPassphrase('password', kept)).toBe(false);
    }
  });

  it('says why a passphrase is too short or too long', () => {
    expect(passphraseProblem('1234567')).toBe('Use at least 8 characters.');
    expect(passphraseProblem('12345678')).toBeUndefined();
    // Seven characters for a reader, though fourteen code units.
    expect(passphraseProblem('🎸'.repeat(7))).toBe('Use at least 8 characters.');
    expect(passphraseProblem('a'.repeat(200))).toBeUndefined();
    expect(passphraseProblem('a'.repeat(201))).toBe('Use at most 200 characters.');
  });
});
