import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { distinct, samePlace } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { chartMarks } from '../../charts/chart-marks.ts';
import type { NeckNote } from '../../fretboard/state.ts';

/** The answer key as a chart: what sounds, and for a chord what stays silent. */
export function keyChart(exercise: Exercise, naming: NoteNaming): readonly NeckNote[] {
  return chartMarks(exercise, { marks: 'degrees', naming });
}

/** What was placed, and which of it was marked as the root, without a word of what is right. */
export function givenChart({ places, root }: Answer): readonly NeckNote[] {
  return distinct(places).map((place) => ({
    place,
    look: 'filled',
    root: root !== undefined && samePlace(place, root),
  }));
}
