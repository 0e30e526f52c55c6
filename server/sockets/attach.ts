import { parseCookie } from 'cookie';
import type { IncomingMessage, Server as HttpServer } from 'node:http';
import type { RateLimiterMemory } from 'rate-limiter-flexible';
import { Server, type Socket } from 'socket.io';
import * as v from 'valibot';
import { errorReply, type ErrorCode, type ErrorReply } from '../../shared/protocol/errors.ts';
import { handshakeSchema } from '../../shared/protocol/commands.ts';
import type { ClientEvents, CommandReply, ServerEvents } from '../../shared/protocol/events.ts';
import type { ClassId, PlanId, TeacherId } from '../../shared/protocol/ids.ts';
import type { ClassRegistry } from '../live/registry.ts';
import type { DeskContext, RunningClass } from '../live/running-class.ts';
import type { Log } from '../live/ports.ts';
import { attachBoard } from './board.ts';
import { attachDesk } from './desk.ts';
import { attachStand } from './stand.ts';

export type LiveSocket = Socket<ClientEvents, ServerEvents, Record<string, never>, { start?: () => void }>;
export type LiveServer = Server<ClientEvents, ServerEvents, Record<string, never>, { start?: () => void }>;

/** What the sockets need to know who is calling; the store stays behind these. */
export interface SocketTools {
  readonly registry: ClassRegistry;
  readonly build: string;
  readonly log: Log;
  readonly sessionTeacher: (
    cookies: Readonly<Record<string, string | undefined>>,
  ) => Promise<TeacherId | undefined>;
  readonly classByCode: (code: string) => Promise<ClassId | undefined>;
  readonly classBySeatToken: (tokenHash: string) => Promise<ClassId | undefined>;
  readonly hashToken: (token: string) => string;
  /** A stored plan of the class's own group. */
  readonly planOf: (running: RunningClass, planId: PlanId) => Promise<DeskContext['plan']>;
  readonly newId: () => string;
  readonly now: () => number;
  /** Whose request it is, seen through the proxies that are trusted. */
  readonly addressOf: (request: IncomingMessage) => string;
  readonly isAllowedOrigin: (request: IncomingMessage) => boolean;
  /** Wrong codes and tokens, by address: a whole school may share one. */
  readonly guesses: RateLimiterMemory;
  /** Commands, by connection. */
  readonly commands: RateLimiterMemory;
}

/** Starts the live wire on an HTTP server. */
export function attachSockets(httpServer: HttpServer, tools: SocketTools): LiveServer {
  const io: LiveServer = new Server(httpServer, {
    serveClient: false,
    maxHttpBufferSize: 16_384,
    connectTimeout: 10_000,
    pingInterval: 15_000,
    pingTimeout: 20_000,
    perMessageDeflate: false,
    allowRequest: (request, decide) => decide(null, tools.isAllowedOrigin(request)),
  });
  io.use((socket, next) => {
    admit(socket, tools).then(
      (refusal) => next(refusal && refusedConnection(refusal)),
      (error: unknown) => {
        tools.log.error({ error }, 'handshake failed');
        next(refusedConnection('server-failed'));
      },
    );
  });
  io.on('connection', (socket) => {
    socket.emit('hello', { build: tools.build });
    socket.data.start?.();
  });
  return io;
}

/** Socket.IO hands `data` to the client's `connect_error`. */
function refusedConnection(code: ErrorCode): Error & { data: ErrorReply } {
  return Object.assign(new Error(code), { data: errorReply(code) });
}

async function admit(socket: LiveSocket, tools: SocketTools): Promise<ErrorCode | undefined> {
  const handshake = v.safeParse(handshakeSchema, socket.handshake.auth);
  if (!handshake.success) return 'malformed';
  const who = handshake.output;
  const address = tools.addressOf(socket.request);
  if (who.role === 'desk') {
    const teacherId = await tools.sessionTeacher(parseCookie(socket.handshake.headers.cookie ?? ''));
    if (!teacherId) return 'not-signed-in';
    return attachDesk(socket, who.classId as ClassId, teacherId, tools);
  }
  const guesses = await tools.guesses.get(address);
  if (guesses && guesses.remainingPoints <= 0) return 'too-many-tries';
  const refusal =
    who.role === 'board'
      ? await attachBoard(socket, who.code, tools)
      : await attachStand(socket, who.token, tools);
  if (refusal === 'unknown-code' || refusal === 'seat-unknown')
    await tools.guesses.consume(address).catch(() => undefined);
  return refusal;
}

/** Limits, parses and runs one command, and answers it whatever happens. */
export function handleCommand<Schema extends v.GenericSchema>(
  socket: LiveSocket,
  tools: SocketTools,
  schema: Schema,
  run: (command: v.InferOutput<Schema>) => Promise<CommandReply>,
): (payload: unknown, reply: (result: CommandReply) => void) => void {
  return (payload, reply) => {
    if (typeof reply !== 'function') return;
    const refuse = (code: ErrorCode) => reply({ ok: false, error: errorReply(code) });
    tools.commands.consume(socket.id).then(
      () => {
        const command = v.safeParse(schema, payload);
        if (!command.success) return refuse('malformed');
        run(command.output).then(reply, (error: unknown) => {
          tools.log.error({ error }, 'command failed');
          refuse('server-failed');
        });
      },
      () => refuse('too-many-tries'),
    );
  };
}
