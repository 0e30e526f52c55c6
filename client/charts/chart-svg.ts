import { render, svg } from 'lit';
import { capital } from '../../shared/exercise/phrases.ts';
import type { Chart } from '../../shared/exercise/chart.ts';
import { known } from '../../shared/lib/assert.ts';
import { instrumentName } from '../../shared/theory/instrument.ts';
import { inkStyle } from '../fretboard/ink-style.ts';
import { instrumentOf, type ChartSettings } from './chart-marks.ts';
import { chartInWords, chartTitle } from './chart-words.ts';
import { mmPerUnit, picture } from './picture.ts';

const namespace = 'http://www.w3.org/2000/svg';
export const family = "'Rootcall Text', 'Source Sans 3', 'DejaVu Sans', sans-serif";

/** The charts as one standalone picture; `faces` is a style sheet that brings its fonts along. */
export function chartSvg(charts: readonly Chart[], settings: ChartSettings, faces = ''): string {
  const root = chartPicture(charts, settings);
  if (faces !== '') {
    const style = document.createElementNS(namespace, 'style');
    style.setAttribute('type', 'text/css');
    style.textContent = faces;
    root.querySelector('desc')?.after(style);
  }
  return svgText(root);
}

export function svgText(root: SVGSVGElement): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(root)}\n`;
}

/** The same as an element: black on white, all of its looks in attributes. */
export function chartPicture(charts: readonly Chart[], settings: ChartSettings): SVGSVGElement {
  const { naming } = settings;
  const { width, height, drawing } = picture(charts, settings);
  const mm = (units: number) => `${(units * mmPerUnit).toFixed(2)}mm`;
  const titles = charts.map((chart) => chartTitle(chart, naming));
  const words = charts.map(
    (chart, index) =>
      `${titles[index] ?? ''}, ${instrumentName(instrumentOf(chart), naming)}. ${chartInWords(chart, naming).map(capital).join('. ')}.`,
  );
  const box = document.createElement('div');
  render(
    svg`<svg version="1.1" width=${mm(width)} height=${mm(height)} viewBox=${`0 0 ${width.toFixed(2)} ${height.toFixed(2)}`}
      font-family=${family}><title>${titles.join(', ')}</title><desc>${words.join(' ')}</desc>
      <rect width="100%" height="100%" fill="#fff" /><g class="chart" font-weight="600">${drawing}</g></svg>`,
    box,
  );
  const root = known(box.querySelector('svg'), 'the picture');
  paint(root);
  tellPlaces(root);
  tidy(root);
  return root;
}

/** Half the height of capitals and figures, in their size. */
export const halfCapital = 0.33;

/** What `ink-style.ts` says with variables, in black on white. */
const white: ReadonlySet<string> = new Set(['paper', 'sheet', 'on-fill']);
const painted = /^(fill|stroke|stroke-.*|font-weight|text-anchor)$/;

/** Writes the engraved look into attributes, which every program reads. */
function paint(root: SVGSVGElement): void {
  const css = inkStyle.cssText.replace(/var\(--([\w-]+)\)/g, (_, name: string) =>
    white.has(name) ? '#fff' : '#000',
  );
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  for (const rule of sheet.cssRules) {
    if (!(rule instanceof CSSStyleRule)) continue;
    for (const element of root.querySelectorAll(rule.selectorText))
      for (const property of rule.style)
        if (painted.test(property)) element.setAttribute(property, rule.style.getPropertyValue(property));
  }
  // Few programs know how to set text on its middle.
  for (const text of root.querySelectorAll('text')) text.setAttribute('dy', `${String(halfCapital)}em`);
}

/** Each mark tells its place as its title. */
function tellPlaces(root: SVGSVGElement): void {
  for (const mark of root.querySelectorAll<SVGGElement>('[data-string]')) {
    const { string = '', fret = '' } = mark.dataset;
    const title = document.createElementNS(namespace, 'title');
    const at = fret === 'silent' ? 'silent' : fret === '0' ? 'open' : `fret ${fret}`;
    title.textContent = `string ${string}, ${at}`;
    mark.prepend(title);
    mark.removeAttribute('data-string');
    mark.removeAttribute('data-fret');
  }
}

/** Short numbers and colours, and nothing of how it was made. */
function tidy(root: SVGSVGElement): void {
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_COMMENT);
  const comments: Node[] = [];
  while (walker.nextNode()) comments.push(walker.currentNode);
  for (const comment of comments) comment.parentNode?.removeChild(comment);
  for (const element of root.querySelectorAll('*')) {
    element.removeAttribute('class');
    for (const { name, value } of element.attributes)
      element.setAttribute(
        name,
        value
          .replace(/\d+\.\d{3,}/g, (number) => String(Number(Number(number).toFixed(2))))
          .replace('rgb(0, 0, 0)', '#000')
          .replace('rgb(255, 255, 255)', '#fff'),
      );
  }
}
