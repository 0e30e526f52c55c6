import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { placeAt, pointOf } from '../../../client/fretboard/geometry.ts';
import { woodFrame } from '../../../client/fretboard/wood-frame.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { SlipCause, Verdict } from '../../../shared/exercise/verdict.ts';
import { midiAt, place, samePlace, type Place } from '../../../shared/theory/fretboard.ts';
import { pitchClassOf } from '../../../shared/theory/pitch.ts';
import { phone } from '../../client/fretboard/requests.ts';
import { anAnswered, anExercise, exerciseOn, instrumentOf, nearKey, placesOn, seed } from './arbitraries.ts';
import { note, range, roots } from './making.ts';

// Many exercises are drawn: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const spell = (semitones: number) =>
  note(roots.find((name) => pitchClassOf(note(name)) === ((semitones % 12) + 12) % 12) ?? 'C');

const causesOf = (verdict: Verdict): readonly SlipCause[] =>
  verdict.kind === 'slip' ? [verdict.cause] : verdict.kind === 'unclear' ? [...verdict.causes].sort() : [];

/** The same worth; the same causes too, unless one of them counts from a point that did not move along. */
function expectSame(before: Verdict, after: Verdict, fixed: readonly SlipCause[], context: unknown): void {
  if ([...causesOf(before), ...causesOf(after)].some((cause) => fixed.includes(cause))) {
    expect([context, after.kind === 'right']).toEqual([context, before.kind === 'right']);
    return;
  }
  expect([context, after.kind, causesOf(after)]).toEqual([context, before.kind, causesOf(before)]);
  if (before.kind === 'right' && after.kind === 'right') expect(after.inversion).toBe(before.inversion);
}

/** Exercises in frets that are stated, in the middle of a long neck: all that they say moves along with them. */
const inTheMiddle = exerciseOn(['guitar+frets=36'])
  .filter((exercise) => exercise.kind !== 'name')
  .map((exercise): Exercise => {
    const low = 10 + ((exercise.range?.low ?? 0) % 6);
    const high = low + (exercise.strictness === 'place' ? 8 : 11);
    const strictness = exercise.strictness === 'anywhere' ? 'range' : exercise.strictness;
    return { ...exercise, strictness, range: range(low, high) };
  })
  .filter((exercise) => checkExercise(exercise).ok)
  .chain((exercise) => fc.record({ exercise: fc.constant(exercise), places: nearKey(exercise) }))
  .filter(({ places }) => places.every((spot) => spot.fret > 6 && spot.fret < 25));

function movedBy(
  exercise: Exercise,
  frets: number,
  root = spell(pitchClassOf(exercise.root) + frets),
): Exercise {
  const bass =
    exercise.kind === 'build' && exercise.bass ? { bass: spell(pitchClassOf(exercise.bass) + frets) } : {};
  const frame = exercise.range && range(exercise.range.low + frets, exercise.range.high + frets);
  return { ...exercise, root, range: frame, ...bass };
}

