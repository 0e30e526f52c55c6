import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { nextRandom, shuffled } from '../../../shared/lib/random.ts';
import {
  fretDistance,
  instrumentById,
  place,
  stringNumbers,
  type Instrument,
} from '../../../shared/theory/fretboard.ts';
import {
  leastMovement,
  liftMm,
  stringSpacingMm,
  travelBetween,
  type Fingered,
} from '../../../shared/theory/least-movement.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';

const guitar = known(instrumentById('guitar'), 'guitar');

/** Frets and fingers as the trade writes them, low string first. */
function fingered(frets: string, fingers: string, cost = 0): Fingered {
  const notes = [...frets].flatMap((fret, index) =>
    fret === 'x'
      ? []
      : [{ place: place(frets.length - index, Number(fret)), finger: Number(fingers[index]) }],
  );
  return { fingers: notes, cost };
}

/** A row of the form table with its lowest fret on `low`: real fingerings. */
function formOn(index: number, low: number, cost = 0): Fingered {
  const row = known(formTable[index % formTable.length], 'form');
  const notes = row.frets.flatMap((fret, at) =>
    fret === null
      ? []
      : [{ place: place(row.frets.length - at, fret + low - 1), finger: row.fingers[at] ?? 0 }],
  );
  return { fingers: notes, cost };
}

type Travel = (from: Fingered, to: Fingered) => number;
interface Total {
  readonly travel: number;
  readonly cost: number;
  readonly frets: number;
}

/** Thousandths, so that sums in another order are equal. */
const whole = (number: number) => Math.round(1000 * number);
function totalOf(path: readonly Fingered[], travel: Travel): Total {
  let sum = 0;
  for (const [index, to] of path.entries()) {
    const from = path[index - 1];
    if (from) sum += whole(travel(from, to));
  }
  return {
    travel: sum,
    cost: path.reduce((total, one) => total + whole(one.cost), 0),
    frets: path.reduce(
      (total, one) => total + one.fingers.reduce((frets, { place: spot }) => frets + spot.fret, 0),
      0,
    ),
  };
}

/** Every way through the row, each counted whole. */
function leastOfAll(columns: readonly (readonly Fingered[])[], travel: Travel): Total {
  const paths = columns.reduce<readonly (readonly Fingered[])[]>(
    (before, column) => before.flatMap((path) => column.map((one) => [...path, one])),
    [[]],
  );
  const totals = paths.map((path) => totalOf(path, travel));
  return known(
    totals.sort((a, b) => a.travel - b.travel || a.cost - b.cost || a.frets - b.frets)[0],
    'a way',
  );
}

function chosenOf(columns: readonly (readonly Fingered[])[], travel: Travel): readonly Fingered[] {
  const movement = known(leastMovement(columns, travel), 'movement');
  const path = columns.map((column, index) => known(column[movement.chosen[index] ?? -1], 'chosen'));
  const total = totalOf(path, travel);
  expect([whole(movement.travel), whole(movement.cost)]).toEqual([total.travel, total.cost]);
  return path;
}

const onGuitar: Travel = (from, to) => travelBetween(guitar, from, to);
const costs = fc.integer({ min: 0, max: 6 }).map((halves) => halves / 2);
const forms = fc
  .tuple(fc.nat({ max: formTable.length - 1 }), fc.integer({ min: 1, max: 14 }), costs)
  .map(([index, low, cost]) => formOn(index, low, cost));
const anything = fc
  .tuple(
    fc.uniqueArray(
      fc.record({
        string: fc.integer({ min: 1, max: 6 }),
        fret: fc.nat({ max: guitar.fretCount }),
        finger: fc.nat({ max: 4 }),
      }),
      { maxLength: 6, selector: (one) => one.string },
    ),
    costs,
  )
  .map(([notes, cost]): Fingered => ({
    fingers: notes.map(({ string, fret, finger }) => ({ place: place(string, fret), finger })),
    cost,
  }));
const rowOf = (candidates: fc.Arbitrary<Fingered>) =>
  fc.array(fc.array(candidates, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 5 });

describe('PROGRESSION-3: the least movement is that of the best of all ways', () => {
  test.each([
    ['movable forms', forms],
    ['any fingering', anything],
  ] as const)('%s, up to 5 chords with up to 5 candidates', (_name, candidates) => {
    fc.assert(
      fc.property(rowOf(candidates), (columns) => {
        expect(totalOf(chosenOf(columns, onGuitar), onGuitar)).toEqual(leastOfAll(columns, onGuitar));
      }),
      { numRuns: 150 },
    );
  });

  test('any travel at all, with many equal ways, and also one that differs there and back', () => {
    fc.assert(
      fc.property(rowOf(forms), fc.nat(), fc.integer({ min: 1, max: 5 }), (columns, seed, kinds) => {
        const drawn = new Map<Fingered, Map<Fingered, number>>();
        let state = seed;
        const travel: Travel = (from, to) => {
          const own = drawn.get(from) ?? new Map<Fingered, number>();
          drawn.set(from, own);
          const known = own.get(to);
          if (known !== undefined) return known;
          const [number, next] = nextRandom(state);
          state = next;
          own.set(to, Math.floor(number * kinds));
          return own.get(to) ?? 0;
        };
        const found = totalOf(chosenOf(columns, travel), travel);
        expect(found).toEqual(leastOfAll(columns, travel));
      }),
      { numRuns: 150 },
    );
  });

  test('the nearest at each step is not always the best', () => {
    // One string, one finger: 5 is nearer to 7 than 10 is, but only by way of 10 is the end near.
    const columns = [[7], [5, 10], [14]].map((frets) =>
      frets.map((fret) => ({ fingers: [{ place: place(2, fret), finger: 1 }], cost: 0 })),
    );
    expect(leastMovement(columns, onGuitar)?.chosen).toEqual([0, 1, 0]);
  });
});

