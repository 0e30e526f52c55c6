import { expect, test, type Page } from '@playwright/test';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import {
  joinClass,
  expectTask,
  newPage,
  phone,
  openBoard,
  openDesk,
  resting,
  sharedServer,
  spot,
  step,
  tap,
} from '../support/browser.ts';
import { build, find, scale } from '../support/exercises.ts';
import { PlayingBrowser, secureUrl } from '../support/playing-browser.ts';
import { Random } from '../support/random.ts';
import { evenHand, joined, line, note, strum, type Sound } from '../support/sound/mix.ts';
import { mutedStrums } from '../support/sound/muted.ts';
import { loadGuitars, sampleRate, type Guitar } from '../support/sound/samples.ts';
import { speech, voices } from '../support/sound/speech.ts';

/**
 * A class that answers by playing: guitars that were sampled, through the browser's own microphone, in a real class. Kaya
 * plays what is asked, Bram plays something else, and Edda's browser says no.
 */

const server = sharedServer();
const hand = evenHand(new Random(7));

const anyMajor: Exercise = {
  ...build('A', 'major'),
  strictness: 'anywhere',
  range: null,
  voicing: { kind: 'any' },
};
const pentatonic: Exercise = { ...scale('E', 'minor-pentatonic', 1, 5), order: 'up' };
const plan = [find('D'), build('E', 'minor'), anyMajor, pentatonic, find('F', { strictness: 'anywhere' })];

/** Of the position round E at fret 5 of string 2, from the lowest note up. */
const ladder = [45, 47, 50, 52, 55, 57, 59, 62, 64, 67, 69, 71];

let kayas: PlayingBrowser;
let brams: PlayingBrowser;
let eddas: PlayingBrowser;
let guitars: Readonly<Record<'acoustic' | 'electric' | 'nylon', Guitar>>;

test.beforeAll(async ({ launchOptions }) => {
  const chromium = launchOptions.executablePath ?? '';
  guitars = await loadGuitars();
  [kayas, brams, eddas] = [
    await PlayingBrowser.launch(chromium),
    await PlayingBrowser.launch(chromium),
    await PlayingBrowser.launch(chromium, 'asked'),
  ];
});
test.afterAll(() => Promise.all([kayas, brams, eddas].map((own) => own.close())));

/** Everything that a page sends, as text; binary frames as their size. */
function wire(page: Page): string[] {
  const sent: string[] = [];
  page.on('websocket', (socket) => {
    socket.on('framesent', ({ payload }) => {
      sent.push(typeof payload === 'string' ? payload : `binary ${String(payload.length)}`);
    });
  });
  page.on('request', (request) => {
    const body = request.postDataBuffer();
    if (body) sent.push(body.toString('latin1'));
  });
  return sent;
}

/** Asks the next exercise, of which these are heard: the microphones are laid ready before the Stands listen. */
async function ask(desk: Page, heard: readonly (readonly [PlayingBrowser, Sound])[]): Promise<void> {
  for (const [browser, { samples }] of heard) browser.hears(samples);
  await step(desk, 'Ask');
}

async function byPlaying(stand: Page): Promise<void> {
  await stand.getByLabel('Answer by').selectOption('By playing');
}

/** The line that says what was heard, and what is still to do. */
function panel(stand: Page) {
  return stand.locator('stand-playing .words');
}

function listen(stand: Page) {
  return stand.getByRole('switch', { name: 'Listen' });
}

/** A busy machine swallows sound now and then: then the student takes it back and plays it again, twice at most. */
async function hears(stand: Page, words: string, count: number, within = 8000): Promise<void> {
  for (let tries = 1; ; tries += 1) {
    try {
      await expect(panel(stand)).toContainText(words, { timeout: within });
      const button = stand.getByRole('button', { name: new RegExp(`^Done\\s+${String(count)} heard`) });
      await expect(button).toBeVisible({ timeout: within });
      return;
    } catch (error) {
      if (tries === 3) throw error;
      // Only where something was heard there is something to take back.
      const again = stand.getByRole('button', { name: 'Again' });
      if (await again.isVisible()) await again.tap();
      await listen(stand).tap();
      await listen(stand).tap();
    }
  }
}

function done(stand: Page): Promise<void> {
  return stand.getByRole('button', { name: /^Done/ }).tap();
}

