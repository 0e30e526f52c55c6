import { describe, expect, it } from 'vitest';
import type { Ping } from '../../../client/connection/pings.ts';
import { rowsOf, summaryOf, type Findings, type Outcome } from '../../../client/pages/check/words.ts';

/** Pings over a line that takes `trip` there and back, on a device that is `behind` the server. */
function pings(trip: number, behind = 0): readonly Ping[] {
  return [{ sentAt: 0, serverAt: trip / 2 + behind, backAt: trip }];
}

const good: Findings = {
  server: 12,
  websocket: pings(8),
  polling: pings(20),
  security: 'https',
  microphone: 'possible',
  wakeLock: 'possible',
};

function outcomes(found: Findings): readonly Outcome[] {
  return rowsOf(found).map(({ outcome }) => outcome);
}

function sentence(found: Findings, title: RegExp): string {
  return rowsOf(found).find((row) => title.test(row.title))?.sentence ?? '';
}

describe('what the network check says', () => {
  it('says nothing of what is still being tried', () => {
    expect(outcomes({})).toEqual(Array.from({ length: 7 }, () => 'trying'));
    expect(summaryOf(rowsOf({}))).toBe('');
    const { wakeLock: _, ...rest } = good;
    expect(summaryOf(rowsOf(rest))).toBe('');
  });

  it('is content where everything works', () => {
    expect(new Set(outcomes(good))).toEqual(new Set(['works']));
    expect(summaryOf(rowsOf(good))).toBe('Everything works here.');
    expect(sentence(good, /^Server/)).toBe('The server answers in 12 ms.');
    expect(sentence(good, /WebSocket/)).toContain('there and back in 8 ms');
    expect(sentence(good, /polling/)).toContain('there and back in 20 ms');
  });

  it.each([
    ['the WebSocket is cut', { websocket: null }],
    ['long-polling is cut', { polling: null }],
    ['the server is slow', { server: 900 }],
    ['the address is plain HTTP', { security: 'plain' }],
    ['there is no microphone', { microphone: 'absent' }],
    ['the screen goes dark', { wakeLock: 'unsupported' }],
  ] as const)('holds a class all the same where %s', (_, change) => {
    const rows = rowsOf({ ...good, ...change });
    expect(rows.filter(({ outcome }) => outcome === 'limited')).toHaveLength(1);
    expect(summaryOf(rows)).toBe('A class can be held here. One thing is limited.');
  });

  it('can’t hold one where neither way comes through, and says what to ask for', () => {
    const rows = rowsOf({ ...good, websocket: null, polling: null });
    expect(rows.filter(({ outcome }) => outcome === 'fails')).toHaveLength(2);
    expect(summaryOf(rows)).toContain('can’t be held');
    for (const { outcome, help } of rows) if (outcome === 'fails') expect(help).not.toBe('');
  });

  it('does not blame the network for a server that is silent', () => {
    const rows = rowsOf({ ...good, server: null, websocket: null, polling: null });
    expect(rows.filter(({ outcome }) => outcome === 'fails').map(({ title }) => title)).toEqual(['Server']);
    expect(rows.map(({ help }) => help).join()).not.toContain('WebSocket');
  });

  it.each([
    [0, 'agree'],
    [1900, 'agree'],
    [-1900, 'agree'],
    [5000, '5 seconds behind'],
    [-5000, '5 seconds ahead'],
    [180_000, '3 minutes behind'],
    [-7_200_000, '2 hours ahead'],
  ])('compares clocks that differ by %d ms: %s', (behind, words) => {
    expect(sentence({ ...good, websocket: pings(8, behind) }, /Clock/)).toContain(words);
  });

  it('takes the slower way’s clock where there is no other', () => {
    expect(sentence({ ...good, websocket: null, polling: pings(20, 9000) }, /Clock/)).toContain(
      '9 seconds behind',
    );
  });
});
