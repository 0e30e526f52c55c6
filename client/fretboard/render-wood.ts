import { nothing, svg, type SVGTemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { stringNumbers, type Instrument } from '../../shared/theory/fretboard.ts';
import {
  boardMargin,
  fingerAlong,
  gapAt,
  gapsFromMiddle,
  onScreen,
  wireAlong,
  type NeckFrame,
  type Point,
} from './geometry.ts';
import { nutLength } from './wood-frame.ts';
import { askedMark, discs, fingerRing, heardMarksIn, openCircle } from './wood-marks.ts';
import { fretsShown, isWound, stringWidth, type WoodMarks } from './state.ts';

/** A neck of wood, to be touched. Colours come from wood-style.ts; here is only where things lie. */

/** Widths of strings tuned to E4 and E2, in px. */
const stringWidths = [1.5, 4] as const;

function corner({ x, y }: Point): string {
  return `${x.toFixed(2)},${y.toFixed(2)}`;
}

/** A shape over all strings, `beyond` px wider than the board on each side. */
function span(frame: NeckFrame, from: number, to: number, beyond = 0): string {
  const half = (frame.strings - 1) / 2 + boardMargin;
  return [
    onScreen(frame, from, -half, -beyond),
    onScreen(frame, from, half, beyond),
    onScreen(frame, to, half, beyond),
    onScreen(frame, to, -half, -beyond),
  ]
    .map(corner)
    .join(' ');
}

function line(from: Point, to: Point, look: string, width: number): SVGTemplateResult {
  return svg`<line class=${look} x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y} stroke-width=${width} />`;
}

/** Gradients run over the strings, or along them, whichever way the neck is turned. */
function gradients(frame: NeckFrame): SVGTemplateResult {
  const half = (frame.strings - 1) / 2 + boardMargin;
  const one = onScreen(frame, frame.end, -half);
  const other = onScreen(frame, frame.end, half);
  const upright = frame.view === 'upright';
  const x2 = upright ? other.x : one.x;
  const y2 = upright ? one.y : other.y;
  const nut = onScreen(frame, frame.start, 0);
  const below = onScreen(frame, frame.start + 12, 0);
  return svg`<defs>
    <linearGradient id="board" gradientUnits="userSpaceOnUse" x1=${one.x} y1=${one.y} x2=${x2} y2=${y2}>
      <stop offset="0" class="edge" /><stop offset="0.09" class="wood" /><stop offset="0.42" class="lit" />
      <stop offset="0.62" class="lit" /><stop offset="0.91" class="wood" /><stop offset="1" class="edge" />
    </linearGradient>
    <linearGradient id="shade" gradientUnits="userSpaceOnUse"
      x1=${nut.x} y1=${nut.y} x2=${upright ? nut.x : below.x} y2=${upright ? below.y : nut.y}>
      <stop offset="0" class="dark" /><stop offset="1" class="clear" />
    </linearGradient>
  </defs>`;
}

/** Where the grain runs, in shares of the board's width and length: fixed, so that no two necks differ. */
const grain = [
  [-0.44, 0.05, 0.62],
  [-0.31, 0.3, 0.98],
  [-0.17, 0.02, 0.4],
  [-0.06, 0.52, 1],
  [0.09, 0.12, 0.7],
  [0.23, 0.44, 0.93],
  [0.37, 0.0, 0.34],
  [0.46, 0.38, 0.88],
] as const;

function board(frame: NeckFrame, from: number): SVGTemplateResult {
  const at = (share: number) => from + (frame.end - from) * share;
  const streaks = grain.map(([across, low, high], index) => {
    const gaps = across * (frame.strings - 1 + boardMargin);
    const look = index % 2 === 0 ? 'grain' : 'grain fair';
    return line(onScreen(frame, at(low), gaps), onScreen(frame, at(high), gaps), look, 1.2);
  });
  return svg`<polygon class="board" fill="url(#board)" points=${span(frame, from, frame.end)} />${streaks}`;
}

/** How far from the middle, in gaps, the two bars of a double mark lie: between strings, however many there are. */
function doubleInlay(strings: number): number {
  if (strings % 2 === 0) return 1;
  return strings > 4 ? 1.5 : 0.5;
}

function inlays(frame: NeckFrame, instrument: Instrument): readonly SVGTemplateResult[] {
  return instrument.marks
    .filter((fret) => fret >= frame.window.low && fret <= frame.window.high)
    .flatMap((fret) => {
      const along = fingerAlong(
        frame,
        fretsShown(frame.window).find((shown) => shown === fret) ?? frame.window.low,
      );
      const length = gapAt(frame, along) * 0.27;
      const pair = doubleInlay(frame.strings);
      return (instrument.doubleMarks.includes(fret) ? [-pair, pair] : [0]).map((gaps) =>
        line(onScreen(frame, along, gaps, -length), onScreen(frame, along, gaps, length), 'inlay', 4.6),
      );
    });
}

function wires(frame: NeckFrame): readonly SVGTemplateResult[] {
  const half = (frame.strings - 1) / 2 + boardMargin;
  const first = frame.window.low === 1 ? 1 : frame.window.low - 1;
  const drawn: SVGTemplateResult[] = [];
  for (let fret = first; fret <= frame.window.high; fret += 1) {
    const along = wireAlong(frame, fret);
    const wire = (shift: number, look: string, width: number, inset: number) =>
      line(
        onScreen(frame, along + shift, -half, inset),
        onScreen(frame, along + shift, half, -inset),
        look,
        width,
      );
    drawn.push(wire(1, 'wire-shade', 4.4, 0.8), wire(0, 'wire', 2.6, 1.4), wire(-0.6, 'wire-light', 0.8, 2));
  }
  return drawn;
}

function strings(frame: NeckFrame, instrument: Instrument, from: number): readonly SVGTemplateResult[] {
  return stringNumbers(instrument).map((string) => {
    const gaps = gapsFromMiddle(frame, string);
    const width = stringWidth(instrument, string, stringWidths);
    const [head, end] = [onScreen(frame, from, gaps), onScreen(frame, frame.end, gaps)];
    // The light comes from the upper left, however the neck lies.
    const off = width * 0.4 + 1;
    const lie = ({ x, y }: Point) => (frame.view === 'upright' ? { x: x + off, y } : { x, y: y + off });
    return svg`${line(lie(head), lie(end), 'string-cast', width)}
      ${line(head, end, isWound(instrument, string) ? 'string-core' : 'string', width)}
      ${isWound(instrument, string) ? line(head, end, 'string winding', width) : nothing}`;
  });
}

/** The head's own parts: its wood, and a circled number for each string, which is also the open string's target. */
function head(frame: NeckFrame, instrument: Instrument, marks: WoodMarks): SVGTemplateResult {
  const half = (frame.strings - 1) / 2 + boardMargin;
  const to = frame.window.low === 1 ? frame.openLength + nutLength / 2 : frame.openLength;
  const a = onScreen(frame, 0, -half, -4);
  const b = onScreen(frame, to, half, 4);
  const fret = fretsShown(frame.window)[0] ?? frame.window.low;
  return svg`<rect class="head" rx="9" x=${Math.min(a.x, b.x)} y=${Math.min(a.y, b.y)}
      width=${Math.abs(a.x - b.x)} height=${Math.abs(a.y - b.y)} />${stringNumbers(instrument).map((string) =>
        openCircle(frame, { string, fret }, marks),
      )}`;
}

/** A capo lies where the nut would, over the strings, and says at which fret of the bare neck it sits. */
function capo(frame: NeckFrame, { capo: fret }: Instrument): SVGTemplateResult {
  const half = (frame.strings - 1) / 2 + boardMargin;
  const along = frame.start - nutLength / 2;
  const bar = (look: string, width: number, shift = 0) =>
    line(onScreen(frame, along + shift, -half, -1), onScreen(frame, along + shift, half, 1), look, width);
  const { x, y } = onScreen(frame, along, 0);
  const beside = numbersBeside(frame);
  const upright = frame.view === 'upright';
  return svg`<g class="capo">${bar('pad', 15)}${bar('bar', 9, -1)}${bar('light', 1.6, -3)}${
    upright
      ? svg`<text x=${beside.x} y=${y - 20} font-size="12">Capo</text>
          <text x=${beside.x} y=${y - 6} font-size="12">${fret}</text>`
      : svg`<text x=${x} y=${beside.y} font-size="12">Capo ${fret}</text>`
  }</g>`;
}

/** Where the fret numbers stand, beside the board. */
function numbersBeside(frame: NeckFrame): Point {
  return onScreen(frame, frame.end, (frame.strings - 1) / 2 + boardMargin, 17);
}

function fretNumbers(frame: NeckFrame, instrument: Instrument): readonly SVGTemplateResult[] {
  const upright = frame.view === 'upright';
  const beside = numbersBeside(frame);
  return fretsShown(frame.window)
    .filter((fret) => fret > 0)
    .map((fret) => {
      const point = onScreen(frame, fingerAlong(frame, fret), 0);
      return svg`<text class=${instrument.marks.includes(fret) ? 'fret marked' : 'fret'}
        x=${upright ? beside.x : point.x} y=${upright ? point.y : beside.y}
        font-size=${instrument.marks.includes(fret) ? 16 : 14}>${fret}</text>`;
    });
}

export function renderWood(frame: NeckFrame, instrument: Instrument, marks: WoodMarks): SVGTemplateResult {
  const fromNut = frame.window.low === 1;
  const boardFrom = fromNut ? frame.start - 2 : frame.start - 5;
  const capoed = instrument.capo > 0;
  return svg`<svg class="wood-neck" aria-hidden="true" width=${frame.width} height=${frame.height}>
    ${gradients(frame)}
    ${board(frame, boardFrom)}
    ${inlays(frame, instrument)}
    ${fromNut ? svg`<polygon fill="url(#shade)" points=${span(frame, frame.start, frame.start + 12)} />` : nothing}
    ${wires(frame)}
    ${head(frame, instrument, marks)}
    ${fromNut && !capoed ? svg`<polygon class="nut" points=${span(frame, frame.start - nutLength, frame.start, 0.5)} />` : nothing}
    ${strings(frame, instrument, fromNut ? frame.openLength - 1 : boardFrom)}
    ${fromNut && capoed ? capo(frame, instrument) : nothing}
    ${fretNumbers(frame, instrument)}
    ${heardMarksIn(frame, marks)}
    ${repeat(
      discs(frame, marks),
      ([key]) => key,
      ([, mark]) => mark,
    )}
    ${marks.asked ? askedMark(frame, marks.asked) : nothing}
    ${marks.pressed.map((place) => fingerRing(frame, place, marks))}
  </svg>`;
}
