import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { CommandReply, Snapshot } from '../../shared/protocol/events.ts';
import type { DeskView } from '../../shared/protocol/views.ts';
import { join, TeacherBrowser, type Reachable } from './people.ts';
import { RawStand, type Opening } from './raw-stand.ts';
import { ServerProcess, type ServerOptions } from './server-process.ts';

/** A class whose students all have taken their seats. */
export interface PreparedClass {
  readonly cookie: string;
  readonly classId: string;
  readonly groupId: string;
  readonly code: string;
  /** Of each student, in the order of the register. */
  readonly tokens: readonly string[];
}

/** The same, and the folder with its store. */
export interface StoredClass extends PreparedClass {
  readonly dataDir: string;
}

/** Invented names, one for each seat. */
export function studentNames(count: number, word = 'Student'): string[] {
  return Array.from({ length: count }, (_, index) => `${word} ${String(index + 1)}`);
}

/** Holds one class on a server that is running. */
export async function openPreparedClass(
  server: Reachable,
  teacher: TeacherBrowser,
  names: readonly string[],
): Promise<PreparedClass> {
  const groupId = await teacher.makeGroup(names.slice(0, 100));
  for (let from = 100; from < names.length; from += 100) {
    await teacher.call('POST', `groups/${groupId}/students`, { names: names.slice(from, from + 100) });
  }
  const opened = await teacher.call<{ id: string }>('POST', `groups/${groupId}/classes`, { planId: null });
  const classId = opened.body.id;
  const desk = await openDesk(portOf(server), { classId, cookie: teacher.cookie });
  const code = desk.view.code;
  desk.close();
  const tokens: string[] = [];
  for (let from = 0; from < names.length; from += 20) {
    const some = names.slice(from, from + 20);
    const joined = await Promise.all(some.map((name) => join(server, code, name)));
    tokens.push(...joined.map(({ token, error }) => token ?? fail(error?.message ?? 'no token')));
  }
  return { cookie: teacher.cookie, classId, groupId, code, tokens };
}

/** The same in a folder of its own, the server stopped again. */
export async function prepareClass(count: number, options: ServerOptions = {}): Promise<StoredClass> {
  const server = await ServerProcess.start(options);
  const teacher = new TeacherBrowser(server);
  await teacher.setUp();
  const prepared = await openPreparedClass(server, teacher, studentNames(count));
  await server.kill('SIGTERM');
  return { ...prepared, dataDir: server.dataDir };
}

/** A teacher's screen that costs little: it reads its views only when asked. */
export interface RawDesk {
  readonly view: DeskView;
  readonly command: (command: object) => Promise<CommandReply>;
  /** Resolves with the round's id, once the Desk shows it. */
  readonly ask: (exercise: Exercise) => Promise<string>;
  readonly close: () => void;
  /** Called with each view as text, and at the end. */
  readonly on: { view: (text: string) => void; closed: () => void };
}

export async function openDesk(
  port: number,
  { classId, cookie }: Pick<PreparedClass, 'classId' | 'cookie'>,
): Promise<RawDesk> {
  let newest = '';
  const on = { view: (_text: string): void => undefined, closed: (): void => undefined };
  const take = (text: string) => {
    if (!text.startsWith('42["desk:view"')) return;
    newest = text;
    on.view(text);
  };
  const auth = { role: 'desk', classId };
  const socket = await RawStand.open(port, auth, { headers: { cookie }, heard: take, passes: whatever });
  socket.closed = () => on.closed();
  const command = (one: object) => socket.send('desk:command', one);
  const desk: RawDesk = {
    on,
    get view() {
      return (JSON.parse(newest.slice(2)) as [string, Snapshot<DeskView>])[1].view;
    },
    command,
    async ask(exercise) {
      const newestRound = () => desk.view.rounds.at(-1)?.id ?? '';
      const before = newestRound();
      const reply = await command({ kind: 'ask', exercise, seconds: null });
      if (!reply.ok) fail(reply.error.message);
      while (newestRound() === before) await wait(10);
      return newestRound();
    },
    close: () => socket.close(),
  };
  return desk;
}

/** Opens Stands so many at a time, trying again where the server asks to wait. */
export async function openStands(
  port: number,
  tokens: readonly string[],
  heard: (index: number, text: string) => void = () => undefined,
  together = 25,
): Promise<RawStand[]> {
  const stands: RawStand[] = [];
  for (let from = 0; from < tokens.length; from += together) {
    const some = tokens.slice(from, from + together);
    const opened = some.map((token, at) =>
      openStand(port, token, { heard: (text) => heard(from + at, text) }),
    );
    stands.push(...(await Promise.all(opened)));
  }
  return stands;
}

export function openStand(
  port: number,
  token: string,
  opening: Pick<Opening, 'heard' | 'tries'> = {},
): Promise<RawStand> {
  return RawStand.open(port, { role: 'stand', token }, { ...opening, passes: whatever });
}

/** The server may be starting, or be killed while somebody comes in. */
const whatever = () => true;

function portOf({ url }: Reachable): number {
  return Number(new URL(url).port);
}

export function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

function fail(why: string): never {
  throw new Error(why);
}
