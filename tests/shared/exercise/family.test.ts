import { describe, expect, test, vi } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { BuildExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { Wish } from '../../../shared/exercise/proposals.ts';
import type { KeyNote, SlipCause, Verdict } from '../../../shared/exercise/verdict.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { isOnNeck, midiAt, place, type Instrument, type Place } from '../../../shared/theory/fretboard.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { build, places } from '../../support/exercises.ts';
import { note, range, strings } from './making.ts';
import { chordWishes, neck, proposedOn } from './proposed.ts';

// Whole necks are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const family = (
  root: string,
  quality: ChordQuality,
  id: 'triad' | 'shell' | 'drop-2' | 'drop-3',
  on: readonly number[],
  fields: Partial<BuildExercise> = {},
): BuildExercise =>
  build(root, quality, {
    voicing: { kind: 'family', family: id, strings: strings(...on) },
    ...fields,
  });

/** The same chords with the other third, as students hear them: named by hand. */
const withTwin: ReadonlySet<string> = new Set(
  'major minor 6 m6 7 m7 maj7 mmaj7 9 m9 maj9 mmaj9 11 m11 maj11 13 m13 maj13 add9 madd9 69 m69'.split(' '),
);

interface Made {
  readonly slip: string;
  readonly places: readonly Place[];
  readonly causes: readonly SlipCause[];
}

/** What somebody who makes one slip gives, each with its cause and the causes that may be as true. */
function made(instrument: Instrument, key: readonly KeyNote[], quality: ChordQuality): readonly Made[] {
  const right = key.map(({ place: spot }) => spot);
  const shift = (frets: number, which: (spot: Place, at: number) => boolean = () => true) =>
    right.map((spot, at) => (which(spot, at) ? place(spot.string, spot.fret + frets) : spot));
  const third = key.findIndex(({ degree }) => degree === '3' || degree === 'b3');
  const isMinor = key[third]?.degree === 'b3';
  const otherThird: SlipCause = isMinor ? 'major-for-minor' : 'minor-for-major';
  const slips: Made[] = [
    { slip: 'all a fret up', places: shift(1), causes: ['one-fret-off'] },
    { slip: 'all a fret down', places: shift(-1), causes: ['nut-as-one'] },
    { slip: 'an octave up', places: shift(12), causes: ['wrong-octave'] },
    { slip: 'an octave down', places: shift(-12), causes: ['wrong-octave'] },
    // A shape with all frets alike, or turning into itself, is the same turned round.
    ...[1, -1].map((by): Made => ({
      slip: 'a string over',
      places: right.map((spot) => place(spot.string + by, spot.fret)),
      causes: ['next-string', 'strings-reversed'],
    })),
    ...right.map((spot): Made => ({
      slip: 'one silent',
      places: right.filter((other) => other !== spot),
      causes: ['sounding-string-muted'],
    })),
    ...instrument.openStrings.flatMap((_, index): Made[] =>
      right.some((spot) => spot.string === index + 1)
        ? []
        : [
            {
              slip: 'one more',
              places: [...right, place(index + 1, right[0]?.fret ?? 0)],
              causes: ['muted-string-sounded'],
            },
          ],
    ),
  ];
  if (third >= 0 && withTwin.has(quality))
    slips.push({
      slip: 'the other third',
      places: shift(isMinor ? 1 : -1, (_, at) => at === third),
      causes: [otherThird],
    });
  for (const at of right.keys())
    for (const by of [1, -1])
      slips.push({
        slip: 'one note a fret off',
        places: shift(by, (_, own) => own === at),
        // A string alone above or below the short step, and a third, say why.
        causes: ['one-fret-off', 'short-step', otherThird],
      });
  return slips.filter(({ places: given }) => given.every((spot) => isOnNeck(instrument, spot)));
}

/** The string-3-to-2 step of a guitar counted like the others, from either side. */
function shortSteps(right: readonly Place[]): readonly Made[] {
  if (right.every(({ string }) => string > 2) || right.every(({ string }) => string <= 2)) return [];
  const shift = (frets: number, which: (spot: Place) => boolean) =>
    right.map((spot) => (which(spot) ? place(spot.string, spot.fret + frets) : spot));
  const given = [shift(1, ({ string }) => string > 2), shift(-1, ({ string }) => string <= 2)];
  return given.map((some) => ({ slip: 'short step', places: some, causes: ['short-step'] }));
}

const causesIn = (verdict: Verdict): readonly SlipCause[] =>
  verdict.kind === 'slip' ? [verdict.cause] : verdict.kind === 'unclear' ? verdict.causes : [];

const common: readonly Wish[] = (['major', 'minor', 'sus4', '7', 'm7', 'maj7', 'm6'] as const).map(
  (quality) => ({ kind: 'chord', quality }),
);

