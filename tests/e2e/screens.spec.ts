import { expect, test, type Page } from '@playwright/test';
import { gzipSync } from 'node:zlib';
import { findings, inspected } from '../support/axe.ts';
import {
  done,
  expectTask,
  joinClass,
  laptop,
  newPage,
  openBoard,
  openClass,
  phone,
  resting,
  setUpGroup,
  sharedServer,
  spot,
  step,
  tap,
} from '../support/browser.ts';
import { build, find, name } from '../support/exercises.ts';

/** What every screen owes its reader: access, size, privacy, and a way through a hostile network. */

const server = sharedServer();
let desk: Page;
let code: string;

test.beforeAll(async ({ browser }) => {
  desk = await newPage(browser, { ...laptop, ...inspected });
  const levelled = { exercise: find('D'), harder: [build('E', 'minor'), name('Eb', 4)] };
  await setUpGroup(desk, server(), ['Kaya', 'Bram', 'Edda', 'Farid'], [levelled, build('E', 'minor')]);
  expect(await findings(desk)).toEqual([]);
  code = await openClass(desk);
});

// Tests share one class and follow each other through it.
test.describe.configure({ mode: 'serial' });

test('axe finds nothing serious on any screen, light or dark', async ({ browser }) => {
  expect(await findings(desk)).toEqual([]);
  const board = await openBoard(browser, server(), code, inspected);
  await expect(board.getByText(code.slice(0, 3)).first()).toBeVisible();
  const stand = await newPage(browser, { ...phone, ...inspected });
  await stand.goto(`${server().url}/`);
  await expect(stand).toHaveTitle('Rootcall');
  expect(await findings(stand)).toEqual([]);
  await joinClass(stand, server(), code, 'Kaya');
  await expect(resting(stand)).toBeVisible();
  for (const page of [stand, board]) expect(await findings(page)).toEqual([]);
  await step(desk, 'Ask');
  await expectTask(stand, 'Find D');
  await tap(stand, [2, 2]);
  for (const page of [stand, board, desk]) expect(await findings(page)).toEqual([]);
  await done(stand);
  await step(desk, 'Hold');
  await expect(stand.getByText('Held').first()).toBeVisible();
  for (const page of [stand, board]) expect(await findings(page)).toEqual([]);
  await step(desk, 'Reveal');
  await expect(stand.getByText(/Try|is at|is the/).first()).toBeVisible();
  await desk.keyboard.press('s');
  for (const page of [stand, board, desk]) expect(await findings(page)).toEqual([]);
  await desk.keyboard.press('s');
  await step(desk, 'Next');
  await expect(resting(stand)).toBeVisible();
  for (const page of [board, desk]) expect(await findings(page)).toEqual([]);
});

test('places are large enough to touch, on every phone and for either hand', async ({ browser }) => {
  await step(desk, 'Ask');
  const stand = await newPage(browser, phone);
  await joinClass(stand, server(), code, 'Bram');
  await expectTask(stand, 'Build E minor');
  for (const [width, height, least] of [
    [390, 844, 44],
    [320, 568, 24],
    [844, 390, 44],
  ] as const) {
    await stand.setViewportSize({ width, height });
    await expect
      .poll(
        () =>
          stand
            .getByRole('gridcell')
            .evaluateAll((cells) =>
              Math.min(
                ...cells.flatMap((cell) => [
                  cell.getBoundingClientRect().width,
                  cell.getBoundingClientRect().height,
                ]),
              ),
            ),
        { message: `${String(width)}×${String(height)}` },
      )
      .toBeGreaterThanOrEqual(least);
    for (const button of await stand.getByRole('button').all()) {
      const name = `${await button.innerText()} at ${String(width)}×${String(height)}`;
      // Where a finger lands counts, not what is drawn.
      const reach = least === 24 ? 17 : 21;
      const isHit = await button.evaluate((it, far) => {
        const { left, top, width, height } = it.getBoundingClientRect();
        const root = it.getRootNode() as Document | ShadowRoot;
        return [-far, far].every((dy) =>
          it.contains(root.elementFromPoint(left + width / 2, top + height / 2 + dy)),
        );
      }, reach);
      expect(isHit, name).toBe(true);
    }
  }
});

