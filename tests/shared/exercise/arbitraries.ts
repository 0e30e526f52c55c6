import fc from 'fast-check';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise, Finger, Strictness, Voicing } from '../../../shared/exercise/exercise.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  instrumentById,
  isOnNeck,
  place,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { note, qualities, range, roots, scales } from './making.ts';

/** Any exercise and any answer, seeded by the test that draws them. */

export const seed = 20261125;

/** Every tuning of the table, with and without a capo. */
export const instrumentIds: readonly string[] = tuningIds.flatMap((id) => [id, `${id}+capo=3`]);

export const instrumentOf = (id: string): Instrument => known(instrumentById(id), id);

export const placesOn = ({ openStrings, fretCount }: Instrument): readonly Place[] =>
  openStrings.flatMap((_, index) =>
    Array.from({ length: fretCount + 1 }, (_unused, fret) => place(index + 1, fret)),
  );

const strictnesses: readonly Strictness[] = ['place', 'string', 'range', 'anywhere'];

/** Exercises of every kind on these instruments; about half of them can be asked. */
export function exerciseOn(ids: readonly string[]): fc.Arbitrary<Exercise> {
  return fc.constantFrom(...ids).chain((id) => {
    const { openStrings, fretCount } = instrumentOf(id);
    const string = fc.integer({ min: 1, max: openStrings.length }).map((number) => number as StringNumber);
    const task = fc
      .record({
        root: fc.constantFrom(...roots).map(note),
        rootString: string,
        strictness: fc.constantFrom(...strictnesses),
        low: fc.integer({ min: 0, max: fretCount - 1 }),
        frets: fc.integer({ min: 2, max: 12 }),
        isBounded: fc.boolean(),
      })
      .map(({ low, frets, isBounded, ...rest }) => {
        const isNeeded = rest.strictness === 'place' || rest.strictness === 'range' || isBounded;
        return {
          instrument: id,
          ...rest,
          range: isNeeded ? range(low, Math.min(fretCount, low + frets)) : null,
        };
      });
    const extras = fc.record({ marksRoot: fc.boolean(), asksFinger: fc.boolean() });
    const voicing: fc.Arbitrary<Voicing> = fc.oneof(
      fc.constant({ kind: 'any' as const }),
      fc
        .uniqueArray(string, { minLength: 3, maxLength: openStrings.length })
        .map((strings) => ({ kind: 'strings' as const, strings })),
    );
    const form = fc
      .tuple(fc.constantFrom(...formTable), fc.boolean(), fc.nat(2))
      .map(([row, full, index]) => ({
        quality: row.quality,
        rootString: (row.rootStrings[index % row.rootStrings.length] ?? 1) as StringNumber,
        voicing: { kind: 'form' as const, form: row.form, full },
      }));
    const chord = fc.record({ quality: fc.constantFrom(...qualities), voicing });
    const bass = fc.option(fc.constantFrom(...roots).map(note), { nil: undefined, freq: 4 });
    return fc.oneof(
      fc.tuple(task, fc.constantFrom('one', 'every')).map(([fields, wanted]): Exercise => ({
        kind: 'find',
        ...fields,
        wanted: wanted as 'one' | 'every',
      })),
      fc
        .tuple(task, fc.constantFrom('interval', 'degree'), fc.nat(fretCount))
        .map(([fields, wanted, fret]): Exercise => ({
          kind: 'name',
          ...fields,
          wanted: wanted as 'interval' | 'degree',
          place: place(fields.rootString, fret),
        })),
      fc
        .tuple(task, form, extras)
        .map(([fields, own, more]): Exercise => ({ kind: 'build', ...fields, ...own, ...more })),
      fc.tuple(task, chord, extras, bass).map(([fields, own, { marksRoot }, low]): Exercise => ({
        kind: 'build',
        ...fields,
        ...own,
        marksRoot,
        ...(low ? { bass: low } : {}),
      })),
      fc
        .record({
          scale: fc.constantFrom(...scales),
          coverage: fc.constantFrom('every-pitch', 'every-tone'),
          rootFinger: fc.constantFrom(1, 2, 3, 4),
          task,
        })
        .map(({ task: fields, scale, coverage, rootFinger }): Exercise => ({
          kind: 'scale',
          ...fields,
          scale,
          coverage: coverage as 'every-pitch' | 'every-tone',
          rootFinger: rootFinger as Finger,
        })),
    );
  });
}

/** An exercise that can be asked, on any instrument of the table. */
export const anExercise = exerciseOn(instrumentIds).filter((exercise) => checkExercise(exercise).ok);

/** A right answer with some of it left out, moved or added; near the border between right and not. */
export function nearKey(exercise: Exercise): fc.Arbitrary<readonly Place[]> {
  const instrument = instrumentOf(exercise.instrument);
  const key = answerKey(exercise).map((one) => one.place);
  const right = exercise.kind === 'find' && exercise.wanted !== 'every' ? key.slice(0, 1) : key;
  return fc
    .record({
      kept: fc.oneof(fc.constant(right), fc.subarray([...right], { minLength: 1 })),
      frets: fc.constantFrom(0, 0, 0, 1, -1, 3, -3, 5, 12),
      strings: fc.constantFrom(0, 0, 0, 0, 1, -1),
      moves: fc.array(fc.tuple(fc.nat(11), fc.constantFrom(1, -1, 2)), { maxLength: 2 }),
      added: fc.array(fc.constantFrom(...placesOn(instrument)), { maxLength: 1 }),
    })
    .map(({ kept, frets, strings, moves, added }) => {
      const moved = kept.map((spot, index) => {
        const by = moves.find(([at]) => at === index)?.[1] ?? 0;
        return place(spot.string + strings, spot.fret + frets + by);
      });
      return [...moved, ...added].filter((spot) => isOnNeck(instrument, spot));
    });
}

interface Answered {
  readonly exercise: Exercise;
  readonly places: readonly Place[];
}

/** Any exercise that can be asked, and an answer to it. */
export const anAnswered: fc.Arbitrary<Answered> = anExercise.chain((exercise) =>
  fc.record({
    exercise: fc.constant(exercise),
    places: fc.oneof(
      { arbitrary: nearKey(exercise), weight: 4 },
      {
        arbitrary: fc.array(fc.constantFrom(...placesOn(instrumentOf(exercise.instrument))), {
          maxLength: 8,
        }),
        weight: 1,
      },
    ),
  }),
);
