import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { distinct, instrumentById, samePlace, standardGuitar } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { keyNote, namedNote, silentStrings } from '../../fretboard/key-notes.ts';
import type { NeckNote, NeckView } from '../../fretboard/state.ts';

/** The answer key as a chart: what sounds, and for a chord what stays silent. */
export function keyChart(exercise: Exercise, naming: NoteNaming): readonly NeckNote[] {
  if (exercise.kind === 'name') return [namedNote(exercise, naming)];
  const key = answerKey(exercise);
  const neck = instrumentById(exercise.instrument) ?? standardGuitar;
  return [...key.map(keyNote), ...silentStrings(neck, exercise, key)];
}

/** What was placed, and which of it was marked as the root, without a word of what is right. */
export function givenChart({ places, root }: Answer): readonly NeckNote[] {
  return distinct(places).map((place) => ({
    place,
    look: 'filled',
    root: root !== undefined && samePlace(place, root),
  }));
}

/** Upright as a chord chart, unless it would be too long for that. */
export function chartView(notes: readonly NeckNote[]): NeckView {
  const frets = notes.filter((note) => note.look !== 'muted').map((note) => note.place.fret);
  return Math.max(...frets, 0) - Math.min(...frets, 36) > 7 ? 'lying' : 'upright';
}
