import { expect, test, type Page } from '@playwright/test';
import { findings, inspected } from '../support/axe.ts';
import { newPage, phone, sharedServer } from '../support/browser.ts';
import { PlayingBrowser, secureUrl } from '../support/playing-browser.ts';
import { Random } from '../support/random.ts';
import { sampleRate } from '../support/sound/samples.ts';

/** The sound check, in a browser whose microphone hears a file. */

const server = sharedServer();
let own: PlayingBrowser;

test.beforeAll(async ({ launchOptions }) => {
  own = await PlayingBrowser.launch(launchOptions.executablePath ?? '', 'asked');
});
test.afterAll(() => own.close());

/** A string that is plucked and dies away: six partials, the higher ones sooner. */
function plucked(frequency: number, seconds: number, loudness = 0.2): Float32Array {
  return Float32Array.from({ length: seconds * sampleRate }, (_, at) => {
    const time = at / sampleRate;
    const partials = [1, 2, 3, 4, 5, 6].map(
      (n) => (Math.sin(2 * Math.PI * frequency * n * time) * Math.exp(-time * (0.5 + 0.5 * n))) / n,
    );
    return loudness * Math.min(1, time / 0.004) * partials.reduce((sum, one) => sum + one, 0);
  });
}

function hiss(seconds: number, loudness: number): Float32Array {
  const random = new Random(5);
  return Float32Array.from({ length: seconds * sampleRate }, () => loudness * (2 * random.next() - 1));
}

async function soundCheck(options: object = phone, path = '/sound'): Promise<Page> {
  const page = await own.page(options);
  await page.goto(secureUrl(server()) + path);
  return page;
}

const allow = (page: Page) =>
  page.context().grantPermissions(['microphone'], { origin: secureUrl(server()) });
const listen = (page: Page) => page.getByRole('switch', { name: 'Listen' });

test('hears which string sounds and how far it is off, and sends nothing of it', async () => {
  own.hears(plucked(110 * 2 ** (7 / 1200), 5), 6);
  const page = await soundCheck({ ...phone, ...inspected });
  await allow(page);
  await expect(page.getByText('never leaves it; only the notes heard are sent')).toBeVisible();
  const sent: string[] = [];
  page.on('request', (request) => {
    if (request.method() !== 'GET' || new URL(request.url()).origin !== secureUrl(server()))
      sent.push(request.url());
  });
  page.on('websocket', (socket) => sent.push(socket.url()));
  await listen(page).tap();
  await expect(page.getByText('7 cents sharp', { exact: true })).toBeVisible();
  await expect(page.getByText('+7 cents')).toBeVisible();
  await expect(page.getByText('String 5', { exact: true })).toBeVisible();
  await expect(page.getByText('Good', { exact: true })).toBeVisible();
  await expect(page.getByRole('status')).toHaveText('String 5, A: 7 cents sharp.');
  expect(await findings(page)).toEqual([]);
  await listen(page).tap();
  await expect(page.getByText('Turn Listen on, and play one open string.')).toBeVisible();
  expect(sent).toEqual([]);
});

test('tunes the instrument that the class plays', async () => {
  // String 6 of a guitar in drop D is D2, 73.42 Hz.
  own.hears(plucked(73.416, 4), 5);
  const page = await soundCheck(phone, '/sound?instrument=guitar-drop-d');
  await allow(page);
  await expect(page.getByLabel('Instrument and tuning')).toHaveValue('guitar-drop-d');
  await listen(page).tap();
  await expect(page.getByText('In tune', { exact: true })).toBeVisible();
  await expect(page.getByText('String 6', { exact: true })).toBeVisible();
});

test('says that a room is too loud', async () => {
  own.hears(hiss(8, 0.2));
  const page = await soundCheck();
  await allow(page);
  await listen(page).tap();
  await expect(page.getByText('This room is too loud: answer by tapping.').first()).toBeVisible();
});

test('says what to do where the microphone is refused, and goes on when it is allowed', async () => {
  own.hears(plucked(246.942, 4), 6);
  const page = await soundCheck({ ...phone, ...inspected });
  await listen(page).tap();
  await expect(page.getByText('This browser keeps the microphone from this page.').first()).toBeVisible();
  await expect(listen(page)).toHaveAttribute('aria-checked', 'false');
  expect(await findings(page)).toEqual([]);
  await allow(page);
  await listen(page).tap();
  await expect(page.getByText('String 2', { exact: true })).toBeVisible();
  await page.context().clearPermissions();
  await expect(page.getByText('The microphone is gone').first()).toBeVisible();
  await expect(listen(page)).toHaveAttribute('aria-checked', 'false');
});

test('says at a plain address why there is no microphone, and the way to one', async ({ browser }) => {
  const page = await newPage(browser, { ...phone, ...inspected });
  await page.goto(`${server().url}/sound`);
  await expect(page.getByText('npm start -- --https').first()).toBeVisible();
  expect(await findings(page)).toEqual([]);
  await page.goto(`${server().url}/check`);
  await page.getByRole('link', { name: 'Sound check' }).click();
  await expect(page.getByRole('heading', { name: 'Sound check' })).toBeVisible();
});

test('fits every window', async ({ browser }) => {
  const page = await newPage(browser, phone);
  await page.goto(`${server().url}/sound?instrument=guitar-8`);
  for (const [width, height] of [
    [320, 568],
    [390, 844],
    [844, 390],
    [1366, 768],
  ] as const) {
    await page.setViewportSize({ width, height });
    const at = { message: `${String(width)}×${String(height)}` };
    const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    await expect.poll(overflow, at).toBeLessThanOrEqual(0);
    for (const button of await page.getByRole('button').all()) {
      const box = await button.boundingBox();
      expect(box?.height, at.message).toBeGreaterThanOrEqual(44);
      expect(box?.width, at.message).toBeGreaterThanOrEqual(24);
    }
  }
});
