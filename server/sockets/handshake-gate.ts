import { STATUS_CODES, type IncomingMessage, type ServerResponse } from 'node:http';
import { errorReply, type ErrorReply } from '../../shared/protocol/errors.ts';
import type { LimitName, Limits } from '../limits.ts';

/** What the gate asks before a newcomer's handshake. */
export interface GateTools {
  readonly limits: Pick<Limits, 'handshakesPerSecond' | 'lag'>;
  readonly lag: () => number;
  readonly stopping: () => boolean;
  readonly now: () => number;
  readonly isAllowedOrigin: (request: IncomingMessage) => boolean;
  readonly refused: (limit: LimitName) => void;
}

/** As Socket.IO keeps it: the response of a long-polling request; a WebSocket's has none. */
type Newcomer = IncomingMessage & { readonly res?: ServerResponse };

/**
 * Who may knock: our own pages, and no more of them at once than the process can take in. Whoever is connected
 * already is not asked again.
 */
export function handshakeGate({ limits, lag, stopping, now, isAllowedOrigin, refused }: GateTools) {
  let free = limits.handshakesPerSecond;
  let filledAt = now();

  function takeTurn(): boolean {
    const time = now();
    free = Math.min(
      limits.handshakesPerSecond,
      free + (Math.max(0, time - filledAt) / 1000) * limits.handshakesPerSecond,
    );
    filledAt = time;
    if (free < 1) return false;
    free -= 1;
    return true;
  }

  return (request: Newcomer, decide: (error: null, allowed: true) => void): void => {
    if (!isAllowedOrigin(request)) {
      refused('origin');
      return turnAway(request, 403, errorReply('not-allowed', 'This request came from another site.'));
    }
    const limit = stopping() ? 'stopping' : lag() > limits.lag ? 'lag' : takeTurn() ? null : 'handshakes';
    if (limit === null) return decide(null, true);
    refused(limit);
    turnAway(request, 503, errorReply(limit === 'stopping' ? 'server-stopping' : 'server-busy'));
  };
}

/** Without a decision the library leaves the request to us: its own refusals say neither 503 nor why. */
function turnAway({ res, socket }: Newcomer, status: 403 | 503, error: ErrorReply): void {
  const body = JSON.stringify({ error });
  const headers = { 'content-type': 'application/json', 'retry-after': '1', 'cache-control': 'no-store' };
  if (res) return void res.writeHead(status, headers).end(body);
  const head = Object.entries({ ...headers, connection: 'close', 'content-length': String(body.length) });
  const lines = [
    `HTTP/1.1 ${String(status)} ${STATUS_CODES[status] ?? ''}`,
    ...head.map(([name, value]) => `${name}: ${value}`),
  ];
  socket.end(`${lines.join('\r\n')}\r\n\r\n${body}`, () => socket.destroy());
}
