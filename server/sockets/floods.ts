import type { LimitName, Limits } from '../limits.ts';
import type { LiveServer } from './attach.ts';

interface Line {
  readonly transport: { readonly socket?: { readonly terminate: () => void } };
  on(event: 'packet', listener: () => void): void;
  close(discard: boolean): void;
}

/** Cuts a line that sends far more than any page of ours, whatever it sends: even refusing costs the others time. */
export function dropFloods(
  io: LiveServer,
  { packetBurst, eventWindow }: Pick<Limits, 'packetBurst' | 'eventWindow'>,
  refused: (limit: LimitName) => void,
): void {
  io.engine.on('connection', (line: Line) => {
    let count = 0;
    let since = performance.now();
    line.on('packet', () => {
      const now = performance.now();
      if (now - since > eventWindow) {
        since = now;
        count = 0;
      }
      count += 1;
      if (count !== packetBurst + 1) return;
      refused('flood');
      cutOff(line);
    });
  });
}

/** At once: a polite goodbye would wait behind all that is unsent. */
export function cutOff(line: Pick<Line, 'transport' | 'close'>): void {
  if (line.transport.socket) line.transport.socket.terminate();
  else line.close(true);
}
