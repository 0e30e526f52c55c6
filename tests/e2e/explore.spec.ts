import { expect, test, type Locator, type Page } from '@playwright/test';
import { gzipSync } from 'node:zlib';
import { findings, inspected } from '../support/axe.ts';
import { joinClass, newPage, openDesk, phone, resting, sharedServer, spot } from '../support/browser.ts';
import { find } from '../support/exercises.ts';

/** Exploring alone: by touch, by keys, without a network, for everybody. */

const server = sharedServer();
const small = { viewport: { width: 320, height: 568 }, hasTouch: true, isMobile: true };

const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const title = (page: Page, name: string): Locator => page.getByRole('heading', { name, exact: true });
const chart = (page: Page, name: string): Locator => page.getByRole('img', { name: `Chart: ${name}` });
const field = (page: Page, name: string): Locator => page.getByRole('combobox', { name, exact: true });
/** What a screen reader hears last. */
const said = (page: Page): Locator => page.locator('[aria-live=polite]');

async function place(page: Page, ...places: readonly (readonly [number, number])[]): Promise<void> {
  for (const [string, fret] of places) {
    await spot(page, string, fret).tap();
    await expect(spot(page, string, fret)).toHaveAttribute('aria-selected', 'true');
  }
}

/** E on string 2, fret 5, and what lies around it. */
async function exploreE(page: Page): Promise<void> {
  await page.goto(`${server().url}/explore`);
  await place(page, [2, 5]);
  await button(page, 'See what lies around it').tap();
  await expect(title(page, 'E minor')).toBeVisible();
}

/** To the end of the neck in one direction; the names of the charts on the way. */
async function walk(page: Page, way: string): Promise<readonly string[]> {
  const names: string[] = [];
  while ((await button(page, way).getAttribute('aria-disabled')) === 'false') {
    const before = await said(page).textContent();
    await button(page, way).click();
    await expect(said(page)).not.toHaveText(before ?? '');
    names.push((await said(page).textContent()) ?? '');
  }
  return names;
}

test('by touch: a root on string 2, charts both ways, the map, another string', async ({ browser }) => {
  const page = await newPage(browser, phone);
  await exploreE(page);
  await expect(chart(page, 'E minor, C form')).toBeVisible();
  await expect(page.getByText('string 2, fret 5, root, E, finger 3').first()).toBeAttached();

  const towardsNut = await walk(page, 'Towards the nut');
  expect(towardsNut.at(-1)).toContain('D form, 1 of');
  const towardsBridge = await walk(page, 'Towards the bridge');
  expect(towardsBridge.length).toBeGreaterThan(towardsNut.length);

  await page.getByLabel('Pentatonic', { exact: true }).check();
  await expect(chart(page, 'E minor pentatonic, C form position, root under finger 1')).toBeVisible();
  await expect(page.getByText('on string 2 slide from fret 5 to fret 8')).toBeVisible();
  await page.getByLabel('Scale', { exact: true }).check();
  await field(page, 'Which scale or arpeggio').selectOption('dorian');
  await expect(title(page, 'E dorian mode')).toBeVisible();

  await page.getByLabel('Map', { exact: true }).check();
  await expect(chart(page, 'E natural minor scale, Chord, pentatonic and scale')).toBeVisible();
  await button(page, 'Fewer notes').tap();
  await expect(chart(page, 'E minor pentatonic, Chord and pentatonic')).toBeVisible();

  await page.getByLabel('Chord', { exact: true }).check();
  await button(page, 'On string 3').tap();
  await expect(page.getByText('Root on string 3, fret 9', { exact: true })).toBeVisible();
});

test('the quiz names a slip, shows it, and counts what was right', async ({ browser }) => {
  const page = await newPage(browser, phone);
  await exploreE(page);
  // The triad on strings 3, 2 and 1: right 4-5-3; string 3 one fret high is the short step forgotten (computed).
  while (!(await chart(page, 'E minor, Close triad on strings 3, 2 and 1').isVisible()))
    await button(page, 'Towards the nut').tap();
  await button(page, 'Quiz yourself').tap();
  await expect(title(page, 'Build E minor')).toBeVisible();
  await expect(button(page, 'Look at it')).toBeDisabled();
  await place(page, [3, 5], [2, 5], [1, 3]);
  await button(page, 'Look at it').tap();
  await expect(title(page, 'The step that is not like the others')).toBeVisible();
  await expect(page.getByText('Try fret 4.', { exact: true })).toBeVisible();
  await expect(said(page)).toContainText('0 of 1 right');

  await button(page, 'Next').tap();
  await place(page, [3, 4], [2, 5], [1, 3]);
  await button(page, 'Look at it').tap();
  await expect(title(page, 'All three are right')).toBeVisible();
  await expect(page.getByText('1 of 2 right', { exact: true })).toBeVisible();

  await button(page, 'Next').tap();
  const before = await page.getByRole('heading', { level: 1 }).textContent();
  await field(page, 'What is asked').selectOption({ label: 'Any root of this kind' });
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText(before ?? '');
  await expect(page.getByRole('main').getByText('Close triad on strings 3, 2 and 1.')).toBeVisible();
});