describe('NECK-3: what moves together is judged together', () => {
  // The letters and the accidental are the root's name, which another root spells otherwise; the marks stay on the neck.
  const fixed: readonly SlipCause[] = ['letters-two-frets', 'mark-drift', 'sharp-for-flat'];

  test('root, frets and answer by any number of frets', () => {
    const tally = { right: 0, named: 0 };
    fc.assert(
      fc.property(inTheMiddle, fc.integer({ min: -6, max: 9 }), ({ exercise, places }, frets) => {
        const to = places.map((spot) => place(spot.string, spot.fret + frets));
        const other = movedBy(exercise, frets);
        if (!checkExercise(other).ok) return;
        const before = judge(exercise, { places });
        if (before.kind === 'right') tally.right += 1;
        else if (!causesOf(before).some((cause) => fixed.includes(cause))) tally.named += 1;
        expectSame(before, judge(other, { places: to }), fixed, { exercise, places, frets });
      }),
      { numRuns: 1500, seed },
    );
    expect(tally.right).toBeGreaterThan(100);
    expect(tally.named).toBeGreaterThan(500);
  });

  test('frets and answer by an octave; the name of the root stays, and with it the accidental', () => {
    fc.assert(
      fc.property(inTheMiddle, ({ exercise, places }) => {
        const to = places.map((spot) => place(spot.string, spot.fret + 12));
        const other = movedBy(exercise, 12, exercise.root);
        if (!checkExercise(other).ok || to.some((spot) => spot.fret > 36)) return;
        const before = judge(exercise, { places });
        expectSame(before, judge(other, { places: to }), ['letters-two-frets', 'mark-drift'], {
          exercise,
          places,
        });
      }),
      { numRuns: 800, seed },
    );
  });

  test('a capo and the root by as many frets, the frets from the capo the same', () => {
    let named = 0;
    const plain = exerciseOn(['guitar+frets=24', 'ukulele+frets=20', 'bass-4+frets=24'])
      .filter((exercise) => checkExercise(exercise).ok)
      .chain((exercise) => fc.record({ exercise: fc.constant(exercise), places: nearKey(exercise) }));
    fc.assert(
      fc.property(plain, fc.integer({ min: 1, max: 7 }), ({ exercise, places }, capo) => {
        const [tuning = '', frets = ''] = exercise.instrument.split('+frets=');
        const id = `${tuning}+capo=${String(capo)}+frets=${String(Number(frets) + capo)}`;
        const moved = movedBy(exercise, capo);
        const other: Exercise = { ...moved, instrument: id, range: exercise.range };
        if (!checkExercise(other).ok) return;
        const before = judge(exercise, { places });
        if (before.kind !== 'right') named += 1;
        expectSame(before, judge(other, { places }), [...fixed, 'capo-ignored'], { exercise, places, capo });
      }),
      { numRuns: 1000, seed },
    );
    expect(named).toBeGreaterThan(300);
  });

  test('the tuning and the frets, so that the same pitches sound: where any place will do', () => {
    const tunings = [
      'guitar',
      'guitar-drop-d',
      'guitar-dadgad',
      'guitar-open-g',
      'guitar-fourths',
      'guitar-baritone',
    ];
    let right = 0;
    let compared = 0;
    const anywhere = exerciseOn(tunings)
      .filter(
        (one) =>
          (one.kind === 'build' && one.voicing.kind === 'any') ||
          (one.kind === 'find' && one.wanted !== 'every'),
      )
      .map((one): Exercise => ({ ...one, strictness: 'anywhere', range: null }))
      .map((one): Exercise => (one.kind === 'build' ? { ...one, marksRoot: false } : one))
      .filter((one) => checkExercise(one).ok)
      .chain((exercise) => fc.record({ exercise: fc.constant(exercise), places: nearKey(exercise) }));
    fc.assert(
      fc.property(anywhere, fc.constantFrom(...tunings), ({ exercise, places }, instrument) => {
        const other: Exercise = { ...exercise, instrument };
        if (!checkExercise(other).ok) return;
        const [from, to] = [instrumentOf(exercise.instrument), instrumentOf(instrument)];
        const again = places.map((spot) =>
          place(spot.string, midiAt(from, spot) - midiAt(to, place(spot.string, 0))),
        );
        if (again.some((spot) => spot.fret < 0 || spot.fret > to.fretCount)) return;
        const before = judge(exercise, { places });
        const after = judge(other, { places: again });
        compared += 1;
        if (before.kind === 'right') right += 1;
        expect([exercise, places, instrument, after.kind === 'right']).toEqual([
          exercise,
          places,
          instrument,
          before.kind === 'right',
        ]);
        if (before.kind === 'right') expect(after).toEqual(before);
      }),
      { numRuns: 1500, seed },
    );
    expect(compared).toBeGreaterThan(500);
    expect(right).toBeGreaterThan(80);
  });

  test('the hand: what a left-handed student taps is the same answer', () => {
    const frames = [false, true].map((leftHanded) => woodFrame({ ...phone, leftHanded }, range(1, 10)));
    const shown = placesOn(instrumentOf('guitar')).filter((spot) => spot.fret <= 10);
    for (const frame of frames)
      for (const spot of shown) expect(placeAt(frame, pointOf(frame, spot))).toEqual(spot);
  });
});

