import { describe, expect, it } from 'vitest';
import {
  cellOf,
  markRadius,
  placeAt,
  pointOf,
  wireAlong,
  type NeckFrame,
} from '../../../client/fretboard/geometry.ts';
import { inkFrame, type InkRequest } from '../../../client/fretboard/ink-frame.ts';
import { fretsShown } from '../../../client/fretboard/state.ts';
import { windowsIn, woodFrame, type WoodRequest } from '../../../client/fretboard/wood-frame.ts';
import {
  place,
  samePlace,
  standardGuitar,
  type FretRange,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import { phone, smallPhone, turnedPhone } from './requests.ts';

function range(low: number, high: number): FretRange {
  return { low: place(1, low).fret, high: place(1, high).fret };
}

function places(frame: NeckFrame): readonly Place[] {
  return Array.from({ length: frame.strings }, (_, at) => at + 1).flatMap((string) =>
    fretsShown(frame.window).map((fret) => place(string, fret)),
  );
}

const ink: InkRequest = {
  view: 'upright',
  leftHanded: false,
  strings: 6,
  window: range(1, 12),
  openRow: true,
  fingerRow: false,
  named: false,
  aspect: null,
};

/** Every kind of neck: both materials and views, either hand, from the nut and not, four strings and six. */
const frames: readonly (readonly [string, NeckFrame])[] = [false, true].flatMap((leftHanded) =>
  (
    [
      ['upright wood', woodFrame({ ...phone, leftHanded }, range(1, 10))],
      ['upright wood from fret 7', woodFrame({ ...phone, leftHanded }, range(7, 16))],
      ['small wood', woodFrame({ ...smallPhone, leftHanded }, range(1, 10))],
      ['lying wood', woodFrame({ ...turnedPhone, leftHanded }, range(1, 12))],
      ['wood of four strings', woodFrame({ ...phone, strings: 4, leftHanded }, range(1, 9))],
      ['upright ink', inkFrame({ ...ink, leftHanded })],
      ['lying ink from fret 3', inkFrame({ ...ink, view: 'lying', window: range(3, 6), leftHanded })],
      ['ink of seven strings', inkFrame({ ...ink, strings: 7, leftHanded })],
    ] as const
  ).map(([name, frame]) => [`${name}${leftHanded ? ', left-handed' : ''}`, frame] as const),
);

describe('where the wires lie', () => {
  // Equal temperament: fret 12 halves the string, fret 24 leaves a quarter, and the first fret lies at
  // 1/17.817 of the scale, the divisor of the luthiers’ "rule of 18" made exact.
  it('follows d = L(1 − 2^(−n/12)) from the nut', () => {
    const frame: NeckFrame = { ...woodFrame(phone, range(1, 10)), start: 0, scaleLength: 648 };
    expect(wireAlong(frame, 0)).toBe(0);
    expect(wireAlong(frame, 1)).toBeCloseTo(648 / 17.817, 2);
    expect(wireAlong(frame, 5)).toBeCloseTo(162.548, 2);
    expect(wireAlong(frame, 7)).toBeCloseTo(215.512, 2);
    expect(wireAlong(frame, 12)).toBeCloseTo(324, 6);
    expect(wireAlong(frame, 24)).toBeCloseTo(486, 6);
  });

  it.each(frames)('%s: each fret is a semitone narrower than the one before', (_, frame) => {
    for (let fret = Number(frame.window.low); fret < frame.window.high; fret += 1) {
      const one = wireAlong(frame, fret) - wireAlong(frame, fret - 1);
      const next = wireAlong(frame, fret + 1) - wireAlong(frame, fret);
      expect(next / one).toBeCloseTo(2 ** (-1 / 12), 9);
    }
  });

  it.each(frames)('%s: the window begins at the start and ends before the end', (_, frame) => {
    expect(wireAlong(frame, frame.window.low - 1)).toBeCloseTo(frame.start, 6);
    expect(wireAlong(frame, frame.window.high)).toBeLessThan(frame.end);
  });
});

describe('string and fret ↔ x and y', () => {
  it.each(frames)('%s: every place is found again where it is drawn', (_, frame) => {
    for (const one of places(frame)) expect(placeAt(frame, pointOf(frame, one))).toEqual(one);
  });

  it.each(frames)('%s: the corners of a cell, a hair inside, belong to its place', (_, frame) => {
    for (const one of places(frame)) {
      const { x, y, width, height } = cellOf(frame, one);
      const inset = 0.12;
      for (const [across, down] of [
        [inset, inset],
        [1 - inset, inset],
        [inset, 1 - inset],
        [1 - inset, 1 - inset],
      ] as const) {
        expect(placeAt(frame, { x: x + width * across, y: y + height * down })).toEqual(one);
      }
    }
  });

  it('mirrors x and nothing else for the left hand', () => {
    const pairs: readonly (readonly [NeckFrame, NeckFrame])[] = [
      [phone, range(1, 10)] as const,
      [turnedPhone, range(8, 19)] as const,
    ].map(([request, window]) => [
      woodFrame(request, window),
      woodFrame({ ...request, leftHanded: true }, window),
    ]);
    for (const [right, left] of pairs) {
      for (const one of places(right)) {
        const there = pointOf(right, one);
        expect(pointOf(left, one)).toEqual({ x: right.width - there.x, y: there.y });
      }
    }
  });

  it('lays string 1 on the right upright, on top lying; left-handed upright on the left', () => {
    const upright = woodFrame(phone, range(1, 10));
    expect(pointOf(upright, place(1, 3)).x).toBeGreaterThan(pointOf(upright, place(6, 3)).x);
    const lying = woodFrame(turnedPhone, range(1, 12));
    expect(pointOf(lying, place(1, 3)).y).toBeLessThan(pointOf(lying, place(6, 3)).y);
    const left = woodFrame({ ...phone, leftHanded: true }, range(1, 10));
    expect(pointOf(left, place(1, 3)).x).toBeLessThan(pointOf(left, place(6, 3)).x);
  });

  it('finds no place beside the neck or beyond its last wire', () => {
    const frame = woodFrame(phone, range(1, 10));
    expect(placeAt(frame, { x: 4, y: 300 })).toBeNull();
    expect(placeAt(frame, { x: 200, y: -3 })).toBeNull();
    expect(placeAt(frame, { x: 200, y: wireAlong(frame, 10) + 2 })).toBeNull();
  });

  it.each(frames)('%s: a mark stays within its string and its fret', (_, frame) => {
    const radius = markRadius(frame);
    for (const one of places(frame).filter(({ fret }) => fret > 0)) {
      const { width, height } = cellOf(frame, one);
      expect(2 * radius).toBeLessThan(Math.min(width, height));
    }
  });
});

describe('any number of strings', () => {
  const counts = [3, 4, 5, 6, 7, 8, 9, 10];

  it.each(counts)(
    '%i strings: every tap cell maps back to its place, in every window, view and hand',
    (strings) => {
      for (const box of [phone, smallPhone, turnedPhone]) {
        for (const fretCount of [5, 12, 15, 24, 36]) {
          for (const leftHanded of [false, true]) {
            const request: WoodRequest = { ...box, strings, fretCount, leftHanded };
            for (const window of windowsIn(request)) {
              const frame = woodFrame(request, window);
              const astray = places(frame).filter((one) => {
                const { x, y, width, height } = cellOf(frame, one);
                return [0.15, 0.5, 0.85].some((share) => {
                  const found = placeAt(frame, { x: x + width * share, y: y + height * share });
                  return found === null || !samePlace(found, one);
                });
              });
              expect(astray).toEqual([]);
            }
          }
        }
      }
    },
  );

  it.each(counts)(
    '%i strings: their gap is wide enough for a finger, and the neck stays in its box',
    (strings) => {
      for (const box of [phone, smallPhone, turnedPhone]) {
        const frame = woodFrame({ ...box, strings }, range(1, 10));
        expect(frame.gapAtNut).toBeGreaterThanOrEqual(24);
        const outer = places(frame).map((one) => cellOf(frame, one));
        expect(Math.min(...outer.flatMap(({ x, y }) => [x, y]))).toBeGreaterThanOrEqual(-0.01);
        expect(Math.max(...outer.map(({ x, width }) => x + width))).toBeLessThanOrEqual(box.width + 0.01);
        expect(Math.max(...outer.map(({ y, height }) => y + height))).toBeLessThanOrEqual(box.height + 0.01);
      }
    },
  );

  it('keep the shape of a chart: no fret is squatter than two thirds of a gap, nor a short neck blown up', () => {
    const shape = (strings: number) => {
      const frame = inkFrame({ ...ink, strings, window: range(1, 4), aspect: 0.8 });
      return (wireAlong(frame, 4) - frame.start) / 4 / frame.gapAtNut;
    };
    for (const strings of counts) expect(shape(strings)).toBeGreaterThanOrEqual(0.68 - 1e-9);
    expect(shape(3)).toBeGreaterThan(1);
    expect(shape(4)).toBeGreaterThan(1);
  });

  it('leaves a thumb 44 px on a phone of 390 × 844 for as many as seven strings', () => {
    for (const strings of [3, 4, 5, 6, 7])
      expect(woodFrame({ ...phone, strings }, range(1, 10)).gapAtNut).toBeGreaterThanOrEqual(44);
  });
});

describe('windows and targets', () => {
  function smallest(request: WoodRequest, window: FretRange): number {
    const frame = woodFrame(request, window);
    const sides = places(frame).flatMap((one) => {
      const { width, height } = cellOf(frame, one);
      return [width, height];
    });
    return Math.min(...sides);
  }

  it('gives a thumb 44 px everywhere on a phone of 390 × 844, upright and turned', () => {
    for (const request of [phone, turnedPhone]) {
      for (const window of windowsIn(request)) expect(smallest(request, window)).toBeGreaterThanOrEqual(44);
    }
  });

  it('gives 24 px at least on a phone of 320 × 568', () => {
    for (const window of windowsIn(smallPhone))
      expect(smallest(smallPhone, window)).toBeGreaterThanOrEqual(24);
  });

  it('keeps every cell in the box, either hand', () => {
    for (const request of [phone, smallPhone, turnedPhone]) {
      for (const leftHanded of [false, true]) {
        for (const window of windowsIn(request)) {
          const frame = woodFrame({ ...request, leftHanded }, window);
          for (const one of places(frame)) {
            const { x, y, width, height } = cellOf(frame, one);
            expect(Math.min(x, y)).toBeGreaterThanOrEqual(-0.01);
            expect(x + width).toBeLessThanOrEqual(request.width + 0.01);
            expect(y + height).toBeLessThanOrEqual(request.height + 0.01);
          }
        }
      }
    }
  });

  it('starts at the nut, reaches every fret, and shows any five frets in a row together', () => {
    for (const request of [
      phone,
      smallPhone,
      turnedPhone,
      { ...phone, height: 480 },
      { ...phone, height: 250 },
    ]) {
      const windows = windowsIn(request);
      expect(windows[0]?.low).toBe(1);
      expect(windows.at(-1)?.high).toBe(standardGuitar.fretCount);
      const roomy = windows.every(({ low, high }) => high - low >= 4);
      for (let low = 1; roomy && low + 4 <= standardGuitar.fretCount; low += 1) {
        expect(windows.some((window) => window.low <= low && window.high >= low + 4)).toBe(true);
      }
    }
  });

  it('does not depend on anything but the box: the same windows for either hand', () => {
    expect(windowsIn({ ...phone, leftHanded: true })).toEqual(windowsIn(phone));
  });
});
