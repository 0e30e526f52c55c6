import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { Point } from './geometry.ts';
import { gap } from './ink-frame.ts';
import { lozenge } from './lozenge.ts';
import type { NeckHeat, NeckNote } from './state.ts';

/** Marks on a chart. Shape says first what each is, tone second, hue last: all hold in greyscale. */

/** The size of a text inside a mark and the most it may be, in radii, by its letters; "sol♯" and "Fisis" are long. */
const insideSizes: readonly (readonly [usual: number, most: number])[] = [
  [1.15, 1.35],
  [1.15, 1.35],
  [1, 1.15],
  [0.78, 0.92],
  [0.66, 0.74],
];

/** Turns the wanted size of a text into drawing units, never smaller on the screen than its surface allows. */
export class Scale {
  readonly #least: number;

  /** `least` in px; `perUnit`: px of the screen for one unit of the drawing, null while it isn't known. */
  constructor(least: number, perUnit: number | null) {
    this.#least = perUnit === null || perUnit <= 0 ? 0 : least / perUnit;
  }

  /** A text beside the strings, of so many gaps. */
  text(gaps: number): number {
    return Math.max(gaps * gap, Math.min(this.#least, 0.52 * gap));
  }

  /** A text inside a mark of this radius. */
  inside(radius: number, text: string): number {
    const [usual, most] = insideSizes[text.length] ?? [0.56, 0.62];
    return Math.max(usual * radius, Math.min(this.#least, most * radius));
  }

  /** Whether a text inside a mark of this radius can be read at all. */
  isReadable(radius: number): boolean {
    return this.inside(radius, 'R') > 0.6 * this.#least;
  }
}

function label({ x, y }: Point, radius: number, text: string | undefined, look: string, scale: Scale) {
  if (text === undefined || text === '') return nothing;
  return svg`<text class=${look} x=${x} y=${y} font-size=${scale.inside(radius, text)}>${text}</text>`;
}

/** A ring or, for the root, an open lozenge. */
function ring(at: Point, radius: number, note: NeckNote, look: string, stroke: number) {
  return note.root === true
    ? svg`<path class=${look} d=${lozenge(at, radius * 1.34)} stroke-width=${stroke} />`
    : svg`<circle class=${look} cx=${at.x} cy=${at.y} r=${radius} stroke-width=${stroke} />`;
}

function struckRing({ x, y }: Point, r: number): SVGTemplateResult {
  const reach = r * 0.92;
  return svg`<circle class="slip" cx=${x} cy=${y} r=${r * 0.9} stroke-width=${r * 0.13} />
    <line class="slip" x1=${x - reach} y1=${y + reach * 0.84} x2=${x + reach} y2=${y - reach * 0.84}
      stroke-width=${r * 0.19} stroke-linecap="round" />`;
}

/** A note on its fret. Where the root's letter would be too small, its shape says it. */
export function noteMark(at: Point, r: number, whole: NeckNote, scale: Scale): SVGTemplateResult {
  const note = whole.root === true && !scale.isReadable(r) ? { ...whole, label: undefined } : whole;
  switch (note.look) {
    case 'slip':
      return struckRing(at, r);
    case 'expected':
      return svg`${ring(at, r * 0.92, note, 'expected', r * 0.17)}${label(at, r * 0.9, note.label, 'felt', scale)}`;
    case 'asked':
      // Alone on its chart: it may be larger than its neighbours could.
      return svg`${ring(at, r * 1.45, note, 'asked', r * 0.17)}${label(at, r * 1.45, '?', 'plain', scale)}`;
    case 'pentatonic':
      return svg`${ring(at, r * 0.92, note, 'sounding', r * 0.11)}${label(at, r * 0.92, note.label, 'plain', scale)}`;
    case 'scale':
      if (note.label === undefined) return svg`<circle class="filled" cx=${at.x} cy=${at.y} r=${r * 0.3} />`;
      return svg`<circle class="bare" cx=${at.x} cy=${at.y} r=${r * 0.7} />${label(at, r * 0.8, note.label, 'plain', scale)}`;
    case 'filled':
    case 'open':
    case 'muted':
      if (note.optional === true) {
        return svg`${ring(at, r * 0.94, note, 'optional', r * 0.12)}${label(at, r * 0.9, note.label, 'plain', scale)}`;
      }
      return svg`${
        note.root === true
          ? svg`<path class="filled" d=${lozenge(at, r * 1.38)} />`
          : svg`<circle class="filled" cx=${at.x} cy=${at.y} r=${r} />`
      }${label(at, r, note.label, 'inside', scale)}`;
  }
}

/** When a note came: a small figure below its mark, which grows away from it. */
export function visitsMark({ x, y }: Point, r: number, note: NeckNote, scale: Scale): SVGTemplateResult {
  return svg`<text class="visits" x=${x + 0.74 * r} y=${y + 1.06 * r} font-size=${scale.text(0.27)}>${(note.visits ?? []).join('·')}</text>`;
}

/** What stands by the nut: X for a silent string, O for an open one, as on every printed chord chart [common]. */
export function openMark(at: Point, r: number, note: NeckNote, scale: Scale): SVGTemplateResult {
  const small = r * 0.8;
  if (note.look === 'muted') {
    const arm = 0.17 * gap;
    return svg`<path class="cross" stroke-width=${0.05 * gap}
      d="M${at.x - arm} ${at.y - arm}L${at.x + arm} ${at.y + arm}M${at.x - arm} ${at.y + arm}L${at.x + arm} ${at.y - arm}" />`;
  }
  if (note.look === 'slip' || note.look === 'expected' || note.look === 'asked' || note.root === true)
    return noteMark(at, small, note, scale);
  const look = note.optional === true ? 'optional' : 'sounding';
  return svg`${ring(at, small, note, look, r * 0.11)}${label(at, small, note.label, 'plain', scale)}`;
}

const heatBands = [0.25, 0.5, 0.75] as const;

/** How many answered here: size and tone grow with the share, and the number is always said. */
export function heatDisc(at: Point, r: number, heat: NeckHeat, scale: Scale): SVGTemplateResult {
  const radius = r * (0.62 + 0.38 * Math.sqrt(heat.share));
  const band = heatBands.filter((bound) => heat.share >= bound).length + 1;
  const outline = r * 0.15;
  const expected = heat.root
    ? svg`<path class="expected" d=${lozenge(at, r * 1.62)} stroke-width=${outline} />`
    : svg`<circle class="expected" cx=${at.x} cy=${at.y} r=${r * 1.2} stroke-width=${outline} />`;
  const text = String(heat.count);
  return svg`${heat.expected ? expected : nothing}${
    heat.count === 0
      ? nothing
      : svg`<circle class=${`heat heat-${String(band)}`} cx=${at.x} cy=${at.y} r=${radius} stroke-width=${0.03 * gap} />`
  }${label(at, (heat.count === 0 ? r : radius) * 1.05, text, heat.count === 0 ? 'plain' : `on-heat-${String(band)}`, scale)}`;
}

/** From the slip to where it should be, on the side where fewer marks are in the way. */
export function correctionSlur(
  from: Point,
  to: Point,
  r: number,
  others: readonly Point[],
  middle: Point,
): SVGTemplateResult {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return svg``;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const bulge = Math.min(1.5 * r, Math.max(0.55 * r, 0.3 * length));
  const sides = [-1, 1].map((side) => {
    const out = { x: -along.y * side, y: along.x * side };
    const at = (origin: Point, outwards: number, onwards: number) => ({
      x: origin.x + out.x * outwards + along.x * onwards,
      y: origin.y + out.y * outwards + along.y * onwards,
    });
    const top = at({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, r + bulge, 0);
    const clear = Math.min(2.2 * r, ...others.map((other) => Math.hypot(other.x - top.x, other.y - top.y)));
    // Where both sides are as free, the one nearer to the chart's middle: the slur stays on the paper.
    const inwards = Math.hypot(middle.x - top.x, middle.y - top.y);
    return { at, clear, inwards };
  });
  const [best] = [...sides].sort((a, b) => b.clear - a.clear || a.inwards - b.inwards);
  if (best === undefined) return svg``;
  const start = best.at(from, 1.02 * r, 0.34 * r);
  const end = best.at(to, 1.2 * r, -0.42 * r);
  const first = best.at(from, 1.02 * r + bulge, Math.min(0.9 * r, length * 0.3));
  const second = best.at(to, 1.2 * r + bulge * 0.72, -Math.min(1.3 * r, length * 0.4));
  const points = [start, first, second, end].map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`);
  return svg`<path class="slur" pathLength="1" stroke-width=${0.15 * r}
      d=${`M${points[0] ?? ''}C${points[1] ?? ''} ${points[2] ?? ''} ${points[3] ?? ''}`} />
    <path class="slur-head" d=${arrowHead(second, end, r * 0.52)} />`;
}

/** A small barbed head, its tip a little beyond the end of the line. */
function arrowHead(before: Point, end: Point, size: number): string {
  const length = Math.hypot(end.x - before.x, end.y - before.y) || 1;
  const on = { x: (end.x - before.x) / length, y: (end.y - before.y) / length };
  const at = (onwards: number, aside: number) =>
    `${(end.x + on.x * onwards - on.y * aside).toFixed(2)} ${(end.y + on.y * onwards + on.x * aside).toFixed(2)}`;
  return `M${at(size * 0.45, 0)}L${at(-size * 0.75, size * 0.55)}L${at(-size * 0.35, 0)}L${at(-size * 0.75, -size * 0.55)}Z`;
}
