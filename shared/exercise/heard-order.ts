import { pitchClass, type MidiNote } from '../theory/pitch.ts';
import type { ScaleExercise } from './exercise.ts';
import { semitonesTo, soundAt, soundOf } from './hearing.ts';
import { pickedOnce } from './order.ts';
import type { Target } from './targets.ts';
import type { HeardFault } from './verdict.ts';

/** What a line lacks and what is foreign to it, as sounds, against this right answer. */
interface Astray {
  readonly missing: readonly number[];
  readonly foreign: readonly number[];
  readonly target: Target | undefined;
}

/** The first note of the line that went otherwise, and what was expected there. */
export function firstAstray(
  exercise: ScaleExercise,
  pitches: readonly MidiNote[],
  astray: Astray,
): HeardFault {
  return inSequence(exercise, pitches, astray) ?? anywhere(exercise, pitches, astray);
}

/** Where the order says note by note what comes. */
function inSequence(
  exercise: ScaleExercise,
  pitches: readonly MidiNote[],
  { target }: Astray,
): HeardFault | undefined {
  if (!exercise.order || exercise.coverage === 'every-tone' || !target) return undefined;
  const rising = [...new Set(target.notes.map((note) => soundAt(exercise, note.place) as MidiNote))].sort(
    (a, b) => a - b,
  );
  const falling = rising.toReversed();
  const asked = { up: rising, down: falling, 'up-and-down': [...rising, ...falling.slice(1)] }[
    exercise.order
  ];
  const heard = pickedOnce(pitches);
  const at = Array.from({ length: Math.max(asked.length, heard.length) }, (_, index) => index).find(
    (index) => asked[index] !== heard[index],
  );
  if (at === undefined) return undefined;
  return line({ after: asked[at - 1], expected: asked[at], sounded: heard[at] });
}

/** The first foreign note and the missing one next to it, else the first that is missing. */
function anywhere(
  exercise: ScaleExercise,
  pitches: readonly MidiNote[],
  { missing, foreign }: Astray,
): HeardFault {
  const sounded = pitches.find((pitch) => foreign.includes(soundOf(exercise, pitch)));
  const isFree = exercise.coverage === 'every-tone';
  const reference = sounded ?? pitches[0];
  if (reference === undefined) return { kind: 'line' };
  // Where any octave will do, the missing tone is told in the one nearest to what was heard.
  const wanted = missing.map((sound) =>
    isFree ? reference + semitonesTo(pitchClass(reference), sound) : sound,
  );
  const [expected] =
    sounded === undefined
      ? wanted
      : wanted
          .filter((pitch) => Math.abs(pitch - sounded) <= 2)
          .sort((a, b) => Math.abs(a - sounded) - Math.abs(b - sounded));
  return line({ expected: expected as MidiNote | undefined, sounded });
}

function line(parts: {
  readonly after?: MidiNote | undefined;
  readonly expected: MidiNote | undefined;
  readonly sounded: MidiNote | undefined;
}): HeardFault {
  const { after, expected, sounded } = parts;
  return {
    kind: 'line',
    ...(after === undefined ? {} : { after }),
    ...(expected === undefined ? {} : { expected }),
    ...(sounded === undefined ? {} : { sounded }),
  };
}
