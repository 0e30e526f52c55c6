import { bench, describe } from 'vitest';
import type { BuildExercise } from '../../shared/exercise/exercise.ts';
import { generate, rungs, type Wish } from '../../shared/exercise/generate.ts';
import { judge } from '../../shared/exercise/judge.ts';
import { known } from '../../shared/lib/assert.ts';
import { place, type Place, type StringNumber } from '../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../shared/theory/tables/chords.ts';
import chords from '../references/theory/chords.json' with { type: 'json' };
import { middle, report, sink, type Least } from './timing.ts';

/**
 * A verdict with its whole diagnosis, over every reference chord of six strings, against the least there is to do:
 * comparing two sets of pitch classes. `first` is an exercise that was never judged before, `again` one of a class
 * whose other students have answered it. Only the ratios mean anything from machine to machine.
 */
interface Case {
  readonly id: string;
  readonly exercise: BuildExercise;
  readonly places: readonly Place[];
}

const open = [40, 45, 50, 55, 59, 64];
const cases: readonly Case[] = chords.cases
  .filter((one) => one.tuning.name === 'standard' && one.capo === 0)
  .flatMap((one) =>
    (['any', 'strings'] as const).map((kind): Case => {
      const places = one.frets.flatMap((fret, index) => (fret === null ? [] : [place(6 - index, fret)]));
      return {
        id: `${one.id} ${kind}`,
        places,
        exercise: {
          kind: 'build',
          instrument: 'guitar',
          root: known(parseNoteName(one.expectChord.root), one.id),
          rootString: 2 as StringNumber,
          strictness: 'anywhere',
          range: null,
          quality: one.expectChord.quality as ChordQuality,
          voicing: kind === 'any' ? { kind } : { kind, strings: places.map((spot) => spot.string) },
        },
      };
    }),
  );
const pitchClasses = cases.map(({ places }) =>
  places.map((spot) => ((open[6 - spot.string] ?? 0) + spot.fret) % 12),
);

function compareSets(): void {
  for (const [index, own] of pitchClasses.entries()) {
    const other = new Set(pitchClasses[(index + 1) % pitchClasses.length]);
    sink.value = new Set(own).size === other.size && own.every((one) => other.has(one));
  }
}
const wish: Wish = {
  instrument: 'guitar',
  rung: 'triads',
  roots: [],
  rootStrings: [2 as StringNumber],
  range: null,
  count: 5,
  seed: 1,
};

const sets: Least = { name: 'set comparison', time: middle(compareSets) / cases.length };
for (const one of cases) judge(one.exercise, { places: one.places });
const slipped = cases.filter(({ exercise, places }) => judge(exercise, { places }).kind !== 'right');
const first = ({ exercise, places }: Case) => middle(() => (sink.value = judge({ ...exercise }, { places })));
const again = ({ exercise, places }: Case) => middle(() => (sink.value = judge(exercise, { places })));
report('every answer, first', cases, first, sets);
report('every answer, again', cases, again, sets);
report('slips alone, first', slipped, first, sets);
report('slips alone, again', slipped, again, sets);
for (const rung of rungs)
  console.log(
    `plan of five, ${rung}: ${middle(() => (sink.value = generate({ ...wish, rung }))).toFixed(0)} µs`,
  );

describe(`${String(cases.length)} reference answers of six strings`, () => {
  bench('comparing two sets of pitch classes', compareSets);
  bench('verdict with diagnosis, again', () => {
    for (const one of cases) sink.value = judge(one.exercise, { places: one.places });
  });
  bench('verdict with diagnosis, first', () => {
    for (const one of cases) sink.value = judge({ ...one.exercise }, { places: one.places });
  });
});

describe('a plan of five', () => {
  let seed = 0;
  bench('comparing sets, as often as above', compareSets);
  for (const rung of rungs)
    bench(rung, () => {
      seed += 1;
      sink.value = generate({ ...wish, rung, seed });
    });
});
