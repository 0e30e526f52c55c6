import { expect, test, type Page } from '@playwright/test';
import { answerLineOf } from '../../client/pages/desk/handout/answers.ts';
import { itemsOf } from '../../client/pages/desk/handout/sheet.ts';
import { answerKey } from '../../shared/exercise/key.ts';
import { levelsOf } from '../../shared/exercise/levels.ts';
import { wordingOf } from '../../shared/exercise/wording.ts';
import { findings, inspected } from '../support/axe.ts';
import { laptop, newPage, phone, setUpGroup, sharedServer } from '../support/browser.ts';
import { handoutPlan } from '../support/handout-plan.ts';
import { pdfPages, type PdfPage } from '../support/pdf.ts';

const server = sharedServer();
let desk: Page;
let path: string;

const exercises = handoutPlan.flatMap(levelsOf);
const items = itemsOf(handoutPlan);
const points = { A4: [595.3, 841.9], Letter: [612, 792] } as const;
const without = (text: string) => text.replace(/\s/g, '');

test.beforeAll(async ({ browser }) => {
  desk = await newPage(browser, { ...laptop, ...inspected });
  await setUpGroup(desk, server(), ['Edda'], []);
  const groupId = desk.url().split('/').pop() ?? '';
  const planId = await desk.evaluate(
    async ([group, body]) => {
      const headers = { 'content-type': 'application/json' };
      const reply = await fetch(`/api/groups/${String(group)}/plans`, {
        method: 'POST',
        headers,
        body: String(body),
      });
      return ((await reply.json()) as { id: string }).id;
    },
    [groupId, JSON.stringify({ title: 'Round string 2', exercises: handoutPlan })],
  );
  path = `/desk/handout/${groupId}?plan=${planId}`;
});

test.beforeEach(async () => {
  await desk.setViewportSize(laptop.viewport);
  await desk.goto(server().url + path);
  await expect(desk.getByRole('heading', { name: 'Handout' })).toBeVisible();
});

// One Desk, whose settings are remembered from test to test.
test.describe.configure({ mode: 'serial' });

const choose = (label: string, option: string) =>
  desk.getByRole('combobox', { name: label, exact: true }).selectOption(option);
const kind = (words: string) => desk.getByText(words, { exact: true }).first().click();
const printed = async (): Promise<readonly PdfPage[]> =>
  pdfPages(await desk.pdf({ preferCSSPageSize: true }));

/** What each chart of these pages shows, as a screen reader tells it: its number, and its places. */
async function charts(of: string): Promise<readonly { number: string; places: readonly string[] }[]> {
  const drawn = desk.locator(`desk-handout .page.${of} rootcall-chart[data-number]`);
  await expect(drawn.locator('svg[role=img]')).toHaveCount(await drawn.count());
  const told = await drawn.evaluateAll((all) =>
    all.map((chart) => ({
      number: chart.getAttribute('data-number') ?? '',
      label:
        chart.shadowRoot
          ?.querySelector('rootcall-neck')
          ?.shadowRoot?.querySelector('svg')
          ?.getAttribute('aria-label') ?? '',
    })),
  );
  return told.map(({ number, label }) => {
    const places: string[] = [];
    let string = '';
    for (const [, onString, fret, open] of label
      .slice(label.indexOf('.'))
      .matchAll(/string (\d+)|fret (\d+)|(\bopen)/g)) {
      if (onString !== undefined) string = onString;
      else places.push(`${string}:${open === undefined ? String(fret) : '0'}`);
    }
    return { number, places: places.toSorted() };
  });
}

const keys = exercises.map((exercise, index) => ({
  number: items[index]?.number ?? '',
  places: answerKey(exercise)
    .map(({ place }) => `${String(place.string)}:${String(place.fret)}`)
    .toSorted(),
}));

