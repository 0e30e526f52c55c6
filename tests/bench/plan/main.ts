import { chromium, type Page } from '@playwright/test';
import { generate, type Rung } from '../../../shared/exercise/generate.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { StringNumber } from '../../../shared/theory/fretboard.ts';
import { laptop, setUpGroup } from '../../support/browser.ts';
import { ProductionServer } from '../../support/production-server.ts';
import { median, table, type Row } from '../live/figures.ts';

/** What a teacher waits for after moving an exercise of a long plan, beside the same in a short one. */
const short = 5;
const long = 200;
const presses = 15;

const server = await ProductionServer.start();
const browser = await chromium.launch({
  executablePath: process.argv[2] ?? '',
  args: [
    '--host-resolver-rules=MAP rootcall.test 127.0.0.1',
    '--disable-background-networking',
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  ],
});
const desk = await (await browser.newContext(laptop)).newPage();
await setUpGroup(desk, server, [], exercises(short));
const groupUrl = desk.url();
await addPlan(desk, groupUrl, 'Long', exercises(long));
const cdp = await desk.context().newCDPSession(desk);

const rows: Row[] = [];
for (const slowdown of [1, 4]) {
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  const few = await measure(desk, 'Root on string 2', short);
  const many = await measure(desk, 'Long', long);
  const note = slowdown === 1 ? 'processor as it is' : `processor ${String(slowdown)} times slower`;
  rows.push(
    {
      measure: `down, of ${String(long)}: painted`,
      value: many,
      goal: slowdown === 1 ? 100 : null,
      unit: ' ms',
      note,
    },
    { measure: `down, of ${String(short)}: painted`, value: few, goal: null, unit: ' ms', note },
    {
      measure: `${String(long)} beside ${String(short)}`,
      value: many / few,
      goal: slowdown === 1 ? 2 : null,
      unit: '',
      note: 'how many times as long',
    },
  );
}
await browser.close();
await server.remove();
process.stdout.write(
  `\nMedian of ${String(presses)} presses, until the second frame after each.\n\n${table(rows)}\n`,
);
process.exit(0);

/** The generator makes 20 at once at most. */
function exercises(count: number): readonly Exercise[] {
  const rungs: readonly Rung[] = ['natural-notes', 'triads', 'sevenths', 'pentatonics', 'full-scales'];
  const made = Array.from({ length: Math.ceil(count / 20) }, (_, index) =>
    generate({
      instrument: 'guitar',
      rung: rungs[index % rungs.length] ?? 'triads',
      roots: [],
      rootStrings: [2 as StringNumber],
      range: null,
      count: Math.min(20, count),
      seed: index,
    }),
  );
  return made.flatMap((one) => (one.ok ? one.value : [])).slice(0, count);
}

async function addPlan(page: Page, url: string, title: string, added: readonly Exercise[]): Promise<void> {
  const groupId = url.split('/').pop() ?? '';
  const body = { title, exercises: added.map((exercise) => ({ exercise, seconds: null })) };
  await page.evaluate(
    async ([id, text]) => {
      const headers = { 'content-type': 'application/json' };
      await fetch(`/api/groups/${String(id)}/plans`, { method: 'POST', headers, body: String(text) });
    },
    [groupId, JSON.stringify(body)],
  );
}

/** Milliseconds from pressing "down" on the first line, again and again on whatever is first, to the second frame. */
async function measure(page: Page, title: string, count: number): Promise<number> {
  await page.goto(groupUrl);
  await page.getByRole('link', { name: title, exact: true }).click();
  await page
    .locator('desk-plan-parts li')
    .nth(count - 1)
    .waitFor({ state: 'attached' });
  const times: number[] = [];
  for (let press = 0; press < presses; press += 1) {
    await page.getByText('Saved', { exact: true }).waitFor();
    times.push(
      await page
        .locator('desk-plan-parts li')
        .first()
        .evaluate(async (line) => {
          const button = line
            .querySelector('desk-plan-line')
            ?.shadowRoot?.querySelector<HTMLElement>('[data-wish="down"]');
          const start = performance.now();
          button?.click();
          await new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen)));
          return performance.now() - start;
        }),
    );
  }
  return median(times);
}
