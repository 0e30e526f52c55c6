import { networkInterfaces } from 'node:os';
import type { Config } from './config.ts';

type Reach = Pick<Config, 'port' | 'https' | 'publicUrl'>;

/** IPv4 addresses of this machine that other devices of the same network can type. */
export function lanAddresses(): readonly string[] {
  return Object.values(networkInterfaces()).flatMap((found) =>
    (found ?? [])
      .filter(({ family, internal }) => family === 'IPv4' && !internal)
      .map(({ address }) => address),
  );
}

/** What students type, best first: the public address, then each of the local network. */
export function studentAddresses({ port, https, publicUrl }: Reach): readonly string[] {
  const scheme = https ? 'https' : 'http';
  const usual = https ? 443 : 80;
  const suffix = port === usual ? '' : `:${String(port)}`;
  const local = [...lanAddresses(), 'localhost'].map((host) => `${scheme}://${host}${suffix}`);
  return [...(publicUrl ? [publicUrl] : []), ...local];
}

/**
 * Whether a request that says where it was made comes from our own pages: the page's host is the one that it asks,
 * or the public address. Requests without an Origin aren't made by another site's page.
 */
export function isAllowedOrigin(
  { publicUrl }: Pick<Config, 'publicUrl'>,
  request: { readonly origin: string | undefined; readonly host: string | undefined },
): boolean {
  if (request.origin === undefined) return true;
  if (publicUrl && new URL(publicUrl).origin === request.origin) return true;
  return URL.canParse(request.origin) && new URL(request.origin).host === request.host;
}
