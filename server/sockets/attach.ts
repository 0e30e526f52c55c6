import type { IncomingMessage, Server as HttpServer } from 'node:http';
import type { RateLimiterMemory } from 'rate-limiter-flexible';
import { Server, type Socket } from 'socket.io';
import * as v from 'valibot';
import type { Handshake } from '../../shared/protocol/commands.ts';
import { errorReply, type ErrorCode, type ErrorReply } from '../../shared/protocol/errors.ts';
import type { ClientEvents, CommandReply, ServerEvents } from '../../shared/protocol/events.ts';
import type { ClassId, PlanId, TeacherId } from '../../shared/protocol/ids.ts';
import type { LimitName, Limits } from '../limits.ts';
import type { ClassRegistry } from '../live/registry.ts';
import type { DeskContext, RunningClass } from '../live/running-class.ts';
import type { Log } from '../live/ports.ts';
import { admit } from './admit.ts';
import { dropFloods } from './floods.ts';
import { handshakeGate } from './handshake-gate.ts';
import { answerNetworkChecks } from './network-check.ts';
import { endConnections, keepSeatLimit } from './partings.ts';
import { dropSlowReaders } from './slow-readers.ts';
import type { UnderWay } from './under-way.ts';

export interface SocketData {
  start?: () => void;
  /** Asks whether the session is still open, and ends the screen where it isn't. */
  askWho?: () => void;
  role?: Handshake['role'];
  /** What the limits count by: the seat of a student, else the connection. */
  countedAs?: string;
  classId?: string;
}
export type LiveSocket = Socket<ClientEvents, ServerEvents, Record<string, never>, SocketData>;
export type LiveServer = Server<ClientEvents, ServerEvents, Record<string, never>, SocketData>;

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
  /** Commands, by seat. */
  readonly commands: RateLimiterMemory;
  readonly underWay: UnderWay;
  readonly limits: Limits;
  /** How late this process is, in milliseconds. */
  readonly lag: () => number;
  readonly refused: (limit: LimitName) => void;
}

/** The live wire of a running server. */
export interface LiveWire {
  readonly io: LiveServer;
  /** Lets what is under way end, says goodbye, and lets nobody in any more. */
  stop(): Promise<void>;
}

/** Starts the live wire on an HTTP server. */
export function attachSockets(httpServer: HttpServer, tools: SocketTools): LiveWire {
  const { limits, refused } = tools;
  const io: LiveServer = new Server(httpServer, {
    serveClient: false,
    maxHttpBufferSize: limits.messageBytes,
    connectTimeout: limits.connectWithin,
    pingInterval: limits.pingEvery,
    pingTimeout: limits.pongWithin,
    perMessageDeflate: false,
    allowRequest: handshakeGate({ ...tools, stopping: () => tools.underWay.ending }),
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
    keepSeatLimit(io, socket, limits.socketsPerSeat, () => refused('sockets'));
  });
  answerNetworkChecks(io, tools.now);
  dropFloods(io, limits, refused);
  const stopDropping = dropSlowReaders(io, limits, () => refused('unsent'));
  const end = endConnections(io, httpServer);
  return {
    io,
    async stop() {
      stopDropping();
      await end(tools.underWay.end());
    },
  };
}

/** Socket.IO hands `data` to the client's `connect_error`. */
function refusedConnection(code: ErrorCode): Error & { data: ErrorReply } {
  return Object.assign(new Error(code), { data: errorReply(code) });
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
    const { classId = '' } = socket.data;
    tools.commands.consume(socket.data.countedAs ?? socket.id).then(
      () => {
        const command = v.safeParse(schema, payload);
        if (!command.success) return refuse('malformed');
        if (!tools.underWay.enter(classId)) {
          tools.refused('commands');
          return refuse(tools.underWay.ending ? 'server-stopping' : 'server-busy');
        }
        run(command.output)
          .then(reply, (error: unknown) => {
            tools.log.error({ error }, 'command failed');
            refuse('server-failed');
          })
          .finally(() => tools.underWay.leave(classId));
      },
      () => {
        tools.refused('events');
        refuse('too-fast');
      },
    );
  };
}
