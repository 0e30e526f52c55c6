import { find } from '../../support/exercises.ts';
import { openDesk, openStands, prepareClass, wait, type StoredClass } from '../../support/prepared-class.ts';
import { RawStand } from '../../support/raw-stand.ts';
import { Random } from '../../support/random.ts';
import { copyOf, ServerProcess } from '../../support/server-process.ts';
import { median, type OwnLoad, type Row } from './figures.ts';

/** What a Stand costs that only waits. */
export async function memory(prepared: StoredClass): Promise<Row[]> {
  const server = await ServerProcess.start({ dataDir: copyOf(prepared.dataDir) });
  for (const stand of await openStands(server.port, prepared.tokens.slice(0, 100))) stand.close();
  await wait(2000);
  const before = await server.figures(true);
  const stands = await openStands(server.port, prepared.tokens);
  await wait(5000);
  const after = await server.figures(true);
  for (const stand of stands) stand.close();
  await server.remove();
  const each = (one: 'rss' | 'heap') => (after[one] - before[one]) / 1000 / stands.length;
  return [
    {
      measure: `memory of a waiting Stand, of ${String(stands.length)}`,
      value: each('rss'),
      goal: 45,
      unit: ' kB',
      note: `resident memory after a collection; ${each('heap').toFixed(0)} kB of it on the heap`,
    },
  ];
}

/** The part of the minute in which something happens, in seconds; the rest is measured apart and added. */
const busy = 13;
const idle = 8;

/** A class as it is: 30 Stands, a round a minute, ten taps each, a Desk and a Board open. */
export async function usualClass(load: OwnLoad): Promise<Row[]> {
  const prepared = await prepareClass(30);
  const server = await ServerProcess.start({ dataDir: prepared.dataDir });
  const stands = await openStands(server.port, prepared.tokens);
  const desk = await openDesk(server.port, prepared);
  const board = await RawStand.open(server.port, { role: 'board', code: prepared.code });
  const random = new Random(1);
  const round = async () => {
    const end = performance.now() + busy * 1000;
    await server.figures();
    const roundId = await desk.ask(find('D'));
    await Promise.all(
      stands.map(async (stand, student) => {
        for (let turn = 0; turn < 10; turn += 1) {
          await wait(500 + random.below(600));
          const sendId = `${roundId.slice(0, 20)}-${String(student)}-${String(turn)}`;
          const places = [{ string: 2, fret: 1 + random.below(12) }];
          await stand.send('stand:command', { kind: 'place', roundId, sendId, places, done: turn === 9 });
        }
      }),
    );
    for (const kind of ['hold', 'reveal', 'next']) {
      await desk.command({ kind });
      await wait(200);
    }
    await wait(Math.max(0, end - performance.now()));
    return (await server.figures()).cpu;
  };
  const { costs, waiting } = await load.during('a usual class', async () => {
    await round();
    const measured = [await round(), await round(), await round()];
    await wait(idle * 1000);
    return { costs: measured, waiting: (await server.figures()).cpu };
  });
  for (const stand of [...stands, board]) stand.close();
  desk.close();
  await server.remove();
  const minute = median(costs) + (waiting / idle) * (60 - busy);
  return [
    {
      measure: 'a usual class, share of one core',
      value: minute / 600,
      goal: 3,
      unit: ' %',
      note: `${median(costs).toFixed(0)} ms in the ${String(busy)} s with a round, ${(waiting / idle).toFixed(1)} ms a second in the rest of the minute`,
    },
  ];
}
