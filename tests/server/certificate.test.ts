import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { generate } from 'selfsigned';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lanAddresses } from '../../server/addresses.ts';
import { certificateIn } from '../../server/certificate.ts';

describe('the certificate that the server makes itself', () => {
  let folder: string;

  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'rootcall-certificate-'))));
  afterEach(() => rmSync(folder, { recursive: true }));

  it('names this machine and its addresses, and its key is the account’s own', async () => {
    const { cert } = await certificateIn(folder);
    const certificate = new X509Certificate(cert);
    expect(certificate.checkHost('localhost')).toBe('localhost');
    for (const address of ['127.0.0.1', ...lanAddresses()])
      expect(certificate.checkIP(address)).toBe(address);
    expect(statSync(join(folder, 'https-key.pem')).mode & 0o077).toBe(0);
  });

  it('is used again, so that browsers ask once', async () => {
    const made = await certificateIn(folder);
    expect(await certificateIn(folder)).toEqual(made);
  });

  it('is made anew when it ends soon', async () => {
    const inTenDays = new Date(Date.now() + 10 * 24 * 3_600_000);
    const altNames = lanAddresses().map((ip) => ({ type: 7 as const, ip }));
    const old = await generate([{ name: 'commonName', value: 'Rootcall' }], {
      notAfterDate: inTenDays,
      extensions: altNames.length > 0 ? [{ name: 'subjectAltName', altNames }] : [],
    });
    writeFileSync(join(folder, 'https-key.pem'), old.private);
    writeFileSync(join(folder, 'https-cert.pem'), old.cert);
    const { validTo } = new X509Certificate((await certificateIn(folder)).cert);
    expect(Date.parse(validTo)).toBeGreaterThan(inTenDays.getTime());
  });

  it('is made anew when its file broke off or fits another key', async () => {
    const first = await certificateIn(folder);
    writeFileSync(join(folder, 'https-cert.pem'), first.cert.slice(0, 200));
    const second = await certificateIn(folder);
    expect(new X509Certificate(second.cert).serialNumber).toMatch(/^[0-9A-F]+$/);
    writeFileSync(join(folder, 'https-key.pem'), first.key);
    expect((await certificateIn(folder)).key).not.toBe(first.key);
  });
});
