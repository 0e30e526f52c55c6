import Database from 'better-sqlite3';
import { spawn, type ChildProcess } from 'node:child_process';
import { cp, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { end } from './ending.ts';

const project = fileURLToPath(new URL('../../', import.meta.url));

/** A copy of the production build in its own process, on a real store, all in a temporary folder. */
export class ProductionServer {
  readonly #folder: string;
  #process: ChildProcess | undefined;
  #port = 0;
  /** The path of the one-time link, from the first start. */
  setUpPath = '';

  private constructor(folder: string) {
    this.#folder = folder;
  }

  static async start(): Promise<ProductionServer> {
    const folder = await mkdtemp(join(tmpdir(), 'rootcall-e2e-'));
    await cp(join(project, 'dist'), join(folder, 'dist'), { recursive: true });
    await cp(join(project, 'package.json'), join(folder, 'package.json'));
    await symlink(join(project, 'node_modules'), join(folder, 'node_modules'));
    const server = new ProductionServer(folder);
    await server.resume();
    return server;
  }

  get #dataDir(): string {
    return join(this.#folder, 'data');
  }

  /** What the store answers to a query. */
  rows(query: string): readonly unknown[] {
    const store = new Database(join(this.#dataDir, 'rootcall.db'), { readonly: true });
    try {
      return store.prepare(query).all();
    } finally {
      store.close();
    }
  }

  /** From the next start on the server says that it is another build. */
  async upgrade(): Promise<void> {
    await writeFile(join(this.#folder, 'dist/build.json'), '{"build":"newer"}');
  }

  /** Reached by a name, as a phone reaches it: no secure context. */
  get url(): string {
    return `http://rootcall.test:${String(this.#port)}`;
  }

  /** Starts on the same store and port as before. */
  async resume(): Promise<void> {
    const environment = { PATH: '/usr/bin:/bin', PORT: String(this.#port), DATA_DIR: this.#dataDir };
    const child = spawn(process.execPath, [join(this.#folder, 'dist/server/main.js')], {
      env: environment,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    this.#process = child;
    for await (const line of createInterface({ input: child.stdout })) {
      const link = /http:\/\/localhost:(\d+)(\/desk\S*)/.exec(line);
      if (!link) continue;
      this.#port = Number(link[1]);
      if (link[2]?.includes('#')) this.setUpPath = link[2];
      child.stdout.resume();
      return;
    }
    throw new Error('the server did not start');
  }

  /** As a power cut would: nothing is finished or said. */
  kill(): Promise<void> {
    return end(this.#process);
  }

  async remove(): Promise<void> {
    await this.kill();
    await rm(this.#folder, { recursive: true });
  }
}
