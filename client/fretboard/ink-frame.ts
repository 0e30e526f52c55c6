import { fretDistance, type Fret, type FretRange } from '../../shared/theory/fretboard.ts';
import type { NeckFrame } from './geometry.ts';
import type { NeckView } from './state.ts';

/** The gap between two strings of a chart, in the drawing's own units; the drawing is scaled to its box. */
export const gap = 40;

/** Rows beside the frets that are left out where nothing would stand in them. */
export interface InkRows {
  readonly openRow: boolean;
  readonly fingerRow: boolean;
}

export interface InkRequest extends InkRows {
  readonly view: NeckView;
  readonly leftHanded: boolean;
  readonly strings: number;
  readonly window: FretRange;
  readonly named: boolean;
  /** The box's width ÷ height, where it is known: frets are stretched to fill it, within reason. */
  readonly aspect: number | null;
}

export interface InkFrame extends NeckFrame {
  /** Along: the middle of the circled string numbers, and of the fingers' row. */
  readonly digitsAlong: number;
  readonly fingersAlong: number;
  /** Across, from the middle: where fret numbers stand. */
  readonly gutter: number;
  readonly hasNut: boolean;
}

/** Sizes in gaps. */
const digits = 1.22;
const names = 0.6;
const openRow = 0.78;
const stub = 0.32;
const fingers = 0.75;
/** Across, outside the outer strings: fret numbers on one side, half a lozenge on the other. */
const gutterRoom = { upright: 1.2, lying: 1.15 };
const farRoom = 0.66;

/** No fret is drawn shorter, in gaps. */
export const leastFret = 0.68;

/** In gaps: a neck of few strings is laid out as one this wide, so that it rather stays narrow than turns squat. */
const fewestAcross = 6.5;

interface Room {
  readonly before: number;
  readonly after: number;
  readonly across: number;
}

/** What stands before, after and beside the frets, in gaps. */
export function roomOf(request: Omit<InkRequest, 'leftHanded' | 'window' | 'aspect'>): Room {
  return {
    before: digits + (request.named ? names : 0) + (request.openRow ? openRow : 0),
    after: stub + (request.fingerRow ? fingers : 0),
    across: request.strings - 1 + gutterRoom[request.view] + farRoom,
  };
}

/** A fret's mean space in gaps, where the box leaves it open: short windows are drawn wider. */
function naturalSpace(view: NeckView, frets: number): number {
  return view === 'upright'
    ? Math.min(1.7, Math.max(0.95, 2 - 0.085 * frets))
    : Math.min(1.9, Math.max(1.2, 2.1 - 0.05 * frets));
}

function fretCount(request: InkRequest): number {
  return request.window.high - request.window.low + 1;
}

/** The chart's width ÷ height if its box doesn't say. */
export function naturalAspect(request: InkRequest): number {
  const room = roomOf(request);
  const frets = fretCount(request);
  const along = room.before + room.after + frets * naturalSpace(request.view, frets);
  return request.view === 'upright' ? room.across / along : along / room.across;
}

/** Lays the chart out in its own units. */
export function inkFrame(request: InkRequest): InkFrame {
  const { view, leftHanded, strings } = request;
  const upright = view === 'upright';
  const room = roomOf(request);
  const aspect = request.aspect ?? naturalAspect(request);
  const laidOut = Math.max(room.across, fewestAcross);
  const wanted = (upright ? laidOut / aspect : laidOut * aspect) - room.before - room.after;
  const frets = fretCount(request);
  const space = Math.min(2.5, Math.max(leastFret, wanted / frets));
  const along = (room.before + room.after + space * frets) * gap;
  const across = room.across * gap;
  const low = Math.max(1, request.window.low);
  const window = { low: low as Fret, high: request.window.high };
  const outer = ((strings - 1) / 2) * gap;
  return {
    view,
    leftHanded,
    width: upright ? across : along,
    height: upright ? along : across,
    strings,
    window,
    scaleLength: (space * frets * gap) / (fretDistance(1, window.high) - fretDistance(1, low - 1)),
    start: room.before * gap,
    end: along - (room.after - stub * 0.7) * gap,
    openAlong: (room.before - 0.62) * gap,
    openLength: gap,
    // Upright: numbers on the left (towards string 6). Lying: below, also towards string 6.
    middle: upright ? gutterRoom.upright * gap + outer : farRoom * gap + outer,
    gapAtNut: gap,
    taper: 0,
    digitsAlong: (0.5 + (request.named ? names : 0)) * gap,
    fingersAlong: along - (fingers / 2) * gap,
    gutter: outer + (upright ? 0.86 : 0.84) * gap,
    hasNut: low === 1,
  };
}
