import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DestinationStream } from 'pino';
import { createApp } from '../../server/app.ts';
import type { Config } from '../../server/config.ts';
import { createContext, type Context } from '../../server/context.ts';
import { usualLimits, type Limits } from '../../server/limits.ts';
import { createLog } from '../../server/log.ts';
import { known } from '../../shared/lib/assert.ts';

export interface LiveServerOptions {
  readonly trustProxy?: Config['trustProxy'];
  readonly publicUrl?: string;
  readonly metricsToken?: string;
  /** Limits other than the usual, so that a test can reach them. */
  readonly limits?: Partial<Limits>;
  /** Where everything goes that is logged, down to the finest level. */
  readonly logTo?: DestinationStream;
}

/** The real server in this process, on a free port, on a real store that survives `restart`. */
export class LiveServer {
  readonly #dataDir: string;
  readonly #options: LiveServerOptions;
  #http: Server | undefined;
  #context: Context | undefined;
  #port = 0;

  private constructor(dataDir: string, options: LiveServerOptions) {
    this.#dataDir = dataDir;
    this.#options = options;
  }

  static async start(options: LiveServerOptions = {}): Promise<LiveServer> {
    const server = new LiveServer(await mkdtemp(join(tmpdir(), 'rootcall-test-')), options);
    await server.#open();
    return server;
  }

  get url(): string {
    return `http://127.0.0.1:${String(this.#port)}`;
  }

  /** The file of its store. */
  get storePath(): string {
    return join(this.#dataDir, 'rootcall.db');
  }

  /** The resources that it serves. */
  get api(): Context['api'] {
    return known(this.#context, 'a running server').api;
  }

  async setUpToken(): Promise<string> {
    const link = await this.#context?.setUpLink();
    return link?.split('#')[1] ?? '';
  }

  async restart(meanwhile: () => void = () => undefined): Promise<void> {
    await this.#close();
    meanwhile();
    await this.#open();
  }

  async stop(): Promise<void> {
    await this.#close();
    await rm(this.#dataDir, { recursive: true });
  }

  async #open(): Promise<void> {
    const { trustProxy = null, publicUrl = null, metricsToken = null, limits, logTo } = this.#options;
    const config: Config = {
      port: this.#port,
      host: '127.0.0.1',
      dataDir: this.#dataDir,
      publicUrl,
      trustProxy,
      logLevel: 'silent',
      https: false,
      metricsToken,
      build: 'dev',
      version: '0.0.0',
      clientDir: this.#dataDir,
    };
    const log = createLog(logTo ? 'trace' : 'silent', logTo);
    const context = await createContext(config, log, { ...usualLimits, ...limits });
    const http = createServer(createApp({ config, log, ...context }));
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
