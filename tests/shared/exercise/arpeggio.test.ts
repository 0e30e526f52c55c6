import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { targetsOf } from '../../../shared/exercise/targets.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { holds, isOnNeck, midiAt, place, type Place } from '../../../shared/theory/fretboard.ts';
import { scale } from '../../support/exercises.ts';
import { everyPlaceOf, note, range } from './making.ts';
import { neck, proposedOn, written } from './proposed.ts';

const nameOf = (verdict: Verdict) => (verdict.kind === 'slip' ? verdict.cause : verdict.kind);

/** Half steps above the root, by hand. */
const chords = {
  major: [0, 4, 7],
  minor: [0, 3, 7],
  m7: [0, 3, 7, 10],
  maj7: [0, 4, 7, 11],
  dim7: [0, 3, 6, 9],
  '9': [0, 2, 4, 7, 10],
} as const;
type Quality = keyof typeof chords;
const cases = (Object.keys(chords) as Quality[]).flatMap((quality) =>
  ['guitar', 'guitar-drop-d', 'bass-4', 'mandolin', 'ukulele'].map((id) => [quality, id] as const),
);

const positionsOf = (quality: Quality, id: string, root: string) =>
  proposedOn(id, root, [{ kind: 'scale', tones: `arpeggio-${quality}` }]).flatMap(({ proposals }) =>
    proposals.flatMap(({ exercise }) => (exercise.kind === 'scale' && !exercise.oneString ? [exercise] : [])),
  );

describe.each(cases)('JUDGE-10, POSITION-7: arpeggio of C %s, %s', (quality, id) => {
  const instrument = neck(id);
  const isTone = (spot: Place) =>
    (chords[quality] as readonly number[]).includes(midiAt(instrument, spot) % 12);
  const asked = positionsOf(quality, id, 'C');
  /** Frets under the hand: four on a guitar, one fewer than the usual step where that is more (POSITION-1). */
  const handOf = ({ range: root, rootFinger }: ScaleExercise) => {
    const width = id === 'mandolin' ? 6 : 4;
    const low = (root?.low ?? 0) - Math.round(((rootFinger - 1) * (width - 1)) / 3);
    return { low, high: low + width - 1 };
  };

  test('every tone of the chord from the lowest to the highest under the hand, and no other', () => {
    expect(asked.length).toBeGreaterThan(3);
    for (const exercise of asked) {
      const { low, high } = handOf(exercise);
      const within = (fret: number, more: number) => fret >= low - more && fret <= high + more;
      const tones = everyPlaceOf(instrument).filter(({ place: spot }) => isTone(spot));
      const under = tones.filter(({ place: spot }) => within(spot.fret, 0)).map(({ midi }) => midi);
      const isBetween = (midi: number) => midi >= Math.min(...under) && midi <= Math.max(...under);
      const reached = tones.filter(({ place: spot, midi }) => within(spot.fret, 1) && isBetween(midi));
      // What no stretch reaches, where the hand moves by its own width for it.
      const moved = tones.filter(
        ({ place: spot, midi }) =>
          within(spot.fret, high - low + 1) && isBetween(midi) && reached.every((one) => one.midi !== midi),
      );
      const key = answerKey(exercise).map((one) => midiAt(instrument, one.place) as number);
      expect(key).toEqual([...new Set(reached.map(({ midi }) => midi))].sort((a, b) => a - b));
      // POSITION-2: whatever place within a fret of the hand sounds it stands for it.
      const accepted = targetsOf(exercise).flatMap((target) => target.accepted);
      expect(written(accepted)).toBe(written([...reached, ...moved].map((one) => one.place)));
    }
  });

  test('each accepted place stands for its pitch, a place elsewhere doesn’t', () => {
    let elsewhere = 0;
    for (const exercise of asked) {
      const right = answerKey(exercise).map((one) => one.place);
      const accepted = targetsOf(exercise).flatMap((target) => target.accepted);
      for (const [index, spot] of right.entries())
        for (const { place: other, midi } of everyPlaceOf(instrument)) {
          if (midi !== midiAt(instrument, spot) || holds(right, other)) continue;
          const isAccepted = holds(accepted, other);
          expect(judge(exercise, { places: right.with(index, other) }).kind === 'right').toBe(isAccepted);
          if (!isAccepted) elsewhere += 1;
        }
    }
    expect(elsewhere).toBeGreaterThan(0);
  });

  test('one fewer is not all, a tone outside the chord is none of it, a fret off is not right', () => {
    for (const exercise of asked) {
      const right = answerKey(exercise).map((one) => one.place);
      for (const [index, spot] of right.entries()) {
        const fewer = right.filter((one) => one !== spot);
        expect(nameOf(judge(exercise, { places: fewer }))).toBe('missing-tone');
        for (const by of [1, -1]) {
          const moved = place(spot.string, spot.fret + by);
          if (!isOnNeck(instrument, moved) || isTone(moved)) continue;
          expect(nameOf(judge(exercise, { places: [...right, moved] }))).toBe('extra-tone');
          expect(judge(exercise, { places: right.with(index, moved) }).kind).not.toBe('right');
        }
      }
      for (const [by, cause] of [
        [1, 'one-fret-off'],
        [-1, 'nut-as-one'],
      ] as const) {
        const moved = right.map((spot) => place(spot.string, spot.fret + by));
        if (!moved.every((spot) => isOnNeck(instrument, spot))) continue;
        const verdict = judge(exercise, { places: moved });
        const said: readonly string[] = verdict.kind === 'unclear' ? verdict.causes : [nameOf(verdict)];
        // Moved by three frets a diminished seventh is itself again, and so may be where the last string puts it.
        const names = quality === 'dim7' ? [cause, 'low-string-box'] : [cause];
        expect([said, names.some((name) => said.includes(name))]).toEqual([said, true]);
      }
    }
  });
});

