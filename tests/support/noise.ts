import { connect } from 'node:net';
import { request as httpRequest } from 'node:http';
import type { CommandReply } from '../../shared/protocol/events.ts';
import { find } from './exercises.ts';
import { Nonsense, type NonsenseRequest } from './nonsense.ts';
import { openDesk, openStand, openStands, wait, type PreparedClass } from './prepared-class.ts';
import { Random } from './random.ts';
import { RawStand } from './raw-stand.ts';

export interface NoiseReport {
  /** What was sent, and how it was answered. */
  readonly sent: number;
  readonly refused: number;
  readonly taken: number;
  readonly tooFast: number;
  /** Bugs: replies that speak of a failure inside, and where. */
  readonly failures: readonly string[];
  /** What the class beside it went through. */
  readonly rounds: number;
  readonly answers: number;
  readonly slowest: number;
}

interface Counts {
  sent: number;
  refused: number;
  taken: number;
  tooFast: number;
  failures: string[];
}

/**
 * Nonsense over sockets and HTTP on one class, while another class on the same server is held as usual: that one must
 * not notice. Throws where it does.
 */
export async function makeNoise(
  port: number,
  [usual, noisy]: readonly [PreparedClass, PreparedClass],
  count: number,
  seed: number,
): Promise<NoiseReport> {
  const counts: Counts = { sent: 0, refused: 0, taken: 0, tooFast: 0, failures: [] };
  const random = new Random(seed);
  const noisyDesk = await openDesk(port, noisy);
  const noisyRound = await noisyDesk.ask(find('D'));
  noisyDesk.close();
  const nonsense = new Nonsense(random, () => noisyRound);

  let over = false;
  const beside = holdClass(port, usual, () => over);
  const share = (part: number) => Math.ceil(count * part);
  const noise = Promise.all([
    commands(port, noisy, nonsense, share(0.6), counts),
    frames(port, noisy, nonsense, share(0.15), counts),
    requests(port, noisy, nonsense, share(0.25), counts, random),
  ]);
  await Promise.race([noise, beside]);
  await noise;
  over = true;
  return { ...counts, ...(await beside) };
}

/** Commands on seats that are rightly taken, no faster than a seat may. */
async function commands(
  port: number,
  noisy: PreparedClass,
  nonsense: Nonsense,
  count: number,
  counts: Counts,
): Promise<void> {
  const turns = Math.ceil(count / (noisy.tokens.length + 1));
  const turn = async (number: number, send: (command: object) => Promise<CommandReply>) => {
    if (number >= 15) await wait(110);
    counts.sent += 1;
    const command = nonsense.command() as object;
    const reply = await Promise.race([
      send(command).catch(() => undefined),
      wait(8000).then(() => undefined),
    ]);
    // More than a message may hold: the line is cut, and a real seat comes back.
    const tooLong = Buffer.byteLength(JSON.stringify(command)) > 16_000;
    if (!reply && tooLong) counts.refused += 1;
    else take(reply, command, counts);
    return reply !== undefined;
  };
  const seats = noisy.tokens.map(async (token) => {
    let stand = await openStand(port, token);
    for (let number = 0; number < turns; number += 1) {
      if (await turn(number, (command) => stand.send('stand:command', command))) continue;
      stand.close();
      stand = await openStand(port, token);
    }
    stand.close();
  });
  const asDesk = async () => {
    let desk = await openDesk(port, noisy);
    for (let number = 0; number < turns; number += 1) {
      if (await turn(number, (command) => desk.command(command))) continue;
      desk.close();
      desk = await openDesk(port, noisy);
    }
    desk.close();
  };
  await Promise.all([...seats, asDesk()]);
}

function take(reply: CommandReply | undefined, command: object, counts: Counts): void {
  if (!reply) counts.failures.push(`no reply to ${JSON.stringify(command).slice(0, 200)}`);
  else if (reply.ok) counts.taken += 1;
  else if (reply.error.code === 'server-failed' || reply.error.code === 'store-failed')
    counts.failures.push(`${reply.error.code} for ${JSON.stringify(command).slice(0, 200)}`);
  else if (/too-(fast|many)/.test(reply.error.code)) counts.tooFast += 1;
  else counts.refused += 1;
}

/** Broken below the level of events: the server may cut the line, and nothing more. */
async function frames(
  port: number,
  noisy: PreparedClass,
  nonsense: Nonsense,
  count: number,
  counts: Counts,
): Promise<void> {
  const [token = ''] = noisy.tokens;
  for (let sent = 0; sent < count;) {
    const stand = sent % 40 === 39 ? await shake(port, nonsense.handshake()) : await openStand(port, token);
    let open = stand !== undefined;
    if (stand) stand.closed = () => (open = false);
    sent += 1;
    counts.sent += 1;
    for (let turn = 0; stand && open && turn < 12 && sent < count; turn += 1) {
      stand.raw(nonsense.frame());
      sent += 1;
      counts.sent += 1;
      await wait(2);
    }
    stand?.close();
  }
}

