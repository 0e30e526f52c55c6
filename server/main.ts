import { accessSync, constants, mkdirSync } from 'node:fs';
import { createServer as createHttpServer, type Server } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { pino } from 'pino';
import { studentAddresses } from './addresses.ts';
import { createApp } from './app.ts';
import { certificateIn } from './certificate.ts';
import { loadConfig, type Config } from './config.ts';
import { createContext } from './context.ts';

/** Stopping takes no longer than this, whoever still holds a connection. Milliseconds. */
const stopWithin = 5000;

async function main(): Promise<void> {
  const loaded = loadConfig();
  if (!loaded.ok) return giveUp(loaded.error);
  const { value: asked } = loaded;
  try {
    mkdirSync(asked.dataDir, { recursive: true });
    accessSync(asked.dataDir, constants.W_OK);
  } catch {
    return giveUp(`The data folder ${asked.dataDir} can't be written. Choose another with DATA_DIR.`);
  }
  const log = pino({ level: asked.logLevel });
  const http = await serverFor(asked);
  let port: number;
  try {
    port = await listen(http, asked);
  } catch (error) {
    const taken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
    return giveUp(taken ? `Port ${String(asked.port)} is taken. Choose another with PORT.` : String(error));
  }
  const config = { ...asked, port };
  const context = await createContext(config, log).catch((error: unknown) => {
    giveUp(error instanceof Error ? error.message : String(error));
  });
  http.on('request', createApp({ config, api: context.api, health: context.health, log }));
  context.attachSockets(http);
  print(welcome(config, await context.setUpLink()));

  const stop = () => {
    setTimeout(() => process.exit(1), stopWithin).unref();
    void context.close().finally(() => {
      http.closeAllConnections();
      http.close(() => process.exit(0));
    });
  };
  process.once('SIGTERM', stop);
  process.once('SIGINT', stop);
}

async function serverFor(config: Config): Promise<Server> {
  return config.https ? createHttpsServer(await certificateIn(config.dataDir)) : createHttpServer();
}

function listen(http: Server, { port, host }: Config): Promise<number> {
  return new Promise((resolve, reject) => {
    http.once('error', reject);
    http.listen(port, host, () => resolve((http.address() as AddressInfo).port));
  });
}

function welcome(config: Config, setUpLink: string | null): string {
  const [best = ''] = studentAddresses(config);
  const local = `${config.https ? 'https' : 'http'}://localhost:${String(config.port)}`;
  return [
    `Rootcall ${config.version} is ready.`,
    setUpLink
      ? `Desk, first use:  ${local}${setUpLink}`
      : `Desk:             ${config.publicUrl ?? local}/desk`,
    ...studentAddresses(config).map(
      (address, index) => `${index === 0 ? 'Students type:' : '          or:'}    ${address}`,
    ),
    `Data folder:      ${config.dataDir}`,
    ...(config.https ? ['The certificate is home-made: each browser asks once whether to trust it.'] : []),
    ...(best === local ? ['This machine has no other address: phones can’t reach it.'] : []),
    '',
  ].join('\n');
}

function print(text: string): void {
  process.stdout.write(text);
}

function giveUp(reason: string): never {
  process.stderr.write(`${reason}\n`);
  process.exit(1);
}

await main();
