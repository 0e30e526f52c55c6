import { nothing, svg, type SVGTemplateResult } from 'lit';
import {
  samePlace,
  stringNumbers,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../shared/theory/fretboard.ts';
import {
  fingerAlong,
  fretSpan,
  gapsFromMiddle,
  markRadius,
  onScreen,
  pointOf,
  wireAlong,
  type Point,
} from './geometry.ts';
import { correctionSlur, heatDisc, noteMark, openMark, visitsMark, type Scale } from './ink-marks.ts';
import { lozenge } from './lozenge.ts';
import { gap, type InkFrame, type InkRows } from './ink-frame.ts';
import { fretsShown, stringWidth, type InkMarks, type NeckNote } from './state.ts';

/** A neck engraved on paper, to be read. Colours come from ink-style.ts. */

/** Thickness of strings tuned to E4 and E2, in gaps. */
const stringWidths = [0.022 * gap, 0.068 * gap] as const;

export function isShown(window: FretRange, place: Place): boolean {
  return place.fret === 0 || (place.fret >= window.low && place.fret <= window.high);
}

/** Notes that stand by the nut rather than on a fret. */
export function isByNut(note: NeckNote): boolean {
  return note.look === 'muted' || note.place.fret === 0;
}

/** Which rows beside the frets these notes need. */
export function rowsFor(notes: readonly NeckNote[]): InkRows {
  return {
    openRow: notes.some(isByNut),
    fingerRow: notes.some((note) => note.finger !== undefined && onlyFingered(notes, note.place.string)),
  };
}

function line(from: Point, to: Point, look: string, width: number): SVGTemplateResult {
  return svg`<line class=${look} x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y} stroke-width=${width} />`;
}

function grid(frame: InkFrame, instrument: Instrument): readonly SVGTemplateResult[] {
  const half = (frame.strings - 1) / 2;
  const over = (along: number, look: string, width: number, beyond = 0) =>
    line(onScreen(frame, along, -half, -beyond), onScreen(frame, along, half, beyond), look, width);
  const drawn: SVGTemplateResult[] = [];
  for (let fret = frame.window.low - 1; fret <= frame.window.high; fret += 1) {
    if (fret === 0 && frame.hasNut) continue;
    drawn.push(over(wireAlong(frame, fret), 'ink', 0.028 * gap));
  }
  // A chart that starts higher lets its strings begin before the first wire: the neck goes on there.
  const begin = frame.hasNut ? frame.start : frame.start - 0.14 * gap;
  for (const string of stringNumbers(instrument)) {
    const gaps = gapsFromMiddle(frame, string);
    const width = stringWidth(instrument, string, stringWidths);
    drawn.push(line(onScreen(frame, begin, gaps), onScreen(frame, frame.end, gaps), 'ink', width));
  }
  if (frame.hasNut)
    drawn.push(
      instrument.capo > 0
        ? over(frame.start - 0.08 * gap, 'capo', 0.26 * gap, 0.2 * gap)
        : over(frame.start - 0.08 * gap, 'ink nut-bar', 0.16 * gap, 0.03 * gap),
    );
  return drawn;
}

/**
 * Where a capo sits on the bare neck: by its bar or, on a chart that starts higher, by the string numbers.
 * Towards the head, where no fret number can be in the way.
 */
function capoLabel(
  frame: InkFrame,
  { capo }: Instrument,
  highlight: InkMarks['highlightString'],
  scale: Scale,
) {
  if (capo === 0) return nothing;
  const size = scale.text(0.3);
  const along = frame.view === 'lying' || frame.hasNut ? frame.start - 0.08 * gap : frame.digitsAlong;
  const lying = frame.view === 'lying';
  // Away from the strings, however large the text has to be.
  const clear = highlight === frame.strings ? 1.25 * digitRadius(scale) : 0;
  const beside = lying
    ? frame.gutter
    : ((frame.strings - 1) / 2) * gap + Math.max(0.52 * gap, clear + 0.2 * gap);
  const { x, y } = onScreen(frame, along, 0, beside);
  const look = `gutter marked ${frame.leftHanded ? 'begins' : 'ends'}`;
  const text = (words: string, lines: number) =>
    svg`<text class=${look} x=${x} y=${y + lines * size} font-size=${size}>${words}</text>`;
  if (lying) return text(`Capo ${String(capo)}`, 0);
  const up = frame.hasNut ? 0.9 : 0;
  return svg`${text('Capo', -0.5 - up)}${text(String(capo), 0.5 - up)}`;
}

/** Of the circle round a string's number. */
function digitRadius(scale: Scale): number {
  return 0.84 * scale.text(0.32);
}

function stringDigits(frame: InkFrame, instrument: Instrument, marks: InkMarks, scale: Scale) {
  const size = scale.text(0.32);
  const r = digitRadius(scale);
  return stringNumbers(instrument).map((string) => {
    const { x, y } = onScreen(frame, frame.digitsAlong, gapsFromMiddle(frame, string));
    const name = marks.stringNames[string - 1];
    const above = onScreen(frame, frame.digitsAlong - r - 0.26 * gap, gapsFromMiddle(frame, string));
    const lit = marks.highlightString === string;
    return svg`${
      lit
        ? svg`<path class="brass-fill" d=${lozenge({ x, y }, r * 1.36)} />`
        : svg`<circle class="digit-ring" cx=${x} cy=${y} r=${r} stroke-width=${0.026 * gap} />`
    }<text class=${lit ? 'digit lit' : 'digit'} x=${x} y=${y} font-size=${size}>${string}</text>
    ${name === undefined ? nothing : svg`<text class="digit" x=${above.x} y=${above.y} font-size=${scale.text(0.3)}>${name}</text>`}`;
  });
}

/** Fret numbers. Where there is no room for one beside its neighbours it is left out, unless the neck is marked there. */
function fretNumbers(frame: InkFrame, instrument: Instrument, scale: Scale): readonly SVGTemplateResult[] {
  const isMarked = (fret: Fret) => instrument.marks.includes(fret);
  const size = (fret: Fret) => scale.text(isMarked(fret) ? 0.34 : 0.3);
  const hasRoom = (fret: Fret) => {
    const [from, to] = fretSpan(frame, fret);
    const needed = frame.view === 'upright' ? 1 : 0.3 + 0.55 * String(fret).length;
    return to - from > needed * scale.text(0.34);
  };
  return fretsShown(frame.window)
    .filter((fret) => fret > 0 && (isMarked(fret) || hasRoom(fret)))
    .map((fret) => {
      const at = onScreen(frame, fingerAlong(frame, fret), 0, frame.gutter);
      return svg`<text class=${isMarked(fret) ? 'gutter marked' : 'gutter'} x=${at.x} y=${at.y}
        font-size=${size(fret)}>${fret}</text>`;
    });
}

/** Fingers stand below the chart, one for a string; a string with two has no room for either. */
function fingers(frame: InkFrame, notes: readonly NeckNote[], scale: Scale): readonly SVGTemplateResult[] {
  return notes
    .filter((note) => note.finger !== undefined && onlyFingered(notes, note.place.string))
    .map((note) => {
      const { x, y } = onScreen(frame, frame.fingersAlong, gapsFromMiddle(frame, note.place.string));
      return svg`<text class="finger-number" x=${x} y=${y} font-size=${scale.text(0.34)}>${note.finger}</text>`;
    });
}

function onlyFingered(notes: readonly NeckNote[], string: StringNumber): boolean {
  return notes.filter((note) => note.place.string === string && note.finger !== undefined).length === 1;
}

/** Where a note's mark is drawn: on its fret or by the nut. */
function markPoint(frame: InkFrame, note: NeckNote): Point {
  return isByNut(note)
    ? onScreen(frame, frame.openAlong, gapsFromMiddle(frame, note.place.string))
    : pointOf(frame, note.place);
}

/** The chart in its box. */
export function renderInk(
  frame: InkFrame,
  instrument: Instrument,
  marks: InkMarks,
  scale: Scale,
  label: string,
): SVGTemplateResult {
  return svg`<svg class="chart" role="img" aria-label=${label} preserveAspectRatio="xMidYMid meet"
    viewBox=${`0 0 ${frame.width.toFixed(1)} ${frame.height.toFixed(1)}`}>${inkDrawing(frame, instrument, marks, scale)}</svg>`;
}

/** The chart in its own units. Each note says where it is, for whoever reads the drawing rather than looks at it. */
export function inkDrawing(
  frame: InkFrame,
  instrument: Instrument,
  marks: InkMarks,
  scale: Scale,
): SVGTemplateResult {
  const r = markRadius(frame);
  const shown = marks.notes.filter((note) => isShown(frame.window, note.place) || note.look === 'muted');
  const heat = marks.heat.filter(({ place }) => isShown(frame.window, place));
  const points = [...shown.filter((note) => !isByNut(note)), ...heat].map(({ place }) => ({
    place,
    point: pointOf(frame, place),
  }));
  // On a map the shape says the layer, by the nut too.
  const isMap = shown.some(({ look }) => look === 'pentatonic' || look === 'scale');
  const nutMark = (note: NeckNote) =>
    isMap
      ? noteMark(markPoint(frame, note), 0.8 * r, note, scale)
      : openMark(markPoint(frame, note), r, note, scale);
  const at = (note: NeckNote, mark: SVGTemplateResult) =>
    svg`<g data-string=${note.place.string} data-fret=${note.look === 'muted' ? 'silent' : note.place.fret}>${mark}</g>`;
  const band = marks.highlightString === null ? null : gapsFromMiddle(frame, marks.highlightString);
  return svg`${
    band === null
      ? nothing
      : line(onScreen(frame, frame.start, band), onScreen(frame, frame.end, band), 'band', 0.62 * gap)
  }
    ${grid(frame, instrument)}
    ${stringDigits(frame, instrument, marks, scale)}
    ${capoLabel(frame, instrument, marks.highlightString, scale)}
    ${fretNumbers(frame, instrument, scale)}
    ${heat.map((item) => heatDisc(pointOf(frame, item.place), r, item, scale))}
    ${shown.filter((note) => isByNut(note)).map((note) => at(note, nutMark(note)))}
    ${shown.filter((note) => !isByNut(note)).map((note) => at(note, noteMark(markPoint(frame, note), r, note, scale)))}
    ${marks.corrections
      .filter(({ from, to }) => isShown(frame.window, from) && isShown(frame.window, to))
      .map(({ from, to }) =>
        correctionSlur(
          pointOf(frame, from),
          pointOf(frame, to),
          r,
          points
            .filter(({ place }) => !samePlace(place, from) && !samePlace(place, to))
            .map(({ point }) => point),
          onScreen(frame, (frame.start + frame.end) / 2, 0),
        ),
      )}
    ${shown.filter(({ visits }) => visits).map((note) => visitsMark(markPoint(frame, note), r, note, scale))}
    ${fingers(frame, shown, scale)}`;
}
