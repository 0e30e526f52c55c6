import type { Chart } from '../../shared/exercise/chart.ts';
import { placeText } from '../../shared/exercise/phrases.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { midiAt, type Place } from '../../shared/theory/fretboard.ts';
import { instrumentOf } from './chart-marks.ts';

/** What sounds together stands in one column. */
export type TabColumn = readonly Place[];

/** Whether the chart can be played from tablature: a chord at once, a scale or arpeggio note by note. */
export function hasTab({ kind }: Chart): boolean {
  return kind === 'build' || kind === 'scale';
}

/** The chart as tablature tells it: a scale from its lowest note up, of the same pitch the lower string first. */
export function tabColumns(chart: Chart, key: readonly KeyNote[]): readonly TabColumn[] {
  if (!hasTab(chart)) return [];
  const instrument = instrumentOf(chart);
  const places = key
    .map(({ place }) => place)
    .toSorted((a, b) => midiAt(instrument, a) - midiAt(instrument, b) || b.string - a.string);
  return chart.kind === 'build' ? [places] : places.map((place) => [place]);
}

/** Long ones go on in the next system; all are about as long. */
export function tabSystems(columns: readonly TabColumn[], most: number): readonly (readonly TabColumn[])[] {
  const systems = Math.max(1, Math.ceil(columns.length / Math.max(1, most)));
  const each = Math.ceil(columns.length / systems);
  return Array.from({ length: systems }, (_, index) => columns.slice(index * each, (index + 1) * each));
}

/** The tablature for whoever hears it. */
export function tabInWords(columns: readonly TabColumn[]): string {
  const words = columns.map((column) => column.map(placeText).join(' with '));
  return ['Tablature', ...words].join('; ');
}
