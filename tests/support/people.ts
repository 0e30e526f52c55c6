import { io, type Socket } from 'socket.io-client';
import type { DeskCommand, StandCommand } from '../../shared/protocol/commands.ts';
import type { ClientEvents, CommandReply, ServerEvents, Snapshot } from '../../shared/protocol/events.ts';
import type { BoardView, DeskView, StandOwnView, StandSharedView } from '../../shared/protocol/views.ts';
import type { LiveServer } from './live-server.ts';

type LiveSocket = Socket<ServerEvents, ClientEvents>;

/** A server in this process or another. */
export type Reachable = Pick<LiveServer, 'url' | 'setUpToken'>;

/** One screen on a real socket; keeps every word that it was sent. */
export class Screen {
  readonly socket: LiveSocket;
  /** Everything received, as text. */
  readonly heard: string[] = [];
  shared: StandSharedView | undefined;
  own: StandOwnView | undefined;
  board: BoardView | undefined;
  desk: DeskView | undefined;
  readonly #waiting = new Set<() => void>();

  constructor(server: Reachable, auth: object, headers: Readonly<Record<string, string>> = {}) {
    this.socket = io(server.url, {
      auth,
      reconnectionDelay: 50,
      reconnectionDelayMax: 200,
      extraHeaders: headers,
      transports: ['websocket'],
    });
    this.socket.onAny((event: string, payload: unknown) =>
      this.heard.push(`${event} ${JSON.stringify(payload)}`),
    );
    this.#take('stand:shared', (view: StandSharedView) => (this.shared = view));
    this.#take('stand:own', (view: StandOwnView) => (this.own = view));
    this.#take('board:view', (view: BoardView) => (this.board = view));
    this.#take('desk:view', (view: DeskView) => (this.desk = view));
  }

  #take<View>(event: string, keep: (view: View) => void): void {
    const listener = (snapshot: Snapshot<View>) => {
      keep(snapshot.view);
      for (const check of this.#waiting) check();
    };
    (this.socket as Socket).on(event, listener);
  }

  /** Resolves once what the screen was told satisfies the condition. */
  until(condition: (screen: this) => boolean): Promise<void> {
    return new Promise((resolve) => {
      const check = () => {
        if (!condition(this)) return;
        this.#waiting.delete(check);
        resolve();
      };
      this.#waiting.add(check);
      check();
    });
  }

  refusal(): Promise<string> {
    return new Promise((resolve) => {
      this.socket.once('connect_error', (error) =>
        resolve((error as { data?: { code?: string } }).data?.code ?? error.message),
      );
    });
  }

  ask(command: DeskCommand | object): Promise<CommandReply> {
    return this.socket.timeout(5000).emitWithAck('desk:command', command);
  }

  give(command: StandCommand | object): Promise<CommandReply> {
    return this.socket.timeout(5000).emitWithAck('stand:command', command);
  }

  close(): void {
    this.socket.close();
  }
}

/** A teacher's browser: keeps its session cookie. */
export class TeacherBrowser {
  #cookie = '';
  readonly #server: Reachable;

  constructor(server: Reachable) {
    this.#server = server;
  }

  /** What its browser sends along. */
  get cookie(): string {
    return this.#cookie;
  }

  async call<T>(method: string, path: string, body?: object): Promise<{ status: number; body: T }> {
    const response = await fetch(`${this.#server.url}/api/${path}`, {
      method,
      headers: { 'content-type': 'application/json', cookie: this.#cookie },
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const [set] = response.headers.getSetCookie();
    if (set) this.#cookie = set.split(';')[0] ?? '';
    return { status: response.status, body: (await response.json()) as T };
  }

  async setUp(name = 'Mara'): Promise<void> {
    const token = await this.#server.setUpToken();
    await this.call('POST', 'set-up', { token, name, passphrase: 'seven short steps' });
  }

  /** An invented group with a register; its id. */
  async makeGroup(names: readonly string[], instrument = 'guitar'): Promise<string> {
    const group = {
      name: 'Thursday Strings',
      school: 'Alderwick Community Music School',
      instrument,
    };
    const fields = { ...group, naming: 'english', language: 'en', purgeAt: null };
    const { id } = (await this.call<{ id: string }>('POST', 'groups', fields)).body;
    await this.call('POST', `groups/${id}/students`, { names });
    return id;
  }

  async openClass(groupId: string, planId: string | null = null): Promise<{ classId: string; desk: Screen }> {
    const { id } = (await this.call<{ id: string }>('POST', `groups/${groupId}/classes`, { planId })).body;
    const desk = new Screen(this.#server, { role: 'desk', classId: id }, { cookie: this.#cookie });
    await desk.until((screen) => screen.desk !== undefined);
    return { classId: id, desk };
  }
}

/** Gives code and name at the door; the device's token, or why not. */
export async function join(
  server: Reachable,
  code: string,
  name: string,
): Promise<{ token?: string; error?: { code: string; message: string } }> {
  const response = await fetch(`${server.url}/api/join`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code, name }),
  });
  return (await response.json()) as { token?: string; error?: { code: string; message: string } };
}

/** A student's device on its seat. */
export async function sit(server: Reachable, code: string, name: string): Promise<Screen> {
  const { token } = await join(server, code, name);
  const screen = new Screen(server, { role: 'stand', token });
  await screen.until(({ own, shared }) => own !== undefined && shared !== undefined);
  return screen;
}
