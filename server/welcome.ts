import { studentAddresses } from './addresses.ts';
import type { Config } from './config.ts';

/** What whoever starts the server reads: where the Desk is, what students type, where the data lies. */
export function welcome(config: Config, setUpLink: string | null): string {
  const addresses = studentAddresses(config);
  const lines: (readonly [string, string])[] = [
    setUpLink
      ? ['Desk, first use:', `${deskAddress(config)}${setUpLink}`]
      : ['Desk:', `${deskAddress(config)}/desk`],
    ...addresses.map((address, index) => [index === 0 ? 'Students type:' : 'or:', address] as const),
    ['Data folder:', config.dataDir],
  ];
  const notes = [
    ...(config.https ? ['The certificate is home-made: each browser asks once whether to trust it.'] : []),
    ...(addresses.every((address) => address !== config.publicUrl && isLocal(address))
      ? ['Only this machine can reach it: phones need an address in its network.']
      : []),
  ];
  return [
    `Rootcall ${config.version} is ready.`,
    ...lines.map(([name, what]) => `${name.padEnd(18)}${what}`),
    ...notes,
    '',
  ].join('\n');
}

/** The teacher most often sits at this machine; behind a proxy, only the public address leads to the Desk. */
function deskAddress(config: Config): string {
  const addresses = studentAddresses(config);
  return config.publicUrl ?? addresses.find(isLocal) ?? addresses[0] ?? '';
}

function isLocal(address: string): boolean {
  return new URL(address).hostname === 'localhost';
}
