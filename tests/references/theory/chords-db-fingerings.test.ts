import { expect, test } from 'vitest';
import {
  fingeringProblem,
  fingeringsOf,
  type Fingering,
  type GivenFinger,
} from '../../../shared/theory/fingering.ts';
import { standardGuitar } from '../../../shared/theory/fretboard.ts';
import { counts } from '../counts.ts';
import errors from './chords-db-fingering-errors.json' with { type: 'json' };
import { positions } from './chords-db-positions.ts';

// Source: chords-db 0.5.1 (MIT, © 2016 David Rubert), the fingers of the same positions as `chords-db.test.ts`.
const charts = positions.map(({ name, position: { frets, baseFret, fingers }, places }) => ({
  name,
  places,
  given: frets.map((fret, at): GivenFinger => {
    const sounding = fret > 0 ? fret + baseFret - 1 : fret;
    return { place: { string: 6 - at, fret: fret < 0 ? null : sounding }, finger: fingers[at] ?? 0 };
  }),
}));

const wrong: ReadonlyMap<string, string> = new Map(Object.entries(errors.fingerings));

/** Whether a chart says what fingers can do, apart from how far they reach; written apart from the theory. */
function isConsistent(given: readonly GivenFinger[]): boolean {
  const strings = given.map(({ place: { fret }, finger }) => ({
    fret: fret ?? Infinity,
    isSilent: fret === null,
    finger,
  }));
  return strings.every(({ fret, isSilent, finger }, at) => {
    const isHeld = !isSilent && fret > 0;
    if (isHeld !== finger > 0) return false;
    if (!isHeld) return true;
    return strings.every((other, otherAt) => {
      if (other.finger === 0) return true;
      if (other.finger !== finger) return finger < other.finger ? fret <= other.fret : fret >= other.fret;
      const under = strings.slice(Math.min(at, otherAt), Math.max(at, otherAt));
      return other.fret === fret && under.every((one) => one.fret >= fret);
    });
  });
}

/** Where the published fingering lies among those found; −1 where it is not among them. */
function rankOf(found: readonly Fingering[], given: readonly GivenFinger[]): number {
  const wanted = given.filter(({ place }) => place.fret !== null).map(({ finger }) => finger);
  return found.findIndex(({ fingers }) => fingers.every(({ finger }, at) => finger === wanted[at]));
}

const judged = charts.map((chart) => {
  const found = fingeringsOf(standardGuitar, chart.places);
  return { ...chart, found, problem: fingeringProblem(standardGuitar, chart.given) };
});

test('2,040 published fingerings are consistent, 29 are not, each listed with what is wrong', () => {
  const inconsistent = charts.filter(({ given }) => !isConsistent(given)).map(({ name }) => name);
  expect(charts).toHaveLength(counts['chords-db, fingerings'].cases);
  expect(inconsistent).toHaveLength(counts['chords-db, fingerings'].disagreed);
  expect([...wrong.keys()].sort()).toEqual([...inconsistent].sort());
});

test('HAND-3: what is wrong with a fingering is said, and nothing of a sound one', () => {
  const said = judged.flatMap(({ name, problem }) => (problem === undefined ? [] : [[name, problem]]));
  expect(Object.fromEntries(said)).toEqual(errors.fingerings);
});

test('HAND-1: every published position but those listed can be held, and every sound fingering is found', () => {
  const unplayable = judged.filter(({ found }) => !found.ok).map(({ name }) => name);
  expect(unplayable).toEqual(Object.keys(errors.unplayable));
  const astray = judged
    .filter(({ name, found, given }) => !wrong.has(name) && found.ok && rankOf(found.value, given) < 0)
    .map(({ name }) => name);
  expect(astray).toEqual([]);
});

test('HAND-2: the published fingering is the best of ours for 87 of 100, among the best three for 97', () => {
  const ranks = judged.flatMap(({ name, found, given }) =>
    wrong.has(name) || !found.ok ? [] : [rankOf(found.value, given)],
  );
  const share = (below: number) => ranks.filter((rank) => rank < below).length / ranks.length;
  const text = (below: number) => `${(share(below) * 100).toFixed(1)} %`;
  console.log(`of ${String(ranks.length)} published fingerings: first ${text(1)}, first three ${text(3)}`);
  expect(share(1)).toBeGreaterThan(0.87);
  expect(share(3)).toBeGreaterThan(0.97);
});
