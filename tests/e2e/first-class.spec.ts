import { expect, test, type Browser, type Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { join } from 'node:path';
import { build, find, scale } from '../support/exercises.ts';
import { ProductionServer } from '../support/production-server.ts';

/** One Desk, one Board and four Stands through a plan, on the production build and a real store. */

let server: ProductionServer;

test.beforeAll(async () => {
  server = await ProductionServer.start();
});

test.afterAll(async () => {
  await server.remove();
});

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

async function newPage(browser: Browser, options = {}): Promise<Page> {
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

async function joinClass(browser: Browser, code: string, name: string): Promise<Page> {
  const stand = await newPage(browser, phone);
  await stand.goto(`${server.url}/join/${code}`);
  await stand.getByLabel('Your name or seat number').fill(name);
  await stand.getByRole('button', { name: 'Join' }).click();
  return stand;
}

async function tap(stand: Page, ...places: readonly (readonly [number, number])[]): Promise<void> {
  for (const [string, fret] of places) {
    const cell = stand.getByRole('gridcell', {
      name: `string ${String(string)}, ${fret === 0 ? 'open' : `fret ${String(fret)}`}`,
      exact: true,
    });
    await cell.tap();
    await expect(cell).toHaveAttribute('aria-selected', 'true');
  }
}

/** Presses a step's key once its button says that it would do something. */
async function step(desk: Page, name: 'Ask' | 'Hold' | 'Reveal' | 'Next' | 'Void' | 'Undo'): Promise<void> {
  await expect(desk.getByRole('button', { name, exact: true })).toBeEnabled();
  await desk.keyboard.press(name.charAt(0).toLowerCase());
}

const resting = (stand: Page) => stand.getByText('so both hands can stay on the guitar');
const done = (stand: Page) => stand.getByRole('button', { name: /^Done/ }).tap();
const task = (stand: Page, title: string) =>
  expect(stand.getByRole('heading', { name: title })).toBeVisible();

test('a first class, end to end', async ({ browser }) => {
  const desk = await newPage(browser, { viewport: { width: 1366, height: 768 } });
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
  await post(desk, `groups/${groupId}/students`, { names: ['Kaya', 'Bram', 'Edda', 'Farid'] });
  const exercises = [find('D'), build('E', 'minor'), scale('E', 'minor-pentatonic', 1, 5)];
  await post(desk, `groups/${groupId}/plans`, {
    title: 'Root on string 2',
    exercises: exercises.map((exercise) => ({ exercise, seconds: null })),
  });
  await desk.reload();
  await desk.getByLabel('Plan for this class').selectOption({ label: 'Root on string 2' });
  await desk.getByRole('button', { name: 'Open the class' }).click();
  const boardPath = (await desk.getByRole('link', { name: 'Open the Board' }).getAttribute('href')) ?? '';
  const code = boardPath.split('/').pop() ?? '';
  const board = await newPage(browser, { viewport: { width: 1920, height: 1080 } });
  await board.goto(server.url + boardPath);

  const kaya = await joinClass(browser, code, 'kaya');
  const bram = await joinClass(browser, code, 'Bram');
  const edda = await joinClass(browser, code, 'Edda');
  for (const stand of [kaya, bram, edda]) await expect(resting(stand)).toBeVisible();
  await bram.getByRole('switch', { name: /left-handed/i }).tap();

  // Find D: Kaya is one fret off, Bram left-handed, Edda answers by keyboard alone.
  await step(desk, 'Ask');
  for (const stand of [kaya, bram, edda]) await task(stand, 'Find D');
  await tap(kaya, [2, 2]);
  await tap(bram, [2, 3]);
  await done(bram);
  const cell = edda.getByRole('gridcell', { name: 'string 2, fret 3', exact: true });
  await edda.getByRole('gridcell').first().focus();
  for (let step = 0; step < 40 && !(await cell.evaluate((it) => it.matches(':focus'))); step += 1) {
    const label = (await edda.evaluate(() => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      return active?.getAttribute('aria-label') ?? '';
    })) as string;
    await edda.keyboard.press(label.startsWith('string 2,') ? 'ArrowDown' : 'ArrowLeft');
  }
  await edda.keyboard.press('Enter');
  await expect(cell).toHaveAttribute('aria-selected', 'true');

  // A late joiner lands in the round, a reload brings the same student and the same answer back.
  const farid = await joinClass(browser, code, 'Farid');
  await task(farid, 'Find D');
  await expect(edda.getByText('Safe').first()).toBeVisible();
  await edda.reload();
  await task(edda, 'Find D');
  await expect(edda.getByRole('gridcell', { name: 'string 2, fret 3', exact: true })).toHaveAttribute(
    'aria-selected',
    'true',
  );

  // An offline phone keeps its answer; the server is killed in mid-round and comes back on the same store.
  await farid.context().setOffline(true);
  await tap(farid, [2, 8]);
  await server.kill();
  await server.resume();
  await farid.context().setOffline(false);
  await expect(farid.getByText('Safe').first()).toBeVisible({ timeout: 15_000 });
  await task(board, 'Find D');
  await expect(desk.getByText('4 here')).toBeVisible({ timeout: 15_000 });
  await expect(desk.getByText('Out of touch')).toBeHidden();
  await step(desk, 'Hold');
  await expect(kaya.getByText('Held').first()).toBeVisible();
  await step(desk, 'Reveal');
  await expect(bram.getByRole('heading', { name: /right|place/i })).toBeVisible();
  await expect(board.getByRole('main')).toContainText(/2\s*of 4 found it/);
  await step(desk, 'Next');
  await expect(resting(kaya)).toBeVisible();

  // Build E minor: the round is voided once and brought back; the short step is named.
  await step(desk, 'Ask');
  await task(kaya, 'Build E minor');
  await tap(kaya, [3, 5], [2, 5], [1, 3]);
  await done(kaya);
  await tap(bram, [3, 4], [2, 5], [1, 3]);
  await done(bram);
  await expect(kaya.getByText('Done and safe.')).toBeVisible();
  await step(desk, 'Void');
  await expect(kaya.getByText('That exercise was taken back')).toBeVisible();
  await step(desk, 'Undo');
  await task(kaya, 'Build E minor');
  await step(desk, 'Hold');
  await expect(kaya.getByText('Held').first()).toBeVisible();
  await step(desk, 'Reveal');
  await expect(kaya.getByText(/string 3 to 2 is four frets, not five/).first()).toBeVisible();
  await step(desk, 'Next');
  await expect(resting(kaya)).toBeVisible();

  // The pentatonic round string 2.
  await step(desk, 'Ask');
  await task(bram, 'E minor pentatonic');
  const box = [
    [5, 7],
    [5, 7],
    [5, 7],
    [4, 7],
    [5, 8],
    [5, 7],
  ] as const;
  await tap(bram, ...box.flatMap((frets, index) => frets.map((fret) => [6 - index, fret] as const)));
  await done(bram);
  await expect(bram.getByText('Done and safe.')).toBeVisible();
  await step(desk, 'Hold');
  await expect(bram.getByText('Held').first()).toBeVisible();
  await step(desk, 'Reveal');
  await expect(bram.getByRole('heading', { name: /right/i })).toBeVisible();

  const store = new Database(join(server.dataDir, 'rootcall.db'), { readonly: true });
  const rows = store
    .prepare(
      `select rounds.number as round, students.name as name, json_extract(answers.verdict, '$.kind') as verdict,
         json_extract(answers.verdict, '$.cause') as cause
       from answers join rounds on rounds.id = answers.round_id join students on students.id = answers.student_id
       order by rounds.number, students.name`,
    )
    .all();
  store.close();
  const right = { verdict: 'right', cause: null };
  expect(rows).toEqual([
    { round: 1, name: 'Bram', ...right },
    { round: 1, name: 'Edda', ...right },
    { round: 1, name: 'Farid', verdict: 'slip', cause: expect.any(String) },
    { round: 1, name: 'Kaya', verdict: 'slip', cause: expect.any(String) },
    { round: 2, name: 'Bram', ...right },
    { round: 2, name: 'Kaya', verdict: 'slip', cause: 'string-3-to-2-step' },
    { round: 3, name: 'Bram', ...right },
  ]);
});
