import { pino, type DestinationStream, type Logger } from 'pino';

/** Keys under which somebody's own might stand: their values never reach the log. */
const personal = ['name', 'names', 'alias', 'token', 'tokenHash', 'passphrase', 'cookie', 'headers', 'body'];

/**
 * The log is for whoever runs the server, and may be sent to others for help: what happened and where in the
 * program, never to whom.
 */
export function createLog(level: string, destination?: DestinationStream): Logger {
  const options = {
    level,
    serializers: { error: plainError },
    redact: { paths: personal.flatMap((key) => [key, `*.${key}`, `*.*.${key}`]), remove: true },
  };
  return destination ? pino(options, destination) : pino(options);
}

/** Errors carry what they were made from (a body that could not be read, a statement with its values). */
function plainError(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error };
  const { name: type, message, stack } = error;
  const code = 'code' in error ? error.code : undefined;
  return { type, message, stack, ...(typeof code === 'string' ? { code } : {}) };
}
