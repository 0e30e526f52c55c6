import { expect, test, type Browser, type BrowserContext, type Locator, type Page } from '@playwright/test';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { Levelled } from '../../shared/exercise/levels.ts';
import { known } from '../../shared/lib/assert.ts';
import { ProductionServer } from './production-server.ts';

/** What people do in their browsers. */

export const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
export const laptop = { viewport: { width: 1366, height: 768 } };
export const projector = { viewport: { width: 1920, height: 1080 } };

/**
 * A server for all tests of a file, there from their first step to their last. Pages that a test opens are closed with it,
 * those of the whole file with the server: left open, they go on knocking at servers that are gone.
 */
export function sharedServer(): () => ProductionServer {
  let server: ProductionServer | undefined;
  let open: readonly BrowserContext[] = [];
  test.beforeAll(async () => {
    server = await ProductionServer.start();
  });
  test.beforeEach(({ browser }) => {
    open = browser.contexts();
  });
  test.afterEach(({ browser }) => close(browser, open));
  test.afterAll(async ({ browser }) => {
    await close(browser);
    await server?.remove();
  });
  return () => known(server, 'a server');
}

async function close(browser: Browser, except: readonly BrowserContext[] = []): Promise<void> {
  const contexts = browser.contexts().filter((context) => !except.includes(context));
  await Promise.all(contexts.map((context) => context.close()));
}

/** A page of its own browser profile; a script error on it fails the test. */
export async function newPage(browser: Browser, options = {}): Promise<Page> {
  const page = await (await browser.newContext(options)).newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
  return page;
}

/** Sends JSON as the Desk's own page does. */
async function post(desk: Page, path: string, body: object): Promise<{ id: string }> {
  return desk.evaluate(
    async ([to, text]) => {
      const headers = { 'content-type': 'application/json' };
      const response = await fetch(`/api/${String(to)}`, { method: 'POST', headers, body: String(text) });
      return (await response.json()) as { id: string };
    },
    [path, JSON.stringify(body)],
  );
}

/** From the one-time link to a group with a register and a plan; the Desk stands on the group's page. */
export async function setUpGroup(
  desk: Page,
  server: ProductionServer,
  names: readonly string[],
  exercises: readonly (Exercise | Levelled)[],
): Promise<void> {
  await desk.goto(server.url + server.setUpPath);
  await desk.getByLabel('Name').fill('Mara');
  await desk
    .getByLabel(/passphrase/i)
    .first()
    .fill('seven short steps');
  await desk.getByRole('button', { name: 'Set up' }).click();
  await desk.getByLabel('Group', { exact: true }).fill('Thursday Strings');
  await desk.getByLabel('School').fill('Alderwick Community Music School');
  await desk.getByRole('button', { name: 'Add this group' }).click();
  await expect(desk.getByRole('heading', { name: 'Thursday Strings' })).toBeVisible();
  const groupId = desk.url().split('/').pop() ?? '';
  await post(desk, `groups/${groupId}/students`, { names });
  const planned = exercises.map((one) => ({ ...('harder' in one ? one : { exercise: one }), seconds: null }));
  await post(desk, `groups/${groupId}/plans`, { title: 'Root on string 2', exercises: planned });
  await desk.reload();
}

/** Opens the class with its plan; its code. */
export async function openClass(desk: Page, plan = 'Root on string 2'): Promise<string> {
  await desk.getByLabel('Plan for this class').selectOption({ label: plan });
  await desk.getByRole('button', { name: 'Open the class' }).click();
  const boardPath = await desk.getByRole('link', { name: 'Open the Board' }).getAttribute('href');
  return boardPath?.split('/').pop() ?? '';
}

/** A teacher on a fresh server, with a class open: the Desk, and the code. */
export async function openDesk(
  browser: Browser,
  server: ProductionServer,
  names: readonly string[],
  exercises: readonly (Exercise | Levelled)[],
): Promise<{ readonly desk: Page; readonly code: string }> {
  const desk = await newPage(browser, laptop);
  await setUpGroup(desk, server, names, exercises);
  return { desk, code: await openClass(desk) };
}

export async function openBoard(
  browser: Browser,
  server: ProductionServer,
  code: string,
  options = {},
): Promise<Page> {
  const board = await newPage(browser, { ...projector, ...options });
  await board.goto(`${server.url}/board/${code}`);
  return board;
}

export async function joinClass(
  stand: Page,
  server: Pick<ProductionServer, 'url'>,
  code: string,
  name: string,
): Promise<void> {
  await stand.goto(`${server.url}/join/${code}`);
  await stand.getByLabel('Your name or seat number').fill(name);
  await stand.getByRole('button', { name: 'Join' }).click();
}

/** A place on the neck, e.g. `spot(stand, 2, 5)`; where an order is asked its name goes on with its number. */
export function spot(stand: Page, string: number, fret: number): Locator {
  const where = fret === 0 ? 'open' : `fret ${String(fret)}`;
  return stand.getByRole('gridcell', { name: new RegExp(`^string ${String(string)}, ${where}($|,)`) });
}

/** Taps places and waits until each is placed. */
export async function tap(stand: Page, ...places: readonly (readonly [number, number])[]): Promise<void> {
  for (const [string, fret] of places) {
    await spot(stand, string, fret).tap();
    await expect(spot(stand, string, fret)).toHaveAttribute('aria-selected', 'true');
  }
}

export async function done(stand: Page): Promise<void> {
  await stand.getByRole('button', { name: /^Done/ }).tap();
  await expect(stand.getByText('Done and safe.')).toBeVisible();
}

export async function expectTask(page: Page, title: string): Promise<void> {
  await expect(page.getByRole('heading', { name: title })).toBeVisible();
}

export function resting(stand: Page): Locator {
  return stand.getByText('so both hands can stay on the guitar');
}

export type Step = 'Ask' | 'Hold' | 'Reveal' | 'Next' | 'Void' | 'Undo';

/** Presses a step's key once its button says that it would do something. */
export async function step(desk: Page, name: Step): Promise<void> {
  await expect(desk.getByRole('button', { name, exact: true })).toBeEnabled();
  await desk.keyboard.press(name.charAt(0).toLowerCase());
}
