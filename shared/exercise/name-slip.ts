import { pitchClassAt } from '../theory/fretboard.ts';
import { letters, octave, pitchClass, pitchClassOf, type NoteName } from '../theory/pitch.ts';
import { semitonesOf } from '../theory/interval.ts';
import type { Answer, Named } from './answer.ts';
import type { NameExercise } from './exercise.ts';
import { countedByTwo } from './hypotheses.ts';
import { stringNamed } from './name-strings.ts';
import { pitchClassNamed } from './right.ts';
import { instrumentOf } from './roots.ts';
import type { SlipCause, Verdict } from './verdict.ts';

/** Why a place was given another name; several causes that fit make it unclear. */
export function nameSlip(exercise: NameExercise, { named }: Answer): Verdict {
  const marks = [{ place: exercise.place, right: false }];
  const [cause, rival] = named ? causesOf(exercise, named) : [];
  if (cause && rival) return { kind: 'unclear', causes: [cause, rival], marks, missing: [] };
  const plain = named ? plainCause(exercise, named) : 'other-name';
  return { kind: 'slip', cause: cause ?? plain, marks, corrections: [], missing: [] };
}

/** The causes that say why, each of which alone gives this name. */
function causesOf(exercise: NameExercise, named: Named): readonly SlipCause[] {
  const isFrom = (cause: SlipCause) => stringNamed(exercise, named, cause) !== undefined;
  const isMapped = isFrom('low-string-map');
  const fits: readonly (readonly [SlipCause, boolean])[] = [
    ['low-string-map', isMapped],
    ['strings-reversed', isFrom('strings-reversed')],
    // Less likely than the map learnt first, which string 1 of a guitar shares with string 6.
    ['next-string', !isMapped && isFrom('next-string')],
    ['letters-two-frets', named.kind === 'note' && isCountedByTwo(exercise, named.note)],
    ['sharp-for-flat', named.kind === 'note' && isTurned(exercise, named.note)],
    ['major-for-minor', isThird(exercise, named, 'b3', '3')],
    ['minor-for-major', isThird(exercise, named, '3', 'b3')],
  ];
  return fits.filter(([, fit]) => fit).map(([cause]) => cause);
}

function plainCause(exercise: NameExercise, named: Named): SlipCause {
  const sounding = pitchClassAt(instrumentOf(exercise), exercise.place);
  const off = pitchClass(pitchClassNamed(exercise, named) - sounding);
  return off === 1 || off === octave - 1 ? 'one-fret-off' : 'other-name';
}

/** Whether two frets for every letter lead from the open string to this name. */
function isCountedByTwo(exercise: NameExercise, note: NoteName): boolean {
  const { string, fret } = exercise.place;
  const open = instrumentOf(exercise).openStrings[string - 1];
  return open !== undefined && countedByTwo(open, note) === fret % (2 * letters.length);
}

/** The right letter with the opposite accidental. */
function isTurned(exercise: NameExercise, { letter, alteration }: NoteName): boolean {
  if (alteration !== 1 && alteration !== -1) return false;
  const turned: NoteName = { letter, alteration: alteration === 1 ? -1 : 1 };
  return pitchClassOf(turned) === pitchClassAt(instrumentOf(exercise), exercise.place);
}

function isThird(exercise: NameExercise, named: Named, right: string, given: string): boolean {
  if (named.kind !== 'degree' || named.degree !== given) return false;
  const above = pitchClass(
    pitchClassAt(instrumentOf(exercise), exercise.place) - pitchClassOf(exercise.root),
  );
  return above === semitonesOf(right);
}
