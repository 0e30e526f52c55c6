import { checkChart, type Chart } from '../../../shared/exercise/chart.ts';
import type { BuildExercise, ScaleExercise } from '../../../shared/exercise/exercise.ts';
import { proposalsFrom } from '../../../shared/exercise/proposals.ts';
import { mapWalk } from '../../../shared/exercise/walks.ts';
import { known } from '../../../shared/lib/assert.ts';
import { instrumentById, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { build, find, name } from '../../support/exercises.ts';

/** Charts of every kind, for what must hold of all of them. */

const chord = (
  form: BuildExercise['voicing'] & { kind: 'form' },
  quality: BuildExercise['quality'],
  string: number,
) => build('E', quality, { rootString: string as StringNumber, voicing: form });

/** Every form of the table. */
const forms: readonly Chart[] = formTable.flatMap(({ form, quality, rootStrings }) =>
  rootStrings.map((string) => chord({ kind: 'form', form, full: false }, quality, string)),
);

const instruments = ['guitar', 'bass-4', 'ukulele', 'guitar-7', 'guitar+capo=2', 'custom:D4-A3-D3'];

/** On each instrument what lies round the lowest E of its first strings, and a map of it. */
const onInstruments: readonly Chart[] = instruments.flatMap((id) => {
  const instrument = known(instrumentById(id), id);
  const root = known(parseNoteName('E'), 'E');
  const around = everyString(instrument, root).flatMap(([place]) =>
    place
      ? (
          [
            { kind: 'chord', quality: 'minor' },
            { kind: 'scale', tones: 'minor-pentatonic' },
          ] as const
        ).flatMap((wish) => proposalsFrom({ instrument, root, place }, wish).map(({ exercise }) => exercise))
      : [],
  );
  const layers = { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' } as const;
  return [...around, ...mapWalk({ instrument, root }, layers, { low: 0 as Fret, high: 7 as Fret })];
});

export const allCharts: readonly Chart[] = [
  ...forms,
  ...onInstruments,
  find('D'),
  find('C#', { strictness: 'anywhere', wanted: 'every' }),
  name('F#', 7),
  name('D', 6, { wanted: 'degree' }),
].filter((chart) => checkChart(chart).ok);

export const scales = allCharts.filter((chart): chart is ScaleExercise => chart.kind === 'scale');
