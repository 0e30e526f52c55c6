import { chartWordings } from '../../../shared/exercise/chart.ts';
import type { Exercise, NameExercise } from '../../../shared/exercise/exercise.ts';
import { namedText, rightName } from '../../../shared/exercise/name-words.ts';
import type { ChartsView } from '../../../shared/protocol/views.ts';
import { instrumentById } from '../../../shared/theory/fretboard.ts';
import { instrumentName } from '../../../shared/theory/instrument.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';

/** The heading over a chart, and the line that explains it. */
export function wordsOf(
  exercise: Exercise,
  naming: NoteNaming,
): { readonly title: string; readonly detail: string } {
  const { title, detail } = chartWordings(exercise)[naming];
  return { title, detail: exercise.kind === 'name' ? nameLine(exercise, naming) : detail };
}

function nameLine(exercise: NameExercise, naming: NoteNaming): string {
  const name = namedText(rightName(exercise), exercise.wanted, naming);
  const root = formatName(exercise.root, naming);
  switch (exercise.wanted) {
    case 'note':
      return `This place is ${name}.`;
    case 'interval':
      return `Above ${root}, this place is: ${name}.`;
    case 'degree':
      return `With ${root} as the root, this place is ${name}.`;
  }
}

/** What stands under the page's heading: the plan, the day and the instrument. */
export function aboutLine({ title, openedAt, instrument }: ChartsView, naming: NoteNaming): string {
  const day = new Date(openedAt).toLocaleDateString(undefined, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  });
  const neck = instrumentById(instrument);
  return [title ?? '', day, neck ? instrumentName(neck, naming) : '']
    .filter((part) => part !== '')
    .join(' · ');
}
