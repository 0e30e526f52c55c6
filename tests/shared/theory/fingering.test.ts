import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { fingeringProblem, fingeringsOf, type Fingering } from '../../../shared/theory/fingering.ts';
import {
  instrumentById,
  place,
  standardGuitar,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import { hands } from '../../../shared/theory/hand.ts';
import { makeInstrument } from '../../../shared/theory/instrument.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { specs } from './any-instrument.ts';

const bass = known(instrumentById('bass-4'), 'bass');
const halfSize = known(instrumentById('guitar+scale=530'), 'half-size guitar');

/** Frets from the largest string number on, as a chart: `x32010`, or apart by spaces. */
function chart(text: string): readonly Place[] {
  const frets = text.includes(' ') ? text.split(' ') : [...text];
  return frets.flatMap((fret, at) => (fret === 'x' ? [] : [place(frets.length - at, Number(fret))]));
}

function found(instrument: Instrument, text: string, hand = hands.usual): readonly Fingering[] {
  const result = fingeringsOf(instrument, chart(text), hand);
  return result.ok ? result.value : [];
}

function refusal(instrument: Instrument, text: string, hand = hands.usual): string | undefined {
  const result = fingeringsOf(instrument, chart(text), hand);
  return result.ok ? undefined : result.error;
}

const fingersIn = ({ fingers }: Fingering) => fingers.map(({ finger }) => finger).join('');

/** What is wrong with fingers that are given for a chart. */
function problem(text: string, fingers: string, instrument = standardGuitar, hand = hands.usual) {
  const frets = [...text];
  const given = frets.map((fret, at) => ({
    place: { string: frets.length - at, fret: fret === 'x' ? null : Number(fret) },
    finger: Number(fingers[at]),
  }));
  return fingeringProblem(instrument, given, hand);
}

describe('HAND-1: how far frets lie apart decides', () => {
  // Source: equal temperament, L(2^(−a/12) − 2^(−b/12)), worked out by hand for each length.
  test.each([
    ['guitar, 648 mm', 'x3xxx9', 'Frets 3 and 9 are 160 mm apart; a hand reaches 130 mm.', standardGuitar],
    ['guitar, 648 mm', 'x1xxx6', 'Frets 1 and 6 are 153 mm apart; a hand reaches 130 mm.', standardGuitar],
    ['bass, 864 mm', '1xx5', 'Frets 1 and 5 are 168 mm apart; a hand reaches 130 mm.', bass],
    ['half-size, 530 mm', 'x1xxx7', 'Frets 1 and 7 are 147 mm apart; a hand reaches 130 mm.', halfSize],
  ])('%s: %s', (_name, text, sentence, instrument) => {
    expect(refusal(instrument, text)).toBe(sentence);
  });

  test.each([
    // 2 frets are 67 mm from fret 1, 3 frets 97 mm, 4 frets 126 mm.
    [648, 'xxx3x1', 'easy'],
    [648, 'xxx4x1', 'normal'],
    [648, 'xxx5x1', 'stretch'],
    // 89 and 130 mm: the millimetres bind on a long scale.
    [864, 'xxx3x1', 'normal'],
    [864, 'xxx4x1', 'stretch'],
    // 55, 80 and 103 mm: the frets on a short one.
    [530, 'xxx3x1', 'easy'],
    [530, 'xxx4x1', 'normal'],
    [530, 'xxx5x1', 'stretch'],
  ] as const)('at %i mm %s is %s', (scale, text, ease) => {
    const id = scale === 648 ? 'guitar' : `guitar+scale=${String(scale)}`;
    expect(found(known(instrumentById(id), id), text)[0]?.ease).toBe(ease);
  });

  test('a small hand reaches less, a large one more, and each needs its own stretch', () => {
    expect(refusal(standardGuitar, 'x5xxx1', hands.small)).toBe(
      'Frets 1 and 5 are 126 mm apart; a small hand reaches 111 mm.',
    );
    expect(refusal(standardGuitar, 'x1xxx6', hands.large)).toBe(
      'Frets 1 and 6 are 153 mm apart; a large hand reaches 150 mm.',
    );
    expect(refusal(halfSize, 'x5xxx1', hands.small)).toBeUndefined();
    const costs = (['large', 'usual', 'small'] as const).map(
      (size) => known(found(standardGuitar, 'x32010', hands[size])[0], size).cost,
    );
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(new Set(costs).size).toBe(3);
  });

  test('two fingers have a limit of their own', () => {
    // Four fingers are needed, so finger 3 has to be at fret 5 with the index at fret 1.
    expect(refusal(standardGuitar, '15054x')).toBe(
      'Fingers 1 and 3 are 126 mm apart; a hand reaches 98 mm with them.',
    );
    expect(problem('1xxxx4', '100002')).toBe(
      'Fingers 1 and 2 are 97 mm apart; a hand reaches 67 mm with them.',
    );
    expect(problem('1xxxx4', '100003')).toBeUndefined();
  });
});

describe('HAND-2: which finger goes where', () => {
  // Source: common practice.
  test.each([
    ['x32010', '32010'],
    ['133211', '134211'],
    ['x24432', '13421'],
    ['xx0232', '0132'],
    ['022100', '023100'],
    ['x13331', '12341'],
  ])('%s by %s, among the first three', (text, fingers) => {
    expect(found(standardGuitar, text).slice(0, 3).map(fingersIn)).toContain(fingers);
  });

  test('a barre may be any finger’s, and holds what lies on its fret', () => {
    const [first] = found(standardGuitar, '133211');
    expect(first?.barre).toEqual([{ finger: 1, fret: 1, strings: [6, 1] }]);
    const barres = found(standardGuitar, 'xx2xx2').flatMap(({ barre }) => barre.map(({ finger }) => finger));
    expect([...barres].sort()).toEqual([1, 2, 3, 4]);
  });

  test('open strings need nobody', () => {
    expect(found(standardGuitar, '000000')).toEqual([
      {
        fingers: chart('000000').map((spot) => ({ place: spot, finger: 0 })),
        barre: [],
        cost: 0,
        ease: 'easy',
      },
    ]);
    expect(found(standardGuitar, 'xxxxxx')).toHaveLength(1);
  });

  test('on one fret only the index may lie on a higher string than another finger', () => {
    const ways = found(standardGuitar, 'x02220').map(fingersIn);
    expect(ways).toEqual(expect.arrayContaining(['01230', '02130', '02310', '01110']));
    expect(ways).not.toContain('03210');
    expect(new Set(ways).size).toBe(ways.length);
  });
});

describe('HAND-3: why no hand can', () => {
  test.each([
    ['x54321', 'That takes five fingers.'],
    ['570765', 'String 4 is open under the barre.'],
    ['8 10 8 7 8 10', 'String 3, fret 7, lies under the barre at fret 8.'],
    ['xxxxx 20', 'There is no fret 20 on string 1.'],
  ])('%s', (text, sentence) => {
    expect(refusal(standardGuitar, text.replace('xxxxx', 'x x x x x'))).toBe(sentence);
  });

  test('one note a string', () => {
    expect(fingeringsOf(standardGuitar, [place(2, 1), place(2, 3)])).toEqual({
      ok: false,
      error: 'String 2 has two places.',
    });
  });

  test.each([
    ['x32010', '032010', undefined],
    ['x32010', '032000', 'String 2, fret 1, has no finger.'],
    ['x32010', '032110', 'String 3 is open and needs no finger.'],
    ['x32010', '132010', 'String 6 is muted and needs no finger.'],
    ['x32010', '052010', 'String 5 has finger 5; a hand has fingers 1 to 4.'],
    ['x32010', '023010', 'Fingers 2 and 3 cross: finger 2 is at fret 3, finger 3 at fret 2.'],
    ['x02220', '003210', 'Fingers 2 and 3 cross at fret 2.'],
    ['xxx321', '000321', undefined],
    ['xxx323', '000121', 'String 2, fret 2, lies under the barre at fret 3.'],
    ['113211', '113211', undefined],
    ['133211', '133111', 'Finger 1 can’t be at frets 1 and 2 at once.'],
    ['131011', '131011', 'String 3 is open under the barre.'],
    ['x42x4x', '031030', 'String 4, fret 2, lies under the barre at fret 4.'],
    ['1xxxx9', '100004', 'Frets 1 and 9 are 226 mm apart; a hand reaches 130 mm.'],
  ])('%s by %s: %s', (text, fingers, sentence) => {
    expect(problem(text, fingers)).toBe(sentence);
  });
});

test('HAND-2: every movable form can be held by its own fingers, from fret 1 on', () => {
  for (const { form, quality, frets, fingers } of formTable) {
    const given = frets.map((fret, at) => ({
      place: { string: frets.length - at, fret },
      finger: fingers[at] ?? 0,
    }));
    expect([form, quality, fingeringProblem(standardGuitar, given)]).toEqual([form, quality, undefined]);
  }
});

/** Places on any instrument, at most one a string, close together or not. */
const anyPlaces = (lowest: number) =>
  specs.chain((spec) => {
    const instrument = makeInstrument('custom', spec);
    const top = instrument.fretCount;
    return fc
      .tuple(
        fc.integer({ min: lowest, max: top }),
        fc.array(fc.option(fc.integer({ min: lowest === 0 ? -1 : 0, max: 4 })), {
          minLength: instrument.openStrings.length,
          maxLength: instrument.openStrings.length,
        }),
      )
      .map(([low, steps]) => ({
        instrument,
        places: steps.flatMap((step, index) =>
          step === null ? [] : [place(index + 1, step < 0 ? 0 : Math.min(low + step, top))],
        ),
      }));
  });

describe('whatever the instrument', () => {
  test('every fingering that is given can be held as it is given, best first', () => {
    let held = 0;
    fc.assert(
      fc.property(anyPlaces(0), ({ instrument, places }) => {
        const result = fingeringsOf(instrument, places);
        if (!result.ok) {
          expect(result.error).toMatch(/^[A-Z].*\.$/);
          return;
        }
        held += 1;
        expect(result.value.length).toBeGreaterThan(0);
        for (const [index, { fingers, cost }] of result.value.entries()) {
          expect(fingeringProblem(instrument, fingers)).toBeUndefined();
          expect(fingers).toHaveLength(places.length);
          // Sums of the same millimetres in another order are equal.
          expect(cost).toBeGreaterThan((result.value[index - 1]?.cost ?? 0) - 1e-6);
        }
      }),
    );
    expect(held).toBeGreaterThan(20);
  });

  test('the order of places means nothing', () => {
    fc.assert(
      fc.property(anyPlaces(0), fc.infiniteStream(fc.nat()), ({ instrument, places }, keys) => {
        const mixed = places
          .map((spot) => ({ spot, key: Number(keys.next().value) }))
          .sort((a, b) => a.key - b.key)
          .map(({ spot }) => spot);
        expect(fingeringsOf(instrument, mixed)).toEqual(fingeringsOf(instrument, places));
      }),
    );
  });

  test('towards the bridge nothing without open strings becomes harder', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyPlaces(1), fc.integer({ min: 1, max: 7 }), ({ instrument, places }, frets) => {
        const moved = places.map((spot) => place(spot.string, spot.fret + frets));
        if (moved.some((spot) => spot.fret > instrument.fretCount)) return;
        const before = fingeringsOf(instrument, places);
        if (!before.ok) return;
        const after = fingeringsOf(instrument, moved);
        const costs = new Map(after.ok ? after.value.map((one) => [fingersIn(one), one.cost]) : []);
        for (const one of before.value) {
          compared += 1;
          expect(costs.get(fingersIn(one))).toBeLessThanOrEqual(one.cost + 1e-9);
        }
      }),
    );
    expect(compared).toBeGreaterThan(20);
  });
});