describe('properties', () => {
  test('the same row backwards comes to the same travel and cost', () => {
    fc.assert(
      fc.property(rowOf(anything), (columns) => {
        const there = leastMovement(columns, onGuitar);
        const back = leastMovement([...columns].reverse(), onGuitar);
        expect([back?.travel, back?.cost]).toEqual([there?.travel, there?.cost]);
      }),
    );
  });

  test('the order of the candidates makes no difference to what is chosen', () => {
    fc.assert(
      fc.property(rowOf(anything), fc.nat(), (columns, seed) => {
        const mixed = columns.map((column, index) => shuffled(column, seed + index));
        const written = (path: readonly Fingered[]) =>
          path.map(({ fingers, cost }) => [
            fingers
              .map(
                ({ place: spot, finger }) => `${String(spot.string)}.${String(spot.fret)}.${String(finger)}`,
              )
              .sort(),
            cost,
          ]);
        expect(written(chosenOf(mixed, onGuitar))).toEqual(written(chosenOf(columns, onGuitar)));
      }),
    );
  });

  test('a chord more never shortens the way, and a candidate more never lengthens it', () => {
    fc.assert(
      fc.property(rowOf(anything), anything, (columns, extra) => {
        const travel = known(leastMovement(columns, onGuitar), 'row').travel;
        expect(known(leastMovement([...columns, [extra]], onGuitar), 'longer').travel).toBeGreaterThanOrEqual(
          travel,
        );
        const wider = columns.map((column) => [...column, extra]);
        expect(known(leastMovement(wider, onGuitar), 'wider').travel).toBeLessThanOrEqual(travel);
      }),
    );
  });

  test('a chord without a candidate has no way; no chords need none', () => {
    const one = fingered('x32010', '032010');
    expect(leastMovement([[one], [], [one]], onGuitar)).toBeUndefined();
    expect(leastMovement([], onGuitar)).toEqual({ chosen: [], travel: 0, cost: 0 });
    expect(leastMovement([[one]], onGuitar)).toEqual({ chosen: [0], travel: 0, cost: 0 });
  });

  test('among equal ways the lower cost, then the lower frets', () => {
    const on = (fret: number, cost: number) => ({ fingers: [{ place: place(2, fret), finger: 1 }], cost });
    const between = (middle: readonly Fingered[]) =>
      leastMovement([[on(3, 0)], middle, [on(9, 0)]], onGuitar)?.chosen[1];
    // Anywhere between the ends is on the way.
    expect(between([on(5, 2), on(6, 1), on(7, 2)])).toBe(1);
    expect(between([on(7, 1), on(6, 1), on(8, 1)])).toBe(1);
    expect(between([on(10, 0), on(6, 1)])).toBe(1);
  });
});

