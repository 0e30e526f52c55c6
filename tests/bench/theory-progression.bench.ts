import { bench, describe } from 'vitest';
import { place, standardGuitar } from '../../shared/theory/fretboard.ts';
import { leastMovement, travelBetween, type Fingered } from '../../shared/theory/least-movement.ts';
import { formTable } from '../../shared/theory/tables/forms.ts';

/**
 * The least movement through 12 chords with 30 candidates each, real movable forms, against the least there is to do:
 * measuring the way between each two neighbours once. Only the ratio means anything from machine to machine.
 */
const chordCount = 12;
const candidateCount = 30;

function formOn(index: number, low: number): Fingered {
  const row = formTable[index % formTable.length];
  const strings = row?.frets.length ?? 0;
  const fingers = (row?.frets ?? []).flatMap((fret, at) =>
    fret === null ? [] : [{ place: place(strings - at, fret + low - 1), finger: row?.fingers[at] ?? 0 }],
  );
  return { fingers, cost: index % 7 };
}

/** Made anew, for what is worked out of a candidate is kept with it. */
const made = (): readonly (readonly Fingered[])[] =>
  Array.from({ length: chordCount }, (_, chord) =>
    Array.from({ length: candidateCount }, (_, index) =>
      formOn(chord + index, 1 + ((7 * index + chord) % 14)),
    ),
  );

const travel = (from: Fingered, to: Fingered) => travelBetween(standardGuitar, from, to);
/** Results are kept, so that nothing is optimised away. */
const sink: { value?: unknown } = {};

function everyWay(columns: readonly (readonly Fingered[])[]): void {
  let total = 0;
  for (const [index, column] of columns.entries())
    for (const from of columns[index - 1] ?? []) for (const to of column) total += travel(from, to);
  sink.value = total;
}

function middle(run: (columns: readonly (readonly Fingered[])[]) => void, runs = 31): number {
  const times = Array.from({ length: runs }, () => {
    const columns = made();
    const start = performance.now();
    run(columns);
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] ?? 0;
}

const least = (columns: readonly (readonly Fingered[])[]) => (sink.value = leastMovement(columns, travel));
const [whole, ways] = [middle(least), middle(everyWay)];
console.log(
  `least movement, 12 chords of 30: median ${whole.toFixed(2)} ms · ÷ every way once ${(whole / ways).toFixed(1)}`,
);

describe('12 chords with 30 candidates each', () => {
  bench('every way between neighbours once', () => {
    everyWay(made());
  });
  bench('least movement', () => {
    least(made());
  });
});
