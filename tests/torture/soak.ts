import { build } from '../support/exercises.ts';
import { TeacherBrowser } from '../support/people.ts';
import {
  openDesk,
  openPreparedClass,
  openStand,
  openStands,
  studentNames,
  wait,
} from '../support/prepared-class.ts';
import { Random } from '../support/random.ts';
import { RawStand } from '../support/raw-stand.ts';
import { ServerProcess, type Figures } from '../support/server-process.ts';
import type { Report } from './report.ts';

/** How many classes share the time, one after another. */
const classes = 6;
/** From the second class on the heap may not grow by more than this, in MB: the first one warms up. */
const growthAllowed = 1.5;

interface Tally {
  rounds: number;
  answers: number;
  comings: number;
}

/**
 * Classes of 200 for so many minutes: rounds, taps, phones that come and go. A running class remembers its answers, so
 * memory is measured when each class is over and everybody gone: then nothing of it may be left.
 */
export async function soak(minutes: number, seed: number): Promise<Report> {
  const random = new Random(seed);
  const server = await ServerProcess.start();
  const teacher = new TeacherBrowser(server);
  await teacher.setUp();
  const before = await quiet(server);
  const tally: Tally = { rounds: 0, answers: 0, comings: 0 };
  const figures: Figures[] = [];
  for (let number = 0; number < classes; number += 1) {
    await hold(server, teacher, (minutes * 60_000) / classes, random, tally);
    figures.push(await quiet(server));
  }
  const complaints = server.complaints.split('\n').filter((line) => /"level":[456]0/.test(line));
  await server.remove();

  const MB = (one: 'heap' | 'rss') => figures.map((figure) => figure[one] / 1e6);
  const growth = (MB('heap').at(-1) ?? 0) - (MB('heap')[1] ?? 0);
  const left = leftOver(before, figures.at(-1) ?? before);
  const row = (values: readonly number[]) => values.map((value) => value.toFixed(1)).join(', ');
  return {
    ok: growth <= growthAllowed && left.length === 0 && complaints.length === 0,
    text:
      `${String(minutes)} minutes of 200 Stands in ${String(classes)} classes: ${String(tally.rounds)} rounds, ` +
      `${String(tally.answers)} answers, ${String(tally.comings)} phones gone and back. Heap after each class ` +
      `${row(MB('heap'))} MB, resident ${row(MB('rss'))} MB. Left over when all were gone: ` +
      `${left.length > 0 ? left.join(', ') : 'no timer, no connection'}.` +
      complaints
        .slice(0, 3)
        .map((line) => `\n    ${line.slice(0, 200)}`)
        .join(''),
  };
}

async function hold(
  server: ServerProcess,
  teacher: TeacherBrowser,
  time: number,
  random: Random,
  tally: Tally,
): Promise<void> {
  const end = performance.now() + time;
  const prepared = await openPreparedClass(server, teacher, studentNames(200));
  const stands = await openStands(server.port, prepared.tokens);
  const desk = await openDesk(server.port, prepared);
  const board = await RawStand.open(server.port, { role: 'board', code: prepared.code });
  while (performance.now() < end) {
    tally.rounds += 1;
    const roundId = await desk.ask(build('E', 'minor'));
    await Promise.all(
      stands.map(async (stand, index) => {
        for (let turn = 0; turn < 3; turn += 1) {
          await wait(random.below(1500));
          const sendId = `soak-${String(tally.rounds)}-${String(index)}-${String(turn)}`;
          const places = [{ string: 1 + random.below(6), fret: random.below(20) }];
          const command = { kind: 'place', roundId, sendId, places, done: turn === 2 };
          if ((await stand.send('stand:command', command)).ok) tally.answers += 1;
        }
      }),
    );
    for (const kind of ['hold', 'reveal', 'next']) await desk.command({ kind });
    const away = random.below(stands.length);
    stands[away]?.close();
    stands[away] = await openStand(server.port, prepared.tokens[away] ?? '');
    tally.comings += 1;
  }
  await desk.command({ kind: 'close' });
  for (const stand of [...stands, board]) stand.close();
  desk.close();
}

/** Once what was opened had the time to close. */
async function quiet(server: ServerProcess): Promise<Figures> {
  await wait(3000);
  return server.figures(true);
}

/** What the process holds open now and did not before. */
function leftOver(before: Figures, after: Figures): string[] {
  return Object.entries(after.resources)
    .map(([name, count]) => [name, count - (before.resources[name] ?? 0)] as const)
    .filter(([, more]) => more > 0)
    .map(([name, more]) => `${String(more)} ${name}`);
}
