import { pitchClassOn } from '../theory/interval.ts';
import { scaleDegrees } from '../theory/chord.ts';
import {
  pitchClassAt,
  place,
  stringNumbers,
  type Fret,
  type FretRange,
  type Instrument,
} from '../theory/fretboard.ts';
import { pitchClass, type NoteName } from '../theory/pitch.ts';
import type { ScaleId } from '../theory/tables/scales.ts';
import type { Finger } from './exercise.ts';
import { hardnessOf, spotsOf, type Candidate, type Ground } from './ladder-ground.ts';

/** By custom the root of a minor scale lies under finger 1, that of a major one under finger 2. */
function usualFinger(scale: ScaleId): Finger {
  return scaleDegrees(scale).includes('b3') ? 1 : 2;
}

/** What is learnt after the scales that it is a change of. */
const later: Readonly<Partial<Record<ScaleId, number>>> = { dorian: 2, mixolydian: 2, 'harmonic-minor': 3 };

/** Each scale in the position round the root, under its usual finger or the little one. */
export function positions(ground: Ground, scales: readonly ScaleId[]): readonly Candidate[] {
  return scales.flatMap((scale) =>
    spotsOf(ground, scaleDegrees(scale)).flatMap(({ task, hardness }) =>
      [usualFinger(scale), 4 as const].map((rootFinger, index): Candidate => ({
        exercise: { kind: 'scale', ...task, scale, coverage: 'every-pitch', rootFinger },
        flavour: scale,
        hardness: hardness + (later[scale] ?? 0) + index,
      })),
    ),
  );
}

/** Each scale over the position round the root and the next one up the neck. */
export function twoPositions(ground: Ground, scales: readonly ScaleId[]): readonly Candidate[] {
  return scales.flatMap((scale) => {
    const asked = new Set<string>();
    const rootFinger = usualFinger(scale);
    return spotsOf(ground, scaleDegrees(scale)).flatMap(({ task, frets }) =>
      frets.flatMap((fret): Candidate[] => {
        const range = joined(ground.instrument, task.root, scale, fret - (rootFinger - 1));
        if (!range) return [];
        // Roots on two strings may lead to the same frets.
        const id = [task.root.letter, task.root.alteration, range.low].join();
        if (asked.has(id)) return [];
        asked.add(id);
        return [
          {
            exercise: {
              kind: 'scale',
              ...task,
              strictness: 'range',
              range,
              scale,
              coverage: 'every-pitch',
              rootFinger,
            },
            flavour: scale,
            hardness: hardnessOf(task.root, fret),
          },
        ];
      }),
    );
  });
}

/** Two neighbouring positions share a note on every string, so each string has three of a pentatonic. */
const notesAString = 3;

/** The frets from `low` on that hold two neighbouring positions: G minor pentatonic from fret 3 on, 3 to 8. */
function joined(instrument: Instrument, root: NoteName, scale: ScaleId, low: number): FretRange | undefined {
  if (low < 0) return undefined;
  const tones = new Set(scaleDegrees(scale).map((degree) => pitchClassOn(root, degree)));
  let high = low;
  for (const string of stringNumbers(instrument)) {
    const open = pitchClassAt(instrument, place(string, 0));
    let fret = low;
    for (let held = 0; held < notesAString; fret += 1) if (tones.has(pitchClass(open + fret))) held += 1;
    high = Math.max(high, fret - 1);
  }
  return high > instrument.fretCount ? undefined : { low: low as Fret, high: high as Fret };
}
