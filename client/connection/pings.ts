/** One question for the time. Milliseconds: the device's clock at sending and at the answer, the server's between. */
export interface Ping {
  readonly sentAt: number;
  readonly serverAt: number;
  readonly backAt: number;
}

/** The median round trip. */
export function roundTripOf(pings: readonly Ping[]): number {
  const trips = pings.map(({ sentAt, backAt }) => backAt - sentAt).sort((a, b) => a - b);
  return trips[Math.floor(trips.length / 2)] ?? 0;
}

/**
 * How far the device's clock is behind the server's. The quickest way up and the quickest way down are taken apart:
 * they need not be of the same ping.
 */
export function clockBehind(pings: readonly Ping[]): number {
  const up = Math.min(...pings.map(({ sentAt, serverAt }) => serverAt - sentAt));
  const down = Math.min(...pings.map(({ serverAt, backAt }) => backAt - serverAt));
  return (up - down) / 2;
}
