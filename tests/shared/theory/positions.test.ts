import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import {
  holds,
  instrumentById,
  midiAt,
  pitchClassAt,
  place,
  samePlace,
  standardGuitar,
  type Fret,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { parseNoteName, pitchClassOf, type NoteName } from '../../../shared/theory/pitch.ts';
import { positionAt, scalePlaces } from '../../../shared/theory/position.ts';
import {
  positionNumber,
  positionsFrom,
  positionsOf,
  type NamedPosition,
} from '../../../shared/theory/positions.ts';
import { formsAlongNeck, type PositionForm } from '../../../shared/theory/tables/position-names.ts';
import type { ScaleId } from '../../../shared/theory/tables/scales.ts';
import { toneDegrees, type ToneSetId } from '../../../shared/theory/tone-sets.ts';
import { counts } from '../../references/counts.ts';
import { onStrings, scaleCases, scaleIdOf } from '../../references/theory/scale-cases.ts';
import {
  allQualities,
  allScales,
  allTones,
  anyInstrument,
  anyRoot,
  anyTones,
  twelveRoots,
} from './any-tones.ts';

const root = (text: string): NoteName => known(parseNoteName(text), text);
const instrument = (id: string): Instrument => known(instrumentById(id), id);
const places = (position: NamedPosition): readonly Place[] => position.notes.map((note) => note.place);
const forms = (positions: readonly NamedPosition[]) => positions.map((position) => position.form);
/** Frets of each string from the lowest on, counted from `from`. */
const byString = (position: NamedPosition, from: number) =>
  [6, 5, 4, 3, 2, 1].map((string) =>
    places(position)
      .filter((spot) => spot.string === string)
      .map((spot) => spot.fret - from),
  );
const rootOf = (guitar: Instrument, spot: Place): NoteName =>
  known(
    twelveRoots.find((one) => pitchClassOf(one) === pitchClassAt(guitar, spot)),
    'a root for every pitch class',
  );

describe('from a root on string 2 at fret f', () => {
  const f = 7;
  // Source: common practice, string 6 first; the minor pentatonic also computed.
  test.each<[ScaleId, number, string, number[][]]>([
    [
      'major-pentatonic',
      2,
      'around',
      [
        [-1, 2],
        [-1, 2],
        [-1, 1],
        [-1, 1],
        [0, 2],
        [-1, 2],
      ],
    ],
    [
      'minor-pentatonic',
      1,
      'towards-bridge',
      [
        [0, 2],
        [0, 2],
        [0, 2],
        [-1, 2],
        [0, 3],
        [0, 2],
      ],
    ],
    [
      'major',
      2,
      'around',
      [
        [-1, 0, 2],
        [-1, 1, 2],
        [-1, 1, 2],
        [-1, 1],
        [-1, 0, 2],
        [-1, 0, 2],
      ],
    ],
    [
      'natural-minor',
      1,
      'towards-bridge',
      [
        [0, 2, 3],
        [0, 2],
        [-1, 0, 2],
        [-1, 0, 2],
        [0, 2, 3],
        [0, 2, 3],
      ],
    ],
  ])('%s: the C form, finger %i on the root, lies %s', (scale, finger, lies, frets) => {
    const [d, c, ...more] = positionsFrom(standardGuitar, root('F#'), scale, place(2, f));
    expect(more).toEqual([]);
    expect([d?.form, d?.rootFinger, d?.lies]).toEqual(['D', 4, 'towards-nut']);
    expect([c?.form, c?.rootFinger, c?.lies]).toEqual(['C', finger, lies]);
    expect(byString(known(c, 'C form'), f)).toEqual(frets);
  });
});

describe('positions and boxes computed elsewhere', () => {
  /** G dorian with the middle finger on the root: a position that no form names. */
  const unnamed = 'S-SC-0042';
  const right = scaleCases.filter(
    (one) => one.verdict === 'correct' && one.system !== '3nps' && one.id !== unnamed,
  );
  const guitar = right.filter((one) => one.tuning.name === 'standard');

  test.each(guitar.map((one) => [`${one.id} ${one.group}`, one] as const))('%s', (_name, one) => {
    const found = positionsFrom(
      standardGuitar,
      root(one.root),
      scaleIdOf(one.scale),
      place(one.rootString, one.rootFret),
    );
    const wanted = onStrings(one.fretsPerString);
    const same = found.filter((position) => wanted.every((spot) => holds(position.accepted, spot)));
    const pitches = (spots: readonly Place[]) =>
      spots.map((spot) => midiAt(standardGuitar, spot)).sort((a, b) => a - b);
    expect(same.some((position) => String(pitches(places(position))) === String(pitches(wanted)))).toBe(true);
    if (one.form !== undefined) expect(forms(same)).toContain(one.form);
    if (one.window) expect(same.map(({ frets }) => frets.low)).toContain(one.window[0]);
  });

  test('there are cases of every form and of four boxes', () => {
    expect(guitar).toHaveLength(counts['scales.json, positions'].cases);
    expect(new Set(guitar.map((one) => one.form).filter(Boolean))).toEqual(new Set(formsAlongNeck));
    expect(guitar.filter((one) => one.system === 'pentatonic-box').length).toBeGreaterThan(3);
  });
});

describe('POSITION-4: the five positions of a guitar', () => {
  test.each(allTones)('%s: five for every root, along the neck, covering every place', (tones) => {
    for (const one of twelveRoots) {
      const positions = positionsOf(standardGuitar, one, tones);
      const start = formsAlongNeck.indexOf(known(positions[0]?.form, 'form'));
      expect(forms(positions)).toEqual([...formsAlongNeck.slice(start), ...formsAlongNeck.slice(0, start)]);
      const range = {
        low: known(positions[0], 'first').frets.low,
        high: known(positions[4], 'last').frets.high,
      };
      const isCovered = (spot: Place) => positions.some(({ accepted }) => holds(accepted, spot));
      expect(scalePlaces(standardGuitar, one, tones, range).filter((note) => !isCovered(note.place))).toEqual(
        [],
      );
      for (const position of positions)
        expect(position.notes.find((note) => samePlace(note.place, position.rootPlace))).toMatchObject({
          degree: '1',
          finger: position.rootFinger,
        });
    }
  });

  // Source: common practice.
  test.each<[ToneSetId, string]>([
    ['major', 'E62 D41 C22 A52 G64'],
    ['arpeggio-7sus4', 'E62 D41 C22 A52 G64'],
    ['altered', 'E62 D41 C22 A52 G64'],
    ['minor-pentatonic', 'E61 D41 C21 A51 G31'],
    ['arpeggio-dim7', 'E61 D41 C21 A51 G31'],
  ])('%s: form, root string and finger are %s', (tones, names) => {
    const said = positionsOf(standardGuitar, root('F#'), tones).map(
      ({ form, rootPlace, rootFinger }) => `${String(form)}${String(rootPlace.string)}${String(rootFinger)}`,
    );
    expect(said.join(' ')).toBe(names);
  });

  // Source: computed from the tuning.
  test.each<[number, PositionForm, PositionForm]>([
    [6, 'G', 'E'],
    [5, 'C', 'A'],
    [4, 'E', 'D'],
    [3, 'A', 'G'],
    [2, 'D', 'C'],
    [1, 'G', 'E'],
  ])('a root on string %i lies in the %s form, and nearer the bridge in the %s form', (string, near, far) => {
    for (const tones of allTones)
      for (const fret of [4, 9, 14]) {
        const spot = place(string, fret);
        const found = positionsFrom(standardGuitar, rootOf(standardGuitar, spot), tones, spot);
        expect(forms(found)).toEqual([near, far]);
      }
  });

  test('a position is the same from every root that lies under its hand', () => {
    for (const tones of [...allScales, 'arpeggio-m7', 'arpeggio-5'] as const)
      for (const position of positionsOf(standardGuitar, root('G'), tones))
        for (const note of position.notes) {
          const isUnder = note.place.fret >= position.frets.low && note.place.fret <= position.frets.high;
          if (note.degree !== '1' || !isUnder) continue;
          const again = positionsFrom(standardGuitar, root('G'), tones, note.place);
          expect(again.find(({ form }) => form === position.form)?.notes).toEqual(position.notes);
        }
  });

  test('POSITION-5: the number depends on where a teacher starts to count', () => {
    const numbers = (startsAt: PositionForm) =>
      positionsOf(standardGuitar, root('F#'), 'minor-pentatonic').map(({ form }) =>
        positionNumber(known(form, 'form'), startsAt),
      );
    expect(numbers('E')).toEqual([1, 2, 3, 4, 5]);
    expect(numbers('C')).toEqual([4, 5, 1, 2, 3]);
  });
});

describe('POSITION-4: other instruments', () => {
  const name = ({ form, rootPlace, rootFinger }: NamedPosition) =>
    `${form ?? ''} ${String(rootPlace.string)}-${String(rootFinger)}`.trim();

  test.each(['guitar-half-down', 'guitar-baritone', 'guitar-7', 'guitar-8', 'guitar+capo=3'])(
    '%s has the forms of a guitar',
    (id) => {
      for (const one of twelveRoots) {
        const positions = positionsOf(instrument(id), one, 'minor-pentatonic');
        expect(positions.map(name).sort()).toEqual(['A 5-1', 'C 2-1', 'D 4-1', 'E 6-1', 'G 3-1']);
      }
    },
  );

  test('drop D has them too; the E form goes by its root on string 4, string 6 being tuned down', () => {
    const positions = positionsOf(instrument('guitar-drop-d'), root('F#'), 'major');
    expect(positions.map(name)).toEqual(['E 4-4', 'D 4-1', 'C 2-2', 'A 5-2', 'G 3-1']);
  });

  // Source: computed from the tuning G D A E: the same hand is named once, by its lowest string.
  test('a bass names them by root string and finger', () => {
    const positions = positionsOf(instrument('bass-4'), root('G'), 'major');
    expect(positions.map((position) => [position.frets.low, name(position)])).toEqual([
      [2, '4-2'],
      [3, '4-1'],
      [4, '2-2'],
      [5, '2-1'],
      [7, '3-4'],
      [9, '3-2'],
      [10, '3-1'],
      [11, '1-2'],
      [12, '4-4'],
    ]);
    expect(positions.every((position) => position.form === undefined)).toBe(true);
  });

  test.each(['guitar-dadgad', 'guitar-open-g', 'guitar-fourths', 'ukulele', 'mandolin', 'tenor-guitar'])(
    '%s: from a root three positions, little finger, middle finger, index on it',
    (id) => {
      const neck = instrument(id);
      const spot = place(2, 7);
      const found = positionsFrom(neck, rootOf(neck, spot), 'major', spot);
      expect(found.map(name)).toEqual(['2-4', '2-2', '2-1']);
      expect(found.map(({ lies }) => lies)).toEqual(['towards-nut', 'around', 'towards-bridge']);
    },
  );

  test.each(tuningIds)('%s: every place between the first and the last is in one of them', (id) => {
    const neck = instrument(id);
    for (const tones of ['major', 'arpeggio-5'] as const)
      for (const one of twelveRoots) {
        const positions = positionsOf(neck, one, tones);
        expect(new Set(positions.map(({ frets }) => frets.low)).size).toBe(positions.length);
        const range = {
          low: known(positions[0], 'first').frets.low,
          high: known(positions.at(-1), 'last').frets.high,
        };
        const isCovered = (spot: Place) => positions.some(({ accepted }) => holds(accepted, spot));
        expect(scalePlaces(neck, one, tones, range).filter((note) => !isCovered(note.place))).toEqual([]);
      }
  });
});

describe('every instrument', () => {
  test('positions lie on the neck, hold their root, go from nut to bridge, and are found from it', () => {
    fc.assert(
      fc.property(anyInstrument, anyRoot, anyTones, (neck, one, tones) => {
        const positions = positionsOf(neck, one, tones);
        const lows = positions.map(({ frets }) => frets.low);
        expect(lows).toEqual([...lows].sort((a, b) => a - b));
        for (const position of positions) {
          expect(position.frets.low).toBeGreaterThan(0);
          expect(position.frets.high).toBeLessThanOrEqual(neck.fretCount);
          expect(holds(places(position), position.rootPlace)).toBe(true);
          const again = positionsFrom(neck, one, tones, position.rootPlace);
          expect(again.map(({ lies: _, ...rest }) => rest)).toContainEqual(position);
        }
      }),
    );
  });

  test('moved along the neck by so many frets, the positions from a root move along', () => {
    fc.assert(
      fc.property(anyInstrument, anyTones, fc.nat(), fc.nat(), fc.nat(), (neck, tones, s, a, b) => {
        const at = (fret: number) => place(1 + (s % neck.openStrings.length), fret);
        const found = (spot: Place) =>
          positionsFrom(neck, rootOf(neck, spot), tones, spot)
            // At the ends of the neck a stretch may have no fret.
            .filter(({ frets }) => frets.low > 1 && frets.high < neck.fretCount)
            // Nor may a place that the hand moves for.
            .map(({ frets, accepted, ...position }) => ({
              ...position,
              frets,
              accepted: accepted.filter(({ fret }) => fret >= frets.low - 1 && fret <= frets.high + 1),
            }));
        const [from, to] = [a % (neck.fretCount + 1), b % (neck.fretCount + 1)];
        const [first, moved] = [found(at(from)), found(at(to))];
        const isInBoth = (position: NamedPosition, others: readonly NamedPosition[]) =>
          others.some((other) => other.rootFinger === position.rootFinger);
        const shifted = first
          .filter((position) => isInBoth(position, moved))
          .map((position) => ({
            ...position,
            rootPlace: at(to),
            frets: {
              low: (position.frets.low + to - from) as Fret,
              high: (position.frets.high + to - from) as Fret,
            },
            notes: position.notes.map((note) => ({
              ...note,
              place: place(note.place.string, note.place.fret + to - from),
            })),
            accepted: position.accepted.map((spot) => place(spot.string, spot.fret + to - from)),
          }));
        expect(moved.filter((position) => isInBoth(position, first))).toEqual(shifted);
      }),
    );
  });

  test('a place that sounds another note has none', () => {
    expect(positionsFrom(standardGuitar, root('C'), 'major', place(2, 2))).toEqual([]);
    expect(positionsFrom(standardGuitar, root('C'), 'major', place(7, 1))).toEqual([]);
    expect(positionsFrom(standardGuitar, root('C'), 'major', place(2, 25))).toEqual([]);
  });
});

describe('POSITION-7: arpeggios', () => {
  test.each(allScales)(
    'of the chords inside the %s scale lie inside its position, place for place',
    (scale) => {
      const own = toneDegrees(scale);
      const inside = allQualities
        .map((quality) => `arpeggio-${quality}` as const)
        .filter((tones) => toneDegrees(tones).every((degree) => own.includes(degree)));
      if (scale === 'dorian') expect(inside.length).toBeGreaterThan(7);
      for (const string of [1, 2, 3, 4, 5, 6])
        for (const finger of [1, 2, 4]) {
          const spot = place(string, 6);
          const one = rootOf(standardGuitar, spot);
          const whole = positionAt(standardGuitar, one, scale, spot, finger)?.notes;
          for (const tones of inside) {
            const arpeggio = known(positionAt(standardGuitar, one, tones, spot, finger), tones).notes;
            expect(arpeggio.length).toBeGreaterThan(1);
            for (const note of arpeggio) expect(whole).toContainEqual(note);
          }
        }
    },
  );
});
