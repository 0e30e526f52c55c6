import { isIPv6 } from 'node:net';
import { networkInterfaces } from 'node:os';
import type { Config } from './config.ts';

type Reach = Pick<Config, 'host' | 'port' | 'https' | 'publicUrl'>;

/** Networks that live inside this machine: containers, virtual machines. Phones never see them. */
const inside = /^(docker|br-|veth|virbr|vmnet|vboxnet|vEthernet)/;

/** IPv4 addresses of this machine that other devices of the same network can type. */
export function lanAddresses(): readonly string[] {
  return Object.entries(networkInterfaces())
    .filter(([name]) => !inside.test(name))
    .flatMap(([, found]) => found ?? [])
    .filter(
      ({ family, internal, address }) => family === 'IPv4' && !internal && !address.startsWith('169.254.'),
    )
    .map(({ address }) => address);
}

/** What students type, best first: the public address, then each of the local network, then this machine's own. */
export function studentAddresses(reach: Reach): readonly string[] {
  const { host, publicUrl } = reach;
  const isEverywhere = host === '0.0.0.0' || host === '::' || host === '';
  const isOwn = host === 'localhost' || host === '::1' || host.startsWith('127.');
  const others = isEverywhere ? lanAddresses() : isOwn ? [] : [host];
  const local = isEverywhere || isOwn ? ['localhost'] : [];
  return [...(publicUrl ? [publicUrl] : []), ...[...others, ...local].map((name) => addressOf(name, reach))];
}

function addressOf(host: string, { port, https }: Reach): string {
  const usual = https ? 443 : 80;
  const suffix = port === usual ? '' : `:${String(port)}`;
  return `${https ? 'https' : 'http'}://${isIPv6(host) ? `[${host}]` : host}${suffix}`;
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
