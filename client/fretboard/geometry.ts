import {
  fretDistance,
  type Fret,
  type FretRange,
  type Place,
  type StringNumber,
} from '../../shared/theory/fretboard.ts';
import { fretsShown, type NeckView } from './state.ts';

/** String and fret ↔ x and y. Pure: what the pixels are comes in, where things lie goes out. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Where a neck lies in its box. Two axes do for both views: *along* runs from the head to the bridge,
 * *across* over the strings. Left-handed mirrors x, and nothing else.
 */
export interface NeckFrame {
  readonly view: NeckView;
  readonly leftHanded: boolean;
  readonly width: number;
  readonly height: number;
  readonly strings: number;
  readonly window: FretRange;
  /** Nut to bridge. */
  readonly scaleLength: number;
  /** Along: the nut, or the wire before the window's first fret. */
  readonly start: number;
  /** Along: the end of the drawn neck. */
  readonly end: number;
  /** Along: the middle of the row of open strings, and its length. */
  readonly openAlong: number;
  readonly openLength: number;
  /** Across: the line halfway between the outer strings. */
  readonly middle: number;
  /** Between two strings at the nut, and how much wider at the bridge (0.2: by a fifth). */
  readonly gapAtNut: number;
  readonly taper: number;
}

/** What the board adds beyond the outer strings, in gaps: room for the disc of a finger there. */
export const boardMargin = 0.43;

/** Along: where a fret's wire lies. */
export function wireAlong(frame: NeckFrame, fret: number): number {
  const before = fretDistance(frame.scaleLength, frame.window.low - 1);
  return frame.start + fretDistance(frame.scaleLength, fret) - before;
}

/** Along: from where to where a tap counts as this fret. */
export function fretSpan(frame: NeckFrame, fret: Fret): readonly [number, number] {
  if (fret > 0) return [wireAlong(frame, fret - 1), wireAlong(frame, fret)];
  return [frame.openAlong - frame.openLength / 2, frame.openAlong + frame.openLength / 2];
}

/** Along: where a finger stands, halfway between two wires. */
export function fingerAlong(frame: NeckFrame, fret: Fret): number {
  const [from, to] = fretSpan(frame, fret);
  return (from + to) / 2;
}

/** Between two strings at a point along the neck; the head is as wide as the nut. */
export function gapAt(frame: NeckFrame, along: number): number {
  const before = fretDistance(1, frame.window.low - 1);
  const fromNut = Math.max(0, before + (along - frame.start) / frame.scaleLength);
  return frame.gapAtNut * (1 + frame.taper * (along < frame.start ? before : fromNut));
}

/** From the two axes to the screen; `strings` counts gaps from the middle, towards the highest-numbered string. */
export function onScreen(frame: NeckFrame, along: number, gaps: number, plus = 0): Point {
  const across = gaps * gapAt(frame, along) + plus;
  const x = frame.view === 'upright' ? frame.middle - across : along;
  const y = frame.view === 'upright' ? along : frame.middle + across;
  return { x: frame.leftHanded ? frame.width - x : x, y };
}

/** How many gaps a string lies from the middle of the neck. */
export function gapsFromMiddle(frame: NeckFrame, string: StringNumber): number {
  return string - (frame.strings + 1) / 2;
}

/** Where a place's mark is drawn. */
export function pointOf(frame: NeckFrame, place: Place): Point {
  return onScreen(frame, fingerAlong(frame, place.fret), gapsFromMiddle(frame, place.string));
}

/** A place's tap cell: the gap between strings by the fret's space. */
export function cellOf(frame: NeckFrame, place: Place): Box {
  const [from, to] = fretSpan(frame, place.fret);
  const { x, y } = pointOf(frame, place);
  const gap = gapAt(frame, (from + to) / 2);
  const width = frame.view === 'upright' ? gap : to - from;
  const height = frame.view === 'upright' ? to - from : gap;
  return { x: x - width / 2, y: y - height / 2, width, height };
}

/** The place under a point; null beside the neck. All of the head counts as the open string. */
export function placeAt(frame: NeckFrame, point: Point): Place | null {
  const x = frame.leftHanded ? frame.width - point.x : point.x;
  const along = frame.view === 'upright' ? point.y : x;
  const across = frame.view === 'upright' ? frame.middle - x : point.y - frame.middle;
  const string = Math.round(across / gapAt(frame, along) + (frame.strings + 1) / 2);
  if (string < 1 || string > frame.strings || along < 0) return null;
  const fret = fretsShown(frame.window).find(
    (shown) => along < (shown === 0 ? frame.start : fretSpan(frame, shown)[1]),
  );
  return fret === undefined ? null : { string: string as StringNumber, fret };
}

/** The smallest of the window's frets, along. */
export function smallestSpace(frame: NeckFrame): number {
  const [from, to] = fretSpan(frame, frame.window.high);
  return to - from;
}

/** A mark's radius: 0.40 of the gap, at most 0.46 of the smallest fret. */
export function markRadius(frame: NeckFrame): number {
  return Math.min(0.4 * frame.gapAtNut, 0.46 * smallestSpace(frame));
}
