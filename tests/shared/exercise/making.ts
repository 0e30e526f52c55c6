import type {
  BuildExercise,
  Exercise,
  FindExercise,
  Finger,
  ScaleExercise,
  Strictness,
} from '../../../shared/exercise/exercise.ts';
import type { KeyNote, SlipCause } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  place,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { midiOf, parseNoteName, type NoteName } from '../../../shared/theory/pitch.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

/** Exercises, answers and slips for tests; the neck in plain numbers, apart from the code under test. */

export const fretCount = 19;
export const openMidi = [64, 59, 55, 50, 45, 40] as const;
export const midi = (spot: Place) => (openMidi[spot.string - 1] ?? 0) + spot.fret;
export const note = (text: string): NoteName => known(parseNoteName(text), text);
export const range = (low: number, high: number): FretRange => ({ low: low as Fret, high: high as Fret });
export const qualities = Object.keys(chordTable) as ChordQuality[];
/** One of each build, for walks that can't take all of them. */
export const commonQualities: readonly ChordQuality[] = [
  'major',
  'minor',
  'dim',
  'aug',
  'sus4',
  '5',
  '7',
  'maj7',
  'm7',
  'm6',
  '9',
];
export const commonScales: readonly ScaleId[] = [
  'major',
  'natural-minor',
  'major-pentatonic',
  'minor-pentatonic',
  'dorian',
  'blues',
];
export const scales = Object.keys(scaleTable) as ScaleId[];
export const roots = ['C', 'C#', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'];

export const everyPlace: readonly Place[] = openMidi.flatMap((_, index) =>
  Array.from({ length: fretCount + 1 }, (_unused, fret) => place(index + 1, fret)),
);

/** Every place of a neck and what it sounds, counted from the open strings. */
export const everyPlaceOf = ({ openStrings, fretCount: frets }: Instrument) =>
  openStrings.flatMap((open, index) =>
    Array.from({ length: frets + 1 }, (_, fret) => ({
      place: place(index + 1, fret),
      midi: midiOf(open) + fret,
    })),
  );

/** Finger on the root by custom: 2 in major, 1 in minor. */
export const usualFinger = (scale: ScaleId): Finger => (scale.startsWith('major') ? 2 : 1);

interface Bound {
  readonly strictness: Strictness;
  readonly range: FretRange | null;
}
const bounds: readonly Bound[] = [
  { strictness: 'string', range: null },
  { strictness: 'string', range: range(1, 12) },
  { strictness: 'place', range: range(0, 11) },
  { strictness: 'range', range: range(2, 9) },
  { strictness: 'anywhere', range: null },
];

/** `strings(3, 2, 1)`, as many as are named. */
export const strings = <const N extends readonly number[]>(...numbers: N) =>
  numbers as unknown as { readonly [Index in keyof N]: StringNumber };

/** Every kind of exercise for these roots, on each root string, under each strictness; some can't be asked. */
export function exercisesFor(
  rootNames: readonly string[],
  qualities: readonly ChordQuality[] = commonQualities,
  scales: readonly ScaleId[] = commonScales,
): readonly Exercise[] {
  return rootNames.flatMap((name) =>
    [1, 2, 3, 4, 5, 6].flatMap((string) =>
      bounds.flatMap((bound): Exercise[] => {
        const task = { instrument: 'guitar', root: note(name), rootString: string as StringNumber, ...bound };
        const found: FindExercise = { kind: 'find', ...task };
        const forms = formTable
          .filter((row) => row.rootStrings.includes(string))
          .flatMap((row) =>
            [false, true].map((full): BuildExercise => ({
              kind: 'build',
              ...task,
              quality: row.quality,
              voicing: { kind: 'form', form: row.form, full },
            })),
          );
        const voicings = qualities.flatMap((quality): BuildExercise[] => [
          { kind: 'build', ...task, quality, voicing: { kind: 'strings', strings: strings(3, 2, 1) } },
          { kind: 'build', ...task, quality, voicing: { kind: 'strings', strings: strings(4, 3, 2) } },
          { kind: 'build', ...task, quality, voicing: { kind: 'any' } },
        ]);
        const played = scales.flatMap((scale) =>
          (['every-pitch', 'every-tone'] as const).map((coverage): ScaleExercise => ({
            kind: 'scale',
            ...task,
            scale,
            coverage,
            rootFinger: usualFinger(scale),
          })),
        );
        return [found, ...forms, ...voicings, ...played];
      }),
    ),
  );
}

/** One right answer out of a key: a note that is found needs one place. */
export function oneAnswer(exercise: Exercise, key: readonly KeyNote[]): readonly KeyNote[] {
  return exercise.kind === 'find' ? key.slice(0, 1) : key;
}

export interface MadeSlip {
  readonly cause: SlipCause;
  readonly places: readonly Place[];
}

/** What each slip makes of a right answer, in the words of its definition; only what lies on the neck. */
export function slipsOf(exercise: Exercise, key: readonly KeyNote[]): readonly MadeSlip[] {
  const right = key.map((one) => one.place);
  const shift = (frets: number, which: (spot: Place, index: number) => boolean = () => true) =>
    right.map((spot, index) => (which(spot, index) ? place(spot.string, spot.fret + frets) : spot));
  const isFind = exercise.kind === 'find';
  const made: MadeSlip[] = [
    { cause: 'one-fret-off', places: shift(1) },
    { cause: 'nut-as-one', places: shift(-1) },
    { cause: 'wrong-octave', places: shift(12) },
    { cause: 'wrong-octave', places: shift(-12) },
    { cause: 'strings-reversed', places: right.map((spot) => place(7 - spot.string, spot.fret)) },
    { cause: 'next-string', places: right.map((spot) => place(spot.string + 1, spot.fret)) },
    { cause: 'next-string', places: right.map((spot) => place(spot.string - 1, spot.fret)) },
  ];
  if (!isFind) {
    // A chord without a third or a perfect fifth has no relative, and that of a mode lies elsewhere.
    const hasMinorThird = key.some((one) => one.degree === 'b3');
    if (
      (exercise.kind === 'scale' && !['dorian', 'mixolydian'].includes(exercise.scale)) ||
      (exercise.kind === 'build' &&
        !['dim', 'aug', '5', 'sus2', 'sus4', '7sus4', 'm7b5', 'dim7'].includes(exercise.quality))
    )
      made.push({ cause: 'relative-root', places: shift(hasMinorThird ? 3 : -3) });
    const frets = right.map((spot) => spot.fret);
    const ends = Math.min(...frets) + Math.max(...frets);
    made.push({ cause: 'frets-mirrored', places: right.map((spot) => place(spot.string, ends - spot.fret)) });
  }
  const { letter, alteration } = exercise.root;
  if (alteration !== 0) made.push({ cause: 'sharp-for-flat', places: shift(-2 * alteration) });
  const first = right[0];
  if (isFind && first) {
    const marks = [3, 5, 7, 9, 12, 15, 17, 19];
    for (const frets of [1, -1])
      if (marks.includes(first.fret + frets) && !marks.includes(first.fret))
        made.push({ cause: 'mark-drift', places: shift(frets) });
    const open = 'EBGDAE'.charAt(first.string - 1);
    const steps = ('CDEFGAB'.indexOf(letter) - 'CDEFGAB'.indexOf(open) + 7) % 7;
    made.push({ cause: 'letters-two-frets', places: [place(first.string, 2 * steps + alteration)] });
  }
  const root = key.find((one) => one.degree === '1' && one.place.string === exercise.rootString)?.place;
  if (root && root.string !== 6 && root.string !== 1)
    for (let fret = 0; fret <= fretCount; fret += 1)
      if ((40 + fret - midi(root)) % 12 === 0)
        made.push({ cause: 'low-string-map', places: shift(fret - root.fret) });
  if (right.some((spot) => spot.string > 2) && right.some((spot) => spot.string <= 2)) {
    made.push({ cause: 'short-step', places: shift(1, (spot) => spot.string > 2) });
    made.push({ cause: 'short-step', places: shift(-1, (spot) => spot.string <= 2) });
  }
  if (exercise.kind === 'build' && ['major', 'minor', '7', 'm7'].includes(exercise.quality)) {
    const isMinor = exercise.quality.startsWith('m') && exercise.quality !== 'major';
    made.push({
      cause: isMinor ? 'major-for-minor' : 'minor-for-major',
      places: shift(isMinor ? 1 : -1, (_, index) => key[index]?.degree === (isMinor ? 'b3' : '3')),
    });
  }
  const isChart = exercise.kind === 'build' && exercise.voicing.kind !== 'any';
  if (right.length > 1)
    for (const [index, one] of key.entries())
      if (!one.optional)
        made.push({
          cause: isChart ? 'sounding-string-muted' : 'missing-tone',
          places: right.filter((_, i) => i !== index),
        });
  const near = right[0]?.fret ?? 0;
  for (let string = 1; string <= 6; string += 1)
    if (right.every((spot) => spot.string !== string))
      made.push({
        cause: isChart ? 'muted-string-sounded' : 'extra-tone',
        places: [...right, place(string, near + 1)],
      });
  return made.filter(({ places }) =>
    places.every(({ string, fret }) => string >= 1 && string <= 6 && fret >= 0 && fret <= fretCount),
  );
}
