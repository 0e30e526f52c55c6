import { expect, test, type Locator, type Page } from '@playwright/test';
import { findings, inspected } from '../support/axe.ts';
import { laptop, newPage, setUpGroup, sharedServer } from '../support/browser.ts';
import { build, find, scale } from '../support/exercises.ts';

/** Results of a paper quiz: typed like a spreadsheet, judged at once, kept until saved, saved once. */

const server = sharedServer();

let desk: Page;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async ({ browser }) => {
  desk = await newPage(browser, { ...laptop, ...inspected });
  await setUpGroup(
    desk,
    server(),
    ['Kaya', 'Bram', 'Edda', 'Zora'],
    [find('D'), build('E', 'minor'), scale('A', 'minor-pentatonic', 1, 10)],
  );
  const plan = await desk.getByRole('link', { name: 'Root on string 2' }).getAttribute('href');
  await desk.goto(`${server().url}${(plan ?? '').replace('/plan/', '/paper/')}`);
});

const titles = ['Find D', 'Build E minor', 'A minor pentatonic'];
const cell = (student: string, column: number): Locator =>
  desk.getByRole('textbox', { name: `${student}, ${String(column)}: ${titles[column - 1] ?? ''}` });

test('PAPER-5: what is typed is judged at once, in words and signs', async () => {
  await cell('Bram', 1).fill('3');
  await expect(cell('Bram', 1)).toHaveAccessibleDescription('right');
  // Fret 10 is the D of string 6; string 3 one fret high is the step forgotten (computed in standard tuning).
  await cell('Edda', 1).fill('10');
  await expect(cell('Edda', 1)).toHaveAccessibleDescription('string-6 map');
  await cell('Bram', 2).fill('x x x 5 5 3');
  await expect(cell('Bram', 2)).toHaveAccessibleDescription('string-3-to-2 step');
  await cell('Edda', 2).fill('5 5 3');
  await expect(cell('Edda', 2)).toHaveAccessibleDescription('Write a fret or x for each of six strings.');
  await expect(cell('Edda', 2)).toHaveAttribute('aria-invalid', 'true');
  await expect(desk.getByText('One cell can’t be read yet.')).toBeVisible();
  await expect(desk.getByRole('button', { name: 'Save the results…' })).toBeDisabled();
  await cell('Edda', 2).fill('');
  await expect(cell('Edda', 2)).toHaveAccessibleDescription('');
});

test('keys go from cell to cell, and a copied table fills cells', async () => {
  await cell('Bram', 1).focus();
  await desk.keyboard.press('Enter');
  await expect(cell('Edda', 1)).toBeFocused();
  await desk.keyboard.press('ArrowRight');
  await expect(cell('Edda', 2)).toBeFocused();
  await desk.keyboard.press('Tab');
  await expect(cell('Edda', 3)).toBeFocused();
  await desk.keyboard.press('ArrowUp');
  await expect(cell('Bram', 3)).toBeFocused();
  // Inside a text the arrows stay in it.
  await cell('Bram', 2).focus();
  await desk.keyboard.press('End');
  await desk.keyboard.press('ArrowLeft');
  await expect(cell('Bram', 2)).toBeFocused();
  await cell('Bram', 3).focus();
  await desk.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', '+\tbeyond\r\n-\r\n');
    at?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }),
    );
  });
  await expect(cell('Bram', 3)).toHaveAccessibleDescription('right');
  await expect(cell('Edda', 3)).toHaveAccessibleDescription('not yet');
});

test('PAPER-3: a reload loses nothing', async () => {
  await desk.getByLabel('Day of the quiz').fill('2026-01-15');
  await desk.reload();
  await expect(cell('Edda', 1)).toHaveValue('10');
  await expect(cell('Bram', 2)).toHaveAccessibleDescription('string-3-to-2 step');
  await expect(desk.getByLabel('Day of the quiz')).toHaveValue('2026-01-15');
});

test('PAPER-3: in two windows it is the same table', async () => {
  const other = await desk.context().newPage();
  await other.goto(desk.url());
  const there = other.getByRole('textbox', { name: 'Zora, 1: Find D' });
  await there.fill('5');
  await expect(cell('Zora', 1)).toHaveValue('5');
  await cell('Zora', 3).fill('+');
  await there.fill('3');
  await expect(cell('Zora', 1)).toHaveValue('3');
  await expect(cell('Zora', 3)).toHaveValue('+');
  await expect(cell('Edda', 1)).toHaveValue('10');
  await other.close();
});

