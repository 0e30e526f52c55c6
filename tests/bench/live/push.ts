import { fork } from 'node:child_process';
import { once } from 'node:events';
import { WebSocket } from 'ws';
import { build } from '../../support/exercises.ts';
import { copyOf, ServerProcess } from '../../support/server-process.ts';
import { openDesk, openStands, wait, type StoredClass } from '../../support/prepared-class.ts';
import { median, type OwnLoad, type Row } from './figures.ts';

/** From "the round is durable" to the last Stand that has it, against a plain loop that sends the same text. */
export async function push(
  prepared: StoredClass,
  load: OwnLoad,
  count: number,
  goal: number,
): Promise<Row[]> {
  const dataDir = copyOf(prepared.dataDir);
  const server = await ServerProcess.start({ dataDir, storage: 'real' });
  let text = '';
  let received = 0;
  let done: (at: bigint) => void = () => undefined;
  const take = (heard: string) => {
    received += 1;
    if (received !== count) return;
    text = heard;
    done(process.hrtime.bigint());
  };
  const stands = await openStands(server.port, prepared.tokens.slice(0, count), (_, heard) => {
    if (heard.startsWith('42["stand:shared"') && heard.includes('"kind":"open"')) take(heard);
  });
  const desk = await openDesk(server.port, prepared);
  const lastOf = (start: () => Promise<void>) =>
    new Promise<bigint>((resolve) => {
      received = 0;
      done = resolve;
      void start();
    });
  const own = async () => {
    const end = await lastOf(async () => void (await desk.ask(build('E', 'minor'))));
    const { durable, emitted } = await server.figures();
    for (const kind of ['hold', 'reveal', 'next']) {
      await wait(150);
      await desk.command({ kind });
    }
    await wait(300);
    return { whole: milliseconds(end, durable), wire: milliseconds(end, emitted) };
  };
  for (let run = 0; run < 3; run += 1) await own();

  const loop = fork(new URL('ws-loop.mjs', import.meta.url));
  const [{ port }] = (await once(loop, 'message')) as [{ port: number }];
  const clients: WebSocket[] = [];
  for (let index = 0; index < count; index += 1) {
    const client = new WebSocket(`ws://127.0.0.1:${String(port)}`, { perMessageDeflate: false });
    client.on('message', (data: Buffer) => {
      const heard = data.toString();
      if (heard.startsWith('42["stand:shared"') && heard.includes('"kind":"open"')) take(heard);
    });
    await once(client, 'open');
    clients.push(client);
  }
  const plain = async () => {
    const started = once(loop, 'message') as Promise<[{ at: string }]>;
    const end = await lastOf(async () => void loop.send({ text }));
    const [{ at }] = await started;
    await wait(30);
    return milliseconds(end, at);
  };

  // Both are compiled by the time they are measured.
  for (let run = 0; run < 40; run += 1) await plain();

  const whole: number[] = [];
  const wire: number[] = [];
  const loops: number[] = [];
  await load.during(`push to ${String(count)}`, async () => {
    for (let run = 0; run < 13; run += 1) {
      const one = await own();
      const other = await plain();
      if (run < 2) continue;
      whole.push(one.whole);
      wire.push(one.wire);
      loops.push(other);
    }
  });
  for (const client of clients) client.terminate();
  loop.kill();
  for (const stand of stands) stand.close();
  desk.close();
  await server.remove();
  const base = median(loops);
  const bytes = `${String(Buffer.byteLength(text))} bytes`;
  const said = (own_: readonly number[]) =>
    `${median(own_).toFixed(1)} ms ÷ ${base.toFixed(1)} ms, median of ${String(own_.length)}`;
  const title = `push to last of ${String(count)} ÷ plain ws loop`;
  return [
    {
      measure: title,
      value: median(wire) / base,
      goal,
      note: `${said(wire)}; ${bytes}, from its broadcast on`,
    },
    {
      measure: `  the same, from the commit on`,
      value: median(whole) / base,
      goal: null,
      note: `${said(whole)}; views are built in it`,
    },
  ];
}

function milliseconds(end: bigint, start: string): number {
  return Number(end - BigInt(start)) / 1e6;
}
