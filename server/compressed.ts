import type { RequestHandler } from 'express';
import { existsSync, readdirSync } from 'node:fs';
import { extname } from 'node:path';

const endings = { br: '.br', gzip: '.gz' } as const;

/** Leads a request to the compressed twin that the build laid beside a file, where the browser takes one. */
export function compressedTwins(folder: string): RequestHandler {
  const files = new Set(existsSync(folder) ? readdirSync(folder) : []);
  return (request, response, next) => {
    response.vary('accept-encoding');
    const encoding = request.acceptsEncodings('br', 'gzip');
    const twin = encoding === 'br' || encoding === 'gzip' ? request.path + endings[encoding] : '';
    if (files.has(twin.slice(1))) {
      response.type(extname(request.path)).setHeader('content-encoding', encoding as string);
      request.url = twin;
    }
    next();
  };
}
