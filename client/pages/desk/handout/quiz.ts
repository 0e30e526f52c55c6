import { inputOf } from '../../../../shared/exercise/input.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { instrumentOf } from '../../../../shared/exercise/roots.ts';
import { wordingOf, type Wording } from '../../../../shared/exercise/wording.ts';
import type { Fret, FretRange } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { SheetItem } from './sheet.ts';

/** One exercise as it is asked on paper. Holds nothing that would give its answer away. */
export interface Question {
  readonly number: string;
  readonly words: Wording;
  /** Null where a name is to be written. */
  readonly window: FretRange | null;
  /** In millimetres; null where there is none. */
  readonly chartHeight: number | null;
  readonly instrument: Exercise['instrument'];
  readonly ordered: boolean;
  readonly asksFinger: boolean;
}

/** Room to write on each string, and for the numbers below them. */
const acrossString = 5;
const acrossBesides = 4.3;

/** Frets beyond those asked for in which a slip may land. */
const beyond = 7;
/** Fewer would look like a hint. */
const fewest = 12;

/**
 * The frets of the chart to be marked: from the nut, and by the words of the exercise alone. Where the words hold the
 * whole answer to a range, some frets beyond it; else the whole neck.
 */
export function quizWindow(exercise: Exercise): FretRange {
  const { fretCount } = instrumentOf(exercise);
  const { kind, strictness, range } = exercise;
  // `place` keeps its one fret in `range`: that is the answer.
  const isBound = strictness === 'range' || (kind === 'find' && strictness === 'string');
  const last = isBound && range ? Math.max(fewest, range.high + beyond) : fretCount;
  return { low: 1 as Fret, high: Math.min(last, fretCount) as Fret };
}

export function questionOf({ number, chart }: SheetItem, naming: NoteNaming): readonly Question[] {
  if (chart.kind === 'map') return [];
  const input = inputOf(chart);
  const isPlaces = input.kind === 'places';
  return [
    {
      number,
      words: wordingOf(chart, naming),
      window: isPlaces ? quizWindow(chart) : null,
      chartHeight: isPlaces ? instrumentOf(chart).openStrings.length * acrossString + acrossBesides : null,
      instrument: chart.instrument,
      ordered: isPlaces && input.ordered,
      asksFinger: isPlaces && input.asksFinger,
    },
  ];
}
