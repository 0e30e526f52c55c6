import type { Namespace } from 'socket.io';
import { networkCheck, type NetworkCheckEvents } from '../../shared/protocol/network-check.ts';
import type { LiveServer } from './attach.ts';

/** A check takes a few seconds; a line that stays is none. Milliseconds. */
const longestCheck = 15_000;
/** Ten round trips each way of connecting, and some to spare. */
const mostQuestions = 60;

/** Lets a device try its line. No seat, no class, no name: it is told the time and nothing else. */
export function answerNetworkChecks(io: LiveServer, now: () => number): void {
  const checks = io.of(networkCheck) as unknown as Namespace<NetworkCheckEvents, Record<string, never>>;
  checks.on('connection', (socket) => {
    const timer = setTimeout(() => socket.disconnect(true), longestCheck);
    socket.on('disconnect', () => clearTimeout(timer));
    let asked = 0;
    socket.on('clock', (reply) => {
      asked += 1;
      if (asked > mostQuestions) socket.disconnect(true);
      else if (typeof reply === 'function') reply(now());
    });
  });
}
