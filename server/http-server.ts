import { createServer as createHttpServer, type Server } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import { certificateIn } from './certificate.ts';
import type { Config } from './config.ts';
import { usualLimits, type Limits } from './limits.ts';

/** A server that keeps no half-sent request for long. */
export async function createServerFor(
  config: Pick<Config, 'https' | 'dataDir'>,
  { headersWithin, requestWithin, stalledEvery }: Limits = usualLimits,
): Promise<Server> {
  const options = {
    headersTimeout: headersWithin,
    requestTimeout: requestWithin,
    connectionsCheckingInterval: stalledEvery,
  };
  if (!config.https) return createHttpServer(options);
  return createHttpsServer({ ...options, ...(await certificateIn(config.dataDir)) });
}