describe('JUDGE-9, SLIP-1: no slip in a stacked chord is right, and each is named, or unclear with its cause', () => {
  test.each<[string, string, readonly Wish[]]>([
    ['guitar', 'C', chordWishes],
    ['guitar', 'Eb', common],
    ['guitar-7', 'C', common],
    ['bass-4', 'C', common],
    ['ukulele', 'C', common],
    ['mandolin', 'Eb', common],
  ])('%s, %s', (id, root, wishes) => {
    const tally = new Map<string, number>();
    const astray: unknown[] = [];
    for (const { proposals } of proposedOn(id, root, wishes))
      for (const { name, exercise } of proposals) {
        if (exercise.kind !== 'build' || exercise.voicing.kind !== 'family') continue;
        const key = answerKey(exercise);
        const steps = id.startsWith('guitar') ? shortSteps(key.map((one) => one.place)) : [];
        for (const { slip, places: given, causes } of [...made(neck(id), key, exercise.quality), ...steps]) {
          const verdict = judge(exercise, { places: given });
          tally.set(slip, (tally.get(slip) ?? 0) + 1);
          if (!causesIn(verdict).some((cause) => causes.includes(cause)))
            astray.push([name, exercise.quality, slip, given, verdict]);
        }
      }
    expect(astray).toEqual([]);
    expect(Math.min(...tally.values())).toBeGreaterThan(1);
    expect(tally.size).toBeGreaterThanOrEqual(id.startsWith('guitar') ? 9 : 7);
  });
});

describe('the cause alone is named where nothing else explains it', () => {
  // Frets computed from the tuning: C major close on strings 4 3 2 is 5 5 5, first inversion 2 0 1, second 10 9 8.
  const c = family('C', 'major', 'triad', [4, 3, 2], {
    strictness: 'place',
    range: range(10, 10),
    rootString: strings(4)[0],
  });
  test.each([
    ['right', [10, 9, 8], 'right'],
    ['a fret too far', [11, 10, 9], 'one-fret-off'],
    ['counted from 1', [9, 8, 7], 'nut-as-one'],
    ['the short step', [11, 10, 8], 'short-step'],
    ['the third low', [10, 8, 8], 'minor-for-major'],
    ['the fifth a fret up', [10, 9, 9], 'one-fret-off'],
  ])('%s', (_name, frets, cause) => {
    const verdict = judge(c, { places: frets.map((fret, index) => place(4 - index, fret)) });
    expect(verdict.kind === 'slip' ? verdict.cause : verdict.kind).toBe(cause);
  });
});

describe('JUDGE-9: exactly these strings, this way of stacking', () => {
  // Computed from the tuning: E minor with the root on string 2, fret 5, is 5 4 5 on strings 4 3 2.
  const e = family('E', 'minor', 'triad', [4, 3, 2]);
  test.each<[string, readonly (readonly [number, number])[], string]>([
    [
      'the triad',
      [
        [4, 5],
        [3, 4],
        [2, 5],
      ],
      'right',
    ],
    [
      'twelve frets up, any fret being asked',
      [
        [4, 17],
        [3, 16],
        [2, 17],
      ],
      'right',
    ],
    [
      'one note more',
      [
        [4, 5],
        [3, 4],
        [2, 5],
        [1, 3],
      ],
      'muted-string-sounded',
    ],
    [
      'one fewer',
      [
        [4, 5],
        [2, 5],
      ],
      'sounding-string-muted',
    ],
    [
      'another inversion, its root on another string',
      [
        [4, 9],
        [3, 9],
        [2, 8],
      ],
      'right-note-wrong-string',
    ],
  ])('%s', (_name, given, cause) => {
    const verdict = judge(e, { places: places(...given) });
    expect(verdict.kind === 'slip' ? verdict.cause : verdict.kind).toBe(cause);
  });

  // Computed: C7sus4 from string 4, fret 10, has F B♭ above it (6 and 6 on strings 2 1) or B♭ F (11 and 13).
  test('where both orders of a shell lie there, either is right', () => {
    const c = family('C', '7sus4', 'shell', [4, 2, 1], {
      rootString: strings(4)[0],
      strictness: 'place',
      range: range(10, 10),
    });
    for (const frets of [
      [6, 6],
      [11, 13],
    ])
      expect(judge(c, { places: places([4, 10], [2, frets[0] ?? 0], [1, frets[1] ?? 0]) }).kind).toBe(
        'right',
      );
    expect(judge(c, { places: places([4, 10], [2, 6], [1, 13]) }).kind).not.toBe('right');
  });

  // Computed from the tuning, as each sounds from below: B D G · F♯ B D G, which is B D F♯ G with its second voice from
  // above an octave down · G B♭ F♯ · G B F.
  test.each<[string, BuildExercise, readonly (readonly [number, number])[]]>([
    [
      'strings that cross',
      family('G', 'major', 'triad', [3, 2, 1]),
      [
        [3, 7],
        [2, 0],
        [1, 3],
      ],
    ],
    [
      'strings that cross, in four voices',
      family('G', 'maj7', 'drop-2', [4, 3, 2, 1]),
      [
        [4, 4],
        [3, 7],
        [2, 0],
        [1, 3],
      ],
    ],
    [
      'a fret wider than a shape that is shown',
      family('G', 'mmaj7', 'shell', [3, 2, 1]),
      [
        [3, 12],
        [2, 19],
        [1, 18],
      ],
    ],
    [
      'a shell with its seventh an octave up',
      family('G', '7', 'shell', [3, 2, 1]),
      [
        [3, 0],
        [2, 0],
        [1, 13],
      ],
    ],
  ])('JUDGE-4: the words say nothing of %s', (_name, asked, given) => {
    const rootString = strings(asked.quality === 'major' || asked.quality === 'maj7' ? 1 : 3)[0];
    expect(judge({ ...asked, rootString }, { places: places(...given) }).kind).toBe('right');
  });

  test('with a range all of it lies there', () => {
    const inRange = family('E', 'minor', 'triad', [4, 3, 2], { strictness: 'range', range: range(3, 6) });
    expect(checkExercise(inRange).ok).toBe(true);
    expect(judge(inRange, { places: places([4, 5], [3, 4], [2, 5]) }).kind).toBe('right');
    expect(judge(inRange, { places: places([4, 9], [3, 9], [2, 8]) }).kind).not.toBe('right');
    // The root on string 2 lies there, the third on string 3 at fret 4 doesn’t.
    expect(checkExercise({ ...inRange, range: range(5, 6) }).ok).toBe(false);
  });
});