test('the map’s quiz asks what a place is of the root', async ({ browser }) => {
  const page = await newPage(browser, small);
  await exploreE(page);
  await page.getByLabel('Map', { exact: true }).check();
  await button(page, 'Quiz yourself').tap();
  await expect(title(page, 'Name this place')).toBeVisible();
  // No note of the map but the root is the root.
  await page.getByRole('radio', { name: 'root' }).tap();
  await button(page, 'Look at it').tap();
  await expect(page.getByText('0 of 1 right', { exact: true })).toBeVisible();
});

test('by keys alone: fields for the root, both ways, a quiz', async ({ browser }) => {
  const page = await newPage(browser, { viewport: { width: 1366, height: 768 } });
  await page.goto(`${server().url}/explore`);
  const tabTo = async (wanted: Locator) => {
    for (let press = 0; press < 25; press += 1) {
      if (await wanted.evaluate((element) => element.matches(':focus'))) return;
      await page.keyboard.press('Tab');
    }
    await expect(wanted).toBeFocused();
  };
  await tabTo(field(page, 'Note'));
  await page.keyboard.type('E');
  await expect(said(page)).toHaveText('String 2, fret 5: E.');
  await tabTo(button(page, 'See what lies around it'));
  await page.keyboard.press('Enter');
  await expect(title(page, 'E minor')).toBeFocused();
  await expect(said(page)).toContainText('E minor, root on string 2, fret 5. C form');

  await tabTo(page.getByLabel('Chord', { exact: true }));
  await page.keyboard.press('ArrowRight');
  await expect(title(page, 'E minor pentatonic')).toBeVisible();
  await page.keyboard.press('ArrowLeft');
  await tabTo(button(page, 'Towards the nut'));
  await page.keyboard.press('Enter');
  await expect(said(page)).not.toContainText('C form');
  await tabTo(button(page, 'Towards the bridge'));
  await page.keyboard.press('Space');
  await expect(said(page)).toContainText('C form');

  await tabTo(button(page, 'Quiz yourself'));
  await page.keyboard.press('Enter');
  await expect(title(page, 'Build E minor')).toBeFocused();
  await tabTo(spot(page, 1, 0));
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(said(page)).toHaveText('Placed string 1, fret 1.');
  await tabTo(button(page, 'Look at it'));
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('0 of 1 right');
  await expect(button(page, 'Next')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(title(page, 'Build E minor')).toBeFocused();
});

test('left-handed, another tuning and German names are kept on the device', async ({ browser }) => {
  const page = await newPage(browser, phone);
  await page.goto(`${server().url}/explore`);
  const across = async () => {
    const [one, six] = await Promise.all([1, 6].map((string) => spot(page, string, 3).boundingBox()));
    return (one?.x ?? 0) - (six?.x ?? 0);
  };
  expect(await across()).toBeGreaterThan(0);
  await button(page, 'Settings').tap();
  await page.getByRole('switch', { name: 'Left-handed neck' }).tap();
  await field(page, 'Note names').selectOption('german');
  await field(page, 'In the marks of a chart').selectOption('notes');
  await field(page, 'Instrument and tuning').selectOption('guitar-drop-d');
  await page.reload();
  await expect(title(page, 'Choose a root')).toBeVisible();
  expect(await across()).toBeLessThan(0);

  await place(page, [2, 0]);
  await expect(page.getByRole('main').getByText('String 2, open: H.')).toBeVisible();
  await place(page, [2, 5]);
  await button(page, 'See what lies around it').tap();
  // The fifth of E is B, in German H.
  await expect(chart(page, 'E minor, C form').locator('text', { hasText: /^H$/ })).toHaveCount(1);
  await button(page, 'Settings').tap();
  await expect(field(page, 'Instrument and tuning')).toHaveValue('guitar-drop-d');
});

test('once it has loaded it asks the network for nothing, and goes on without one', async ({ browser }) => {
  const page = await newPage(browser, phone);
  const asked: string[] = [];
  await page.goto(`${server().url}/explore`, { waitUntil: 'networkidle' });
  page.on('request', (request) => asked.push(request.url()));
  await page.context().setOffline(true);
  await place(page, [2, 4]);
  await button(page, 'See what lies around it').tap();
  // ♯ is drawn here for the first time, from a file of its own.
  for (const [kind, heading] of [
    ['Pentatonic', 'D♯ minor pentatonic'],
    ['Scale', 'D♯ natural minor scale'],
    ['Map', 'D♯ natural minor scale'],
    ['Chord', 'D♯ minor'],
  ] as const) {
    await page.getByLabel(kind, { exact: true }).check();
    await expect(title(page, heading)).toBeVisible();
  }
  expect(await page.evaluate(() => [...document.fonts].every(({ status }) => status === 'loaded'))).toBe(
    true,
  );
  await button(page, 'Quiz yourself').tap();
  await place(page, [2, 4]);
  await button(page, 'Look at it').tap();
  await expect(page.getByText('0 of 1 right', { exact: true })).toBeVisible();
  await button(page, 'Back').tap();
  await button(page, 'Settings').tap();
  await expect(title(page, 'Settings')).toBeVisible();
  expect(asked).toEqual([]);
});

test('at localhost it loads again without a network', async ({ browser }) => {
  const page = await newPage(browser, phone);
  const address = new URL(server().url);
  address.hostname = 'localhost';
  await page.goto(`${address.origin}/explore`);
  await page.evaluate(async () => navigator.serviceWorker.ready);
  await expect(async () => {
    const kept = await page.evaluate(async () => {
      const [name = ''] = await caches.keys();
      return (await (await caches.open(name)).keys()).length;
    });
    expect(kept).toBeGreaterThan(4);
  }).toPass();
  await page.context().setOffline(true);
  await page.reload();
  await expect(title(page, 'Choose a root')).toBeVisible();
  await place(page, [2, 5]);
  await button(page, 'See what lies around it').tap();
  await expect(chart(page, 'E minor, C form')).toBeVisible();
  // It keeps nothing but this page: the Stand needs its class.
  await expect(page.goto(`${address.origin}/`)).rejects.toThrow(/ERR_INTERNET_DISCONNECTED/);
});

test('fits a small phone, with targets that a finger finds', async ({ browser }) => {
  for (const [options, least] of [
    [phone, 44],
    [small, 24],
  ] as const) {
    const page = await newPage(browser, options);
    const expectFit = async () => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(options.viewport.width);
      const controls = await page.locator('button:visible, select:visible, .kinds span').all();
      for (const control of controls) {
        const box = await control.boundingBox();
        const name = await control.evaluate((element) => `${element.className} ${element.textContent ?? ''}`);
        // The window's button is drawn smaller than its target, as on the Stand.
        const height = (box?.height ?? 0) + (name.startsWith('window') ? 10 : 0);
        expect(height, name).toBeGreaterThanOrEqual(least);
        expect((box?.x ?? 0) + (box?.width ?? 0), name).toBeLessThanOrEqual(options.viewport.width);
      }
    };
    await exploreE(page);
    await expectFit();
    await page.getByLabel('Map', { exact: true }).check();
    await expectFit();
    await button(page, 'Quiz yourself').tap();
    await expectFit();
    await page.getByRole('radio', { name: 'root' }).tap();
    await button(page, 'Look at it').tap();
    await expectFit();
    await page.context().close();
  }
});