describe('SLIP-1: arpeggios have the slips of scales', () => {
  // Computed from the tuning: A minor seventh round fret 5 of string 6, the index on the root.
  const [am7] = positionsOf('m7', 'guitar', 'A').filter(
    ({ rootString, range: at, rootFinger }) => rootString === 6 && at?.low === 5 && rootFinger === 1,
  );
  if (!am7) throw new Error('no position there');
  const right = answerKey(am7);
  const shift = (frets: number, which: (degree: string, spot: Place) => boolean) =>
    right.map(({ place: spot, degree }) =>
      which(degree, spot) ? place(spot.string, spot.fret + frets) : spot,
    );

  test('the key is the one that teachers draw', () => {
    expect(written(right.map((one) => one.place))).toBe(
      written(
        [
          [6, 5, 8],
          [5, 7],
          [4, 5, 7],
          [3, 5],
          [2, 5, 8],
          [1, 5, 8],
        ].flatMap(([string = 0, ...frets]) => frets.map((fret) => place(string, fret))),
      ),
    );
  });

  test.each<[string, readonly Place[], string]>([
    ['every third a fret up', shift(1, (degree) => degree === 'b3'), 'major-for-minor'],
    ['the short step', shift(-1, (_, spot) => spot.string <= 2), 'short-step'],
    ['an octave up', shift(12, () => true), 'wrong-octave'],
    ['the relative’s place', shift(3, () => true), 'relative-root'],
  ])('%s', (_name, given, cause) => {
    const onNeck = given.filter(({ fret }) => fret <= 19);
    expect(nameOf(judge(am7, { places: onNeck }))).toBe(cause);
  });
});

describe('every tone, in a range, in order', () => {
  const base = scale('E', 'arpeggio-m7', 1, 5);

  test('WORD-3: it is named by its chord', () => {
    expect(wordingOf(base, 'english').title).toBe('Em7 arpeggio');
    expect(wordingOf({ ...base, scale: 'arpeggio-minor' }, 'english').title).toBe('E minor arpeggio');
    expect(wordingOf({ ...base, root: note('B') }, 'german').title).toBe('Hm7 arpeggio');
    expect(wordingOf({ ...base, root: note('Bb') }, 'solfege').title).toBe('si♭ m7 arpeggio');
  });

  test('JUDGE-3: every note name once is enough where that is asked', () => {
    const tones: ScaleExercise = { ...base, coverage: 'every-tone', strictness: 'string', range: null };
    // E G B D upwards from string 2, fret 5, by the tuning.
    const up = [place(2, 5), place(1, 3), place(1, 7), place(1, 10)];
    expect(judge(tones, { places: up }).kind).toBe('right');
    expect(judge(tones, { places: up.slice(0, 3) }).kind).toBe('slip');
    // The same tones under one hand, D below the root.
    const under = [place(2, 5), place(2, 8), place(1, 7), place(3, 7)];
    expect(judge(tones, { places: under }).kind).toBe('right');
    expect(nameOf(judge(tones, { places: under.slice(0, 3) }))).toBe('missing-tone');
    expect(judge(tones, { places: [...under, place(1, 5)] }).kind).toBe('slip');
    expect(judge({ ...tones, order: 'up' }, { places: up }).kind).toBe('right');
    expect(nameOf(judge({ ...tones, order: 'up' }, { places: up.toReversed() }))).toBe('wrong-order');
  });

  test('JUDGE-3: in a range every place of the chord, on every string', () => {
    const inRange: ScaleExercise = { ...base, strictness: 'range', range: range(5, 8) };
    const instrument = neck('guitar');
    const all = everyPlaceOf(instrument)
      .filter(({ place: { fret }, midi }) => fret >= 5 && fret <= 8 && [4, 7, 11, 2].includes(midi % 12))
      .map((one) => one.place);
    expect(written(answerKey(inRange).map((one) => one.place))).toBe(written(all));
    expect(judge(inRange, { places: all }).kind).toBe('right');
  });

  test('CHECK-2: what a scale can’t be asked, an arpeggio can’t either', () => {
    expect(checkExercise({ ...base, strictness: 'anywhere', range: null }).ok).toBe(false);
    expect(checkExercise({ ...base, scale: 'arpeggio-dim7', root: note('Cb') }).ok).toBe(false);
  });
});
