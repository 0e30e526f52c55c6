import { io, type Socket } from 'socket.io-client';
import { networkCheck, type NetworkCheckEvents } from '../../shared/protocol/network-check.ts';
import type { Ping } from './pings.ts';

/** A line that takes longer to open is of no use in a class. Milliseconds. */
const openWithin = 6000;
const answerWithin = 3000;
const pingsEach = 10;

/** Opens a line of one kind only and asks the time over it; null where it does not come through. */
export async function tryLine(transport: 'websocket' | 'polling'): Promise<readonly Ping[] | null> {
  const socket: Socket<Record<string, never>, NetworkCheckEvents> = io(networkCheck, {
    transports: [transport],
    upgrade: false,
    forceNew: true,
    reconnection: false,
    timeout: openWithin,
  });
  try {
    await opened(socket);
    const pings: Ping[] = [];
    while (pings.length < pingsEach) {
      const sentAt = Date.now();
      const serverAt = await socket.timeout(answerWithin).emitWithAck('clock');
      pings.push({ sentAt, serverAt, backAt: Date.now() });
    }
    return pings;
  } catch {
    return null;
  } finally {
    socket.disconnect();
  }
}

function opened(socket: Socket<Record<string, never>, NetworkCheckEvents>): Promise<void> {
  return new Promise((resolve, reject) => {
    socket.on('connect', resolve);
    socket.on('connect_error', reject);
    // A network may let the line open and swallow what it carries.
    setTimeout(() => reject(new Error('silent')), openWithin);
  });
}

/** How long the server takes over plain HTTP, in milliseconds; null where it does not answer. */
export async function tryServer(): Promise<number | null> {
  try {
    // The first question also opens the connection.
    await askHealth();
    const startedAt = performance.now();
    await askHealth();
    return performance.now() - startedAt;
  } catch {
    return null;
  }
}

async function askHealth(): Promise<void> {
  const response = await fetch('/healthz', { cache: 'no-store', signal: AbortSignal.timeout(openWithin) });
  // A network that wants a sign-in first answers everything with a page of its own.
  const { status } = (await response.json()) as { readonly status?: string };
  if (status !== 'ok') throw new Error('another server');
}
