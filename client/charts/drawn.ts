import { chartNotes, type Chart } from '../../shared/exercise/chart.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import type { Fret, FretRange, Instrument } from '../../shared/theory/fretboard.ts';
import type { InkRows } from '../fretboard/ink-frame.ts';
import { rowsFor } from '../fretboard/render-ink.ts';
import { cropTo, fewestFrets, notedPlaces, type NeckNote, type NeckView } from '../fretboard/state.ts';
import { chartMarks, chartView, instrumentOf, type ChartView, type MarkSettings } from './chart-marks.ts';

/** A chart with all that its drawing needs. */
export interface DrawnChart {
  readonly chart: Chart;
  readonly key: readonly KeyNote[];
  readonly notes: readonly NeckNote[];
  readonly instrument: Instrument;
  readonly view: NeckView;
  readonly window: FretRange;
  readonly rows: InkRows;
}

/** Charts that stand in a row: all the same way, with as many frets and the same rows, so that they can be compared. */
export function drawnCharts(
  charts: readonly Chart[],
  settings: MarkSettings & { readonly view: ChartView },
  keys: readonly (readonly KeyNote[])[] = charts.map(chartNotes),
): readonly DrawnChart[] {
  const drawn = charts.map((chart, index) => {
    const key = keys[index] ?? [];
    const notes = chartMarks(chart, settings, key);
    const instrument = instrumentOf(chart);
    const window = chart.kind === 'map' ? fretted(chart.range) : cropTo(instrument, notedPlaces(notes));
    return { chart, key, notes, instrument, window };
  });
  const frets = Math.max(fewestFrets, ...drawn.map(({ window }) => window.high - window.low + 1));
  const isLong = drawn.some(({ notes }) => chartView(notes) === 'lying');
  const view = settings.view === 'auto' ? (isLong ? 'lying' : 'upright') : settings.view;
  const needed = drawn.map(({ notes }) => rowsFor(notes));
  const rows = {
    openRow: needed.some(({ openRow }) => openRow),
    fingerRow: needed.some(({ fingerRow }) => fingerRow),
  };
  return drawn.map((chart) => ({
    ...chart,
    view,
    rows,
    window: widened(chart.window, frets, chart.instrument),
  }));
}

/** Open strings stand by the nut, in no fret of the window. */
function fretted({ low, high }: FretRange): FretRange {
  return { low: Math.max(1, low) as Fret, high };
}

/** The window with so many frets, as far as the neck has them. */
function widened(window: FretRange, frets: number, { fretCount }: Instrument): FretRange {
  const high = Math.min(fretCount, Math.max(window.high, window.low + frets - 1));
  return { low: Math.max(1, Math.min(window.low, high - frets + 1)) as Fret, high: high as Fret };
}
