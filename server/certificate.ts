import { createPrivateKey, X509Certificate } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { generate } from 'selfsigned';
import { lanAddresses } from './addresses.ts';

export interface Certificate {
  readonly key: string;
  readonly cert: string;
}

const day = 24 * 3_600_000;

/** The certificate in the data folder; made anew when there is none, it ends soon, or an address is missing. */
export async function certificateIn(dataDir: string): Promise<Certificate> {
  const keyFile = join(dataDir, 'https-key.pem');
  const certFile = join(dataDir, 'https-cert.pem');
  if (existsSync(keyFile) && existsSync(certFile)) {
    const kept = { key: readFileSync(keyFile, 'utf8'), cert: readFileSync(certFile, 'utf8') };
    if (isGood(kept)) return kept;
  }
  // A certificate holds plain host names only; a machine may be called anything.
  const names = ['localhost', hostname()]
    .filter((name) => /^[a-z\d.-]+$/i.test(name))
    .map((value) => ({ type: 2 as const, value }));
  const addresses = ['127.0.0.1', ...lanAddresses()].map((ip) => ({ type: 7 as const, ip }));
  const made = await generate([{ name: 'commonName', value: 'Rootcall' }], {
    keySize: 2048,
    algorithm: 'sha256',
    // Browsers refuse certificates that are valid for longer.
    notAfterDate: new Date(Date.now() + 397 * day),
    extensions: [{ name: 'subjectAltName', altNames: [...names, ...addresses] }],
  });
  writeFileSync(keyFile, made.private, { mode: 0o600 });
  writeFileSync(certFile, made.cert);
  return { key: made.private, cert: made.cert };
}

function isGood({ key, cert }: Certificate): boolean {
  try {
    const certificate = new X509Certificate(cert);
    const lastsOn = Date.parse(certificate.validTo) > Date.now() + 14 * day;
    const names = lanAddresses().every((address) => certificate.checkIP(address) !== undefined);
    return lastsOn && names && certificate.checkPrivateKey(createPrivateKey(key));
  } catch {
    // A file that broke off halfway.
    return false;
  }
}
