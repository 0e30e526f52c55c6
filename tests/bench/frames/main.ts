import { rmSync } from 'node:fs';
import { seatKey } from '../../../client/connection/device.ts';
import { evenHand, joined, strum } from '../../support/sound/mix.ts';
import { loadGuitars } from '../../support/sound/samples.ts';
import { build } from '../../support/exercises.ts';
import { PlayingBrowser } from '../../support/playing-browser.ts';
import { openDesk, prepareClass } from '../../support/prepared-class.ts';
import { Random } from '../../support/random.ts';
import { isBuilt, ServerProcess } from '../../support/server-process.ts';
import { table, type Row } from '../live/figures.ts';

/** Whether a Stand stays smooth on a slow phone while it listens, beside the same Stand that doesn't. */
if (!isBuilt()) throw new Error('There is no build. `npm run build` makes one.');
const seconds = 10;
const prepared = await prepareClass(1);
const server = await ServerProcess.start({ dataDir: prepared.dataDir });
const desk = await openDesk(server.port, prepared);
await desk.command({
  kind: 'set-class',
  settings: { autoAdmit: false, score: 'class', ranking: false, playing: 'on' },
});
const browser = await PlayingBrowser.launch(process.argv[2] ?? '');
const { acoustic } = await loadGuitars();
const hand = evenHand(new Random(7));
browser.hears(joined(Array.from({ length: 40 }, () => strum(acoustic, [59, 64, 67], hand))).samples);

const page = await browser.page();
const origin = `http://localhost:${String(server.port)}`;
await page.goto(`${origin}/healthz`);
const seat = JSON.stringify({ token: prepared.tokens[0], code: prepared.code });
await page.evaluate(([key, value]) => localStorage.setItem(String(key), String(value)), [seatKey, seat]);
await page.goto(`${origin}/join/${prepared.code}`);
await desk.ask(build('E', 'minor'));
await page.getByLabel('Answer by').selectOption('By playing');
const cdp = await page.context().newCDPSession(page);
const rows: Row[] = [];
for (const slowdown of [1, 6]) {
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  const note = slowdown === 1 ? 'processor as it is' : `processor ${String(slowdown)} times slower`;
  const still = await framesASecond();
  await page.getByRole('switch', { name: 'Listen' }).tap();
  await page.locator('stand-playing .words', { hasText: 'Heard: E, G, B' }).waitFor();
  const listening = await framesASecond();
  await page.getByRole('switch', { name: 'Listen' }).tap();
  rows.push(
    { measure: 'frames a second while listening', value: listening, goal: null, unit: '', note },
    { measure: 'frames a second without', value: still, goal: null, unit: '', note },
  );
}
await browser.close();
desk.close();
await server.kill('SIGTERM');
rmSync(prepared.dataDir, { recursive: true });
process.stdout.write(
  `\nFrames drawn in ${String(seconds)} seconds; the goal is 50 a second.\n\n${table(rows)}\n`,
);
process.exit(0);

function framesASecond(): Promise<number> {
  return page.evaluate(async (during) => {
    const start = performance.now();
    let frames = 0;
    for (let now = start; now < start + 1000 * during; frames += 1)
      now = await new Promise<number>(requestAnimationFrame);
    return (1000 * frames) / (performance.now() - start);
  }, seconds);
}
