import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { end, isRunning } from './ending.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const hook = (name: string) => ['--import', join(root, 'tests/support/hooks', `${name}.mjs`)];

/** What the server says from inside, since it was asked last. */
export interface Figures {
  /** Processor time in milliseconds. */
  readonly cpu: number;
  /** The longest that its event loop stood still, in milliseconds. */
  readonly stall: number;
  readonly rss: number;
  readonly heap: number;
  readonly resources: Readonly<Record<string, number>>;
  /** When the newest round was durable, and when its broadcast began; nanoseconds of the machine's clock. */
  readonly durable: string;
  readonly emitted: string;
}

export interface ServerOptions {
  readonly dataDir?: string;
  readonly storage?: 'real' | 'none' | 'each';
  /** `synchronous` of the store instead of `full`: only to show that a check can fail. */
  readonly synchronous?: 'off' | 'normal';
  readonly env?: Readonly<Record<string, string>>;
  /** For Node itself, e.g. `--cpu-prof`. */
  readonly nodeArgs?: readonly string[];
}

/** The production build in a process of its own, with a probe inside. */
export class ServerProcess {
  readonly dataDir: string;
  readonly #options: ServerOptions;
  #child: ChildProcess | undefined;
  #port = 0;
  #asked = 0;
  #setUpToken = '';
  /** Everything that it complained of. */
  complaints = '';

  private constructor(dataDir: string, options: ServerOptions) {
    this.dataDir = dataDir;
    this.#options = options;
  }

  static async start(options: ServerOptions = {}): Promise<ServerProcess> {
    const server = new ServerProcess(options.dataDir ?? temporaryFolder(), options);
    await server.resume();
    return server;
  }

  get url(): string {
    return `http://127.0.0.1:${String(this.#port)}`;
  }

  get port(): number {
    return this.#port;
  }

  setUpToken(): Promise<string> {
    return Promise.resolve(this.#setUpToken);
  }

  /** Starts on the same store and port as before; resolves once it takes connections. */
  async resume(env: Readonly<Record<string, string>> = {}, dataDir = this.dataDir): Promise<void> {
    const { storage, synchronous } = this.#options;
    const hooks = [
      ...hook('probe'),
      ...(storage ? hook('storage') : []),
      ...(synchronous ? hook('unsafe') : []),
    ];
    const args = ['--expose-gc', ...(this.#options.nodeArgs ?? []), ...hooks];
    const child = spawn(process.execPath, [...args, join(root, 'dist/server/main.js')], {
      env: {
        PATH: '/usr/bin:/bin',
        HOST: '127.0.0.1',
        PORT: String(this.#port),
        DATA_DIR: dataDir,
        ...(storage ? { ROOTCALL_STORAGE: storage } : {}),
        ...(synchronous ? { ROOTCALL_SYNCHRONOUS: synchronous } : {}),
        ...this.#options.env,
        ...env,
      },
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    });
    this.#child = child;
    const { stdout, stderr } = child;
    if (!stdout || !stderr) throw new Error('the server has no output');
    stderr.on('data', (text: Buffer) => (this.complaints += text.toString()));
    for await (const line of createInterface({ input: stdout })) {
      const link = /http:\/\/(?:localhost|127\.0\.0\.1):(\d+)(\/desk\S*)/.exec(line);
      if (!link) continue;
      this.#port = Number(link[1]);
      if (link[2]?.includes('#')) this.#setUpToken = link[2].split('#')[1] ?? '';
      stdout.on('data', (text: Buffer) => (this.complaints += text.toString()));
      stdout.resume();
      return;
    }
    throw new Error(`the server did not start: ${this.complaints}`);
  }

  get running(): boolean {
    return isRunning(this.#child);
  }

  figures(collect = false): Promise<Figures> {
    const child = this.#child;
    this.#asked += 1;
    const id = this.#asked;
    return new Promise((resolve) => {
      const listener = (message: Figures & { readonly id: number }) => {
        if (message.id !== id) return;
        child?.off('message', listener);
        resolve(message);
      };
      child?.on('message', listener);
      child?.send({ id, collect });
    });
  }

  /** As a crash does: nothing is finished or said. */
  kill(signal: 'SIGKILL' | 'SIGTERM' = 'SIGKILL'): Promise<void> {
    return end(this.#child, signal);
  }

  async remove(): Promise<void> {
    await this.kill();
    rmSync(this.dataDir, { recursive: true, force: true });
  }
}

export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), 'rootcall-process-'));
}

export function copyOf(folder: string): string {
  const copy = temporaryFolder();
  cpSync(folder, copy, { recursive: true });
  return copy;
}

/** Whether there is a production build to start. */
export function isBuilt(): boolean {
  return existsSync(join(root, 'dist/server/main.js'));
}