describe('PROGRESSION-3: travel between two fingerings', () => {
  const mm = (low: number, high: number) =>
    fretDistance(guitar.scaleLengthMm, high) - fretDistance(guitar.scaleLengthMm, low);

  // Fingers as in common practice, no source; millimetres from NECK-2.
  test.each<[string, Fingered, Fingered, number]>([
    [
      'open C to open A minor: fingers 1 and 2 stay, 3 goes two strings across and one fret back',
      fingered('x32010', '032010'),
      fingered('x02210', '002310'),
      mm(2, 3) + 2 * stringSpacingMm,
    ],
    [
      'a barred F form two frets up: four fingers, each its own way',
      fingered('133211', '134211'),
      fingered('355433', '134211'),
      mm(1, 3) + 2 * mm(3, 5) + mm(2, 4),
    ],
    [
      'the barred E form to its minor lifts one finger',
      fingered('355433', '134211'),
      fingered('355333', '134111'),
      liftMm,
    ],
    [
      'a barre counts by its tip: E form to A form on the same fret, string 6 to 5',
      fingered('355433', '134211'),
      fingered('x35553', 'x12341'),
      // 1: 6 to 5; 2: string 3 fret 4 to string 4 fret 5; 3: string 5 to 3; 4: string 4 to 2.
      stringSpacingMm * (1 + 1 + 2 + 2) + mm(4, 5),
    ],
    [
      'no finger in both: the hand stays, two down, two up',
      fingered('xxxx12', 'xxxx12'),
      fingered('xx34xx', 'xx34xx'),
      4 * liftMm,
    ],
    [
      'no finger in both: the hand goes along',
      fingered('xxxx12', 'xxxx12'),
      fingered('xx89xx', 'xx34xx'),
      4 * liftMm + mm(1, 6),
    ],
    ['an open string needs no finger', fingered('xxxx1x', 'xxxx1x'), fingered('000010', '000010'), 0],
    [
      'to open strings alone the finger lifts',
      fingered('xxxx7x', 'xxxx1x'),
      fingered('xxxx00', 'xxxx00'),
      liftMm,
    ],
    [
      'fingers left open: the hand goes along',
      fingered('xxx232', 'xxx000'),
      fingered('xxx565', 'xxx000'),
      mm(2, 5),
    ],
  ])('%s', (_name, a, b, expected) => {
    expect(travelBetween(guitar, a, b)).toBeCloseTo(expected, 2);
    expect(travelBetween(guitar, b, a)).toBe(travelBetween(guitar, a, b));
  });

  const instruments = ['guitar', 'bass-4', 'ukulele', 'guitar-7', 'mandolin'].flatMap((id): Instrument[] => {
    const found = instrumentById(id);
    return found ? [found] : [];
  });

  test('it is never negative, the same there and back, and nothing where nothing moves, on any instrument', () => {
    expect(instruments.length).toBeGreaterThan(3);
    const on = (instrument: Instrument) => {
      const strings = stringNumbers(instrument).length;
      return fc
        .array(
          fc.record({
            string: fc.integer({ min: 1, max: strings }),
            fret: fc.nat({ max: instrument.fretCount }),
            finger: fc.nat({ max: 4 }),
          }),
          { maxLength: strings },
        )
        .map((notes): Fingered => ({
          fingers: notes.map(({ string, fret, finger }) => ({ place: place(string, fret), finger })),
          cost: 0,
        }));
    };
    for (const instrument of instruments)
      fc.assert(
        fc.property(on(instrument), on(instrument), (a, b) => {
          expect(travelBetween(instrument, a, b)).toBeGreaterThanOrEqual(0);
          expect(travelBetween(instrument, a, b)).toBe(travelBetween(instrument, b, a));
          expect(travelBetween(instrument, a, { ...a })).toBe(0);
        }),
      );
  });

  /** The same form, the same strings and fingers: all travel is along the strings. */
  const alongOnly = fc
    .tuple(
      fc.nat({ max: formTable.length - 1 }),
      fc.array(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 4 }), {
        minLength: 2,
        maxLength: 4,
      }),
    )
    .map(
      ([index, rows]) =>
        (up: number) =>
          rows.map((lows) => lows.map((low) => formOn(index, low + up))),
    );

  // Nearer the bridge all ways along the string shrink by the same factor, those across and lifts don't. So a choice
  // between ways along the strings alone is kept, and no other need be.
  test('n frets higher, ways along the strings are 2^(−n/12) as long, and the same are the best', () => {
    fc.assert(
      fc.property(alongOnly, fc.integer({ min: 1, max: 8 }), (rows, up) => {
        const [low, high] = [rows(0), rows(up)];
        const chosen = known(leastMovement(low, onGuitar), 'row');
        const higher = known(leastMovement(high, onGuitar), 'higher row');
        expect(higher.travel).toBeCloseTo(chosen.travel * 2 ** (-up / 12), 1);
        const moved = higher.chosen.map((index, at) => known(low[at]?.[index], 'chosen'));
        expect(totalOf(moved, onGuitar).travel / 1000).toBeCloseTo(chosen.travel, 1);
      }),
    );
  });

  test('where a way across is weighed against one along, twelve frets up may change the choice', () => {
    const on = (string: number, fret: number) => ({
      fingers: [{ place: place(string, fret), finger: 1 }],
      cost: 0,
    });
    const rows = (up: number) => [[on(2, 5 + up)], [on(2, 6 + up), on(5, 5 + up)]];
    // Fret 5 to 6 is 27 mm, 17 to 18 is 14 mm; three strings are 24 mm.
    expect([0, 12].map((up) => leastMovement(rows(up), onGuitar)?.chosen)).toEqual([
      [0, 1],
      [0, 0],
    ]);
  });
});

test('12 chords with 30 candidates each take no more than 50 ms', () => {
  const rowFrom = (seed: number) =>
    Array.from({ length: 12 }, (_, chord) =>
      Array.from({ length: 30 }, (_, index) => formOn(seed + chord + index, 1 + ((7 * index + chord) % 14))),
    );
  const times = [1, 2, 3, 4, 5].map((seed) => {
    const row = rowFrom(seed);
    const start = performance.now();
    leastMovement(row, onGuitar);
    return performance.now() - start;
  });
  expect(Math.min(...times)).toBeLessThan(50);
});
