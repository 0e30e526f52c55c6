import { expect, test, type Page } from '@playwright/test';
import { joinClass, newPage, openClass, phone, setUpGroup, sharedServer } from '../support/browser.ts';
import { find } from '../support/exercises.ts';

const server = sharedServer();

async function turn(desk: Page, setting: RegExp): Promise<void> {
  await desk.getByRole('button', { name: 'Class', exact: true }).click();
  await desk.getByText(setting).click();
  await desk.getByRole('button', { name: 'Back' }).click();
}

test('a class is locked, somebody is sent away, a key is changed, two students are made one, and all Desks are closed', async ({
  browser,
}) => {
  const desk = await newPage(browser);
  await setUpGroup(desk, server(), ['Kaya', 'Bram', 'Hani'], [find('D')]);

  await desk.getByText('Make two students one').click();
  await desk.getByLabel('Leaves the register').selectOption({ label: 'Hani' });
  await desk.getByLabel('Stays, and gets the answers').selectOption({ label: 'Bram' });
  await desk.getByRole('button', { name: 'Make them one…' }).click();
  await desk.getByRole('button', { name: 'Make them one' }).click();
  await expect(desk.getByLabel('Seat number of Hani')).toHaveCount(0);

  const code = await openClass(desk);
  await turn(desk, /^Lock the class/);
  const kaya = await newPage(browser, phone);
  await joinClass(kaya, server(), code, 'Kaya');
  await expect(kaya.getByText('This class is locked. Ask your teacher to let you in.')).toBeVisible();
  await turn(desk, /^Lock the class/);
  await joinClass(kaya, server(), code, 'Kaya');

  await desk.getByRole('button', { name: 'Class', exact: true }).click();
  await desk.getByText(/^The keys:/).click();
  const hold = desk.getByRole('textbox', { name: 'Hold' });
  await hold.fill('r');
  await hold.blur();
  await expect(desk.getByText('R is Reveal already.')).toBeVisible();
  await expect(hold).toHaveValue('h');
  await hold.fill('x');
  await hold.blur();
  await desk.getByRole('button', { name: 'Back' }).click();
  await desk.reload();
  await desk.getByRole('button', { name: 'Ask', exact: true }).click();
  await expect(desk.getByRole('heading', { name: 'Find D' })).toBeVisible();
  await desk.keyboard.press('x');
  await expect(desk.getByRole('button', { name: 'Reveal', exact: true })).toHaveAttribute(
    'aria-disabled',
    'false',
  );

  await desk.keyboard.press('s');
  await desk.getByRole('button', { name: /Kaya/ }).click();
  const name = desk.getByRole('textbox', { name: 'Name' });
  await name.fill('Kajsa');
  await name.blur();
  await expect(desk.getByRole('button', { name: /Kajsa/ })).toBeVisible();
  await desk.getByRole('button', { name: 'Remove from this class' }).click();
  await desk.getByRole('button', { name: 'Remove the device' }).click();
  await expect(kaya.getByText(/no seat in the class now/)).toBeVisible();
  await joinClass(kaya, server(), code, 'Bram');
  await expect(desk.getByText(/sent away before/)).toBeVisible();

  const other = await newPage(browser);
  await other.goto(`${server().url}/desk`);
  await other.getByLabel('Name').fill('Mara');
  await other.getByLabel('Passphrase').fill('seven short steps');
  await other.getByRole('button', { name: 'Sign in' }).click();
  await other.getByText('Mara').click();
  await other.getByRole('button', { name: 'Sign out everywhere' }).click();
  await expect(desk.getByText('Sign in at the Desk first.')).toBeVisible();
  await expect(desk.getByText('Kajsa')).toHaveCount(0);
  await desk.getByRole('link', { name: 'Sign in' }).click();
  await expect(desk.getByLabel('Passphrase')).toBeVisible();
});
