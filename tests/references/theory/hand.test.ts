import { expect, test } from 'vitest';
import { hands, type FingerPair } from '../../../shared/theory/hand.ts';
import { counts } from '../counts.ts';
import reference from './reference.json' with { type: 'json' };

// Source: reference.json, measured on the consistent fingerings of chords-db 0.5.1 at 648 mm.
const measured = reference.playability;
const { easy, normal, pairs } = hands.usual;

test('HAND-1: what is easy and normal for a usual hand is what was measured', () => {
  expect(counts['reference.json, hands'].agreed).toBe([measured].length);
  expect([easy.frets, normal.frets]).toEqual([measured.spanFrets.comfortable, measured.spanFrets.usualMax]);
  expect(easy.mm).toBeCloseTo(measured.spanMm.p90, 0);
  expect(normal.mm - measured.spanMm.p99).toBeGreaterThan(0);
  expect(normal.mm - measured.spanMm.p99).toBeLessThan(1);
});

test.each(Object.keys(pairs) as FingerPair[])('HAND-1: fingers %s, between most and nearly all', (pair) => {
  expect(pairs[pair].frets).toBeGreaterThanOrEqual(measured.pairFretsMax[pair]);
  expect(pairs[pair].frets).toBeLessThanOrEqual(measured.pairFretsMaxLoose[pair]);
});
