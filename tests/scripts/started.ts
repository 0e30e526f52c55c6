import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';

export interface Ended {
  readonly code: number | null;
  readonly output: string;
  readonly complaint: string;
}

/** One of our scripts, running in a process of its own. */
export class Started {
  readonly #child: ChildProcess;
  readonly #ended: Promise<Ended>;
  output = '';
  complaint = '';

  constructor(
    folder: string,
    script: string,
    options: { readonly args?: readonly string[]; readonly env?: Readonly<Record<string, string>> } = {},
  ) {
    // eslint-disable-next-line no-restricted-properties -- where Node lies; a setting of ours must not leak in
    const { PATH = '' } = process.env;
    this.#child = spawn(process.execPath, [join(folder, script), ...(options.args ?? [])], {
      cwd: folder,
      env: { PATH, PORT: '0', ...options.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#child.stdout?.on('data', (text: Buffer) => (this.output += text.toString()));
    this.#child.stderr?.on('data', (text: Buffer) => (this.complaint += text.toString()));
    this.#ended = once(this.#child, 'close').then(([code]) => ({
      code: code as number | null,
      output: this.output,
      complaint: this.complaint,
    }));
  }

  /** Resolves once the script has printed `text`; fails if it ends before. */
  async prints(text: string): Promise<void> {
    while (!this.output.includes(text)) {
      const printed = this.#child.stdout ? once(this.#child.stdout, 'data') : this.#ended;
      const ended = await Promise.race([printed.then(() => undefined), this.#ended]);
      if (ended && !this.output.includes(text))
        throw new Error(`It ended and never printed "${text}":\n${this.output}${this.complaint}`);
    }
  }

  /** What stands behind a label of the printed lines. */
  async printed(label: string): Promise<string> {
    await this.prints('Data folder:');
    await this.prints('\n');
    return new RegExp(`^${label} +(.+)$`, 'm').exec(this.output)?.[1] ?? '';
  }

  /** The server's address on this machine. */
  async address(): Promise<string> {
    return new URL(await this.printed('Desk(?:, first use)?:')).origin;
  }

  signal(name: NodeJS.Signals): void {
    this.#child.kill(name);
  }

  ended(): Promise<Ended> {
    return this.#ended;
  }

  async end(): Promise<Ended> {
    this.signal('SIGTERM');
    return this.#ended;
  }
}
