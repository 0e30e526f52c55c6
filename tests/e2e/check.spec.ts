import { expect, test, type Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { BadNetwork } from '../support/bad-network.ts';
import { newPage } from '../support/browser.ts';
import { ProductionServer } from '../support/production-server.ts';

/** "Check this network", on a phone at a plain address, as before a first lesson. */

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const small = { viewport: { width: 320, height: 568 }, hasTouch: true, isMobile: true };

let server: ProductionServer;
test.beforeAll(async () => {
  server = await ProductionServer.start();
});
test.afterAll(() => server.remove());

const row = (page: Page, title: RegExp) =>
  page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: title }) });

async function finished(page: Page): Promise<void> {
  await expect(page.getByRole('status')).toHaveText(/class can|Everything works/, { timeout: 30_000 });
}

test('tries by itself what a class needs, and says it in words that fit a small phone', async ({
  browser,
}) => {
  const page = await newPage(browser, small);
  await page.goto(`${server.url}/check`);
  await finished(page);
  for (const title of [/^Server/, /WebSocket/, /long-polling/, /^Clock/])
    await expect(row(page, title)).toContainText('Works');
  for (const title of [/HTTPS/, /^Microphone/, /Screen stays on/])
    await expect(row(page, title)).toContainText('Limited');
  await expect(page.getByRole('status')).toHaveText('A class can be held here. 3 things are limited.');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
  const again = page.getByRole('button', { name: 'Check again' });
  expect((await again.boundingBox())?.height).toBeGreaterThanOrEqual(44);
});

test('tells a cut WebSocket from a server that is down', async ({ browser }) => {
  const page = await newPage(browser, small);
  await page.routeWebSocket(/socket\.io/, (socket) => socket.close());
  await page.goto(`${server.url}/check`);
  await finished(page);
  await expect(row(page, /WebSocket/)).toContainText('does not let it through');
  await expect(row(page, /long-polling/)).toContainText('It carries the class');

  await server.kill();
  await page.getByRole('button', { name: 'Check again' }).click();
  await expect(page.getByRole('status')).toContainText('can’t be held', { timeout: 30_000 });
  await expect(row(page, /^Server/)).toContainText('does not answer');
  await server.resume();
  await page.getByRole('button', { name: 'Check again' }).click();
  await expect(page.getByRole('status')).toHaveText(/can be held here/, { timeout: 30_000 });
});

test('sees that a WebSocket comes through by now, and says what open pages have to do', async ({
  browser,
}) => {
  const network = await BadNetwork.before(server.url);
  network.webSockets = 'refuse';
  const page = await newPage(browser, small);
  await page.goto(`${network.url}/check`);
  await finished(page);
  await expect(row(page, /WebSocket/)).toContainText('take it once they are loaded again');

  network.webSockets = 'pass';
  await page.getByRole('button', { name: 'Check again' }).click();
  await expect(row(page, /WebSocket/)).toContainText('Works');
  await page.close();
  await network.close();
});

test('can be read by everybody, light and dark', async ({ browser }) => {
  const page = await newPage(browser, { ...small, bypassCSP: true });
  await page.goto(`${server.url}/check`);
  await finished(page);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const violations = await page.evaluate(async (source) => {
      const scope = window as unknown as {
        axe?: { run(): Promise<{ violations: readonly { id: string }[] }> };
      };
      if (!scope.axe) new Function(source)();
      return (await scope.axe?.run())?.violations.map(({ id }) => id);
    }, axe);
    expect(violations).toEqual([]);
  }
});
