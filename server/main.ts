import { accessSync, constants, mkdirSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createApp } from './app.ts';
import { loadConfig, type Config } from './config.ts';
import { createContext } from './context.ts';
import { createServerFor } from './http-server.ts';
import { createLog } from './log.ts';
import { welcome } from './welcome.ts';

/** Stopping takes no longer than this, whoever still holds a connection. Milliseconds. */
const stopWithin = 4500;

async function main(): Promise<void> {
  const loaded = loadConfig();
  if (!loaded.ok) return giveUp(loaded.error);
  const { value: asked } = loaded;
  try {
    // Names of pupils lie here: for the server's own account only.
    mkdirSync(asked.dataDir, { recursive: true, mode: 0o700 });
    accessSync(asked.dataDir, constants.W_OK);
  } catch {
    return giveUp(`The data folder ${asked.dataDir} can't be written. Choose another with DATA_DIR.`);
  }
  const log = createLog(asked.logLevel);
  // The port comes before the store: a second start by mistake must not touch what the first one is using.
  const http = await createServerFor(asked);
  const port = await listen(http, asked).catch((error: NodeJS.ErrnoException) =>
    giveUp(whyNotListening(error, asked)),
  );
  const config = { ...asked, port };
  const context = await createContext(config, log).catch((error: unknown) =>
    giveUp(error instanceof Error ? error.message : String(error)),
  );
  http.on('request', createApp({ config, log, ...context }));
  context.attachSockets(http);

  let stopping = false;
  const stop = () => {
    // A terminal sends the signal to the whole group, and npm passes it on once more.
    if (stopping) return;
    stopping = true;
    setTimeout(() => process.exit(1), stopWithin).unref();
    void context.close().then(
      () => {
        http.close(() => process.exit(0));
        http.closeAllConnections();
      },
      (error: unknown) => {
        log.error({ error }, 'could not close');
        process.exit(1);
      },
    );
  };
  process.on('SIGTERM', stop);
  process.on('SIGINT', stop);
  process.stdout.write(welcome(config, await context.setUpLink()));
}

function listen(http: Server, { port, host }: Config): Promise<number> {
  return new Promise((resolve, reject) => {
    http.once('error', reject);
    http.listen(port, host, () => resolve((http.address() as AddressInfo).port));
  });
}

function whyNotListening({ code, message }: NodeJS.ErrnoException, { port, host }: Config): string {
  if (code === 'EADDRINUSE') return `Port ${String(port)} is taken. Choose another with PORT.`;
  if (code === 'EACCES') return `Port ${String(port)} is not open to this account. Choose another with PORT.`;
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return `This machine has no address ${host}. Choose another with HOST, or leave it out.`;
  return `The server can't listen: ${message}.`;
}

function giveUp(reason: string): never {
  process.stderr.write(`${reason}\n`);
  process.exit(1);
}

await main();
