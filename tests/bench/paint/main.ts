import { chromium, type Browser } from '@playwright/test';
import { rmSync } from 'node:fs';
import { seatKey } from '../../../client/connection/device.ts';
import { phone } from '../../support/browser.ts';
import { find } from '../../support/exercises.ts';
import { openDesk, prepareClass } from '../../support/prepared-class.ts';
import { isBuilt, ServerProcess } from '../../support/server-process.ts';
import { median, table, type Row } from '../live/figures.ts';
import { firstLook, type Look } from './first-look.ts';

/** What a student waits for on a slow phone in a slow network, whose browser has nothing of Rootcall yet. */
if (!isBuilt()) throw new Error('There is no build. `npm run build` makes one.');
const runs = 5;
const prepared = await prepareClass(4);
const server = await ServerProcess.start({ dataDir: prepared.dataDir });
const desk = await openDesk(server.port, prepared);
await desk.ask(find('D'));
// By a name, as a phone reaches it: to a plain address that is not its own a browser offers gzip only.
const host = 'rootcall.test';
const address = `http://${host}:${String(server.port)}`;
const browser = await chromium.launch({
  executablePath: process.argv[2] ?? '',
  args: [
    `--host-resolver-rules=MAP ${host} 127.0.0.1`,
    '--disable-background-networking',
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  ],
});
const seat = JSON.stringify({ token: prepared.tokens[0], code: prepared.code });
const rows = [
  ...(await measure(browser, 'door', `${address}/`, {}, ['stand-join', '#code'])),
  ...(await measure(browser, 'open round', `${address}/join/${prepared.code}`, { [seatKey]: seat }, [
    'stand-round',
    'rootcall-neck',
    '[role=gridcell]',
  ])),
];
await browser.close();
desk.close();
await server.kill('SIGTERM');
rmSync(prepared.dataDir, { recursive: true });
process.stdout.write(`\nMedian of ${String(runs)} runs, each with an empty cache.\n\n${table(rows)}\n`);
process.exit(0);

/** `matters`: the way through shadow roots to what the student came for. */
async function measure(
  on: Browser,
  name: string,
  url: string,
  stored: Readonly<Record<string, string>>,
  matters: readonly string[],
): Promise<Row[]> {
  const looks: Look[] = [];
  for (let run = 0; run < runs; run += 1) {
    const context = await on.newContext(phone);
    looks.push(await firstLook(context, url, stored, ['rootcall-stand', ...matters]));
    await context.close();
  }
  const middle = (value: (look: Look) => number) => median(looks.map(value));
  const kind = (type: string) => middle(({ bytes }) => bytes[type] ?? 0) / 1000;
  const kinds = ['Document', 'Script', 'Stylesheet', 'Font', 'WebSocket'];
  const shares = kinds.map((type) => `${type.toLowerCase()} ${kind(type).toFixed(1)}`);
  return [
    {
      measure: `${name}: first paint`,
      value: middle(({ painted }) => painted) / 1000,
      goal: 2,
      unit: ' s',
      note: '1.6 Mbit/s down, 0.75 up, 150 ms there and back, processor 6 times slower, 390 × 844',
    },
    {
      measure: `${name}: ${name === 'door' ? 'the field for the code' : 'the neck and the task'}`,
      value: middle(({ ready }) => ready) / 1000,
      goal: null,
      unit: ' s',
      note: 'on the screen',
    },
    {
      measure: `${name}: over the wire`,
      value: middle(({ bytes }) => Object.values(bytes).reduce((sum, some) => sum + some, 0)) / 1000,
      goal: 120,
      unit: ' kB',
      note: `asked for until then, headers too: ${shares.join(', ')}`,
    },
    {
      measure: `${name}: script and style`,
      value: kind('Script') + kind('Stylesheet'),
      goal: null,
      unit: ' kB',
      note: 'of it',
    },
  ];
}