test('a day that can’t be is told, and the day stays what it was', async () => {
  await desk.getByLabel('Day of the quiz').fill('');
  await expect(desk.getByText('Choose today or an earlier day.')).toBeVisible();
  await expect(desk.getByLabel('Day of the quiz')).toHaveValue('2026-01-15');
});

test('PAPER-4: a student who was taken off the register meanwhile is told, and the others can be saved', async () => {
  await desk.evaluate(async (path) => {
    const { plan } = (await (
      await fetch(`/api${path.replace('paper', 'plans').replace('/desk', '')}`)
    ).json()) as {
      plan: { groupId: string };
    };
    const { students } = (await (await fetch(`/api/groups/${plan.groupId}`)).json()) as {
      students: readonly { id: string; name: string }[];
    };
    const gone = students.find(({ name }) => name === 'Zora');
    await fetch(`/api/students/${gone?.id ?? ''}`, { method: 'DELETE' });
  }, new URL(desk.url()).pathname);
  await desk.getByRole('button', { name: 'Save the results…' }).click();
  await desk.getByRole('button', { name: 'Save the results', exact: true }).click();
  await expect(desk.getByText('This student is not on the register.')).toBeVisible();
  await expect(cell('Zora', 1)).toBeHidden();
  await expect(cell('Edda', 1)).toHaveValue('10');
});

test('axe finds nothing serious, and the page fits every window', async () => {
  expect(await findings(desk)).toEqual([]);
  for (const [width, height] of [
    [320, 568],
    [390, 844],
    [1366, 768],
  ] as const) {
    await desk.setViewportSize({ width, height });
    const overflow = await desk.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow, String(width)).toBeLessThanOrEqual(0);
  }
});

test('the cell that the keys go to is never under the titles that stay in sight', async () => {
  await desk.setViewportSize({ width: 320, height: 300 });
  const last = cell('Kaya', 3);
  await last.focus();
  for (const key of ['ArrowUp', 'ArrowUp', 'ArrowLeft', 'ArrowLeft', 'Enter', 'Enter']) {
    await desk.keyboard.press('Home');
    await desk.keyboard.press(key);
    const seen = await desk.evaluate(() => {
      let at = document.activeElement;
      while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
      const root = at?.getRootNode();
      if (!at || !(root instanceof ShadowRoot)) return [];
      const { left, right, top, bottom } = at.getBoundingClientRect();
      const middle = (top + bottom) / 2;
      const points = [
        [left + 8, middle],
        [right - 8, middle],
        [(left + right) / 2, top + 4],
      ] as const;
      return points.map(([x, y]) => root.elementFromPoint(x, y) === at);
    });
    expect(seen, key).toEqual([true, true, true]);
  }
  await desk.setViewportSize(laptop.viewport);
});

test('PAPER-1: saved, they are one class of that day, which says what came of it', async () => {
  await desk.getByRole('button', { name: 'Save the results…' }).click();
  await expect(desk.getByRole('alert').getByText('5 answers of 2 students')).toBeVisible();
  await desk.getByRole('button', { name: 'Save the results', exact: true }).click();
  await expect(desk.getByText('Saved as the class of')).toBeVisible();
  await expect(cell('Edda', 1)).toHaveValue('');
  await desk.reload();
  await expect(cell('Edda', 1)).toHaveValue('');
  await desk.getByRole('link', { name: 'Root on string 2' }).click();
  await desk.goBack();
  await cell('Kaya', 1).fill('3');
  await desk.getByRole('button', { name: 'Save the results…' }).click();
  await desk.getByRole('button', { name: 'Save the results', exact: true }).click();
  await desk.getByRole('link', { name: 'Look at it' }).click();
  await expect(desk.getByRole('heading', { name: 'The class is over' })).toBeVisible();
  await desk.getByRole('link', { name: 'Back to the group' }).click();
  await expect(desk.getByText('3 rounds, 40 % right')).toBeVisible();
  await expect(desk.getByText('1 round, 100 % right')).toBeVisible();
});