async function shake(port: number, auth: object): Promise<RawStand | undefined> {
  return Promise.race([RawStand.open(port, auth).catch(() => undefined), wait(500).then(() => undefined)]);
}

/** Requests of a signed-in teacher about the noisy group, of nobody, and bytes that are no request. */
async function requests(
  port: number,
  noisy: PreparedClass,
  nonsense: Nonsense,
  count: number,
  counts: Counts,
  random: Random,
): Promise<void> {
  const each = Math.ceil(count / 4);
  const ask = async () => {
    for (let turn = 0; turn < each; turn += 1) {
      counts.sent += 1;
      if (random.chance(0.1)) {
        await bytes(port, `${JSON.stringify(nonsense.command())}\r\n\r\n`);
        continue;
      }
      const one = nonsense.request(noisy.groupId);
      const status = await answerTo(port, one, random.chance(0.5) ? noisy.cookie : undefined);
      if (status >= 500 && status !== 503)
        counts.failures.push(
          `${String(status)} for ${one.method} ${one.path.slice(0, 60)} ${String(one.body).slice(0, 120)}`,
        );
      else if (status >= 400) counts.refused += 1;
      else counts.taken += 1;
    }
  };
  await Promise.all([ask(), ask(), ask(), ask()]);
}

function answerTo(
  port: number,
  { method, path, type, body }: NonsenseRequest,
  cookie: string | undefined,
): Promise<number> {
  return new Promise((resolve) => {
    const headers = {
      ...(type === null ? {} : { 'content-type': type }),
      ...(cookie === undefined ? {} : { cookie }),
      ...(body === null ? {} : { 'content-length': String(Buffer.byteLength(body)) }),
    };
    const asking = httpRequest({
      port,
      host: '127.0.0.1',
      method,
      path: encodeURI(path).replaceAll('%25', '%'),
      headers,
    });
    asking.on('response', (response) => {
      response.resume();
      response.on('close', () => resolve(response.statusCode ?? 0));
    });
    asking.on('error', () => resolve(400));
    asking.end(body ?? undefined);
  });
}

function bytes(port: number, text: string): Promise<void> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1', () => socket.end(text));
    socket.on('error', () => resolve());
    socket.on('close', () => resolve());
    socket.resume();
  });
}

/** A class as usual: everybody answers in every round, and the Desk sees all of it. */
async function holdClass(
  port: number,
  usual: PreparedClass,
  over: () => boolean,
): Promise<Pick<NoiseReport, 'rounds' | 'answers' | 'slowest'>> {
  const stands = await openStands(port, usual.tokens);
  const desk = await openDesk(port, usual);
  for (const stand of stands) stand.closed = () => (left += 1);
  let [left, rounds, answers, slowest] = [0, 0, 0, 0];
  const must = (condition: boolean, what: string) => {
    if (!condition) throw new Error(`the usual class noticed: ${what}`);
  };
  do {
    rounds += 1;
    const roundId = await desk.ask(find('D'));
    await Promise.all(
      stands.map(async (stand, index) => {
        const start = performance.now();
        const places = [{ string: 2, fret: (rounds + index) % 13 }];
        const sendId = `usual-${String(rounds)}-${String(index)}`;
        const reply = await stand.send('stand:command', {
          kind: 'place',
          roundId,
          sendId,
          places,
          done: true,
        });
        must(reply.ok, JSON.stringify(reply));
        slowest = Math.max(slowest, performance.now() - start);
        answers += 1;
      }),
    );
    for (const kind of ['hold', 'reveal']) must((await desk.command({ kind })).ok, `${kind} was refused`);
    await wait(250);
    const { students, rounds: shown } = desk.view;
    must(shown.at(-1)?.share.of === stands.length, 'answers are missing at the Desk');
    must(students.length === usual.tokens.length, 'the register changed');
    const wrong = students.filter(
      ({ name, answer }) => answer?.places[0]?.fret !== (rounds + Number(name.split(' ')[1]) - 1) % 13,
    );
    must(wrong.length === 0, 'another answer than was given');
    must((await desk.command({ kind: 'next' })).ok, 'next was refused');
    must(left === 0, 'a line was cut');
    await wait(150);
  } while (!over());
  for (const stand of stands) {
    stand.closed = () => undefined;
    stand.close();
  }
  desk.close();
  return { rounds, answers, slowest };
}
