import type { Chart } from '../../../../shared/exercise/chart.ts';
import { levelsOf } from '../../../../shared/exercise/levels.ts';
import type { PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { ChartView, Marks } from '../../../charts/chart-marks.ts';
import type { NeckView } from '../../../fretboard/state.ts';

/** Charts to learn from, empty charts to write into, or the plan's exercises to answer on paper. */
export type SheetKind = 'charts' | 'blank' | 'quiz';
export type Paper = 'a4' | 'letter';
export type Orientation = 'portrait' | 'landscape';
export type PerPage = 1 | 2 | 4 | 6 | 12;
export type Hand = 'right' | 'left';

/** How a teacher likes handouts. */
export interface SheetSettings {
  readonly kind: SheetKind;
  readonly paper: Paper;
  readonly orientation: Orientation;
  readonly perPage: PerPage;
  /** `both`: a left-handed copy follows. */
  readonly hands: Hand | 'both';
  readonly marks: Marks;
  readonly view: ChartView;
  /** A line of tablature below scales. */
  readonly tab: boolean;
  /** One sentence below each chart. */
  readonly explained: boolean;
  /** Lines to write on beside each chart. */
  readonly notes: boolean;
  readonly naming: NoteNaming | 'group';
  /** Empty charts: how they lie, the first fret, and how many. */
  readonly blankView: NeckView;
  readonly blankFrom: number;
  readonly blankFrets: number;
}

export const usualSettings: SheetSettings = {
  kind: 'charts',
  paper: 'a4',
  orientation: 'portrait',
  perPage: 6,
  hands: 'right',
  marks: 'degrees',
  view: 'auto',
  tab: false,
  explained: true,
  notes: false,
  naming: 'group',
  blankView: 'upright',
  blankFrom: 1,
  blankFrets: 5,
};

/** Something that can stand on the sheet. */
export interface SheetItem {
  readonly id: string;
  /** As its plan counts: "3", and "3b" for its second level; empty for what was added here. */
  readonly number: string;
  readonly chart: Chart;
  /** The teacher's own line below it; null for the one that is made. */
  readonly line: string | null;
  readonly chosen: boolean;
}

export const levelLetters = ['a', 'b', 'c'] as const;

/** Every level of every exercise, numbered as in the plan. */
export function itemsOf(exercises: readonly PlannedExercise[]): readonly SheetItem[] {
  return exercises.flatMap((planned, index) => {
    const levels = levelsOf(planned);
    return levels.map((chart, level) => {
      const letter = levels.length > 1 ? levelLetters[level] : undefined;
      const number = String(index + 1) + (letter ?? '');
      return { id: `${planned.id} ${number}`, number, chart, line: null, chosen: true };
    });
  });
}
