import { expect, test, type Locator, type Page } from '@playwright/test';
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
  step,
  tap,
} from '../support/browser.ts';
import { find } from '../support/exercises.ts';

/**
 * From one root the teacher finds shapes, positions, patterns, a map and chords in a row; a Stand answers what is
 * asked of them, Board and Stand show what is shown.
 */

const server = sharedServer();

type Spots = readonly (readonly [string: number, fret: number])[];

let desk: Page;
let board: Page;
let edda: Page;

test.beforeAll(async ({ browser }) => {
  const opened = await openDesk(browser, server(), ['Edda'], [find('D')]);
  desk = opened.desk;
  board = await openBoard(browser, server(), opened.code);
  edda = await newPage(browser, phone);
  await joinClass(edda, server(), opened.code, 'Edda');
  await expect(resting(edda)).toBeVisible();
});

// One class from the first test to the last.
test.describe.configure({ mode: 'serial' });

/** Opens what lies round a root, at what is to be found. */
async function fromRoot(what: string, opener = 'Ask something else'): Promise<Locator> {
  await desk.getByRole('button', { name: opener }).click();
  const dialog = desk.getByRole('dialog');
  await choose(dialog, 'From a root');
  await choose(dialog, what);
  return dialog;
}

async function choose(dialog: Locator, name: string): Promise<void> {
  await dialog.getByRole('radio', { name, exact: true }).check({ force: true });
}

/** One step on in what is shown. A key steps from the chart that the Desk knows of, so it waits until it knows. */
async function stepTo(chart: string): Promise<void> {
  await desk.keyboard.press('n');
  await expect(desk.getByText(`chart ${chart}`)).toBeVisible();
}

/** The root C on string 5, at fret 3. */
async function rootC(dialog: Locator): Promise<void> {
  await dialog.getByRole('combobox', { name: 'Root', exact: true }).selectOption({ label: 'C' });
  await choose(dialog, 'String 5');
  await choose(dialog, '3');
}

/** Asks the card of this name; Edda's answer to it is right. */
async function answered(dialog: Locator, card: string, title: string, spots: Spots): Promise<void> {
  await dialog.getByRole('button', { name: `Ask: ${card}`, exact: true }).click();
  await expect(dialog).toBeHidden();
  await expectTask(edda, title);
  await tap(edda, ...spots);
  await done(edda);
  await step(desk, 'Hold');
  await expect(edda.getByText('Held').first()).toBeVisible();
  await step(desk, 'Reveal');
  await expect(edda.getByRole('heading', { name: /right/i })).toBeVisible();
  await step(desk, 'Next');
  await expect(resting(edda)).toBeVisible();
}

/** The places that a card's chart tells a screen reader. */
async function charted(dialog: Locator, name: string): Promise<Spots> {
  const label = await dialog
    .getByRole('img', { name: new RegExp(`^Chart: ${name}\\.`) })
    .first()
    .getAttribute('aria-label');
  return [...(label ?? '').matchAll(/string (\d+), (?:fret (\d+)|open)/g)].map(
    ([, string, fret]) => [Number(string), Number(fret ?? 0)] as const,
  );
}

