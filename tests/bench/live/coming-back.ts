import { io, type Socket } from 'socket.io-client';
import type { Snapshot } from '../../../shared/protocol/events.ts';
import type { StandSharedView } from '../../../shared/protocol/views.ts';
import { find } from '../../support/exercises.ts';
import { openDesk, wait, type StoredClass } from '../../support/prepared-class.ts';
import { copyOf, ServerProcess } from '../../support/server-process.ts';
import { median, type OwnLoad, type Row } from './figures.ts';

/** The delays of `client/connection/socket.ts`, which spread a class that comes back at once. */
const delays = { reconnectionDelay: 500, reconnectionDelayMax: 3000, randomizationFactor: 1 };

/** A whole class finds its way back after the server was killed, and misses nothing. */
export async function comingBack(prepared: StoredClass, load: OwnLoad): Promise<Row[]> {
  const server = await ServerProcess.start({ dataDir: copyOf(prepared.dataDir) });
  const rounds: string[] = [];
  const sockets: Socket[] = [];
  let heard: () => void = () => undefined;
  for (const [index, token] of prepared.tokens.entries()) {
    const socket = io(server.url, {
      auth: { role: 'stand', token },
      transports: ['websocket'],
      forceNew: true,
      ...delays,
    });
    socket.on('stand:shared', ({ view }: Snapshot<StandSharedView>) => {
      rounds[index] = 'roundId' in view.stage ? view.stage.roundId : view.stage.kind;
      heard();
    });
    socket.on('disconnect', () => (rounds[index] = 'away'));
    sockets.push(socket);
    if (index % 20 === 0) await wait(60);
  }
  const until = (condition: () => boolean, within = 20_000) =>
    new Promise<boolean>((resolve) => {
      const timer = setTimeout(() => settle(condition()), within);
      const settle = (met: boolean) => {
        clearTimeout(timer);
        heard = () => undefined;
        resolve(met);
      };
      heard = () => condition() && settle(true);
      heard();
    });
  const all = (roundId: string) => rounds.length === sockets.length && rounds.every((one) => one === roundId);
  await until(() => rounds.length === sockets.length && !rounds.includes('away'));

  const times: number[] = [];
  const stalls: number[] = [];
  let missed = 0;
  await load.during('1,000 coming back', async () => {
    for (let run = 0; run < 3; run += 1) {
      const before = await openDesk(server.port, prepared);
      const first = await before.ask(find('D'));
      before.close();
      await until(() => all(first));
      await server.kill();
      await server.resume();
      const start = performance.now();
      await server.figures();
      await until(() => all(first));
      times.push((performance.now() - start) / 1000);
      stalls.push((await server.figures()).stall);
      missed += rounds.filter((one) => one !== first).length;
      const after = await openDesk(server.port, prepared);
      for (const kind of ['hold', 'reveal', 'next']) await after.command({ kind });
      await until(() => all('rest'));
      missed += rounds.filter((one) => one !== 'rest').length;
      after.close();
    }
  });
  for (const socket of sockets) socket.close();
  await server.remove();
  const runs = `median of ${String(times.length)}; the product's own delays`;
  return [
    { measure: '1,000 Stands back after a restart', value: median(times), goal: 4.5, unit: ' s', note: runs },
    {
      measure: '  longest stall of the event loop',
      value: median(stalls),
      goal: 100,
      unit: ' ms',
      note: runs,
    },
    {
      measure: '  events missed',
      value: missed,
      goal: 0,
      note: 'rounds asked before and after, all runs together',
    },
  ];
}
