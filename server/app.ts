import express, { type ErrorRequestHandler, type Express, type RequestHandler, type Router } from 'express';
import helmet from 'helmet';
import { join } from 'node:path';
import type { Logger } from 'pino';
import { errorReply } from '../shared/protocol/errors.ts';
import type { Config } from './config.ts';

export interface AppParts {
  readonly config: Config;
  readonly api: Router;
  readonly health: () => object;
  readonly log: Logger;
}

/** Pages, resources and health, over HTTP. */
export function createApp({ config, api, health, log }: AppParts): Express {
  const app = express();
  app.disable('x-powered-by');
  if (config.trustProxy !== null) app.set('trust proxy', config.trustProxy);
  app.use(securityHeaders(config));
  app.get('/healthz', (_request, response) => {
    response.json({ status: 'ok', version: config.version, build: config.build, ...health() });
  });
  app.use('/api', express.json({ limit: '16kb' }), api);
  app.use('/api', (_request, response) => {
    response.status(404).json({ error: errorReply('not-found') });
  });
  app.use(
    '/assets',
    express.static(join(config.clientDir, 'assets'), { immutable: true, maxAge: '1y', index: false }),
  );
  app.use(
    express.static(config.clientDir, {
      index: false,
      setHeaders: (response) => response.setHeader('cache-control', 'no-cache'),
    }),
  );
  app.get(['/', '/join/:code'], page(config, 'index.html'));
  app.get(['/desk', '/desk/*rest'], page(config, 'desk.html'));
  app.get(['/board', '/board/*rest'], page(config, 'board.html'));
  app.use((_request, response) => {
    response.status(404).type('text').send('There is no such page here. Rootcall starts at /.');
  });
  app.use(lastResort(log));
  return app;
}

/**
 * Helmet's defaults would turn every plain-HTTP address into a blank page on a phone (`upgrade-insecure-requests`)
 * or lock it out for months (HSTS): both are only for a server that is reached by HTTPS.
 */
function securityHeaders(config: Config): RequestHandler {
  const secure = config.https || (config.publicUrl?.startsWith('https:') ?? false);
  return helmet({
    strictTransportSecurity: secure,
    crossOriginOpenerPolicy: secure,
    originAgentCluster: secure,
    referrerPolicy: { policy: 'no-referrer' },
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
  });
}

function page(config: Config, file: string): RequestHandler {
  return (_request, response) =>
    response.sendFile(join(config.clientDir, file), { headers: { 'cache-control': 'no-cache' } });
}

/** Bodies that can't be read, and bugs: one shape, and nothing of the inside. */
function lastResort(log: Logger): ErrorRequestHandler {
  return (error: { readonly status?: number; readonly type?: string }, request, response, _next) => {
    if (response.headersSent) return void response.end();
    if (error.type === 'entity.too.large')
      return void response.status(413).json({ error: errorReply('too-long') });
    if (error.status === 400) return void response.status(400).json({ error: errorReply('malformed') });
    log.error({ error, path: request.path }, 'request failed');
    response.status(500).json({ error: errorReply('server-failed') });
  };
}
