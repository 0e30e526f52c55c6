import { longestMessage } from '../shared/protocol/limits.ts';

/**
 * What one person's devices may take, so that the others notice nothing. By seat, socket or class, never by address: a
 * whole school comes from one.
 */
export interface Limits {
  readonly messageBytes: number;
  readonly connectWithin: number;
  readonly pingEvery: number;
  readonly pongWithin: number;
  readonly handshakesPerSecond: number;
  readonly lag: number;
  readonly socketsPerSeat: number;
  readonly boardsPerClass: number;
  readonly eventBurst: number;
  readonly eventWindow: number;
  readonly packetBurst: number;
  readonly unsentBytes: number;
  readonly unsentEvery: number;
  readonly commandsPerClass: number;
  readonly headersWithin: number;
  readonly requestWithin: number;
  readonly stalledEvery: number;
}

/** Times in milliseconds unless said otherwise. */
export const usualLimits: Limits = {
  messageBytes: longestMessage,
  /** A line that opened and then says nothing; a phone on a bad network needs a few seconds. */
  connectWithin: 10_000,
  /** Below the 60 s after which a usual proxy cuts a silent line; both together are how long a dead one is kept. */
  pingEvery: 15_000,
  pongWithin: 20_000,
  /** A class of 1,000 that comes back after a break needs this many in its first second. */
  handshakesPerSecond: 700,
  /** Later than this and a newcomer would only slow down those who are in; they try again within 3 s. */
  lag: 200,
  /** A phone, a second tab, and the one that the browser has not given up yet. */
  socketsPerSeat: 3,
  /** A projector, and the same picture on every table's own screen. Whoever has the code can open one. */
  boardsPerClass: 20,
  /** 10 a second on average over the window: faster than anybody taps, slower than a script. */
  eventBurst: 20,
  eventWindow: 2000,
  /** Of packets of any kind in the same window: ten times as many as even a script may send commands. */
  packetBurst: 200,
  /** Some hundred snapshots: whoever is that far behind starts afresh sooner than they catch up. */
  unsentBytes: 262_144,
  unsentEvery: 1000,
  /** Two for each of 1,000 students; more wait only where the disk stands still. */
  commandsPerClass: 2000,
  /** For the head of an HTTP request, for the whole of it, and how often it is looked for those that take longer. */
  headersWithin: 10_000,
  requestWithin: 30_000,
  stalledEvery: 5000,
};

/** The limits that can turn somebody away, as a monitor names them. */
export const limitNames = [
  'origin',
  'handshakes',
  'lag',
  'stopping',
  'sockets',
  'boards',
  'events',
  'flood',
  'unsent',
  'commands',
] as const;
export type LimitName = (typeof limitNames)[number];
