import type { Snapshot } from '../../../shared/protocol/events.ts';
import type { DeskView } from '../../../shared/protocol/views.ts';
import { find } from '../../support/exercises.ts';
import { openDesk, openStands, prepareClass, wait, type RawDesk } from '../../support/prepared-class.ts';
import { ServerProcess } from '../../support/server-process.ts';
import { at, median, type OwnLoad, type Row } from './figures.ts';

const students = 200;
const turns = 5;
/** Each student gives one answer in so many milliseconds. */
const pace = 800;

/** 1,000 answers of 200 students, with three Desks that watch and with none. */
export async function deskUpdates(load: OwnLoad): Promise<Row[]> {
  const prepared = await prepareClass(students);
  const server = await ServerProcess.start({ dataDir: prepared.dataDir });
  const stands = await openStands(server.port, prepared.tokens);
  const ages: number[] = [];
  const costs = { none: [] as number[], three: [] as number[] };

  async function run(screens: number): Promise<number> {
    const asking = await openDesk(server.port, prepared);
    const roundId = await asking.ask(find('D'));
    asking.close();
    const desks: RawDesk[] = [];
    for (let index = 0; index < screens; index += 1) desks.push(await openDesk(server.port, prepared));
    const [watching] = desks;
    const acknowledged = new Map<string, number>();
    const seen = new Map<string, number>();
    const views: { readonly when: number; readonly text: string }[] = [];
    if (watching) watching.on.view = (text) => void views.push({ when: performance.now(), text });
    await wait(400);
    await server.figures();
    await Promise.all(
      stands.map(async (stand, student) => {
        await wait((pace * student) / students);
        for (let turn = 0; turn < turns; turn += 1) {
          const next = performance.now() + pace;
          const sendId = `${roundId.slice(0, 20)}-${String(student)}-${String(turn)}`;
          const places = [{ string: 2, fret: turn + 1 }];
          const reply = await stand.send('stand:command', {
            kind: 'place',
            roundId,
            sendId,
            places,
            done: false,
          });
          if (!reply.ok) throw new Error(reply.error.message);
          acknowledged.set(`${String(student)} ${String(turn + 1)}`, performance.now());
          await wait(Math.max(0, next - performance.now()));
        }
      }),
    );
    await wait(300);
    const { cpu } = await server.figures();
    for (const { when, text } of views) note(text, when, seen);
    if (watching) {
      for (const [key, when] of acknowledged) ages.push(Math.max(0, (seen.get(key) ?? Infinity) - when));
    }
    for (const desk of desks) desk.close();
    const closing = await openDesk(server.port, prepared);
    for (const kind of ['hold', 'reveal', 'next']) await closing.command({ kind });
    closing.close();
    await wait(200);
    return cpu;
  }

  await load.during('Desk updates', async () => {
    await run(3);
    ages.length = 0;
    for (let turn = 0; turn < 5; turn += 1) {
      costs.none.push(await run(0));
      costs.three.push(await run(3));
    }
  });
  for (const stand of stands) stand.close();
  await server.remove();
  const [none, three] = [median(costs.none), median(costs.three)];
  return [
    {
      measure: 'three Desks watching ÷ none',
      value: three / none,
      goal: 1.25,
      note: `${three.toFixed(0)} ms ÷ ${none.toFixed(0)} ms of processor for 1,000 answers of 200 students in 4 s`,
    },
    {
      measure: '  how old a Desk is, 99 of 100',
      value: at(0.99, ages),
      goal: 150,
      unit: ' ms',
      note: 'from the acknowledgement to the first view that holds the answer',
    },
  ];
}

/** When each student's answer was first to be seen; a later answer shows that the earlier ones were. */
function note(text: string, when: number, seen: Map<string, number>): void {
  const [, { view }] = JSON.parse(text.slice(2)) as [string, Snapshot<DeskView>];
  for (const { name, answer } of view.students) {
    const student = Number(name.split(' ')[1]) - 1;
    for (let fret = answer?.places[0]?.fret ?? 0; fret > 0; fret -= 1) {
      const key = `${String(student)} ${String(fret)}`;
      if (seen.has(key)) break;
      seen.set(key, when);
    }
  }
}
