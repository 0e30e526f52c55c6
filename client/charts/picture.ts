import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { Chart } from '../../shared/exercise/chart.ts';
import { onScreen } from '../fretboard/geometry.ts';
import { gap, inkFrame, type InkRequest } from '../fretboard/ink-frame.ts';
import { Scale } from '../fretboard/ink-marks.ts';
import { inkDrawing } from '../fretboard/render-ink.ts';
import { drawable, type ChartSettings } from './chart-marks.ts';
import { chartTitle } from './chart-words.ts';
import { drawnCharts, type DrawnChart } from './drawn.ts';
import { renderTab } from './render-tab.ts';
import { hasTab, tabColumns } from './tab.ts';

/** Charts laid out as one picture on paper, in a chart's own units. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly drawing: SVGTemplateResult;
}

/** Of paper, for one unit of the drawing: strings lie 6 mm apart, so that four chords fit side by side on A4. */
export const mmPerUnit = 6 / gap;
/** No text on paper is smaller, as far as there is room: 7 points. */
const leastTextMm = 2.5;
/** What A4 and Letter both hold between usual margins. */
const widest = 182 / mmPerUnit;
/** Tablature of one chart alone may be wider than the chart, up to here. */
const widestTab = 26 * gap;

const margin = 0.3 * gap;
const titleSize = 0.62 * gap;
const titleRoom = 1.15 * gap;
const between = 0.7 * gap;

export function picture(charts: readonly Chart[], settings: ChartSettings): Picture {
  const least = charts.length === 1 ? widestTab : 0;
  const drawn = drawnCharts(charts, settings).map((chart) => single(chart, settings, least));
  const lines = inLines(drawn);
  const placed: SVGTemplateResult[] = [];
  let y = margin;
  for (const line of lines) {
    let x = margin;
    for (const { width, drawing } of line) {
      placed.push(svg`<g transform=${`translate(${x.toFixed(2)} ${y.toFixed(2)})`}>${drawing}</g>`);
      x += width + between;
    }
    y += Math.max(...line.map(({ height }) => height)) + between;
  }
  return {
    width: Math.max(...lines.map(lengthOf)) + 2 * margin,
    height: y - between + margin,
    drawing: svg`${placed}`,
  };
}

/** As many side by side as paper holds. */
function inLines(pictures: readonly Picture[]): readonly (readonly Picture[])[] {
  const lines: Picture[][] = [];
  for (const next of pictures) {
    const line = lines.at(-1);
    if (line && lengthOf([...line, next]) + 2 * margin <= widest) line.push(next);
    else lines.push([next]);
  }
  return lines;
}

function lengthOf(line: readonly Picture[]): number {
  return line.reduce((sum, { width }) => sum + width, (line.length - 1) * between);
}

/** One chart with its title above and its tablature below, which has at least so much room. */
function single(drawn: DrawnChart, { leftHanded, naming, tab }: ChartSettings, tabRoom: number): Picture {
  const { chart, key, instrument, notes, rows, view, window } = drawn;
  const strings = instrument.openStrings.length;
  const request: InkRequest = { view, leftHanded, strings, window, named: false, aspect: null, ...rows };
  const frame = inkFrame(request);
  const marks = { notes, corrections: [], heat: [], highlightString: null, stringNames: [] };
  const columns = tabColumns(chart, key);
  const line = tab && hasTab(chart) ? renderTab(columns, strings, Math.max(frame.width, tabRoom)) : null;
  const width = Math.max(frame.width, line?.width ?? 0);
  const left = (width - frame.width) / 2;
  // Over the strings, not over the fret numbers beside them.
  const middle = view === 'upright' ? left + onScreen(frame, 0, 0).x : width / 2;
  const title = drawable(chartTitle(chart, naming));
  // A long title is set smaller rather than cut.
  const size = Math.min(titleSize, frame.width / (0.54 * title.length));
  const top = titleRoom + frame.height + 0.5 * gap;
  return {
    width,
    height: line ? top + line.height : titleRoom + frame.height,
    drawing: svg`<text class="plain" x=${middle} y=${titleRoom / 2} font-size=${size}>${title}</text>
      <g transform=${`translate(${left.toFixed(2)} ${titleRoom.toFixed(2)})`}>${inkDrawing(frame, instrument, marks, new Scale(leastTextMm, mmPerUnit))}</g>
      ${line ? svg`<g transform=${`translate(0 ${top.toFixed(2)})`}>${line.drawing}</g>` : nothing}`,
  };
}