test('axe finds nothing serious, light or dark', async ({ browser }) => {
  const page = await newPage(browser, { ...phone, ...inspected });
  const expectNone = async () => expect(await findings(page)).toEqual([]);
  await page.goto(`${server().url}/explore`);
  await expectNone();
  await exploreE(page);
  await expectNone();
  await page.getByLabel('Map', { exact: true }).check();
  await expectNone();
  await button(page, 'Quiz yourself').tap();
  await expectNone();
  await page.getByRole('radio', { name: 'root' }).tap();
  await button(page, 'Look at it').tap();
  await expectNone();
  await button(page, 'Back').tap();
  await button(page, 'Settings').tap();
  await expectNone();
});

test('its script and style weigh under 120 kB', async ({ browser }) => {
  const page = await newPage(browser, phone);
  const bodies: Promise<Buffer>[] = [];
  page.on('response', (response) => {
    if (/\.(js|css)$/.test(new URL(response.url()).pathname)) bodies.push(response.body());
  });
  await page.goto(`${server().url}/explore`, { waitUntil: 'networkidle' });
  const compressed = (await Promise.all(bodies)).reduce((sum, body) => sum + gzipSync(body).length, 0);
  expect(compressed).toBeGreaterThan(10_000);
  expect(compressed).toBeLessThan(120_000);
});

test('leads there from the door, from a class at rest, and from the Desk', async ({ browser }) => {
  const door = await newPage(browser, small);
  await door.goto(`${server().url}/`);
  await door.getByRole('link', { name: 'Explore the neck' }).tap();
  await expect(title(door, 'Choose a root')).toBeVisible();

  const { desk, code } = await openDesk(browser, server(), ['Kaya'], [find('D')]);
  const stand = await newPage(browser, small);
  await joinClass(stand, server(), code, 'Kaya');
  await expect(resting(stand)).toBeVisible();
  expect(await stand.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
  await stand.getByRole('link', { name: 'Explore the neck meanwhile' }).tap();
  await expect(title(stand, 'Choose a root')).toBeVisible();
  await stand.getByRole('link', { name: 'Rootcall' }).tap();
  await expect(resting(stand)).toBeVisible();

  await desk.goto(`${server().url}/desk`);
  await desk.getByRole('link', { name: 'Explore the neck' }).click();
  await expect(title(desk, 'Choose a root')).toBeVisible();
});