describe('JUDGE-2: on exactly these strings any voicing is right, and only the chord', () => {
  test.each(['guitar', 'ukulele'])('%s', (id) => {
    const instrument = neck(id);
    let wrong = 0;
    for (const { at, proposals } of proposedOn(id, 'C', common))
      for (const { exercise } of proposals) {
        if (exercise.kind !== 'build' || exercise.voicing.kind !== 'strings') continue;
        const key = answerKey(exercise).map((one) => one.place);
        const tones = new Set(key.map((spot) => midiAt(instrument, spot) % 12));
        for (const [index, spot] of key.entries())
          for (const by of [1, -1]) {
            const given = key.with(index, place(spot.string, spot.fret + by));
            if (!given.every((one) => isOnNeck(instrument, one))) continue;
            const isForeign = given.some((one) => !tones.has(midiAt(instrument, one) % 12));
            const isRootGone = spot.string === at.place.string;
            if (!isForeign && !isRootGone) continue;
            expect(judge(exercise, { places: given }).kind).not.toBe('right');
            wrong += 1;
          }
      }
    expect(wrong).toBeGreaterThan(50);
  });
});

describe('WORD-3, CHECK-3: what is said of a stacked chord', () => {
  test.each<[BuildExercise, string]>([
    [
      family('E', 'minor', 'triad', [2, 4, 3]),
      'Root on string 2, any fret. Close triad on strings 4, 3 and 2.',
    ],
    [
      family('E', 'm7', 'drop-3', [5, 3, 2, 1]),
      'Root on string 2, any fret. Drop-3 voicing on strings 5, 3, 2 and 1.',
    ],
  ])('%#', (exercise, detail) => {
    expect(checkExercise(exercise).ok).toBe(true);
    expect(wordingOf(exercise, 'english').detail).toBe(detail);
  });

  test.each<[BuildExercise, string]>([
    [
      family('E', 'minor', 'triad', [4, 3, 2], { bass: note('G') }),
      'The way it is stacked has its own lowest note.',
    ],
    [family('E', 'minor', 'triad', [5, 4, 3]), 'The root string is not among the strings.'],
    [family('E', 'minor', 'triad', [3, 3, 2]), 'A string is named twice.'],
    [family('E', 'minor', 'triad', [9, 3, 2]), 'This instrument has no string 9.'],
    [family('E', '7', 'drop-2', [3, 2]), 'This chord has more tones than strings are named.'],
    [family('E', 'minor', 'triad', [6, 4, 2]), 'No hand position there holds all of it.'],
    [family('E', 'minor', 'triad', [4, 3, 2, 1]), 'No hand position there holds all of it.'],
  ])('refused: %#', (exercise, reason) => {
    expect(checkExercise(exercise)).toEqual({ ok: false, error: reason });
  });
});
