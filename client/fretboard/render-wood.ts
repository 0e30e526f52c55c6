import { nothing, svg, type SVGTemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import {
  stringNumbers,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../shared/theory/fretboard.ts';
import {
  boardMargin,
  fingerAlong,
  gapAt,
  gapsFromMiddle,
  markRadius,
  onScreen,
  pointOf,
  wireAlong,
  type NeckFrame,
  type Point,
} from './geometry.ts';
import { nutLength } from './wood-frame.ts';
import { fretsShown, holds, isWound, stringWidth, type WoodMarks } from './state.ts';

/** A neck of wood, to be touched. Colours come from wood-style.ts; here is only where things lie. */

/** Widths of the guitar's strings 1 and 6, in px. */
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

function inlays(frame: NeckFrame, instrument: Instrument): readonly SVGTemplateResult[] {
  return instrument.marks
    .filter((fret) => fret >= frame.window.low && fret <= frame.window.high)
    .flatMap((fret) => {
      const along = fingerAlong(
        frame,
        fretsShown(frame.window).find((shown) => shown === fret) ?? frame.window.low,
      );
      const length = gapAt(frame, along) * 0.27;
      return (instrument.doubleMarks.includes(fret) ? [-1, 1] : [0]).map((gaps) =>
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
  const radius = openRadius(frame);
  const numbers = stringNumbers(instrument).map((string) => {
    const place: Place = { string, fret: fretsShown(frame.window)[0] ?? frame.window.low };
    const point = openPoint(frame, string, marks);
    const on = holds(marks.places, place);
    const name = marks.stringNames[string - 1];
    return svg`<g class=${`open ${on ? 'on' : ''} ${on && marks.sent ? 'sent' : ''}`}>
      <circle cx=${point.x} cy=${point.y} r=${radius} />
      ${on ? svg`<circle class="rim" cx=${point.x} cy=${point.y} r=${radius - 1.7} />` : nothing}
      <text x=${point.x} y=${point.y} font-size=${Math.min(15, radius * 1.1)}>${string}</text>
      ${
        name === undefined
          ? nothing
          : svg`<text class="name" x=${point.x - (frame.view === 'lying' ? radius + 9 : 0)}
              y=${point.y - (frame.view === 'upright' ? radius + 8 : 0)} font-size="12">${name}</text>`
      }
    </g>`;
  });
  return svg`<rect class="head" rx="9" x=${Math.min(a.x, b.x)} y=${Math.min(a.y, b.y)}
      width=${Math.abs(a.x - b.x)} height=${Math.abs(a.y - b.y)} />${numbers}`;
}

function openRadius(frame: NeckFrame): number {
  return Math.min(15.5, frame.gapAtNut * 0.36, (frame.openLength - 7) / 2);
}

function openPoint(frame: NeckFrame, string: StringNumber, marks: WoodMarks): Point {
  const lower = marks.stringNames.length > 0 ? 7 : 0;
  return onScreen(frame, frame.openAlong + lower, gapsFromMiddle(frame, string));
}

function fretNumbers(frame: NeckFrame, instrument: Instrument): readonly SVGTemplateResult[] {
  const upright = frame.view === 'upright';
  const beside = onScreen(frame, frame.end, (frame.strings - 1) / 2 + boardMargin, 17);
  return fretsShown(frame.window)
    .filter((fret) => fret > 0)
    .map((fret) => {
      const point = onScreen(frame, fingerAlong(frame, fret), 0);
      return svg`<text class=${instrument.marks.includes(fret) ? 'fret marked' : 'fret'}
        x=${upright ? beside.x : point.x} y=${upright ? point.y : beside.y}
        font-size=${instrument.marks.includes(fret) ? 16 : 14}>${fret}</text>`;
    });
}

/** A bone disc; once it is with the class, a brass rim and a pin. */
function disc(frame: NeckFrame, place: Place, sent: boolean): SVGTemplateResult {
  const { x, y } = pointOf(frame, place);
  const r = markRadius(frame);
  return svg`<g class=${sent ? 'disc sent' : 'disc'}>
    <circle class="cast" cx=${x + 0.6} cy=${y + 1.8} r=${r + 0.8} />
    <circle class="bone" cx=${x} cy=${y} r=${r} />
    <circle class="rim" cx=${x} cy=${y} r=${sent ? r * 0.87 : r * 0.8} stroke-width=${sent ? r * 0.26 : 1.4} />
    ${sent ? svg`<circle class="pin" cx=${x} cy=${y} r=${r * 0.24} />` : nothing}
  </g>`;
}

function fingerRing(frame: NeckFrame, place: Place, marks: WoodMarks): SVGTemplateResult {
  const open = place.fret === 0;
  const { x, y } = open ? openPoint(frame, place.string, marks) : pointOf(frame, place);
  const r = open ? openRadius(frame) + 2.5 : markRadius(frame) * 1.28;
  return svg`<circle class="finger" cx=${x} cy=${y} r=${r} />`;
}

export function renderWood(frame: NeckFrame, instrument: Instrument, marks: WoodMarks): SVGTemplateResult {
  const fromNut = frame.window.low === 1;
  const boardFrom = fromNut ? frame.start - 2 : frame.start - 5;
  const shown = marks.places.filter(({ fret }) => fret >= frame.window.low && fret <= frame.window.high);
  return svg`<svg class="wood-neck" aria-hidden="true" width=${frame.width} height=${frame.height}>
    ${gradients(frame)}
    ${board(frame, boardFrom)}
    ${inlays(frame, instrument)}
    ${fromNut ? svg`<polygon fill="url(#shade)" points=${span(frame, frame.start, frame.start + 12)} />` : nothing}
    ${wires(frame)}
    ${head(frame, instrument, marks)}
    ${fromNut ? svg`<polygon class="nut" points=${span(frame, frame.start - nutLength, frame.start, 0.5)} />` : nothing}
    ${strings(frame, instrument, fromNut ? frame.openLength - 1 : boardFrom)}
    ${fretNumbers(frame, instrument)}
    ${repeat(
      shown,
      ({ string, fret }) => `${String(string)}-${String(fret)}`,
      (place) => disc(frame, place, marks.sent),
    )}
    ${marks.pressed.map((place) => fingerRing(frame, place, marks))}
  </svg>`;
}
