import { find } from '../../support/exercises.ts';
import { openDesk, openStands, wait, type StoredClass } from '../../support/prepared-class.ts';
import type { RawStand } from '../../support/raw-stand.ts';
import { copyOf, ServerProcess } from '../../support/server-process.ts';
import { at, median, syncCost, type OwnLoad, type Row } from './figures.ts';

type Storage = 'real' | 'none' | 'each';

interface Side {
  readonly server: ServerProcess;
  readonly stands: readonly RawStand[];
  readonly rates: number[];
  readonly latest: number[];
}

/** Below this a commit costs so little that the row says nothing, in milliseconds. */
const leastSync = 0.1;

/** A thousand students' answers: the store, the same server without it, and one commit for each. */
export async function answers(prepared: StoredClass, load: OwnLoad): Promise<Row[]> {
  const sync = syncCost(prepared.dataDir);
  const ways: Storage[] = sync < leastSync ? ['real', 'none'] : ['real', 'none', 'each'];
  const sides = new Map<Storage, Side>();
  for (const storage of ways) {
    const server = await ServerProcess.start({ dataDir: copyOf(prepared.dataDir), storage });
    const stands = await openStands(server.port, prepared.tokens);
    sides.set(storage, { server, stands, rates: [], latest: [] });
  }
  // The first run warms up.
  for (let run = 0; run < 5; run += 1) {
    for (const [storage, side] of sides) {
      await load.during(`answers, ${storage}`, () => oneRun(side, prepared, run === 0));
    }
  }
  for (const { server, stands } of sides.values()) {
    for (const stand of stands) stand.close();
    await server.remove();
  }
  const rate = (storage: Storage) => median(sides.get(storage)?.rates ?? []);
  const late = (storage: Storage) => median(sides.get(storage)?.latest ?? []);
  const perSecond = (storage: Storage) => `${rate(storage).toFixed(0)}/s`;
  const cost = `one commit to the disk takes ${sync.toFixed(2)} ms here`;
  return [
    {
      measure: 'durable answers a second ÷ without storage',
      value: rate('real') / rate('none'),
      goal: 0.65,
      atLeast: true,
      note: `${perSecond('real')} ÷ ${perSecond('none')}, 1,000 Stands`,
    },
    {
      measure: 'durable answers a second ÷ one commit each',
      value: sides.has('each') ? rate('real') / rate('each') : null,
      goal: 5,
      atLeast: true,
      note: sides.has('each')
        ? `${perSecond('real')} ÷ ${perSecond('each')}; ${cost}`
        : `${cost}: too little for a difference`,
    },
    {
      measure: '99 of 100 of 1,000 answers at once ÷ without storage',
      value: late('real') / late('none'),
      goal: 1.5,
      note: `${late('real').toFixed(0)} ms ÷ ${late('none').toFixed(0)} ms until acknowledged`,
    },
  ];
}

async function oneRun({ server, stands, rates, latest }: Side, prepared: StoredClass, warm: boolean) {
  const desk = await openDesk(server.port, prepared);
  const roundId = await desk.ask(find('D'));
  desk.close();
  await wait(500);

  const give = (stand: RawStand, student: number, turn: number) => {
    const sendId = `${roundId.slice(0, 20)}-${String(student)}-${String(turn)}`;
    const places = [{ string: 2, fret: turn + 2 }];
    return stand.send('stand:command', { kind: 'place', roundId, sendId, places, done: false });
  };
  const burst = await Promise.all(
    stands.map(async (stand, student) => {
      const start = performance.now();
      mustBeTaken(await give(stand, student, 0));
      return performance.now() - start;
    }),
  );
  await wait(500);
  const start = performance.now();
  const turns = 2;
  await Promise.all(
    stands.map(async (stand, student) => {
      for (let turn = 1; turn <= turns; turn += 1) mustBeTaken(await give(stand, student, turn));
    }),
  );
  const rate = (turns * stands.length) / ((performance.now() - start) / 1000);
  if (!warm) {
    rates.push(rate);
    latest.push(at(0.99, burst));
  }
  const closing = await openDesk(server.port, prepared);
  for (const kind of ['hold', 'reveal', 'next']) await closing.command({ kind });
  closing.close();
  await wait(300);
}

function mustBeTaken(reply: { readonly ok: boolean }): void {
  if (!reply.ok) throw new Error(JSON.stringify(reply));
}
