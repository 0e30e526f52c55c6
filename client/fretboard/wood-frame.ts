import { fretDistance, type Fret, type FretRange } from '../../shared/theory/fretboard.ts';
import type { NeckFrame } from './geometry.ts';
import type { NeckView } from './state.ts';

/** What a wooden neck is to fill, in pixels. */
export interface WoodRequest {
  readonly view: NeckView;
  readonly leftHanded: boolean;
  readonly width: number;
  readonly height: number;
  readonly strings: number;
  readonly fretCount: number;
  /** Strings with a letter beside their number need a longer head. */
  readonly named: boolean;
}

/** A thumb's target (WCAG 2.5.5) and the least that may be (2.5.8), in px. */
const comfortable = 44;
const least = 24;
/** Where not even this many fit so, the targets shrink until `wanted` do: rather small cells than a stump of a neck. */
const enough = 7;
const wanted = 10;
/** Two windows share as many frets as a hand spans in a position, less one. */
const shared = 4;

export const nutLength = 9;
const tail = 13;

interface Room {
  /** Along: the row of open strings, and where the board starts after it. */
  readonly head: number;
  readonly start: number;
  readonly forFrets: number;
}

function roomOf({ view, width, height, named }: WoodRequest): Room {
  const along = view === 'upright' ? height : width;
  const head = Math.min(46, Math.max(30, along * 0.09)) + (named ? 14 : 0);
  const start = head + nutLength;
  return { head, start, forFrets: Math.max(60, along - start - tail) };
}

/** The last fret's space if this many are shown from the nut. */
function lastSpace(room: Room, count: number): number {
  const length = room.forFrets / fretDistance(1, count);
  return fretDistance(length, count) - fretDistance(length, count - 1);
}

function fitting(request: WoodRequest, room: Room, space: number): number {
  let count = 1;
  while (count < request.fretCount && lastSpace(room, count + 1) >= space) count += 1;
  return count;
}

/**
 * The windows through which the whole neck can be reached in this box, from the nut: as many frets as fit
 * with comfortable targets. Where too few would, the targets shrink, never below 24 px. The windows depend on
 * the box alone, so they tell nothing of an answer.
 */
export function windowsIn(request: WoodRequest): readonly FretRange[] {
  const room = roomOf(request);
  const roomy = fitting(request, room, comfortable);
  const count = roomy >= enough ? roomy : Math.max(Math.min(wanted, fitting(request, room, least)), 4);
  const windows: FretRange[] = [];
  let low = 1;
  for (;;) {
    const high = Math.min(request.fretCount, low + count - 1);
    windows.push({ low: Math.max(1, high - count + 1) as Fret, high: high as Fret });
    if (high >= request.fretCount) return windows;
    low = high + 1 - Math.min(shared, count - 1);
  }
}

/** The window that shows most of the range, the earlier one if two do. */
export function windowHolding(windows: readonly FretRange[], range: FretRange): FretRange | undefined {
  const shown = (window: FretRange) => Math.min(window.high, range.high) - Math.max(window.low, range.low);
  return [...windows].sort((a, b) => shown(b) - shown(a))[0];
}

/** Lays a window of the neck into the box. */
export function woodFrame(request: WoodRequest, window: FretRange): NeckFrame {
  const { view, leftHanded, width, height, strings } = request;
  const upright = view === 'upright';
  const room = roomOf(request);
  const along = upright ? height : width;
  const across = upright ? width : height;
  const gutter = upright ? (width < 330 ? 28 : 40) : 26;
  const widest = Math.min(60, (across - gutter - 2) / strings);
  // A neck tapers as a real one does, unless its strings would come too close for a thumb at the nut.
  const taper = Math.min(
    0.27,
    Math.max(0.035, (widest / comfortable - 1) / fretDistance(1, request.fretCount)),
  );
  const low = Math.max(1, window.low);
  const shownShare = fretDistance(1, window.high) - fretDistance(1, low - 1);
  return {
    view,
    leftHanded,
    width,
    height,
    strings,
    window: { low: low as Fret, high: window.high },
    scaleLength: room.forFrets / shownShare,
    start: room.start,
    end: along - 1,
    openAlong: room.head / 2,
    openLength: room.head,
    middle: upright ? gutter + (across - gutter) / 2 : (across - gutter) / 2,
    gapAtNut: widest / (1 + taper * fretDistance(1, window.high)),
    taper,
  };
}
