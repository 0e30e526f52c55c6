import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { createApp } from '../../server/app.ts';
import type { Config } from '../../server/config.ts';
import { createContext, type Context } from '../../server/context.ts';

/** The real server in this process, on a free port, on a real store that survives `restart`. */
export class LiveServer {
  readonly #dataDir: string;
  readonly #trustProxy: Config['trustProxy'];
  #http: Server | undefined;
  #context: Context | undefined;
  #port = 0;

  private constructor(dataDir: string, trustProxy: Config['trustProxy']) {
    this.#dataDir = dataDir;
    this.#trustProxy = trustProxy;
  }

  static async start(trustProxy: Config['trustProxy'] = null): Promise<LiveServer> {
    const server = new LiveServer(await mkdtemp(join(tmpdir(), 'rootcall-test-')), trustProxy);
    await server.#open();
    return server;
  }

  get url(): string {
    return `http://127.0.0.1:${String(this.#port)}`;
  }

  async setUpToken(): Promise<string> {
    const link = await this.#context?.setUpLink();
    return link?.split('#')[1] ?? '';
  }

  async restart(): Promise<void> {
    await this.#close();
    await this.#open();
  }

  async stop(): Promise<void> {
    await this.#close();
    await rm(this.#dataDir, { recursive: true });
  }

  async #open(): Promise<void> {
    const config: Config = {
      port: this.#port,
      host: '127.0.0.1',
      dataDir: this.#dataDir,
      publicUrl: null,
      trustProxy: this.#trustProxy,
      logLevel: 'silent',
      https: false,
      build: 'dev',
      version: '0.0.0',
      clientDir: this.#dataDir,
    };
    const log = pino({ level: 'silent' });
    const context = await createContext(config, log);
    const http = createServer(createApp({ config, api: context.api, health: context.health, log }));
    context.attachSockets(http);
    await new Promise<void>((resolve) => http.listen(this.#port, '127.0.0.1', resolve));
    this.#port = (http.address() as AddressInfo).port;
    this.#http = http;
    this.#context = context;
  }

  async #close(): Promise<void> {
    await this.#context?.close();
    this.#http?.closeAllConnections();
    this.#http?.close();
  }
}
