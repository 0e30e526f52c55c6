import express, { type Router } from 'express';
import type { IncomingMessage, Server as HttpServer } from 'node:http';
import type { Logger } from 'pino';
import proxyAddress from 'proxy-addr';
import { RateLimiterMemory } from 'rate-limiter-flexible';
import type { Time } from '../shared/protocol/ids.ts';
import { isAllowedOrigin, studentAddresses } from './addresses.ts';
import { storePath, type Config } from './config.ts';
import type { Publisher } from './live/ports.ts';
import { ClassRegistry } from './live/registry.ts';
import { addressRoutes } from './routes/addresses.ts';
import { classRoutes } from './routes/classes.ts';
import { groupRoutes } from './routes/groups.ts';
import { fromOwnPages, sessionCookie, sessionTeacher } from './routes/guard.ts';
import { planRoutes } from './routes/plans.ts';
import { teacherRoutes } from './routes/teachers.ts';
import { hashToken, newId, newToken, readClassCode } from './secrets.ts';
import { attachSockets, type LiveServer } from './sockets/attach.ts';
import { openStore } from './store/sqlite/open-store.ts';

/** The parts of a running server, put together. */
export interface Context {
  readonly api: Router;
  attachSockets(httpServer: HttpServer): void;
  health(): object;
  /** The path of the one-time set-up link, while there is no teacher yet. */
  setUpLink(): Promise<string | null>;
  close(): Promise<void>;
}

/** How long the first set-up link lasts; a new start makes a new one. Milliseconds. */
const setUpLife = 24 * 3_600_000;
const purgeInterval = 3_600_000;

/** Picks the implementations: this is the only place that names them. */
export async function createContext(config: Config, log: Logger): Promise<Context> {
  const store = openStore({ path: storePath(config), log });

  const all = () => studentAddresses(config);
  let chosen = await store.settings.read('address');
  const address = () => (chosen !== undefined && all().includes(chosen) ? chosen : (all()[0] ?? ''));
  const choose = async (picked: string) => {
    await store.settings.write('address', picked);
    chosen = picked;
  };
  const addresses = { all, chosen: address, choose };

  let io: LiveServer | undefined;
  const publisher: Publisher = {
    toStands: (id, snapshot) => io?.to(`stands:${id}`).emit('stand:shared', snapshot),
    toSeat: (id, snapshot) => io?.to(`seat:${id}`).emit('stand:own', snapshot),
    toBoards: (id, snapshot) => io?.to(`boards:${id}`).emit('board:view', snapshot),
    toDesks: (id, snapshot) => io?.to(`desks:${id}`).emit('desk:view', snapshot),
  };
  const clock = {
    now: () => Date.now() as Time,
    after(milliseconds: number, run: () => void) {
      const timer = setTimeout(run, milliseconds);
      return () => clearTimeout(timer);
    },
  };
  const registry = new ClassRegistry(store.classes, { publisher, clock, log, address });
  const purge = async () => {
    for (const groupId of await store.groups.purge(Date.now() as Time)) await registry.drop(groupId);
  };
  await purge();
  const purging = setInterval(() => void purge(), purgeInterval);
  await registry.start();

  // A whole school may share one address: only failures count.
  const failedSignIns = new RateLimiterMemory({ points: 30, duration: 60 });
  const failedCodes = new RateLimiterMemory({ points: 60, duration: 60 });
  const commands = new RateLimiterMemory({ points: 20, duration: 2 });
  const isFromOwnPages = (request: IncomingMessage) =>
    isAllowedOrigin(config, { origin: request.headers.origin, host: request.headers.host });
  const secure = config.https || (config.publicUrl?.startsWith('https:') ?? false);

  const settings = express();
  if (config.trustProxy !== null) settings.set('trust proxy', config.trustProxy);
  // Express's own reading of the setting, so that pages and sockets see the same address.
  const trusts = settings.get('trust proxy fn') as (address: string, hop: number) => boolean;

  const api = express.Router();
  api.use(fromOwnPages(isFromOwnPages));
  api.use(teacherRoutes(store, { secure, failures: failedSignIns, address }));
  api.use(groupRoutes(store, registry));
  api.use(planRoutes(store));
  api.use(classRoutes(store, registry, failedCodes));
  api.use(addressRoutes(store, registry, addresses));

  return {
    api,
    attachSockets(httpServer) {
      io = attachSockets(httpServer, {
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
    health: () => ({ store: store.describe() }),
    async setUpLink() {
      if ((await store.teachers.count()) > 0) return null;
      const token = newToken();
      await store.teachers.addInvitation(hashToken(token), (Date.now() + setUpLife) as Time);
      return `/desk/set-up#${token}`;
    },
    async close() {
      clearInterval(purging);
      await io?.close();
      await registry.stop();
      await store.close();
    },
  };
}
