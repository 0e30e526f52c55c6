import express, { type Router } from 'express';
import type { IncomingMessage, Server as HttpServer } from 'node:http';
import type { Logger } from 'pino';
import proxyAddress from 'proxy-addr';
import { RateLimiterMemory } from 'rate-limiter-flexible';
import type { Time } from '../shared/protocol/ids.ts';
import { isAllowedOrigin, studentAddresses } from './addresses.ts';
import { storePath, type Config } from './config.ts';
import { watchEventLoop } from './event-loop.ts';
import { usualLimits, type Limits } from './limits.ts';
import type { Publisher } from './live/ports.ts';
import { ClassRegistry } from './live/registry.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { purgeHourly } from './purging.ts';
import { addressRoutes } from './routes/addresses.ts';
import { chartRoutes } from './routes/charts.ts';
import { classRoutes } from './routes/classes.ts';
import { groupRoutes } from './routes/groups.ts';
import { codeTries, fromOwnPages, sessionCookie, sessionTeacher, signInTries } from './routes/guard.ts';
import { paperRoutes } from './routes/paper.ts';
import { planRoutes } from './routes/plans.ts';
import { teacherRoutes } from './routes/teachers.ts';
import { hashToken, newId, newToken, readClassCode } from './secrets.ts';
import { attachSockets, type LiveWire } from './sockets/attach.ts';
import { UnderWay } from './sockets/under-way.ts';
import { openStore } from './store/sqlite/open-store.ts';

/** The parts of a running server, put together. */
export interface Context {
  readonly api: Router;
  attachSockets(httpServer: HttpServer): void;
  health(): Promise<object>;
  readonly metrics: Metrics;
  /** The path of the one-time set-up link, while there is no teacher yet. */
  setUpLink(): Promise<string | null>;
  close(): Promise<void>;
}

/** How long the first set-up link lasts; a new start makes a new one. Milliseconds. */
const setUpLife = 24 * 3_600_000;

/** Picks the implementations: this is the only place that names them. */
export async function createContext(
  config: Config,
  log: Logger,
  limits: Limits = usualLimits,
): Promise<Context> {
  let wire: LiveWire | undefined;
  const opened = openStore({ path: storePath(config), log });
  const eventLoop = watchEventLoop();
  const metrics = createMetrics({
    eventLoop,
    connected: () => connectedByRole(wire),
    openClasses: async () => (await opened.classes.open()).length,
  });
  const store = { ...opened, classes: metrics.measured(opened.classes) };

  const all = () => studentAddresses(config);
  let chosen = await store.settings.read('address');
  const address = () => (chosen !== undefined && all().includes(chosen) ? chosen : (all()[0] ?? ''));
  const choose = async (picked: string) => {
    await store.settings.write('address', picked);
    chosen = picked;
  };
  const addresses = { all, chosen: address, choose };

  const publisher: Publisher = {
    toStands: (id, snapshot) => wire?.io.to(`stands:${id}`).emit('stand:shared', snapshot),
    toSeat: (classId, seatId, snapshot) => {
      const seat = wire?.io.in(`seat:${seatId}`);
      seat?.emit('stand:own', snapshot);
      if (snapshot.view.seat === 'gone') seat?.socketsLeave(`stands:${classId}`);
    },
    toBoards: (id, snapshot) => wire?.io.to(`boards:${id}`).emit('board:view', snapshot),
    toDesks: (id, snapshot) => wire?.io.to(`desks:${id}`).emit('desk:view', snapshot),
  };
  const clock = {
    now: () => Date.now() as Time,
    after(milliseconds: number, run: () => void) {
      const timer = setTimeout(run, milliseconds);
      return () => clearTimeout(timer);
    },
  };
  const registry = new ClassRegistry(store.classes, { publisher, clock, log, address });
  const stopPurging = await purgeHourly(store, { clock, log, gone: (groupId) => registry.drop(groupId) });
  await registry.start();

  // A whole school may share one address: only failures count.
  const failedSignIns = new RateLimiterMemory(signInTries);
  const failedCodes = new RateLimiterMemory(codeTries);
  const commands = new RateLimiterMemory({ points: limits.eventBurst, duration: limits.eventWindow / 1000 });
  const isFromOwnPages = (request: IncomingMessage) =>
    isAllowedOrigin(config, { origin: request.headers.origin, host: request.headers.host });
  const secure = config.https || (config.publicUrl?.startsWith('https:') ?? false);

  const settings = express();
  if (config.trustProxy !== null) settings.set('trust proxy', config.trustProxy);
  // Express's own reading of the setting, so that pages and sockets see the same address.
  const trusts = settings.get('trust proxy fn') as (address: string, hop: number) => boolean;

  const api = express.Router();
  api.use(fromOwnPages(isFromOwnPages));
  const sessionsEnded = () => {
    for (const socket of wire?.io.sockets.sockets.values() ?? []) socket.data.askWho?.();
  };
  api.use(teacherRoutes(store, { secure, failures: failedSignIns, address, sessionsEnded }));
  api.use(groupRoutes(store, registry));
  api.use(planRoutes(store));
  api.use(classRoutes(store, registry, { secure, failures: failedCodes }));
  api.use(chartRoutes(store, failedCodes));
  api.use(paperRoutes(store, registry));
  api.use(addressRoutes(store, registry, addresses));

  return {
    api,
    attachSockets(httpServer) {
      wire = attachSockets(httpServer, {
        registry,
        build: config.build,
        log,
        hashToken,
        newId,
        now: Date.now,
        isAllowedOrigin: isFromOwnPages,
        addressOf: (request) => proxyAddress(request, trusts),
        guesses: failedCodes,
        commands,
        underWay: new UnderWay(limits.commandsPerClass),
        limits,
        lag: eventLoop.lag,
        refused: metrics.refused,
        sessionTeacher: async (cookies) =>
          (await sessionTeacher(store, cookies[sessionCookie], Date.now()))?.id,
        classByCode: async (typed) => {
          const code = readClassCode(typed);
          return code && store.classes.byCode(code);
        },
        classBySeatToken: (tokenHash) => store.classes.bySeatToken(tokenHash),
        planOf: async (running, planId) => {
          const plan = await store.plans.byId(planId);
          return plan?.groupId === running.state.groupId
            ? { id: plan.id, title: plan.title, exercises: plan.exercises }
            : undefined;
        },
      });
    },
    health: async () => ({ store: store.describe(), ...(await metrics.summary()) }),
    metrics,
    async setUpLink() {
      if ((await store.teachers.count()) > 0) return null;
      const token = newToken();
      await store.teachers.addInvitation(hashToken(token), (Date.now() + setUpLife) as Time);
      return `/desk/set-up#${token}`;
    },
    async close() {
      stopPurging();
      await wire?.stop();
      eventLoop.stop();
      await registry.stop();
      await store.close();
    },
  };
}

function connectedByRole(wire: LiveWire | undefined): Record<'stand' | 'desk' | 'board', number> {
  const connected = { stand: 0, desk: 0, board: 0 };
  for (const { data } of wire?.io.sockets.sockets.values() ?? []) if (data.role) connected[data.role] += 1;
  return connected;
}