for (const paper of ['A4', 'Letter'] as const)
  for (const hands of ['Right-handed', 'Left-handed'] as const)
    test(`HANDOUT-2 every printed chart is the key, black, 7 points at least: ${paper}, ${hands}`, async () => {
      await kind('Charts');
      await choose('Paper', paper);
      await choose('On each page', '12 charts');
      await choose('Hands', hands);
      expect(await charts('charts')).toEqual(keys);
      const shown = await desk.locator('desk-handout section.frame').count();
      const pages = await printed();
      expect(pages).toHaveLength(shown);
      for (const [index, page] of pages.entries()) {
        expect(page.width).toBeCloseTo(points[paper][0], 0);
        expect(page.height).toBeCloseTo(points[paper][1], 0);
        for (const words of ['Round string 2', 'Alderwick Community Music School · Thursday Strings'])
          expect(page.text).toContain(without(words));
        expect(page.text).toContain(without(`Page ${String(index + 1)} of ${String(shown)}`));
        expect(page.text.includes('Left-handed')).toBe(hands === 'Left-handed');
        expect(page.text).toContain(without('After 25 minutes of playing, pause for five.'));
        expect(page.text).not.toContain('Settings');
        expect(page.text).not.toContain('Handout');
        expect(page.leastText).toBeGreaterThanOrEqual(6.95);
        expect(page.colours.filter((colour) => !/#000000|#ffffff/.test(colour))).toEqual([]);
      }
      // String 6 lies to the left of string 1, seen from in front; to the right for the left hand.
      const upright = desk.locator('desk-handout rootcall-chart[view=upright]').first();
      const [six, one] = await Promise.all(
        ['6', '1'].map((text) => upright.locator('text.digit', { hasText: text }).boundingBox()),
      );
      expect((six?.x ?? 0) < (one?.x ?? 0)).toBe(hands === 'Right-handed');
    });

test('HANDOUT-6 HANDOUT-7 HANDOUT-8 the quiz asks in the plan’s words, holds no answer, and has an answer sheet', async () => {
  await kind('Paper quiz');
  await choose('Paper', 'A4');
  await choose('Hands', 'Right-handed');
  const pages = await printed();
  for (const { leastText } of pages) expect(leastText).toBeGreaterThanOrEqual(6.95);
  const answersFrom = pages.findIndex(({ text }) => text.includes('Answers'));
  const questions = pages.slice(0, answersFrom).map(({ text }) => text);
  expect(questions.length).toBeGreaterThan(0);
  let rest = questions.join('');
  for (const text of questions) expect(text).toContain('Name');
  for (const [index, exercise] of exercises.entries()) {
    const { title, detail } = wordingOf(exercise, 'english');
    const number = items[index]?.number ?? '';
    for (const asked of [without(`${number}.${title}`), without(detail)]) {
      expect(rest).toContain(asked);
      rest = rest.replace(asked, '');
    }
  }
  // What is left is the sheet's own, and the numbers of strings and frets.
  const own = [
    'Round string 2',
    'Alderwick Community Music School · Thursday Strings',
    'Fill in where each finger goes: a dot on the fret, O for an open string, X for a silent one.',
    'Of a, b and c take the one that is yours.',
    'Number the dots in their order.',
    'Answer',
    'Name',
    ...questions.map((_, index) => `Page ${String(index + 1)} of ${String(questions.length)}`),
  ];
  for (const words of own) rest = rest.replaceAll(without(words), '');
  expect(rest).toMatch(/^\d+$/);
  expect(new Set((await charts('questions')).flatMap(({ places }) => places))).toEqual(new Set());

  const answers = pages.slice(answersFrom);
  const answerText = answers.map(({ text }) => text).join('');
  for (const item of items)
    for (const { title, right, slips } of answerLineOf(item, 'english'))
      for (const words of [title, right, ...slips]) expect(answerText).toContain(without(words));
  for (const { text } of answers) expect(text).toContain(without('then Results from paper'));
  const placed = keys.filter((_, index) => exercises[index]?.kind !== 'name');
  expect(await charts('answers')).toEqual(placed);
});

test('HANDOUT-9 empty charts start where the teacher says, for any instrument', async () => {
  await kind('Blank charts');
  await choose('On each page', '6 charts');
  await choose('First fret', '5');
  await choose('Instrument', 'ukulele');
  const blank = desk.locator('desk-handout .page.blank rootcall-chart');
  await expect(blank).toHaveCount(6);
  const labels = blank.first().locator('text');
  await expect(labels.filter({ hasText: /^4$/ })).not.toHaveCount(0);
  await expect(labels.filter({ hasText: /^9$/ })).toHaveCount(1);
  await expect(blank.first().locator('.filled')).toHaveCount(0);
  const [page, ...others] = await printed();
  expect(others).toEqual([]);
  expect(page?.text).toContain(without('Blank charts'));
});

test('a chart is added freely, left out, and given a sentence, by keyboard; the settings stay', async () => {
  await kind('Charts');
  const cells = desk.locator('desk-handout .page.charts figure');
  await expect(cells).toHaveCount(items.length);
  await desk.getByRole('button', { name: 'Add a chart' }).focus();
  await desk.keyboard.press('Enter');
  const dialog = desk.getByRole('dialog', { name: 'Add a chart' });
  await dialog
    .getByRole('button', { name: /^Onto the sheet/ })
    .first()
    .focus();
  await desk.keyboard.press('Enter');
  await expect(dialog.getByText(/^On the sheet:/)).toBeVisible();
  await dialog.getByText('Map', { exact: true }).click();
  await dialog.getByRole('button', { name: /^Onto the sheet/ }).click();
  await desk.keyboard.press('Escape');
  await expect(cells).toHaveCount(items.length + 2);
  await desk.getByLabel('1b. Find E♭', { exact: true }).focus();
  await desk.keyboard.press('Space');
  await expect(cells).toHaveCount(items.length + 1);
  const line = desk.getByLabel('Sentence below 1a. Find D');
  await line.fill('Sing it first.');
  await line.press('Enter');
  await expect(cells.first()).toContainText('Sing it first.');
  await choose('Paper', 'Letter');
  await desk.reload();
  await expect(desk.getByRole('combobox', { name: 'Paper', exact: true })).toHaveValue('letter');
});

test('the page fits every window, and axe finds nothing serious', async () => {
  for (const words of ['Blank charts', 'Paper quiz', 'Charts']) {
    await kind(words);
    expect(await findings(desk)).toEqual([]);
  }
  for (const viewport of [phone.viewport, { width: 320, height: 568 }, { width: 1920, height: 1080 }]) {
    await desk.setViewportSize(viewport);
    await expect(desk.locator('desk-handout .page').first()).toBeVisible();
    const at = { message: `${String(viewport.width)} px` };
    await expect
      .poll(() => desk.evaluate(() => document.documentElement.scrollWidth - innerWidth), at)
      .toBeLessThanOrEqual(0);
  }
  await desk.setViewportSize(phone.viewport);
  await desk.getByText('Settings and printing').click();
  expect(await findings(desk)).toEqual([]);
});