const chords: readonly (readonly [
  what: string,
  field: string,
  kind: string,
  card: string,
  title: string,
  spots: Spots,
])[] = [
  [
    'Chord',
    'Chord',
    'major',
    'C major, A form',
    'Build C major',
    [
      [5, 3],
      [4, 5],
      [3, 5],
      [2, 5],
      [1, 3],
    ],
  ],
  [
    'Chord',
    'Chord',
    'major',
    'C major, Close triad on strings 6, 5 and 4, second inversion',
    'Build C major',
    [
      [6, 3],
      [5, 3],
      [4, 2],
    ],
  ],
  [
    'Chord',
    'Chord',
    'maj7',
    'Cmaj7, Drop-2 voicing on strings 5, 4, 3 and 2, root position',
    'Build Cmaj7',
    [
      [5, 3],
      [4, 5],
      [3, 4],
      [2, 5],
    ],
  ],
  [
    'Scale',
    'Scale',
    'minor-pentatonic',
    'C minor pentatonic, A form position, root under finger 1',
    'C minor pentatonic',
    [
      [6, 3],
      [6, 6],
      [5, 3],
      [5, 6],
      [4, 3],
      [4, 5],
      [3, 3],
      [3, 5],
      [2, 4],
      [2, 6],
      [1, 3],
      [1, 6],
    ],
  ],
  [
    'Scale',
    'Scale',
    'major',
    'C major scale, Three notes a string, the root first',
    'C major scale',
    [
      [6, 3],
      [6, 5],
      [6, 7],
      [5, 3],
      [5, 5],
      [5, 7],
      [4, 3],
      [4, 5],
      [4, 7],
      [3, 4],
      [3, 5],
      [3, 7],
      [2, 5],
      [2, 6],
      [2, 8],
      [1, 5],
      [1, 7],
      [1, 8],
    ],
  ],
  [
    'Arpeggio',
    'Chord',
    'm7',
    'Cm7 arpeggio, A form position, root under finger 1',
    'Cm7 arpeggio',
    [
      [6, 3],
      [6, 6],
      [5, 3],
      [5, 6],
      [4, 5],
      [3, 3],
      [3, 5],
      [2, 4],
      [1, 3],
      [1, 6],
    ],
  ],
];

for (const [what, field, kind, card, title, spots] of chords)
  test(`asked and answered: ${card}`, async () => {
    const dialog = await fromRoot(what);
    await rootC(dialog);
    await dialog.getByRole('combobox', { name: field, exact: true }).selectOption(kind);
    await answered(dialog, card, title, spots);
  });

test('what is chosen keeps its place while cards come', async () => {
  const dialog = await fromRoot('Map', 'Show a chart');
  const top = async () => {
    await expect(dialog.getByRole('img').first()).toBeVisible();
    return (await dialog.boundingBox())?.y;
  };
  const before = await top();
  await choose(dialog, 'Chord');
  await expect(dialog.getByRole('heading', { level: 4 }).first()).toBeVisible();
  expect(await top()).toBe(before);
  await dialog.getByRole('button', { name: 'Leave it' }).click();
});

test('proposals lie from the nut to the bridge, and each can be shown', async () => {
  const dialog = await fromRoot('Chord');
  await rootC(dialog);
  await dialog.getByRole('combobox', { name: 'Chord', exact: true }).selectOption('minor');
  await expect(dialog.getByRole('heading', { name: 'C form' })).toBeVisible();
  await expect(dialog.getByRole('heading', { level: 3 })).toHaveText([
    'Towards the nut',
    'Around the root',
    'Towards the bridge',
    'On every string',
  ]);
  await dialog.getByRole('button', { name: 'Show: C minor, A form' }).click();
  for (const page of [board, edda]) await expectTask(page, 'C minor');
  await desk.getByRole('button', { name: 'Show nothing' }).click();
});

