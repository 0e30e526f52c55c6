import { expect, test, type Page } from '@playwright/test';
import {
  expectTask,
  joinClass,
  newPage,
  openDesk,
  phone,
  resting,
  sharedServer,
  step,
} from '../support/browser.ts';
import { build, find, scale } from '../support/exercises.ts';
import { PlayingBrowser, secureUrl } from '../support/playing-browser.ts';

/** A Stand that may be played to: what it shows, and when it stops listening. */

const server = sharedServer();
let desk: Page;
let code: string;

test.beforeAll(async ({ browser }) => {
  const levelled = {
    exercise: find('D'),
    harder: [build('E', 'minor'), scale('E', 'minor-pentatonic', 1, 5)],
  };
  ({ desk, code } = await openDesk(browser, server(), ['Kaya', 'Bram'], [levelled, find('F')]));
  await desk.getByRole('button', { name: 'Class', exact: true }).click();
  await desk.getByLabel('Answering by playing').selectOption('on');
  await desk.getByRole('dialog').getByRole('button', { name: 'Back' }).click();
});

// Tests share one class and follow each other through it.
test.describe.configure({ mode: 'serial' });

test('with levels and ways to answer one sees whose Stand it is', async ({ browser }) => {
  const stand = await newPage(browser, phone);
  await joinClass(stand, server(), code, 'Kaya');
  await expect(resting(stand)).toBeVisible();
  await step(desk, 'Ask');
  await expectTask(stand, 'Find D');
  const way = stand.getByLabel('Answer by');
  const levels = stand.getByRole('group', { name: 'Level' }).getByRole('button');
  for (const [width, height] of [
    [390, 844],
    [360, 640],
    [320, 568],
    [844, 390],
    [568, 320],
    [1366, 768],
  ] as const) {
    const at = `at ${String(width)}×${String(height)}`;
    await stand.setViewportSize({ width, height });
    const isOnTop = stand.getByText('Kaya', { exact: true }).evaluate((name) => {
      const { left, top, width, height } = name.getBoundingClientRect();
      const root = name.getRootNode() as ShadowRoot;
      return [0.1, 0.9].every(
        (share) => root.elementFromPoint(left + share * width, top + height / 2) === name,
      );
    });
    expect(await isOnTop, at).toBe(true);
    for (const control of [way, ...(await levels.all())]) {
      const box = await control.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0), at).toBeGreaterThanOrEqual(44);
    }
    const scrolls = await stand
      .getByRole('main')
      .evaluate((main) => main.scrollHeight > main.clientHeight || main.scrollWidth > main.clientWidth);
    expect(scrolls, at).toBe(false);
  }
  await stand.close();
});

interface Counting {
  readonly live: () => number;
}

/** How many microphones of the page are open. */
async function countMicrophones(stand: Page): Promise<() => Promise<number>> {
  await stand.addInitScript(() => {
    const { mediaDevices } = navigator;
    const give = mediaDevices.getUserMedia.bind(mediaDevices);
    const tracks: MediaStreamTrack[] = [];
    mediaDevices.getUserMedia = async (wishes) => {
      const stream = await give(wishes);
      tracks.push(...stream.getTracks());
      return stream;
    };
    const live = () => tracks.filter(({ readyState }) => readyState === 'live').length;
    Object.assign(window, { live } satisfies Counting);
  });
  return () => stand.evaluate(() => (window as unknown as Counting).live());
}

test('a round that is taken away takes the microphone with it', async ({ launchOptions }) => {
  const own = await PlayingBrowser.launch(launchOptions.executablePath ?? '');
  const stand = await own.page();
  const live = await countMicrophones(stand);
  await joinClass(stand, { url: secureUrl(server()) }, code, 'Bram');
  await expectTask(stand, 'Find D');
  await stand.getByLabel('Answer by').selectOption('By playing');
  await stand.getByRole('switch', { name: 'Listen' }).tap();
  await expect(stand.getByText('Listening.')).toBeVisible();
  expect(await live()).toBe(1);
  await step(desk, 'Void');
  await expect(stand.getByText('nothing of it counts')).toBeVisible();
  // Whoever asks for it after the round does so before this.
  await stand.evaluate(async () => {
    const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
    for (const track of stream.getTracks()) track.stop();
  });
  expect(await live()).toBe(0);
  await own.close();
});
