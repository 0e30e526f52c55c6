import type { DrawnChart } from '../../../charts/drawn.ts';
import { leastFret, roomOf } from '../../../fretboard/ink-frame.ts';
import type { NeckNote, NeckView } from '../../../fretboard/state.ts';
import type { Size } from './paper.ts';

/** How large a chart has to be printed for its text to be 7 points high; in millimetres. */

const point = 25.4 / 72;
const leastText = 7 * point;

/** Texts by what they stand in, as `client/fretboard` draws them. A string's circled number may be so many gaps high, a text inside a mark so many radii. */
const mostText = { beside: 0.52, inside: [Infinity, 1.33, 1.09, 0.85] } as const;
const radius = { ofGap: 0.4, ofFret: 0.46, optional: 0.9 };

/** What the size depends on. */
export type Measured = Pick<DrawnChart, 'window' | 'rows' | 'notes' | 'instrument'>;

/** The least size of this chart, seen this way. */
export function leastSize({ window, rows, notes, instrument }: Measured, view: NeckView): Size {
  const r = Math.max(0, ...notes.map(leastRadius));
  const gap = Math.max(leastText / mostText.beside, r / radius.ofGap);
  const frets = window.high - window.low + 1;
  // Frets grow narrower towards the bridge, and a mark has to fit the last.
  const meanOfLast = (2 ** (frets / 12) - 1) / (2 ** (1 / 12) - 1) / frets;
  const fret = Math.max(leastFret * gap, (r / radius.ofFret) * meanOfLast);
  // Upright it takes a little more across than lying, which is enough for both.
  const room = roomOf({ ...rows, view: 'upright', strings: instrument.openStrings.length, named: false });
  const along = (room.before + room.after) * gap + frets * fret;
  const across = room.across * gap;
  return view === 'upright' ? { width: across, height: along } : { width: along, height: across };
}

export function fits(least: Size, box: Size): boolean {
  return least.width <= box.width && least.height <= box.height;
}

/** Of the marks on the frets, so that this one's text is high enough; those by the nut are smaller. */
function leastRadius({ label = '', optional }: NeckNote): number {
  const share = optional === true ? radius.optional : 1;
  return leastText / ((mostText.inside[label.length] ?? mostText.inside[3]) * share);
}
