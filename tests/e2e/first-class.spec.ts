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

/** One Desk, one Board and four Stands through a plan, on the production build and a real store. */

const server = sharedServer();

/** The label of what has the focus, however deep in shadow trees. */
function focusedLabel(page: Page): Promise<string> {
  return page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    return active?.getAttribute('aria-label') ?? '';
  });
}

/** From wherever the neck's focus is to a place, by arrows alone; then Enter. */
async function placeByKeys(stand: Page, string: number, fret: number): Promise<void> {
  const wanted = `string ${String(string)}, fret ${String(fret)}`;
  await stand.getByRole('gridcell').first().focus();
  for (let presses = 0; presses < 40 && (await focusedLabel(stand)) !== wanted; presses += 1) {
    const onString = (await focusedLabel(stand)).startsWith(`string ${String(string)},`);
    await stand.keyboard.press(onString ? 'ArrowDown' : 'ArrowLeft');
  }
  await stand.keyboard.press('Enter');
  await expect(spot(stand, string, fret)).toHaveAttribute('aria-selected', 'true');
}

test('a first class, end to end', async ({ browser }) => {
  const plan = [find('D'), build('E', 'minor'), scale('E', 'minor-pentatonic', 1, 5)];
  const { desk, code } = await openDesk(browser, server(), ['Kaya', 'Bram', 'Edda', 'Farid'], plan);
  const board = await openBoard(browser, server(), code);
  const stands: Page[] = [];
  for (const name of ['kaya', 'Bram', 'Edda']) {
    const stand = await newPage(browser, phone);
    await joinClass(stand, server(), code, name);
    await expect(resting(stand)).toBeVisible();
    stands.push(stand);
  }
  const [kaya, bram, edda] = stands as [Page, Page, Page];
  await bram.getByRole('switch', { name: /left-handed/i }).tap();

  await test.step('find D: one fret off, left-handed, by keyboard alone', async () => {
    await step(desk, 'Ask');
    for (const stand of stands) await expectTask(stand, 'Find D');
    await tap(kaya, [2, 2]);
    await tap(bram, [2, 3]);
    await done(bram);
    await placeByKeys(edda, 2, 3);
  });

  const farid = await newPage(browser, phone);
  await test.step('a late joiner lands in the round; a reload brings student and answer back', async () => {
    await joinClass(farid, server(), code, 'Farid');
    await expectTask(farid, 'Find D');
    await expect(edda.getByText('Safe').first()).toBeVisible();
    await edda.reload();
    await expectTask(edda, 'Find D');
    await expect(spot(edda, 2, 3)).toHaveAttribute('aria-selected', 'true');
  });

  await test.step('a phone without network keeps its answer while the server is killed and comes back', async () => {
    await farid.context().setOffline(true);
    await tap(farid, [2, 8]);
    await server().kill();
    await server().resume();
    await farid.context().setOffline(false);
    await expect(farid.getByText('Safe').first()).toBeVisible({ timeout: 15_000 });
    await expectTask(board, 'Find D');
    await expect(desk.getByText('4 here')).toBeVisible({ timeout: 15_000 });
    await expect(desk.getByText('Out of touch')).toBeHidden();
  });

  await test.step('the class sees what it found', async () => {
    await step(desk, 'Hold');
    await expect(kaya.getByText('Held').first()).toBeVisible();
    await step(desk, 'Reveal');
    await expect(bram.getByRole('heading', { name: /right|place/i })).toBeVisible();
    await expect(board.getByRole('main')).toContainText(/2\s*of 4 found it/);
    await step(desk, 'Next');
    await expect(resting(kaya)).toBeVisible();
  });

  await test.step('build E minor: a voided round comes back, and the short step is named', async () => {
    await step(desk, 'Ask');
    await expectTask(kaya, 'Build E minor');
    await tap(kaya, [3, 5], [2, 5], [1, 3]);
    await done(kaya);
    await tap(bram, [3, 4], [2, 5], [1, 3]);
    await done(bram);
    await step(desk, 'Void');
    await expect(kaya.getByText('That exercise was taken back')).toBeVisible();
    await step(desk, 'Undo');
    await expectTask(kaya, 'Build E minor');
    await step(desk, 'Hold');
    await expect(kaya.getByText('Held').first()).toBeVisible();
    await step(desk, 'Reveal');
    await expect(kaya.getByText(/string 3 to 2 is four frets, not five/).first()).toBeVisible();
    await step(desk, 'Next');
    await expect(resting(kaya)).toBeVisible();
  });

  await test.step('the pentatonic round a root on string 2', async () => {
    await step(desk, 'Ask');
    await expectTask(bram, 'E minor pentatonic');
    const lowestFirst = [
      [5, 7],
      [5, 7],
      [5, 7],
      [4, 7],
      [5, 8],
      [5, 7],
    ] as const;
    await tap(
      bram,
      ...lowestFirst.flatMap((frets, index) => frets.map((fret) => [6 - index, fret] as const)),
    );
    await done(bram);
    await step(desk, 'Hold');
    await expect(bram.getByText('Held').first()).toBeVisible();
    await step(desk, 'Reveal');
    await expect(bram.getByRole('heading', { name: /right/i })).toBeVisible();
  });

  const rows = server().rows(
    `select rounds.number as round, students.name as name, json_extract(answers.verdict, '$.kind') as verdict,
         json_extract(answers.verdict, '$.cause') as cause
       from answers join rounds on rounds.id = answers.round_id join students on students.id = answers.student_id
       order by rounds.number, students.name`,
  );
  const right = { verdict: 'right', cause: null };
  expect(rows).toEqual([
    { round: 1, name: 'Bram', ...right },
    { round: 1, name: 'Edda', ...right },
    { round: 1, name: 'Farid', verdict: 'slip', cause: 'other-place' },
    { round: 1, name: 'Kaya', verdict: 'slip', cause: 'nut-as-one' },
    { round: 2, name: 'Bram', ...right },
    { round: 2, name: 'Kaya', verdict: 'slip', cause: 'short-step' },
    { round: 3, name: 'Bram', ...right },
  ]);
});
