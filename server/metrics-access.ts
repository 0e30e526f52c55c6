import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

const loopback = /^(?:127\.\d+\.\d+\.\d+|::1|::ffff:127\.\d+\.\d+\.\d+)$/;
/** What proxies leave behind: then "this machine" is only where the proxy runs. */
const traces = ['x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'forwarded', 'via'];

/** Whether the metrics may be read: by a program on this machine, or with the token. */
export function mayReadMetrics(
  { socket, headers }: Pick<IncomingMessage, 'socket' | 'headers'>,
  token: string | null,
): boolean {
  if (token !== null && headers.authorization !== undefined)
    return isSame(headers.authorization, `Bearer ${token}`);
  return loopback.test(socket.remoteAddress ?? '') && traces.every((name) => headers[name] === undefined);
}

function isSame(given: string, wanted: string): boolean {
  return timingSafeEqual(digest(given), digest(wanted));
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