async function revealAndGoOn(desk: Page, stands: readonly Page[], look: () => Promise<void>): Promise<void> {
  await step(desk, 'Hold');
  for (const stand of stands) await expect(stand.getByText('Held').first()).toBeVisible();
  await step(desk, 'Reveal');
  await look();
  await step(desk, 'Next');
  for (const stand of stands) await expect(resting(stand)).toBeVisible();
}

test('HEARD: a class that answers by playing', async ({ browser }) => {
  test.setTimeout(240_000);
  const { acoustic, electric, nylon } = guitars;
  const { desk, code } = await openDesk(browser, server(), ['Kaya', 'Bram', 'Edda', 'Farid'], plan);
  const board = await openBoard(browser, server(), code);
  await desk.getByRole('button', { name: 'Class', exact: true }).click();
  await desk.getByLabel('Answering by playing').selectOption('on');
  await desk.getByRole('dialog').getByRole('button', { name: 'Back' }).click();

  const at = { url: secureUrl(server()) };
  const [kaya, bram, edda] = [await kayas.page(), await brams.page(), await eddas.page()];
  const stands = [kaya, bram, edda];
  const sent = [kaya, bram].map(wire);
  for (const [stand, name] of [
    [kaya, 'Kaya'],
    [bram, 'Bram'],
    [edda, 'Edda'],
  ] as const) {
    await joinClass(stand, at, code, name);
    await expect(resting(stand)).toBeVisible();
  }

  const farid = await newPage(browser, phone);
  await joinClass(farid, server(), code, 'Farid');
  await expect(resting(farid)).toBeVisible();

  await test.step('a note: found, a fret off, and a microphone that is refused', async () => {
    await ask(desk, [
      [kayas, note(acoustic, 62, hand)],
      [brams, note(electric, 61, hand)],
    ]);
    for (const stand of stands) {
      await expectTask(stand, 'Find D');
      await byPlaying(stand);
      await expect(stand.getByText('never leaves it')).toBeVisible();
      await expect(stand.getByText(/rest|pause|break/i).first()).toBeVisible();
      await listen(stand).tap();
    }
    await expect(panel(edda)).toContainText('The microphone is refused here.');
    await hears(kaya, 'Heard: D.', 1);
    await expect(panel(kaya)).toContainText('Which string did you start on?');
    await spot(kaya, 2, 3).tap();
    await done(kaya);
    await hears(bram, 'Heard: C♯.', 1);
    await spot(bram, 2, 3).tap();
    await done(bram);
    // Nothing of right and wrong before the reveal.
    await expect(bram.getByText(/one fret|right/i)).toHaveCount(0);
    await edda.getByLabel('Answer by').selectOption('By tapping');
    await tap(edda, [2, 3]);
    // Reached by plain HTTP, as most classes are.
    await byPlaying(farid);
    await listen(farid).tap();
    await expect(farid.getByText('No microphone without HTTPS: answer by tapping.').first()).toBeVisible();
    await revealAndGoOn(desk, stands, async () => {
      await expect(bram.getByText(/one fret low/i).first()).toBeVisible();
      await expect(board.getByRole('main')).toContainText(/2\s*of 3 found it/);
    });
  });

  await test.step('a chord: minor, and major for minor', async () => {
    await ask(desk, [
      [kayas, strum(nylon, [59, 64, 67], hand)],
      [brams, strum(acoustic, [52, 59, 64, 68, 71, 76], hand)],
    ]);
    await hears(kaya, 'Heard: E, G, B.', 3);
    await spot(kaya, 2, 5).tap();
    await done(kaya);
    await hears(bram, 'Heard: E, G♯, B.', 3);
    await spot(bram, 2, 5).tap();
    await done(bram);
    await revealAndGoOn(desk, [kaya, bram], async () => {
      await expect(bram.getByText(/third/).first()).toBeVisible();
    });
  });

  await test.step('a chord in other forms, and one string a fret off', async () => {
    await ask(desk, [
      [kayas, joined([strum(acoustic, [45, 52, 57, 61, 64], hand), strum(electric, [57, 64, 69, 73], hand)])],
      [brams, strum(nylon, [45, 52, 57, 62, 64], hand)],
    ]);
    await hears(kaya, 'Heard: A, C♯, E.', 3);
    await done(kaya);
    await hears(bram, 'Heard: A, D, E.', 3);
    await done(bram);
    await revealAndGoOn(desk, [kaya, bram], async () => {
      await expect(board.getByRole('main')).toContainText(/1\s*of 2 found it/);
    });
  });

  await test.step('a scale upwards, and one with a note a fret off', async () => {
    const slipped = ladder.map((pitch) => (pitch === 55 ? 56 : pitch));
    await ask(desk, [
      [kayas, line(acoustic, ladder, hand, { gap: 0.4 })],
      [brams, line(nylon, slipped, hand, { gap: 0.5 })],
    ]);
    for (const stand of [kaya, bram]) {
      await hears(stand, 'D, E, G, A, B.', 12, 10_000);
      await spot(stand, 2, 5).tap();
      await done(stand);
    }
    await revealAndGoOn(desk, [kaya, bram], async () => {
      await expect(board.getByRole('main')).toContainText(/1\s*of 2 found it/);
    });
  });

  await test.step('talk, muted strings and silence are no answer; a permission taken back loses nothing', async () => {
    const f = note(acoustic, 65, hand, { before: 1 });
    const talk = (await speech(voices[0])).subarray(0, 6 * sampleRate);
    await ask(desk, [
      [kayas, joined([{ samples: talk, notes: [] }, f])],
      [brams, joined([mutedStrums(acoustic, 4, 3), f])],
      [eddas, f],
    ]);
    await edda.context().grantPermissions(['microphone'], { origin: at.url });
    await byPlaying(edda);
    await listen(edda).tap();
    await hears(edda, 'Heard: F.', 1);
    await edda.context().clearPermissions();
    await expect(panel(edda)).toContainText('The microphone is gone. What was heard stays.');
    await done(edda);
    // All that they heard is the note at the end.
    for (const stand of [kaya, bram]) {
      await hears(stand, 'Heard: F.', 1, 10_000);
      await done(stand);
    }
    await revealAndGoOn(desk, stands, async () => {
      await expect(board.getByRole('main')).toContainText(/3\s*of 3 found it/);
    });
  });

  await test.step('the teacher reads how each was given, and what was stored', async () => {
    const rows = server().rows(
      `select rounds.number as round, students.name as name, verdict ->> 'kind' as kind,
         verdict ->> 'cause' as cause, besides ->> 'way' as way
       from answers join students on students.id = answers.student_id join rounds on rounds.id = answers.round_id
       where places <> '[]' or besides ->> 'heard' is not null order by round, name`,
    );
    const right = { kind: 'right', cause: null, way: 'play' };
    const slip = (cause: string) => ({ kind: 'slip', cause, way: 'play' });
    expect(rows).toEqual([
      { round: 1, name: 'Bram', ...slip('nut-as-one') },
      { round: 1, name: 'Edda', ...right, way: null },
      { round: 1, name: 'Kaya', ...right },
      { round: 2, name: 'Bram', ...slip('major-for-minor') },
      { round: 2, name: 'Kaya', ...right },
      { round: 3, name: 'Bram', ...slip('one-fret-off') },
      { round: 3, name: 'Kaya', ...right },
      { round: 4, name: 'Bram', ...slip('one-fret-off') },
      { round: 4, name: 'Kaya', ...right },
      { round: 5, name: 'Bram', ...right },
      { round: 5, name: 'Edda', ...right },
      { round: 5, name: 'Kaya', ...right },
    ]);
  });

  await test.step('nothing of the sound has left the devices', async () => {
    for (const messages of sent) {
      expect(messages.length).toBeGreaterThan(4);
      expect(messages.filter((message) => message.startsWith('binary'))).toEqual([]);
      const longest = Math.max(...messages.map((message) => message.length));
      // Twelve pitches with times and confidence; a tenth of a second of sound would be ten times as much.
      expect(longest).toBeLessThan(1500);
      const heard = messages.filter((message) => message.includes('"heard"'));
      expect(heard.length).toBeGreaterThan(0);
      for (const message of heard) {
        const fields = [...message.matchAll(/"(\w+)":/g)].map(([, name]) => name);
        const known = [
          'kind',
          'roundId',
          'sendId',
          'places',
          'string',
          'fret',
          'heard',
          'pitches',
          'pitch',
          'at',
        ];
        const more = ['confidence', 'tones', 'faint', 'pitchClass', 'way', 'done', 'root'];
        expect(fields.filter((name) => ![...known, ...more].includes(name ?? ''))).toEqual([]);
      }
    }
  });
});