describe('KEY-2: whatever can be asked has a right answer', () => {
  test('the key of any exercise on any instrument is judged right', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(anExercise, (exercise) => {
        // What is asked besides the notes is asked of the same notes.
        const plain: Exercise =
          exercise.kind === 'build' ? { ...exercise, marksRoot: false, asksFinger: false } : exercise;
        const key = answerKey(plain);
        const places = key.map((one) => one.place);
        kinds.add(`${plain.kind} ${plain.strictness} ${instrumentOf(plain.instrument).family}`);
        const named = { kind: 'degree' as const, degree: key[0]?.degree ?? '' };
        const answer = plain.kind === 'name' ? { places: [], named } : { places };
        expect([plain, judge(plain, answer).kind]).toEqual([plain, 'right']);
      }),
      { numRuns: 3000, seed },
    );
    // Four kinds under four strictnesses, on four families of instruments at least.
    expect(kinds.size).toBeGreaterThan(60);
  });

  test('with one note a fret beside, an answer that leaves no choice is not right', () => {
    const strict = anExercise.filter(
      (one) =>
        (one.kind === 'find' && one.strictness === 'place') ||
        (one.kind === 'build' && one.voicing.kind === 'form' && one.voicing.full) ||
        (one.kind === 'scale' && one.coverage === 'every-pitch'),
    );
    let changed = 0;
    fc.assert(
      fc.property(strict, (exercise) => {
        const plain: Exercise =
          exercise.kind === 'build' ? { ...exercise, marksRoot: false, asksFinger: false } : exercise;
        const places = answerKey(plain).map((one) => one.place);
        const { fretCount } = instrumentOf(plain.instrument);
        for (const [index, spot] of places.entries())
          for (const by of [1, -1]) {
            const to = place(spot.string, spot.fret + by);
            if (to.fret < 0 || to.fret > fretCount) continue;
            changed += 1;
            const given = places.map((other, at) => (at === index ? to : other));
            // Over a range a pitch may lie on two strings, and one of them is enough.
            if (isStillWhole(plain, places, given)) continue;
            expect([plain, given, judge(plain, { places: given }).kind === 'right']).toEqual([
              plain,
              given,
              false,
            ]);
          }
      }),
      { numRuns: 300, seed },
    );
    expect(changed).toBeGreaterThan(1000);
  });
});

/** Whether the changed answer holds nothing new and every pitch still. */
function isStillWhole(exercise: Exercise, places: readonly Place[], given: readonly Place[]): boolean {
  const instrument = instrumentOf(exercise.instrument);
  const pitches = (spots: readonly Place[]) => new Set(spots.map((spot) => midiAt(instrument, spot)));
  const isNothingNew = given.every((spot) => places.some((other) => samePlace(other, spot)));
  return isNothingNew && pitches(given).size === pitches(places).size;
}

describe('JUDGE-5 and SLIP-4: any answer', () => {
  const text = ({ string, fret }: Place) => `${String(string)}:${String(fret)}`;

  test('the order of places and repetitions mean nothing, where no order is asked', () => {
    fc.assert(
      fc.property(
        anAnswered,
        fc.array(fc.nat(1000), { minLength: 120, maxLength: 120 }),
        ({ exercise, places }, dice) => {
          const order = places.map((spot, index) => ({ spot, at: dice[index] ?? 0 }));
          const mixed = order.sort((a, b) => a.at - b.at).map(({ spot }) => spot);
          const once = judge(exercise, { places });
          const again = judge(exercise, { places: [...mixed, ...mixed] });
          expect([exercise, places, mixed, again.kind, causesOf(again)]).toEqual([
            exercise,
            places,
            mixed,
            once.kind,
            causesOf(once),
          ]);
        },
      ),
      { numRuns: 1500, seed },
    );
  });

  test('every place is marked once, a correction leads from a place astray to one that is not there yet', () => {
    const causes = new Set<SlipCause>();
    fc.assert(
      fc.property(anAnswered, ({ exercise, places }) => {
        const verdict = judge(exercise, { places });
        if (verdict.kind === 'right') return;
        const given = [...new Set(places.map(text))].sort();
        const marked = verdict.marks.map((mark) => text(mark.place)).sort();
        if (exercise.kind !== 'name') expect([exercise, marked]).toEqual([exercise, given]);
        for (const spot of verdict.missing) expect(given).not.toContain(text(spot));
        for (const cause of causesOf(verdict)) causes.add(cause);
        if (verdict.kind !== 'slip') return;
        for (const { from, to } of verdict.corrections) {
          expect(verdict.marks.find((mark) => text(mark.place) === text(from))?.right).toBe(false);
          expect([exercise, places, given.includes(text(to))]).toEqual([exercise, places, false]);
        }
      }),
      { numRuns: 2500, seed },
    );
    expect(causes.size).toBeGreaterThan(18);
  });
});
