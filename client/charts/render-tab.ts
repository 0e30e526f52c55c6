import { nothing, svg, type SVGTemplateResult } from 'lit';
import { gap } from '../fretboard/ink-frame.ts';
import { tabSystems, type TabColumn } from './tab.ts';

/** Tablature as it is commonly written: a line for each string, string 1 on top, for either hand. In a chart's units. */

const lineGap = 0.4 * gap;
const figure = 0.44 * gap;
/** With room for a line between the figures. */
const columnWidths = { one: 0.7 * gap, two: 0.9 * gap };
const clefWidth = 0.7 * gap;
const systemGap = 0.8 * gap;
/** Half a figure, above and below the outer lines. */
const margin = figure / 2;

export interface Tab {
  readonly width: number;
  readonly height: number;
  readonly drawing: SVGTemplateResult;
}

export function renderTab(columns: readonly TabColumn[], strings: number, width: number): Tab {
  const isHigh = columns.flat().some(({ fret }) => fret > 9);
  const columnWidth = columnWidths[isHigh ? 'two' : 'one'];
  const most = Math.floor((width - clefWidth - 0.3 * gap) / columnWidth);
  const systems = tabSystems(columns, most);
  const staff = (strings - 1) * lineGap;
  const each = staff + systemGap;
  const longest = Math.max(...systems.map((system) => system.length));
  // A few notes need no long line.
  const end = Math.min(width, clefWidth + (Math.max(longest, 2) + 0.3) * columnWidth);
  return {
    width: end,
    height: systems.length * each - systemGap + 2 * margin,
    drawing: svg`${systems.map((system, index) => {
      const top = margin + index * each;
      const isLast = index === systems.length - 1;
      return svg`${Array.from({ length: strings }, (_, line) => stroke(0, top + line * lineGap, end, top + line * lineGap))}
        ${isLast ? stroke(end, top, end, top + staff) : nothing}
        ${clef(top, staff)}
        ${system.map((column, at) => figures(column, clefWidth + (at + 0.6) * columnWidth, top))}`;
    })}`,
  };
}

function stroke(x1: number, y1: number, x2: number, y2: number): SVGTemplateResult {
  return svg`<line class="ink" x1=${x1} y1=${y1} x2=${x2} y2=${y2} stroke-width=${0.025 * gap} />`;
}

/** The letters of the tablature clef, one below the other over the middle of the staff. */
function clef(top: number, staff: number): readonly SVGTemplateResult[] {
  const size = Math.min(0.56 * gap, staff / 2.6);
  return [...'TAB'].map(
    (letter, index) =>
      svg`<text class="plain" x=${0.35 * gap} y=${top + staff / 2 + (index - 1) * size} font-size=${size}>${letter}</text>`,
  );
}

/** The frets, each on its string's line, which makes way for it. */
function figures(column: TabColumn, x: number, top: number): readonly SVGTemplateResult[] {
  return column.map(({ string, fret }) => {
    const y = top + (string - 1) * lineGap;
    const width = (0.3 + 0.56 * String(fret).length) * figure;
    return svg`<g data-string=${string} data-fret=${fret}><rect class="bare" x=${x - width / 2} y=${y - lineGap * 0.45}
      width=${width} height=${lineGap * 0.9} /><text class="plain" x=${x} y=${y} font-size=${figure}>${fret}</text></g>`;
  });
}
