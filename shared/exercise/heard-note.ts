import { distinct, isOnNeck, midiAt, place } from '../theory/fretboard.ts';
import { pitchClass, pitchClassOf, type MidiNote } from '../theory/pitch.ts';
import type { Answer } from './answer.ts';
import type { FindExercise } from './exercise.ts';
import { semitonesTo } from './hearing.ts';
import { isTapAsked, tapMarks, tapped } from './heard-taps.ts';
import { arePlacesRight } from './right.ts';
import { acceptedRoots, instrumentOf, isRootBound } from './roots.ts';
import { slipIn } from './slips.ts';
import type { HeardFault, SlipCause, Verdict } from './verdict.ts';

/**
 * The places of the notes that were heard, where a tap says on which string they lay: the pitch gives the fret.
 * Undefined without the tap, or where the string doesn't have the pitch.
 */
export function placesHeard(
  exercise: FindExercise,
  answer: Answer,
  pitches: readonly MidiNote[],
): Answer['places'] | undefined {
  const tap = tapped(exercise, answer, 'root');
  if (!tap) return undefined;
  const instrument = instrumentOf(exercise);
  const open = midiAt(instrument, place(tap.string, 0));
  const spots = pitches.map((pitch) => place(tap.string, pitch - open));
  return spots.every((spot) => isOnNeck(instrument, spot)) ? distinct(spots) : undefined;
}

/** The verdict on a note that was heard (SPEC HEARD-3). */
export function judgeHeardNote(
  exercise: FindExercise,
  answer: Answer,
  pitches: readonly MidiNote[],
): Verdict {
  const isAsked = isTapAsked(exercise, 'root');
  const roots = acceptedRoots(exercise).map((spot) => midiAt(instrumentOf(exercise), spot));
  const isRoot = (pitch: MidiNote) => pitchClass(pitch) === pitchClassOf(exercise.root);
  const spots = placesHeard(exercise, answer, pitches);
  if (spots && arePlacesRight(exercise, spots)) return { kind: 'right' };
  if (!isAsked && pitches.every(isRoot)) return { kind: 'right' };
  const astray = pitches.find((pitch) => (isAsked ? !roots.includes(pitch) : !isRoot(pitch)));
  const marks = tapMarks(exercise, answer);
  const heard = astray === undefined ? ({ kind: 'line' } as const) : faultOf(roots, astray);
  if (spots) {
    // Pitch and string are the place: whatever slip leads there is named.
    const verdict = slipIn(exercise, { places: spots });
    if (verdict.kind === 'unclear') return { ...verdict, marks, missing: [], heard };
    if (verdict.kind === 'slip') return { ...verdict, marks, corrections: [], missing: [], heard };
  }
  const cause =
    astray !== undefined
      ? causeByEar(exercise, astray)
      : !tapped(exercise, answer, 'root')
        ? 'untapped'
        : // The string that was tapped doesn't have the note.
          isRootBound(exercise)
          ? 'right-note-wrong-string'
          : 'outside-range';
  return { kind: 'slip', cause, marks, corrections: [], missing: [], heard };
}

function faultOf(roots: readonly MidiNote[], sounded: MidiNote): HeardFault {
  const [expected] = roots.toSorted((a, b) => Math.abs(a - sounded) - Math.abs(b - sounded));
  return { kind: 'line', sounded, ...(expected === undefined ? {} : { expected }) };
}

/** What the pitch alone says. */
function causeByEar({ root }: FindExercise, sounded: MidiNote): SlipCause {
  const by = semitonesTo(pitchClassOf(root), pitchClass(sounded));
  if (by === 0) return 'wrong-octave';
  if (Math.abs(by) === 1) return 'one-fret-off';
  return root.alteration !== 0 && by === -2 * root.alteration ? 'sharp-for-flat' : 'other-place';
}
