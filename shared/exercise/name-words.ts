import { intervalName } from '../theory/interval-names.ts';
import { degreeSign, formatName, type NoteNaming } from '../theory/naming.ts';
import type { Named } from './answer.ts';
import type { NameExercise } from './exercise.ts';
import { toneAt } from './roots.ts';

/** "F♯", "minor third" or "♭3". */
export function namedText(named: Named, wanted: NameExercise['wanted'], naming: NoteNaming): string {
  if (named.kind === 'note') return formatName(named.note, naming);
  return wanted === 'interval' ? intervalName(named.degree) : degreeSign(named.degree);
}

/** The right name of the place. */
export function rightName(exercise: NameExercise): Named {
  if (exercise.wanted === 'note') return { kind: 'note', note: exercise.root };
  return { kind: 'degree', degree: toneAt(exercise, exercise.place) ?? '1' };
}
