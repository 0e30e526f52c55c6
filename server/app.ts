import express, { type ErrorRequestHandler, type Express, type RequestHandler, type Router } from 'express';
import helmet from 'helmet';
import { join } from 'node:path';
import type { Logger } from 'pino';
import { errorReply } from '../shared/protocol/errors.ts';
import { compressedTwins } from './compressed.ts';
import type { Config } from './config.ts';
import type { Metrics } from './metrics.ts';
import { mayReadMetrics } from './metrics-access.ts';

export interface AppParts {
  readonly config: Config;
  readonly api: Router;
  readonly health: () => Promise<object>;
  readonly metrics: Pick<Metrics, 'text' | 'contentType'>;
  readonly log: Logger;
}

/** Pages, resources and health, over HTTP. */
export function createApp({ config, api, health, metrics, log }: AppParts): Express {
  const app = express();
  app.disable('x-powered-by');
  if (config.trustProxy !== null) app.set('trust proxy', config.trustProxy);
  // Before what only a page has to say of itself: on each of its files that would be half a kilobyte.
  const assets = join(config.clientDir, 'assets');
  app.use('/assets', helmet.noSniff(), compressedTwins(assets));
  app.use('/assets', express.static(assets, { immutable: true, maxAge: '1y', index: false }));
  app.use(securityHeaders(config), permissionsPolicy);
  app.get('/healthz', neverStored, async (_request, response) => {
    response.json({ status: 'ok', version: config.version, build: config.build, ...(await health()) });
  });
  app.get('/metrics', neverStored, async (request, response) => {
    if (mayReadMetrics(request, config.metricsToken))
      response.type(metrics.contentType).send(await metrics.text());
    else response.status(403).json({ error: errorReply('not-allowed', metricsRefused) });
  });
  // A whole plan is sent at once.
  app.use(['/api/plans', '/api/groups/:id/plans'], express.json({ limit: '600kb' }));
  // And a whole register.
  app.use('/api/groups/:id/students', express.json({ limit: '128kb' }));
  app.use('/api', neverStored, express.json({ limit: '16kb' }), api);
  app.use('/api', (_request, response) => {
    response.status(404).json({ error: errorReply('not-found') });
  });
  app.use(
    express.static(config.clientDir, {
      index: false,
      setHeaders: (response) => response.setHeader('cache-control', 'no-cache'),
    }),
  );
  app.get(['/', '/join{/:code}'], page(config, 'index.html'));
  app.get(['/desk', '/desk/*rest'], page(config, 'desk.html'));
  app.get(['/board', '/board/*rest'], page(config, 'board.html'));
  app.get('/check', page(config, 'check.html'));
  app.get('/explore', page(config, 'explore.html'));
  app.get('/sound', page(config, 'sound.html'));
  app.get('/charts/:classId', page(config, 'charts.html'));
  app.use((_request, response) => {
    response.status(404).send(notFoundPage);
  });
  app.use(lastResort(log));
  return app;
}

const metricsRefused = 'Metrics are read on the server itself, or with METRICS_TOKEN.';

const notFoundPage = `<!doctype html>
<html lang="en">
  <meta charset="utf-8">
  <meta name="viewport" content="width=device-width">
  <meta name="color-scheme" content="light dark">
  <title>Rootcall</title>
  <p>There is no such page here.</p>
  <p><a href="/">To the start of Rootcall</a></p>
</html>
`;

/** What is said here is somebody's own, or of this moment only. */
const neverStored: RequestHandler = (_request, response, next) => {
  response.setHeader('cache-control', 'no-store');
  next();
};

/** What a page may ask a device for: to listen, never to look. */
const permissionsPolicy: RequestHandler = (_request, response, next) => {
  response.setHeader(
    'permissions-policy',
    'microphone=(self), midi=(self), camera=(), geolocation=(), usb=()',
  );
  next();
};

/**
 * Helmet's defaults would turn every plain-HTTP address into a blank page on a phone (`upgrade-insecure-requests`)
 * or lock it out for months (HSTS): both are only for a server that is reached by HTTPS.
 */
function securityHeaders(config: Config): RequestHandler {
  const isPublic = config.publicUrl?.startsWith('https:') ?? false;
  const secure = config.https || isPublic;
  return helmet({
    // For this host alone: its neighbours are not ours to decide about.
    // Not for a home-made certificate: going back to plain HTTP must stay possible.
    strictTransportSecurity: isPublic ? { includeSubDomains: false } : false,
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
  return (error: { readonly status?: number }, request, response, _next) => {
    if (response.headersSent) return void response.end();
    const status = error.status ?? 500;
    if (status >= 400 && status < 500) {
      const code = status === 413 ? 'too-long' : status === 404 ? 'not-found' : 'malformed';
      return void response.status(status).json({ error: errorReply(code) });
    }
    // Not the path itself: it may hold a class's code.
    log.error({ error, method: request.method, room: request.baseUrl }, 'request failed');
    response.status(500).json({ error: errorReply('server-failed') });
  };
}
