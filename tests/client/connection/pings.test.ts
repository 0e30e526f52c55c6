import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockBehind, roundTripOf, type Ping } from '../../../client/connection/pings.ts';

describe('pings', () => {
  it('have the median round trip: one slow ping changes little', () => {
    const trip = (time: number): Ping => ({ sentAt: 100, serverAt: 101, backAt: 100 + time });
    expect(roundTripOf([trip(9), trip(900), trip(5)])).toBe(9);
    expect(roundTripOf([])).toBe(0);
  });

  it('tell how far the device is behind, whatever delays come on top of the same quickest way', () => {
    const delays = fc.tuple(fc.nat(200), fc.nat(200));
    fc.assert(
      fc.property(
        fc.integer({ min: -1e6, max: 1e6 }),
        fc.nat(50),
        fc.array(delays),
        (behind, quickest, more) => {
          const all = [[0, 90] as const, [70, 0] as const, ...more];
          const pings = all.map(([up, down], n) => {
            const sentAt = 1000 * n;
            const serverAt = sentAt + quickest + up + behind;
            return { sentAt, serverAt, backAt: serverAt - behind + quickest + down };
          });
          expect(clockBehind(pings)).toBe(behind);
        },
      ),
    );
  });
});
