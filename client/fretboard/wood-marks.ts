import { nothing, svg, type SVGTemplateResult } from 'lit';
import { holds, samePlace, type Place, type StringNumber } from '../../shared/theory/fretboard.ts';
import { gapsFromMiddle, markRadius, onScreen, pointOf, type NeckFrame, type Point } from './geometry.ts';
import { lozenge } from './lozenge.ts';
import { visitsTo } from './placing.ts';
import type { HeardMark, WoodMarks } from './state.ts';
import { nutLength } from './wood-frame.ts';

/** What lies on a wooden neck: fingers' discs, the root's lozenge, numbers of an order, the place that is asked. */

export function isRoot(marks: WoodMarks, place: Place): boolean {
  return marks.root !== null && samePlace(marks.root, place);
}

/** Half a lozenge's diagonal for a disc's radius: both are as heavy. */
const lozengeHalf = 1.3;

export function openRadius(frame: NeckFrame): number {
  return Math.min(15.5, frame.gapAtNut * 0.36, (frame.openLength - 7) / 2);
}

/** Where a string's circled number stands on the head. */
export function openPoint(frame: NeckFrame, string: StringNumber, marks: WoodMarks): Point {
  const lower = marks.stringNames.length > 0 ? 7 : 0;
  return onScreen(frame, frame.openAlong + lower, gapsFromMiddle(frame, string));
}

/** What must be read on an open string lies on the nut: its circle already holds the string's number. */
function spot(frame: NeckFrame, place: Place): { readonly at: Point; readonly r: number } {
  if (place.fret > 0) return { at: pointOf(frame, place), r: markRadius(frame) };
  const at = onScreen(frame, frame.start - nutLength / 2, gapsFromMiddle(frame, place.string));
  return { at, r: Math.min(markRadius(frame), 12) };
}

/** A disc or, for the root, a lozenge. */
export function shape(look: string, at: Point, r: number, root: boolean, stroke = 0): SVGTemplateResult {
  return root
    ? svg`<path class=${look} d=${lozenge(at, r * lozengeHalf)} stroke-width=${stroke} />`
    : svg`<circle class=${look} cx=${at.x} cy=${at.y} r=${r} stroke-width=${stroke} />`;
}

/** "3·11" where there is room for every visit, else the last. */
export function orderLabel(
  visits: readonly number[],
  r: number,
): { readonly text: string; readonly size: number } {
  const sized = (text: string) => ({ text, size: Math.min(15, (1.6 * r) / (0.55 * text.length)) });
  const all = sized(visits.join('·'));
  return all.size >= 11 ? all : sized(String(visits.at(-1) ?? ''));
}

/** A bone disc; once it is with the class, a brass rim and a pin, which an order's number takes the room of. */
function disc(frame: NeckFrame, place: Place, marks: WoodMarks): SVGTemplateResult {
  const { at, r } = spot(frame, place);
  const { sent, ordered } = marks;
  const root = isRoot(marks, place);
  const rim = ordered ? r * 0.16 : r * 0.26;
  const label = ordered ? orderLabel(visitsTo(marks.places, place), r) : null;
  return svg`<g class=${sent ? 'disc sent' : 'disc'}>
    ${shape('cast', { x: at.x + 0.6, y: at.y + 1.8 }, r + 0.8, root)}
    ${shape('bone', at, r, root)}
    ${shape('rim', at, sent ? r - rim / 2 : r * 0.8, root, sent ? rim : 1.4)}
    ${sent && !ordered ? svg`<circle class="pin" cx=${at.x} cy=${at.y} r=${r * 0.24} />` : nothing}
    ${label ? svg`<text class="order" x=${at.x} y=${at.y} font-size=${label.size}>${label.text}</text>` : nothing}
  </g>`;
}

/** The marks of all places in sight. An open string's own circle is its mark, unless an order has to be read. */
export function discs(frame: NeckFrame, marks: WoodMarks): readonly (readonly [string, SVGTemplateResult])[] {
  const { low, high } = frame.window;
  return marks.places
    .filter((place, at) => marks.places.findIndex((other) => samePlace(other, place)) === at)
    .filter(({ fret }) => (fret === 0 ? marks.ordered : fret >= low && fret <= high))
    .map((place) => [`${String(place.string)}-${String(place.fret)}`, disc(frame, place, marks)]);
}

/** Half a side of the square round a place that sounds what was heard, for a disc's radius: the disc fits in. */
const squareHalf = 1.06;
const heardStroke = { heard: 1.6, newest: 3.4, hint: 1.6, candidate: 2.8 } as const;

/** Outlined: nothing is placed there, and nothing is said of right. A place that may be tapped has a ring. */
function heardMark(frame: NeckFrame, { place, look }: HeardMark, marks: WoodMarks): SVGTemplateResult {
  const open = place.fret === 0;
  const { x, y } = open ? openPoint(frame, place.string, marks) : pointOf(frame, place);
  const r = open ? openRadius(frame) : markRadius(frame);
  const half = r * squareHalf;
  const width = heardStroke[look];
  return look === 'candidate'
    ? svg`<circle class="heard candidate" cx=${x} cy=${y} r=${r * 1.12} stroke-width=${width} />`
    : svg`<rect class=${`heard ${look}`} x=${x - half} y=${y - half} width=${2 * half} height=${2 * half}
        rx=${r * 0.3} stroke-width=${width} />`;
}

export function heardMarksIn(frame: NeckFrame, marks: WoodMarks): readonly SVGTemplateResult[] {
  const { low, high } = frame.window;
  return marks.heard
    .filter(({ place: { fret } }) => fret === 0 || (fret >= low && fret <= high))
    .map((mark) => heardMark(frame, mark, marks));
}

/** The place whose name is asked for: a hole in the wood, so that nobody takes it for a finger. */
export function askedMark(frame: NeckFrame, place: Place): SVGTemplateResult {
  const { at, r } = spot(frame, place);
  return svg`<g class="asked">
    <circle cx=${at.x} cy=${at.y} r=${r} stroke-width=${Math.max(2.4, r * 0.16)} />
    <text x=${at.x} y=${at.y} font-size=${r * 1.25}>?</text>
  </g>`;
}

/** An open string's circle on the head, filled when it is on. */
export function openCircle(frame: NeckFrame, place: Place, marks: WoodMarks): SVGTemplateResult {
  const at = openPoint(frame, place.string, marks);
  const radius = openRadius(frame);
  const on = holds(marks.places, place);
  const root = on && isRoot(marks, place);
  const name = marks.stringNames[place.string - 1];
  const upright = frame.view === 'upright';
  return svg`<g class=${['open', on && 'on', on && marks.sent && 'sent'].filter(Boolean).join(' ')}>
    ${shape('circle', at, radius, root, 1.2)}
    ${on ? shape('rim', at, radius - 1.7, root, marks.sent ? 4 : 1.2) : nothing}
    <text x=${at.x} y=${at.y} font-size=${Math.min(15, radius * 1.1)}>${place.string}</text>
    ${
      name === undefined
        ? nothing
        : svg`<text class="name" x=${at.x - (upright ? 0 : radius + 9)} y=${at.y - (upright ? radius + 8 : 0)}
            font-size="12">${name}</text>`
    }
  </g>`;
}

export function fingerRing(frame: NeckFrame, place: Place, marks: WoodMarks): SVGTemplateResult {
  const open = place.fret === 0;
  const { x, y } = open ? openPoint(frame, place.string, marks) : pointOf(frame, place);
  const r = open ? openRadius(frame) + 2.5 : markRadius(frame) * 1.28;
  return svg`<circle class="finger" cx=${x} cy=${y} r=${r} />`;
}
