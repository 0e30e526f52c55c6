import type { Socket } from 'socket.io-client';
import { errorReply, errorSentences, type ErrorCode, type ErrorReply } from '../../shared/protocol/errors.ts';
import type { ClientEvents, CommandReply, ServerEvents, Snapshot } from '../../shared/protocol/events.ts';
import { longestMessage } from '../../shared/protocol/limits.ts';
import { checkBuild } from './build-check.ts';

export type ClassSocket = Socket<ServerEvents, ClientEvents>;
export type ViewEvent = Exclude<keyof ServerEvents, 'hello' | 'farewell'>;
export type ViewOf<E extends ViewEvent> = Parameters<ServerEvents[E]>[0]['view'];

/** `lost`: out of touch, and trying again. */
export type ConnectionState = 'connecting' | 'live' | 'lost';

/** How long a command may take before it counts as unanswered, in milliseconds. */
const answerWithin = 6000;
/** The server pings every 15 s: after this much silence the line is dead, whatever the browser thinks. */
const silence = 20_000;

/** Refusals that pass: the device tries again by itself. */
const passing: ReadonlySet<ErrorCode> = new Set([
  'too-many-tries',
  'store-failed',
  'server-failed',
  'server-busy',
  'server-stopping',
  'boards-full',
]);

/**
 * One screen's line to a class: its newest views and the way to send commands. Every connect starts afresh with
 * whole snapshots, so nothing depends on what was missed.
 */
export class ClassConnection<E extends ViewEvent> {
  #state: ConnectionState = 'connecting';
  #refusal: ErrorReply | null = null;
  #absence: ErrorReply | null = null;
  readonly #snapshots = new Map<ViewEvent, Snapshot<unknown>>();
  readonly #listeners = new Set<() => void>();
  readonly #socket: ClassSocket;
  readonly #command: keyof ClientEvents;
  #heardAt = 0;
  #restartedAt = 0;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #known = new Set<ViewEvent>();

  constructor(socket: ClassSocket, command: keyof ClientEvents, views: readonly E[]) {
    this.#socket = socket;
    this.#command = command;
    socket.on('connect', this.#onConnect);
    socket.on('connect_error', this.#onRefused);
    socket.on('disconnect', this.#onDisconnect);
    socket.on('hello', ({ build }) => {
      checkBuild(build);
    });
    socket.on('farewell', this.#onFarewell);
    socket.onAny(this.#onHeard);
    socket.io.on('ping', this.#onHeard);
    for (const view of views) this.#listen(view);
    addEventListener('online', this.#wake);
    addEventListener('pageshow', this.#wake);
    document.addEventListener('visibilitychange', this.#wake);
    socket.connect();
  }

  get state(): ConnectionState {
    return this.#state;
  }

  /** Why the server won't have this screen; it has stopped trying. */
  get refusal(): ErrorReply | null {
    return this.#refusal;
  }

  /** Why the line is lost, where the server said so; null where it is the network. */
  get absence(): ErrorReply | null {
    return this.#absence;
  }

  /** The newest view, kept while the line is lost; null before the first. */
  view<V extends E>(event: V): ViewOf<V> | null {
    return (this.#snapshots.get(event)?.view as ViewOf<V> | undefined) ?? null;
  }

  /** Called on every change; returns its end. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  /** Sends a command; resolves with the server's reply, or with a refusal of its own where none came. */
  async send(command: unknown): Promise<CommandReply> {
    if (!this.#socket.connected) return unanswered('The network is gone. Nothing was sent.');
    // The server would cut the line; refused here, only this one command is.
    if (bytesOf(command) > longestMessage) return { ok: false, error: errorReply('too-long') };
    try {
      const reply = await this.#socket.timeout(answerWithin).emitWithAck(this.#command, command);
      this.#onHeard();
      return reply;
    } catch {
      if (this.#socket.connected) this.#restart();
      return unanswered('The server did not answer. Try again.');
    }
  }

  close(): void {
    clearTimeout(this.#retry);
    removeEventListener('online', this.#wake);
    removeEventListener('pageshow', this.#wake);
    document.removeEventListener('visibilitychange', this.#wake);
    this.#listeners.clear();
    this.#socket.io.off('ping', this.#onHeard);
    this.#socket.offAny();
    this.#socket.off();
    this.#socket.disconnect();
  }

  #listen(event: E): void {
    const take = (snapshot: Snapshot<unknown>): void => {
      const before = this.#known.has(event) ? this.#snapshots.get(event) : undefined;
      if (before && before.revision > snapshot.revision) return;
      this.#known.add(event);
      this.#snapshots.set(event, snapshot);
      this.#changed();
    };
    this.#socket.on(event as 'desk:view', take);
  }

  readonly #onConnect = (): void => {
    // The server may have started again since: its numbers count from the beginning.
    this.#known = new Set();
    this.#refusal = null;
    this.#absence = null;
    this.#onHeard();
    this.#turn('live');
  };

  /** The server's last word: what passes is waited for, else another screen has taken this one's place. */
  readonly #onFarewell = (why: unknown): void => {
    const reply = refusalIn(why);
    if (reply && passing.has(reply.code)) this.#absence = reply;
    else if (reply) {
      this.#refusal = reply;
      this.#socket.disconnect();
    }
    this.#changed();
  };

  readonly #onRefused = (
    error: Error & { readonly data?: unknown; readonly description?: unknown },
  ): void => {
    const reply = refusalIn(error.data);
    if (reply && !passing.has(reply.code)) {
      this.#refusal = reply;
      this.#changed();
      return;
    }
    // A busy server turns away the request itself; only long-polling lets the page see how.
    this.#absence = reply ?? (error.description === 503 ? errorReply('server-busy') : this.#absence);
    // Without a refusal the manager goes on trying by itself; a socket that was turned away does not.
    if (!this.#socket.active) this.#retryLater();
    this.#turn('lost');
  };

  readonly #onDisconnect = (): void => {
    if (!this.#socket.active && !this.#refusal) this.#retryLater();
    this.#turn('lost');
  };

  readonly #onHeard = (): void => {
    this.#heardAt = Date.now();
  };

  /** The device is in use again: don't wait for a timer that slept as well. */
  readonly #wake = (): void => {
    if (document.visibilityState === 'hidden' || this.#refusal) return;
    const dead = !this.#socket.connected || Date.now() - this.#heardAt > silence;
    if (dead && Date.now() - this.#restartedAt > 1000) this.#restart();
  };

  #restart(): void {
    this.#restartedAt = Date.now();
    this.#socket.disconnect();
    clearTimeout(this.#retry);
    this.#socket.connect();
  }

  #retryLater(): void {
    clearTimeout(this.#retry);
    this.#retry = setTimeout(() => this.#socket.connect(), 500 + Math.random() * 1500);
  }

  #turn(state: ConnectionState): void {
    this.#state = state;
    this.#changed();
  }

  #changed(): void {
    for (const listener of [...this.#listeners]) listener();
  }
}

function bytesOf(command: unknown): number {
  return new TextEncoder().encode(JSON.stringify(command)).length;
}

function unanswered(message: string): CommandReply {
  return { ok: false, error: errorReply('server-failed', message) };
}

function refusalIn(data: unknown): ErrorReply | null {
  if (typeof data !== 'object' || data === null || !('code' in data)) return null;
  const code = data.code;
  if (typeof code !== 'string' || !Object.hasOwn(errorSentences, code)) return null;
  const known = code as ErrorCode;
  return 'message' in data && typeof data.message === 'string'
    ? errorReply(known, data.message)
    : errorReply(known);
}
