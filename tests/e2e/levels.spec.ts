import { expect, test, type Page } from '@playwright/test';
import {
  done,
  expectTask,
  joinClass,
  newPage,
  openBoard,
  openDesk,
  phone,
  resting,
  sharedServer,
  spot,
  step,
  tap,
} from '../support/browser.ts';
import { build, find, scale } from '../support/exercises.ts';

/** An exercise at three levels, asked together and counted apart, on the production build. */

const server = sharedServer();

function level(stand: Page, name: 'First' | 'Second' | 'Third') {
  return stand.getByRole('group', { name: 'Level' }).getByRole('button', { name });
}

test('LEVEL: three levels side by side, from the plan to the reveal', async ({ browser }) => {
  const levelled = {
    exercise: find('D'),
    harder: [build('E', 'minor'), scale('E', 'minor-pentatonic', 1, 5)],
  };
  const { desk, code } = await openDesk(browser, server(), ['Kaya', 'Bram', 'Edda'], [levelled, levelled]);
  const board = await openBoard(browser, server(), code);
  await expect(desk.getByText('3 levels').first()).toBeVisible();
  const [kaya, bram] = [await newPage(browser, phone), await newPage(browser, phone)];
  for (const [stand, name] of [
    [kaya, 'Kaya'],
    [bram, 'Bram'],
  ] as const) {
    await joinClass(stand, server(), code, name);
    await expect(resting(stand)).toBeVisible();
  }

  await test.step('the Board and every Stand hold all three', async () => {
    await step(desk, 'Ask');
    for (const title of ['Find D', 'Build E minor', 'E minor pentatonic']) await expectTask(board, title);
    await expectTask(kaya, 'Find D');
    await expect(level(kaya, 'First')).toHaveAttribute('aria-pressed', 'true');
  });

  await test.step('each level is large enough to touch, upright and lying', async () => {
    for (const [width, height] of [
      [320, 568],
      [844, 390],
      [568, 320],
      [390, 844],
    ] as const) {
      await kaya.setViewportSize({ width, height });
      for (const name of ['First', 'Second', 'Third'] as const) {
        const box = await level(kaya, name).boundingBox();
        expect(
          Math.min(box?.width ?? 0, box?.height ?? 0),
          `${name} at ${String(width)}`,
        ).toBeGreaterThanOrEqual(44);
      }
    }
  });

  await test.step('Kaya answers the first, Bram tries it and then answers the second', async () => {
    await tap(kaya, [2, 3]);
    await done(kaya);
    await tap(bram, [2, 5]);
    await expect(bram.getByText('safe', { exact: true })).toBeVisible();
    await level(bram, 'Second').tap();
    await expectTask(bram, 'Build E minor');
    await expect(spot(bram, 2, 5)).toHaveAttribute('aria-selected', 'false');
    await expect(
      bram.getByText('Your first level counts until you place something here.').first(),
    ).toBeVisible();
    // String 3 one fret too high: the short step forgotten.
    await tap(bram, [3, 5], [2, 5], [1, 3]);
    await done(bram);
  });

  await test.step('what was placed at a level is there again, also after a reload', async () => {
    await bram.getByRole('button', { name: 'Change' }).tap();
    await level(bram, 'First').focus();
    await bram.keyboard.press('Enter');
    await expect(spot(bram, 2, 5)).toHaveAttribute('aria-selected', 'true');
    await bram.reload();
    await expectTask(bram, 'Find D');
    await level(bram, 'Second').tap();
    await expect(spot(bram, 3, 5)).toHaveAttribute('aria-selected', 'true');
    await expect(bram.getByText('safe', { exact: true })).toBeVisible();
  });

  await test.step('the teacher enters the third for somebody without a device', async () => {
    await desk.keyboard.press('s');
    await desk.getByRole('button', { name: 'Edda' }).click();
    await desk.getByRole('button', { name: 'Enter an answer' }).click();
    const dialog = desk.getByRole('dialog');
    await dialog.getByText('Third', { exact: true }).click();
    await expect(dialog.getByRole('heading', { name: 'E minor pentatonic' })).toBeVisible();
    await dialog.getByRole('gridcell', { name: 'string 2, fret 5' }).click();
    await dialog.getByRole('button', { name: 'Enter this answer' }).click();
    await expect(dialog).toBeHidden();
    await desk.keyboard.press('s');
  });

  await test.step('counted apart on the Desk', async () => {
    await step(desk, 'Hold');
    await expect(kaya.getByText('Held').first()).toBeVisible();
    const levels = desk.getByRole('group', { name: 'Level to look at' });
    await expect(levels.getByText('1 of 3 right')).toBeVisible();
    await expect(levels.getByText('1 of 1 right')).toBeVisible();
    await levels.getByText('Second').click();
    await expect(desk.getByRole('heading', { name: 'Build E minor' })).toBeVisible();
    await expect(desk.getByLabel(/^Answers on the neck: 1 in, 0 right/)).toBeVisible();
    await levels.getByText('All').click();
    await expect(desk.getByRole('heading', { name: 'Find D' })).toBeVisible();
  });

  await test.step('each Stand reads of its own level, the Board of all', async () => {
    await step(desk, 'Reveal');
    await expect(kaya.getByText('First level. Find D.').first()).toBeVisible();
    await expect(kaya.getByRole('heading', { name: /right|place/i })).toBeVisible();
    await expect(bram.getByText('Second level. Build E minor.').first()).toBeVisible();
    await expect(bram.getByText(/string 3 to 2 is four frets, not five/).first()).toBeVisible();
    for (const share of [/First\s*1\s*of 1/, /Second\s*0\s*of 1/, /Third\s*0\s*of 1/])
      await expect(board.getByRole('main')).toContainText(share);
  });

  await test.step('the next round with levels starts at the level that each played', async () => {
    await step(desk, 'Next');
    await expect(resting(bram)).toBeVisible();
    await step(desk, 'Ask');
    await expectTask(kaya, 'Find D');
    await expectTask(bram, 'Build E minor');
  });

  const rows = server().rows(
    `select students.name as name, besides ->> 'level' as level
       from answers join students on students.id = answers.student_id order by students.name`,
  );
  expect(rows).toEqual([
    { name: 'Bram', level: 2 },
    { name: 'Edda', level: 3 },
    { name: 'Kaya', level: null },
  ]);
});
