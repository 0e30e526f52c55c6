import { expect, test, type Locator, type Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { chartNotes } from '../../shared/exercise/chart.ts';
import { known } from '../../shared/lib/assert.ts';
import { openDesk, sharedServer } from '../support/browser.ts';
import { build, find } from '../support/exercises.ts';

/** Charts on the Desk leave it as pictures and on paper, and hold there what they hold on the screen. */

const server = sharedServer();
const eMinor = build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: false } });

let desk: Page;
let dialog: Locator;
/** Knows nothing of Rootcall. */
let elsewhere: Page;
const refused: string[] = [];

test.beforeAll(async ({ browser }) => {
  elsewhere = await browser.newPage();
  ({ desk } = await openDesk(browser, server(), ['Edda'], [find('D')]));
  desk.on('console', (message) => {
    if (message.text().includes('Content Security Policy')) refused.push(message.text());
  });
  await desk.getByRole('button', { name: 'Ask something else' }).click();
  dialog = desk.getByRole('dialog');
  await choose('From a root');
  await expect(dialog.getByRole('img').first()).toBeVisible();
});

test.afterAll(() => expect(refused).toEqual([]));

test.describe.configure({ mode: 'serial' });

async function choose(name: string): Promise<void> {
  await dialog.getByRole('radio', { name, exact: true }).focus();
  await desk.keyboard.press('Space');
}

/** The menu of what is called so, opened. */
async function menuOf(name: string): Promise<Locator> {
  const menu = dialog
    .locator('rootcall-chart-save')
    .filter({ has: desk.locator(`[aria-label="Save as: ${name}"]`) });
  if (!(await menu.getByRole('group', { name: 'Kind of file' }).isVisible()))
    await menu.getByText('Save as…', { exact: true }).click();
  return menu;
}

async function saved(name: string, kind: 'SVG' | 'PNG') {
  const menu = await menuOf(name);
  const [download] = await Promise.all([
    desk.waitForEvent('download'),
    menu.getByRole('button', { name: kind }).click(),
  ]);
  return { file: download.suggestedFilename(), content: await readFile(await download.path()) };
}

