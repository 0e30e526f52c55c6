import { expect, test, type Browser, type Page } from '@playwright/test';
import { BadNetwork } from '../support/bad-network.ts';
import {
  done,
  expectTask,
  joinClass,
  newPage,
  openDesk,
  phone,
  sharedServer,
  spot,
  step,
  tap,
} from '../support/browser.ts';
import { find } from '../support/exercises.ts';

/** One round of one class, and a student behind every kind of bad network: each answer arrives, and once. */

const server = sharedServer();
let network: BadNetwork;
let desk: Page;
let code: string;

const names = ['Bram', 'Edda', 'Farid', 'Gesa', 'Hanno', 'Ida', 'Jorin', 'Kaya', 'Lotte'];

test.beforeAll(async ({ browser }) => {
  network = await BadNetwork.before(server().url);
  ({ desk, code } = await openDesk(browser, server(), names, [find('D')]));
  await step(desk, 'Ask');
});

test.beforeEach(() => {
  network.webSockets = 'pass';
  network.tried = 0;
  network.up();
});

test.afterAll(() => network.close());

test.describe.configure({ mode: 'serial' });

async function stand(
  browser: Browser,
  name: string,
  prepare: (page: Page) => Promise<unknown> = async () => undefined,
) {
  const page = await newPage(browser, phone);
  await prepare(page);
  await joinClass(page, network, code, name);
  return page;
}

const safe = (page: Page, timeout = 5000) =>
  expect(page.getByText('Done and safe.')).toBeVisible({ timeout });
const pressDone = (page: Page) => page.getByRole('button', { name: /^Done/ }).tap();

test('where WebSockets are refused, the class comes by long-polling', async ({ browser }) => {
  network.webSockets = 'refuse';
  const page = await stand(browser, 'Bram');
  await expectTask(page, 'Find D');
  await tap(page, [2, 3]);
  await done(page);
  expect(network.tried).toBeGreaterThan(0);
});

test('where WebSockets are let in and closed at once, likewise', async ({ browser }) => {
  network.webSockets = 'cut';
  const page = await stand(browser, 'Edda');
  await expectTask(page, 'Find D');
  await tap(page, [2, 3]);
  await done(page);
  expect(network.tried).toBeGreaterThan(0);
});

test('a browser without WebSockets takes part', async ({ browser }) => {
  const page = await stand(browser, 'Farid', (fresh) =>
    fresh.addInitScript(() => Object.defineProperty(window, 'WebSocket', { value: undefined })),
  );
  await expectTask(page, 'Find D');
  await tap(page, [2, 3]);
  await done(page);
  expect(network.tried).toBe(0);
});

test('a network that stands still for 2 s again and again loses nothing', async ({ browser }) => {
  const page = await stand(browser, 'Gesa');
  await expectTask(page, 'Find D');
  for (const fret of [1, 3]) {
    const stalled = network.stall(2000);
    if (fret === 3) await spot(page, 2, 1).tap();
    await tap(page, [2, fret]);
    await stalled;
  }
  const stalled = network.stall(2000);
  await pressDone(page);
  await stalled;
  await safe(page);
});

test('a line that is dead without anybody being told is noticed, and the answer arrives', async ({
  browser,
}) => {
  const page = await stand(browser, 'Hanno');
  await expectTask(page, 'Find D');
  network.deafen();
  await tap(page, [2, 3]);
  await pressDone(page);
  await safe(page, 15_000);
});

test('a phone that slept for 60 s is back within 3 s with its answer', async ({ browser }) => {
  const page = await stand(browser, 'Ida', (fresh) => fresh.clock.install());
  await expectTask(page, 'Find D');
  await tap(page, [2, 3]);
  // Asleep: the page stands still, its line dies unnoticed, and its clock has gone on when it wakes.
  const device = await page.context().newCDPSession(page);
  await device.send('Page.setWebLifecycleState', { state: 'frozen' });
  network.deafen();
  await device.send('Page.setWebLifecycleState', { state: 'active' });
  await page.clock.fastForward(60_000);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await pressDone(page);
  await safe(page, 3000);
  await expect(spot(page, 2, 3)).toHaveAttribute('aria-selected', 'true');
});

test('while the server is out of reach the answer waits, and goes when it is back', async ({ browser }) => {
  const page = await stand(browser, 'Jorin');
  await expectTask(page, 'Find D');
  network.down();
  await tap(page, [2, 3]);
  await pressDone(page);
  await expect(page.getByText('Done and safe.')).toBeHidden();
  await page.waitForTimeout(2500);
  network.up();
  await safe(page, 8000);
});

test('a phone whose clock is an hour ahead is not late', async ({ browser }) => {
  const page = await stand(browser, 'Kaya', (fresh) => fresh.clock.install({ time: Date.now() + 3_600_000 }));
  await expectTask(page, 'Find D');
  await tap(page, [2, 3]);
  await done(page);
  await expect(page.getByText(/late/i)).toBeHidden();
});

test('two tabs of one student are one student, and the way back leads to the same round', async ({
  browser,
}) => {
  const page = await stand(browser, 'Lotte');
  await expectTask(page, 'Find D');
  const other = await page.context().newPage();
  await other.goto(network.url);
  await expectTask(other, 'Find D');
  await tap(page, [2, 3]);
  await expect(spot(other, 2, 3)).toHaveAttribute('aria-selected', 'true');
  await done(other);
  await page.goto('about:blank');
  await page.goBack();
  await expectTask(page, 'Find D');
  await expect(spot(page, 2, 3)).toHaveAttribute('aria-selected', 'true');
  await safe(page);

  await test.step('the same name on another device waits until the teacher moves it', async () => {
    const second = await stand(browser, 'lotte');
    await expect(second.getByText('This name is in use on another device.')).toBeVisible();
    await desk.getByRole('button', { name: 'Move: lotte' }).click();
    await expectTask(second, 'Find D');
    await expect(spot(second, 2, 3)).toHaveAttribute('aria-selected', 'true');
    for (const tab of [page, other]) await expect(tab.getByText('You moved to another device')).toBeVisible();
  });
});

test('two Desks show and steer the same class', async () => {
  const second = await desk.context().newPage();
  await second.goto(desk.url());
  await step(desk, 'Hold');
  await step(second, 'Reveal');
  await expect(desk.getByRole('button', { name: 'Next', exact: true })).toBeEnabled();
  await step(desk, 'Next');
  await expect(second.getByRole('button', { name: 'Reveal', exact: true })).toBeDisabled();
});

test('each student has one answer, the right one', () => {
  const rows = server().rows(
    `select students.name as name, late, json_extract(verdict, '$.kind') as verdict from answers
         join students on students.id = answers.student_id order by name`,
  );
  expect(rows).toEqual(names.map((name) => ({ name, late: 0, verdict: 'right' })));
});