test('two positions join in a walk, and the same goes on to every string', async () => {
  let dialog = await fromRoot('Scale');
  await rootC(dialog);
  await dialog.getByRole('combobox', { name: 'Scale', exact: true }).selectOption('minor-pentatonic');
  await expect(dialog.getByText(/^On string 5 slide from/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Show how they join' }).click();
  await expect(board.getByText('1 of 3')).toBeVisible();
  for (const number of ['2', '3']) {
    await stepTo(`${number} of 3`);
    await expect(board.getByText(`${number} of 3`)).toBeVisible();
  }
  await desk.keyboard.press('n');
  await expect(resting(edda)).toBeVisible();
  dialog = await fromRoot('Chord');
  await dialog.getByRole('button', { name: 'Show on every string' }).click();
  await expect(board.getByText('1 of 6')).toBeVisible();
  await desk.getByRole('button', { name: 'Show nothing' }).click();
});

test('a map is walked layer by layer by the key N, on Board and Stand', async () => {
  const dialog = await fromRoot('Map', 'Show a chart');
  await rootC(dialog);
  await dialog.getByRole('combobox', { name: 'Chord', exact: true }).selectOption('minor');
  await expect(dialog.getByRole('combobox', { name: 'Scale round both' })).toHaveValue('natural-minor');
  await dialog.getByRole('button', { name: 'Show it layer by layer' }).click();
  for (const page of [board, edda]) {
    await expect(page.getByRole('heading', { name: 'C minor', exact: true })).toBeVisible();
    await expect(page.getByText('pentatonic', { exact: true })).toBeHidden();
  }
  await stepTo('2 of 3');
  for (const page of [board, edda]) {
    await expectTask(page, 'C minor pentatonic');
    await expect(page.getByText('pentatonic', { exact: true })).toBeVisible();
  }
  await stepTo('3 of 3');
  for (const page of [board, edda]) {
    await expectTask(page, 'C natural minor scale');
    await expect(page.getByText('scale', { exact: true })).toBeVisible();
  }
  await desk.keyboard.press('n');
  await expect(resting(edda)).toBeVisible();
});

test('a progression with its roots on string 2: nonsense changes nothing, it is walked, one of it is asked', async () => {
  async function progression() {
    const dialog = await fromRoot('Progression');
    await dialog.getByRole('textbox', { name: 'Key' }).fill('D major');
    await dialog.getByRole('textbox', { name: 'Chords' }).fill('ii7 V7 I');
    await dialog.getByRole('combobox', { name: 'Roots' }).selectOption('2');
    await expect(dialog.getByRole('heading', { level: 3 })).toHaveText(['Em7 ii7', 'A7 V7', 'D major I']);
    await expect(dialog.getByText(/root: string 2/)).toHaveCount(3);
    return dialog;
  }
  let dialog = await progression();
  await dialog.getByRole('textbox', { name: 'Chords' }).fill('ii7 wobble I');
  await expect(dialog.getByText(/“wobble” is not understood/)).toBeVisible();
  await expect(dialog.getByRole('textbox', { name: 'Chords' })).toHaveAttribute('aria-invalid', 'true');
  await expect(dialog.getByRole('heading', { level: 3 })).toHaveText(['Em7 ii7', 'A7 V7', 'D major I']);

  await expect(dialog.getByRole('button', { name: 'Into the plan: the progression' })).toBeVisible();
  await dialog.getByRole('button', { name: 'Show it chord by chord' }).click();
  for (const [index, title] of ['Em7', 'A7', 'D major'].entries()) {
    if (index > 0) await stepTo(`${String(index + 1)} of 3`);
    for (const page of [board, edda])
      await expect(page.getByRole('heading', { name: title, exact: true })).toBeVisible();
  }
  await desk.keyboard.press('n');
  await expect(resting(edda)).toBeVisible();

  dialog = await progression();
  const spots = await charted(dialog, 'Em7');
  expect(spots.length).toBeGreaterThan(2);
  await answered(dialog, 'Em7', 'Build Em7', spots);
});

test('what is found goes into the plan of the class, and the dialog stays open for more', async () => {
  const dialog = await fromRoot('Chord');
  await rootC(dialog);
  await dialog.getByRole('combobox', { name: 'Chord', exact: true }).selectOption('minor');
  for (const card of ['C form', 'A form']) {
    await dialog.getByRole('button', { name: `Into the plan: C minor, ${card}` }).click();
    await expect(dialog.getByText(`In the plan: C minor, ${card}.`)).toBeVisible();
  }
  // It is said of what is in: without the server nothing is.
  await desk.route('**/api/plans/*', (route) => route.abort());
  await dialog.getByRole('button', { name: 'Into the plan: C minor, A form' }).click();
  await expect(dialog.getByText('Not in the plan yet: C minor, A form.')).toBeVisible();
  await desk.unroute('**/api/plans/*');
  await dialog.getByRole('button', { name: 'Leave it' }).click();
  await expect(desk.getByLabel('Plan', { exact: true }).getByText('Build C minor')).toHaveCount(2);
});

test('the answer key stays hidden where the Desk hides it', async () => {
  await desk.keyboard.press('k');
  const dialog = await fromRoot('Chord');
  await expect(dialog.getByRole('button', { name: /^Ask: / }).first()).toBeVisible();
  await expect(dialog.getByRole('img')).toHaveCount(0);
  await dialog.getByRole('button', { name: 'Leave it' }).click();
  await desk.keyboard.press('k');
});