/** Prints into a PDF, as the browser's own dialog would; the words on each of its pages. */
async function printed(name: string): Promise<readonly string[]> {
  const menu = await menuOf(name);
  await desk.evaluate(() => {
    window.print = () => undefined;
  });
  await menu.getByRole('button', { name: 'PDF' }).click();
  const paper = await getDocument({ data: new Uint8Array(await desk.pdf({ format: 'A4' })), verbosity: 0 })
    .promise;
  const pages: string[] = [];
  for (let number = 1; number <= paper.numPages; number += 1) {
    const { items } = await (await paper.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  await desk.evaluate(() => dispatchEvent(new Event('afterprint')));
  return pages;
}

interface Read {
  readonly broken: boolean;
  readonly marks: readonly string[];
  readonly titles: readonly string[];
  /** In shares of the picture: the strings from string 1 on, and the fret wires, of the first chart. */
  readonly strings: readonly number[];
  readonly wires: readonly number[];
  readonly gap: number;
}

/** Reads a picture as another program would. */
async function read(svg: string): Promise<Read> {
  return elsewhere.evaluate((text) => {
    const page = new DOMParser().parseFromString(text, 'image/svg+xml');
    const [, , width = 0, height = 0] = (page.documentElement.getAttribute('viewBox') ?? '')
      .split(' ')
      .map(Number);
    const shift = (element: Element | null): [number, number] => {
      if (!element) return [0, 0];
      const [x, y] = shift(element.parentElement);
      const [, dx = 0, dy = 0] = (element.getAttribute('transform') ?? '').split(/[( )]/).map(Number);
      return [x + dx, y + dy];
    };
    const number = (element: Element, name: string) => Number(element.getAttribute(name));
    const first = page.querySelector('line')?.parentElement;
    const lines = [...page.querySelectorAll('line')].filter((line) => line.parentElement === first);
    const [left, top] = shift(first ?? null);
    const strings = lines
      .filter((line) => number(line, 'x1') === number(line, 'x2'))
      .map((line) => (left + number(line, 'x1')) / width)
      .sort((a, b) => b - a);
    const wires = lines
      .filter((line) => number(line, 'y1') === number(line, 'y2'))
      .map((line) => (top + number(line, 'y1')) / height)
      .sort((a, b) => a - b);
    return {
      broken: page.querySelector('parsererror') !== null,
      marks: [...page.querySelectorAll('g > title')].map((title) => title.textContent ?? ''),
      titles: [...page.querySelectorAll('svg > title')].map((title) => title.textContent ?? ''),
      strings,
      wires,
      gap: (strings[0] ?? 0) - (strings[1] ?? 0),
    };
  }, svg);
}

/** How dark, 0 to 1, a picture is at these shares of it, and how many dots it has. */
async function seen(image: Buffer, type: string, points: readonly (readonly [number, number])[]) {
  return elsewhere.evaluate(
    async ([data, kind, at]) => {
      const address = `data:${kind};base64,${data}`;
      const picture = new Image();
      picture.src = address;
      await picture.decode();
      const canvas = new OffscreenCanvas(picture.naturalWidth, picture.naturalHeight);
      const context = canvas.getContext('2d');
      context?.drawImage(picture, 0, 0);
      const dark = at.map(([x, y]) => {
        const dot = context?.getImageData(
          Math.round(x * canvas.width),
          Math.round(y * canvas.height),
          1,
          1,
        ).data;
        return 1 - (dot?.[0] ?? 0) / 255;
      });
      return { width: canvas.width, height: canvas.height, dark };
    },
    [image.toString('base64'), type, points] as const,
  );
}

/** Beside the middle of a place, where its letter doesn't reach: inside a disc or lozenge, off the string. */
function besides(
  { strings, wires, gap }: Read,
  low: number,
  places: readonly { string: number; fret: number }[],
) {
  return places.map(({ string, fret }) => {
    const [from, to] = [wires[fret - low], wires[fret - low + 1]];
    return [
      known(strings[string - 1], 'a string') + 0.31 * gap,
      (known(from, 'a wire') + known(to, 'a wire')) / 2,
    ] as const;
  });
}

const places = chartNotes(eMinor)
  .filter(({ optional }) => optional !== true)
  .map(({ place }) => place);
const empty = [
  { string: 4, fret: 4 },
  { string: 3, fret: 6 },
  { string: 6, fret: 5 },
];
let svg: string;

test('CHART-7 a chart is saved as SVG: well-formed, alone, with the same strings and frets', async () => {
  await dialog.getByRole('combobox', { name: 'Root', exact: true }).selectOption({ label: 'E' });
  await dialog.getByRole('combobox', { name: 'Chord', exact: true }).selectOption('minor');
  await choose('String 2');
  await choose('5');
  await expect(dialog.getByRole('img', { name: /^Chart: C form\..* string 2, fret 5, root/ })).toBeVisible();
  const { file, content } = await saved('E minor, C form', 'SVG');
  expect(file).toBe('e-minor-c-form.svg');
  svg = content.toString('utf8');
  const found = await read(svg);
  expect(found.broken).toBe(false);
  expect(found.titles).toEqual(['E minor']);
  expect(found.marks.toSorted()).toEqual(
    [
      ...chartNotes(eMinor).map(
        ({ place: { string, fret } }) => `string ${String(string)}, fret ${String(fret)}`,
      ),
      'string 6, silent',
      'string 1, silent',
    ].toSorted(),
  );
  // Nothing from elsewhere, and none of how the page makes it.
  expect(svg.replace(/xmlns="[^"]+"/g, '')).not.toMatch(
    /https?:|href|@import|url\((?!"data:)|var\(|class=|lit\$|<!--/,
  );
  expect(svg.match(/url\("data:font/g)).toHaveLength(2);
});

test('CHART-7 the SVG is a picture by itself, its marks at their strings and frets', async () => {
  const found = await read(svg);
  expect(found.strings).toHaveLength(6);
  const points = besides(found, 4, [...places, ...empty]);
  const { width, dark } = await seen(Buffer.from(svg), 'image/svg+xml', points);
  expect(width).toBeGreaterThan(0);
  expect(dark.map((share) => share > 0.9)).toEqual([...places.map(() => true), ...empty.map(() => false)]);
});

test('CHART-7 a chart is saved as PNG, 300 dots to the inch, its marks and letters where they are in the SVG', async () => {
  const { file, content } = await saved('E minor, C form', 'PNG');
  expect(file).toBe('e-minor-c-form.png');
  // PNG specification, 5.2: the signature.
  expect([...content.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  const [width = 0, height = 0] = [...svg.matchAll(/(?:width|height)="([\d.]+)mm"/g)].map(([, mm]) =>
    Math.round((Number(mm) / 25.4) * 300),
  );
  const decoded = await elsewhere.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    return [bitmap.width, bitmap.height];
  }, content.toString('base64'));
  expect(decoded).toEqual([width, height]);
  const found = await read(svg);
  const { dark } = await seen(content, 'image/png', besides(found, 4, [...places, ...empty]));
  expect(dark.map((share) => share > 0.9)).toEqual([...places.map(() => true), ...empty.map(() => false)]);
  // The R on string 2 has its stem left of the middle, white in a black lozenge.
  const [[x, y] = [0, 0]] = besides(found, 4, [{ string: 2, fret: 5 }]);
  const across = Array.from(
    { length: 40 },
    (_, step) => [x - (0.31 + 0.2 - step * 0.01) * found.gap, y] as const,
  );
  const letter = (await seen(content, 'image/png', across)).dark;
  expect(Math.min(...letter)).toBeLessThan(0.1);
  expect(Math.max(...letter)).toBeGreaterThan(0.9);
});

test('CHART-7 a chart is printed alone on one page, and the page is there again after it', async () => {
  const before = await desk.evaluate(() => document.body.childElementCount);
  const pages = await printed('E minor, C form');
  expect(pages).toHaveLength(1);
  expect(pages[0]).toContain('E minor');
  expect(pages[0]).toMatch(/♭\s*3/);
  expect(pages[0]).not.toMatch(/Towards|Thursday|Into the plan/);
  expect(
    await desk.evaluate(() => [document.body.childElementCount, document.adoptedStyleSheets.length]),
  ).toEqual([before, 0]);
  await expect(dialog).toBeVisible();
});

test('the menu opens and closes by keys, and leaves the dialog open', async () => {
  const menu = await menuOf('E minor, C form');
  await desk.keyboard.press('Escape');
  await expect(menu.getByRole('group', { name: 'Kind of file' })).toBeHidden();
  await expect(dialog).toBeVisible();
  await desk.keyboard.press('Enter');
  await desk.keyboard.press('Tab');
  await expect(menu.getByRole('button', { name: 'SVG' })).toBeFocused();
  await desk.keyboard.press('Escape');
  await expect(menu.getByText('Save as…', { exact: true })).toBeFocused();
});

test('CHART-6 a progression is a row of charts with as many frets, saved and printed as one', async () => {
  await choose('Progression');
  await dialog.getByRole('textbox', { name: 'Key' }).fill('D major');
  await dialog.getByRole('textbox', { name: 'Chords' }).fill('ii7 V7 I vi');
  await dialog.getByRole('combobox', { name: 'Roots' }).selectOption('2');
  await expect(dialog.getByRole('heading', { level: 3 })).toHaveText([
    'Em7 ii7',
    'A7 V7',
    'D major I',
    'B minor vi',
  ]);
  const charts = dialog.locator('rootcall-chart-row rootcall-chart');
  await expect(charts).toHaveCount(4);
  const sizes = await charts.evaluateAll((all) =>
    all.map((chart) => {
      const drawn = chart.shadowRoot?.querySelector('rootcall-neck')?.shadowRoot?.querySelector('svg');
      return drawn?.getAttribute('viewBox') ?? '';
    }),
  );
  expect(new Set(sizes).size).toBe(1);
  expect(sizes[0]).not.toBe('');
  const { file, content } = await saved('Em7 A7 D major B minor', 'SVG');
  expect(file).toBe('em7-a7-d-major-b-minor.svg');
  const found = await read(content.toString('utf8'));
  expect(found.broken).toBe(false);
  expect(found.titles).toEqual(['Em7, A7, D major, B minor']);
  const labels = await charts
    .getByRole('img')
    .evaluateAll((all) => all.map((chart) => chart.ariaLabel ?? ''));
  const told = labels.flatMap((label) =>
    [...label.matchAll(/string (\d+), (fret \d+|open|silent)/g)].map(
      ([, string = '', at = '']) => `string ${string}, ${at}`,
    ),
  );
  expect(told.length).toBeGreaterThan(12);
  expect(found.marks.toSorted()).toEqual(told.toSorted());
  const pages = await printed('Em7 A7 D major B minor');
  expect(pages).toHaveLength(1);
  for (const title of ['Em7', 'A7', 'D major', 'B minor']) expect(pages[0]).toContain(title);
});
