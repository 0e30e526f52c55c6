import { chromium, type Browser, type Page } from '@playwright/test';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { newPage, phone } from './browser.ts';
import type { ProductionServer } from './production-server.ts';
import { sampleRate } from './sound/samples.ts';
import { wav } from './sound/wav.ts';

/**
 * Before anything sounds: the file plays from the moment that the microphone is given, and on a busy machine the page
 * needs a while from there until it listens. Seconds.
 */
const silenceBefore = 2;

/**
 * A student's browser of their own, whose microphone hears what the test plays: Chromium reads its file anew each time
 * that listening begins.
 */
export class PlayingBrowser {
  readonly #browser: Browser;
  readonly #folder: string;

  private constructor(browser: Browser, folder: string) {
    this.#browser = browser;
    this.#folder = folder;
  }

  /** `asked`: the browser asks for the microphone, and nobody answers but the test (`grantPermissions`). */
  static async launch(executablePath: string, permission: 'granted' | 'asked' = 'granted') {
    const folder = mkdtempSync(join(tmpdir(), 'rootcall-sound-'));
    const browser = await chromium.launch({
      executablePath,
      args: [
        '--host-resolver-rules=MAP rootcall.test 127.0.0.1',
        '--disable-background-networking',
        '--autoplay-policy=no-user-gesture-required',
        '--use-fake-device-for-media-stream',
        `--use-file-for-fake-audio-capture=${join(folder, 'played.wav')}%noloop`,
        ...(permission === 'granted' ? ['--use-fake-ui-for-media-stream'] : []),
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      ],
    });
    const own = new PlayingBrowser(browser, folder);
    own.hears(new Float32Array(sampleRate));
    return own;
  }

  /** What the microphone hears from the next time on that listening begins; silence before and after. */
  hears(samples: Float32Array, seconds = samples.length / sampleRate + 1): void {
    const before = Math.round(silenceBefore * sampleRate);
    const whole = new Float32Array(before + Math.max(samples.length, Math.round(seconds * sampleRate)));
    whole.set(samples, before);
    writeFileSync(join(this.#folder, 'played.wav'), wav(whole));
  }

  page(options: object = phone): Promise<Page> {
    return newPage(this.#browser, options);
  }

  async close(): Promise<void> {
    await this.#browser.close();
    rmSync(this.#folder, { recursive: true });
  }
}

/** The server's address at which a browser gives a microphone: localhost, as a phone has it by HTTPS. */
export function secureUrl({ url }: Pick<ProductionServer, 'url'>): string {
  const { port } = new URL(url);
  return `http://localhost:${port}`;
}
