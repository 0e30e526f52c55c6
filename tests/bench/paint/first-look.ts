import type { BrowserContext, CDPSession } from '@playwright/test';

/** One visit. Times in milliseconds from the navigation on. */
export interface Look {
  readonly painted: number;
  readonly ready: number;
  /** Over the wire, by the kinds that the browser's own tools tell apart. */
  readonly bytes: Readonly<Record<string, number>>;
}

/**
 * A slow phone in a slow mobile network. The figures are a public convention of measuring web pages, from memory;
 * the delay is added to each request, the opening of connections stays as fast as it is.
 */
const network = {
  offline: false,
  downloadThroughput: 1_600_000 / 8,
  uploadThroughput: 750_000 / 8,
  latency: 150,
};
const slowdown = 6;

declare global {
  interface Window {
    readyAt?: number;
  }
}

export async function firstLook(
  context: BrowserContext,
  url: string,
  stored: Readonly<Record<string, string>>,
  matters: readonly string[],
): Promise<Look> {
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  const wire = new Wire(cdp);
  await cdp.send('Network.enable');
  await cdp.send('Network.emulateNetworkConditions', network);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  await page.addInitScript(
    ([items, path]) => {
      for (const [key, value] of Object.entries(items)) localStorage.setItem(key, value);
      const look = () => {
        let found: Element | null | undefined = document.querySelector(path[0] ?? '');
        for (const selector of path.slice(1)) found = found?.shadowRoot?.querySelector(selector);
        if (!found) return void requestAnimationFrame(look);
        // What is there before a frame is on the screen with the next one.
        requestAnimationFrame(() => (window.readyAt = performance.now()));
      };
      requestAnimationFrame(look);
    },
    [stored, matters] as const,
  );
  await page.goto(url, { waitUntil: 'commit' });
  await page.waitForFunction(() => window.readyAt !== undefined);
  const bytes = await wire.asked();
  const times = await page.evaluate(() => ({
    painted: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN,
    ready: window.readyAt ?? NaN,
  }));
  return { ...times, bytes };
}

/** What one page has over the wire. */
class Wire {
  readonly #kinds = new Map<string, string>();
  readonly #bytes: Record<string, number> = {};
  readonly #open = new Set<string>();
  #settled: () => void = () => undefined;

  constructor(cdp: CDPSession) {
    cdp.on('Network.requestWillBeSent', ({ requestId, type = 'Other' }) => {
      this.#kinds.set(requestId, type);
      this.#open.add(requestId);
    });
    cdp.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
      this.#add(this.#kinds.get(requestId) ?? 'Other', encodedDataLength);
      this.#end(requestId);
    });
    cdp.on('Network.loadingFailed', ({ requestId }) => this.#end(requestId));
    cdp.on('Network.webSocketFrameReceived', ({ response }) =>
      this.#add('WebSocket', Buffer.byteLength(response.payloadData)),
    );
  }

  #add(kind: string, bytes: number): void {
    this.#bytes[kind] = (this.#bytes[kind] ?? 0) + bytes;
  }

  #end(requestId: string): void {
    this.#open.delete(requestId);
    if (this.#open.size === 0) this.#settled();
  }

  /** All that was asked for by now, once it is here. */
  async asked(): Promise<Readonly<Record<string, number>>> {
    if (this.#open.size > 0) await new Promise<void>((resolve) => (this.#settled = resolve));
    return { ...this.#bytes };
  }
}
