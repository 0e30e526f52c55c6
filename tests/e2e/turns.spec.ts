import { expect, test } from '@playwright/test';
import { findings, inspected } from '../support/axe.ts';
import {
  joinClass,
  laptop,
  newPage,
  openClass,
  phone,
  resting,
  setUpGroup,
  sharedServer,
  step,
} from '../support/browser.ts';
import { build } from '../support/exercises.ts';

const server = sharedServer();

test('TURN-2, TURN-4: in one room the Desk gives the turn down the register, or by name, and takes it back', async ({
  browser,
}) => {
  const desk = await newPage(browser, { ...laptop, ...inspected });
  await setUpGroup(desk, server(), ['Kaya', 'Bram', 'Edda'], [build('E', 'minor')]);
  const code = await openClass(desk);
  for (const name of ['Kaya', 'Bram']) {
    const stand = await newPage(browser, phone);
    await joinClass(stand, server(), code, name);
    await expect(resting(stand)).toBeVisible();
  }
  const turns = desk.getByRole('region', { name: 'Turns' });
  await expect(turns).toHaveCount(0);
  await desk.keyboard.press('t');

  await desk.getByRole('button', { name: 'Class', exact: true }).click();
  await desk
    .getByLabel('Answering by playing')
    .selectOption({ label: 'by turns: one after another in one room' });
  await desk.getByRole('button', { name: 'Back' }).click();
  await expect(turns).toContainText('Nobody’s turn');
  await step(desk, 'Ask');
  await expect(desk.getByRole('heading', { name: 'Build E minor' })).toBeVisible();

  await desk.keyboard.press('t');
  await expect(turns).toContainText('Plays now: Bram');
  await turns.getByRole('button', { name: 'Next turn' }).click();
  await expect(turns).toContainText('Plays now: Kaya');
  // Edda is not here: after Kaya it is nobody's.
  await desk.keyboard.press('t');
  await expect(turns).toContainText('Nobody’s turn');

  await desk.keyboard.press('s');
  const turnOf = (name: string) => desk.getByRole('button', { name: `Turn: ${name}` });
  await expect(turnOf('Edda')).toHaveCount(0);
  await turnOf('Kaya').click();
  await expect(desk.getByRole('button', { name: 'Plays: Kaya' })).toBeVisible();
  await expect(turns).toContainText('Plays now: Kaya');
  expect(await findings(desk)).toEqual([]);
  await desk.keyboard.press('k');
  await expect(turns).toContainText('Plays now: Student 3');
  await expect(turns).not.toContainText('Kaya');
  await desk.keyboard.press('k');
  await turns.getByRole('button', { name: 'Take it back' }).click();
  await expect(turns).toContainText('Nobody’s turn');
  await expect(turnOf('Kaya')).toBeVisible();
});
