import { expect, test, type Page } from '@playwright/test';
import { findings, inspected } from '../support/axe.ts';
import { joinClass, newPage, openDesk, phone, sharedServer, step } from '../support/browser.ts';
import { build, find, name, scale } from '../support/exercises.ts';

/** The charts of a class at a plain link: on a small phone, by ear, by key, in print, after the class. */

const server = sharedServer();
const small = { viewport: { width: 320, height: 568 }, hasTouch: true, isMobile: true, ...inspected };

let desk: Page;
let code: string;
let link: string;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async ({ browser }) => {
  ({ desk, code } = await openDesk(
    browser,
    server(),
    ['Kaya', 'Bram'],
    [build('E', 'minor'), scale('A', 'minor-pentatonic', 1, 10), name('B', 12), find('F')],
  ));
  link = `${server().url}/charts/${desk.url().split('/').pop() ?? ''}`;
});

const field = (page: Page, label: string) => page.getByRole('combobox', { name: label, exact: true });

async function play(): Promise<void> {
  for (const name of ['Ask', 'Hold', 'Reveal', 'Next'] as const) await step(desk, name);
}

test('CHARTS-PAGE-1: during the class it shows what has been revealed, and more once one comes back', async ({
  browser,
}) => {
  const page = await newPage(browser, phone);
  await page.goto(link);
  await expect(page.getByText('Nothing has been revealed yet.')).toBeVisible();
  await play();
  await page.reload();
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(['E minor']);
  await play();
  await play();
  await step(desk, 'Ask');
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect(page.getByRole('heading', { level: 2 })).toHaveText([
    'E minor',
    'A minor pentatonic',
    'String 2, fret 12',
  ]);
  await expect(page.getByText('This place is B.')).toBeVisible();
  await step(desk, 'Void');
});

test('CHARTS-PAGE-4: a chart is heard as well as seen, in the reader’s own way, and that is kept', async ({
  browser,
}) => {
  const page = await newPage(browser, small);
  await page.goto(link);
  // The close triad: string 3 fret 4, string 2 fret 5, string 1 fret 3 (computed in standard tuning).
  const chart = page.getByRole('img', { name: /^E minor/ });
  await expect(chart).toHaveAccessibleName(
    /string 3, fret 4, perfect fifth.*string 2, fret 5, root.*string 1, fret 3, minor third/,
  );
  await page.getByText('In words: E minor', { exact: true }).click();
  await expect(page.getByRole('listitem').getByText(/^string 2, fret 5, root/)).toBeVisible();
  await expect(page.getByText('pause for five')).toBeVisible();

  await page.getByText('How charts are drawn').click();
  await field(page, 'Note names').selectOption('german');
  await expect(page.getByText('This place is H.')).toBeVisible();
  await field(page, 'In the marks').selectOption('names');
  await page.getByRole('switch', { name: 'Left-handed neck' }).click();
  await page.reload();
  await expect(page.getByText('This place is H.')).toBeVisible();
  await page.getByText('How charts are drawn').click();
  await expect(field(page, 'In the marks')).toHaveValue('names');
  await expect(page.getByRole('switch', { name: 'Left-handed neck' })).toBeChecked();
});

test('CHARTS-PAGE-4: it fits a small phone, axe finds nothing serious, and Tab reaches everything', async ({
  browser,
}) => {
  const page = await newPage(browser, small);
  await page.goto(link);
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(3);
  for (const width of [320, 390, 1366]) {
    await page.setViewportSize({ width, height: 800 });
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow, String(width)).toBeLessThanOrEqual(0);
  }
  expect(await findings(page)).toEqual([]);
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
  const focused = () =>
    page.evaluate(() => {
      let at = document.activeElement;
      while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
      return at?.textContent?.trim() ?? '';
    });
  const reached: string[] = [];
  for (let presses = 0; presses < 8; presses += 1) {
    await page.keyboard.press('Tab');
    reached.push(await focused());
  }
  expect(reached).toEqual(
    expect.arrayContaining([
      'How charts are drawn',
      'In words: E minor',
      'Try it: explore the neck from any root',
    ]),
  );
});

test('CHARTS-PAGE-4: in print it is a plain list, black on white', async ({ browser }) => {
  const page = await newPage(browser, phone);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.goto(link);
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(3);
  await expect(page.getByText('How charts are drawn')).toBeHidden();
  await expect(page.getByText('In words').first()).toBeHidden();
  const { ink, paper } = await page.evaluate(() => ({
    ink: getComputedStyle(document.body).color,
    paper: getComputedStyle(document.body).backgroundColor,
  }));
  expect([ink, paper]).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
});

test('CHARTS-PAGE-5: Stand, Desk and group lead there once the class is over', async ({ browser }) => {
  const stand = await newPage(browser, phone);
  await joinClass(stand, server(), code, 'Kaya');
  await expect(stand.getByText('so both hands can stay on the guitar')).toBeVisible();
  await desk.getByRole('button', { name: 'Class', exact: true }).click();
  await desk.getByRole('button', { name: 'Close the class…' }).click();
  await desk.getByRole('button', { name: 'Close the class', exact: true }).click();
  const atDesk = desk.getByRole('link', { name: 'The charts of this class' });
  await expect(atDesk).toHaveAttribute('href', new URL(link).pathname);
  await stand.getByRole('link', { name: 'The charts of this class' }).tap();
  await expect(stand.getByRole('heading', { level: 2 })).toHaveCount(3);
  await desk.getByRole('link', { name: 'Back to the group' }).click();
  await expect(desk.getByRole('link', { name: /^Charts of/ })).toHaveAttribute(
    'href',
    new URL(link).pathname,
  );
});

test('CHARTS-PAGE-3: a link that leads nowhere is told in a sentence', async ({ browser }) => {
  const page = await newPage(browser, phone);
  await page.goto(`${server().url}/charts/made-up`);
  await expect(page.getByText('There are no charts here.')).toBeVisible();
});
