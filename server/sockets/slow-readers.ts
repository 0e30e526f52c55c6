import type { LiveServer } from './attach.ts';
import { cutOff } from './floods.ts';

/** The parts of a line of Socket.IO's that tell how much waits in it. */
interface Line {
  readonly writeBuffer: readonly { readonly data?: unknown }[];
  readonly transport: {
    readonly socket?: { readonly bufferedAmount: number; readonly terminate: () => void };
  };
  close(discard: boolean): void;
}

/**
 * Nothing holds a sender back where a phone reads no more: what is published piles up in this process. Such a phone
 * is cut off, and starts afresh with one snapshot when it wakes.
 */
export function dropSlowReaders(
  io: LiveServer,
  { unsentBytes, unsentEvery }: { readonly unsentBytes: number; readonly unsentEvery: number },
  dropped: () => void,
): () => void {
  const timer = setInterval(() => {
    const { clients } = io.engine as unknown as { readonly clients: Readonly<Record<string, Line>> };
    for (const line of Object.values(clients)) {
      if (unsentIn(line) <= unsentBytes) continue;
      dropped();
      cutOff(line);
    }
  }, unsentEvery);
  timer.unref();
  return () => clearInterval(timer);
}

function unsentIn({ transport, writeBuffer }: Line): number {
  let bytes = transport.socket?.bufferedAmount ?? 0;
  for (const { data } of writeBuffer) if (typeof data === 'string') bytes += data.length;
  return bytes;
}