test('the Desk and the Board fit every window, and use it', async ({ browser }) => {
  const board = await openBoard(browser, server(), code);
  for (const page of [desk, board]) {
    for (const [width, height] of [
      [390, 844],
      [320, 568],
      [1366, 768],
      [1920, 1080],
    ] as const) {
      await page.setViewportSize({ width, height });
      const at = { message: `${page.url()} at ${String(width)}×${String(height)}` };
      const title = page.getByRole('main').getByRole('heading', { name: 'Build E minor' });
      await expect(title).toBeVisible();
      // A title that is folded up word by word has lost its column.
      await expect.poll(async () => (await title.boundingBox())?.width, at).toBeGreaterThan(width / 5);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(overflow, at.message).toBeLessThanOrEqual(0);
    }
  }
  await desk.setViewportSize({ width: 1366, height: 768 });
});

test('the Board has no text under 36 px, and the Stand comes in under 120 kB', async ({ browser }) => {
  const board = await openBoard(browser, server(), code);
  await expectTask(board, 'Build E minor');
  const sizes = await board.evaluate(() => {
    const found: { text: string; px: number }[] = [];
    const look = (root: Document | ShadowRoot) => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) look(element.shadowRoot);
        const text = [...element.childNodes]
          .filter((node) => node.nodeType === Node.TEXT_NODE)
          .map((node) => node.textContent?.trim())
          .join('');
        const box = element.getBoundingClientRect();
        if (text === '' || box.width <= 1 || element.closest('style')) continue;
        const scale = element instanceof SVGGraphicsElement ? (element.getScreenCTM()?.a ?? 1) : 1;
        found.push({ text, px: parseFloat(getComputedStyle(element).fontSize) * scale });
      }
    };
    look(document);
    return found;
  });
  expect(sizes.length).toBeGreaterThan(5);
  expect(sizes.filter(({ px }) => px < 36)).toEqual([]);

  const stand = await newPage(browser, phone);
  const bodies: Promise<Buffer>[] = [];
  const origins = new Set<string>();
  stand.on('response', (response) => {
    origins.add(new URL(response.url()).origin);
    if (/\.(js|css)$/.test(new URL(response.url()).pathname)) bodies.push(response.body());
  });
  await stand.goto(`${server().url}/`, { waitUntil: 'networkidle' });
  const compressed = (await Promise.all(bodies)).reduce((sum, body) => sum + gzipSync(body).length, 0);
  expect(compressed).toBeGreaterThan(10_000);
  expect(compressed).toBeLessThan(120_000);
  expect([...origins]).toEqual([server().url]);
});

test('where WebSockets are cut, answers travel by long-polling', async ({ browser }) => {
  const stand = await newPage(browser, phone);
  await stand.routeWebSocket(/socket\.io/, (socket) => socket.close());
  await joinClass(stand, server(), code, 'Edda');
  await expectTask(stand, 'Build E minor');
  await tap(stand, [3, 4], [2, 5], [1, 3]);
  await done(stand);
});

test('a page that is older than the server reloads itself without losing its unsent answer', async ({
  browser,
}) => {
  const stand = await newPage(browser, phone);
  await joinClass(stand, server(), code, 'Farid');
  await expectTask(stand, 'Build E minor');
  await server().kill();
  await tap(stand, [3, 4], [2, 5]);
  await server().upgrade();
  const reloaded = stand.waitForEvent('framenavigated');
  await server().resume();
  await reloaded;
  await expectTask(stand, 'Build E minor');
  await expect(stand.getByText('Safe').first()).toBeVisible({ timeout: 15_000 });
  for (const fret of [spot(stand, 3, 4), spot(stand, 2, 5)])
    await expect(fret).toHaveAttribute('aria-selected', 'true');
});
