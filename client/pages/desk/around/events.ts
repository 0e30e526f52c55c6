import type { Chart, MapChart } from '../../../../shared/exercise/chart.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';

/** The teacher shows a chart, or walks through several. */
export class ShowEvent extends Event {
  static readonly kind = 'desk-show';
  readonly charts: readonly Chart[];
  constructor(charts: readonly Chart[]) {
    super(ShowEvent.kind);
    this.charts = charts;
  }
}

/** What can be done with what was found; null where it can't be done here. */
export interface Ways {
  readonly ask: ((exercise: Exercise) => void) | null;
  readonly show: ((charts: readonly Chart[]) => void) | null;
  /** `what` is said once it is in. */
  readonly take: ((exercises: readonly Exercise[], what: string) => void) | null;
  /** Likewise for maps, which can be shown and printed, not asked. */
  readonly takeMaps: ((maps: readonly MapChart[], what: string) => void) | null;
  /** What the buttons that take say. */
  readonly takeWords: string;
  readonly keyHidden: boolean;
}

export const noWays: Ways = {
  ask: null,
  show: null,
  take: null,
  takeMaps: null,
  takeWords: 'Into the plan',
  keyHidden: false,
};
