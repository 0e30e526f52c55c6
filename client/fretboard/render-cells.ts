import { html, type TemplateResult } from 'lit';
import {
  holds,
  samePlace,
  stringNumbers,
  type Instrument,
  type Place,
} from '../../shared/theory/fretboard.ts';
import { cellOf, type NeckFrame } from './geometry.ts';
import { heldIn } from './input.ts';
import { ordinal, visitsTo } from './placing.ts';
import { fretsShown, type WoodMarks } from './state.ts';
import { isRoot } from './wood-marks.ts';

/** "string 2, fret 5, 3rd and 11th, root", "string 2, fret 5, heard": a place, and what is on it. */
export function cellName(place: Place, marks: WoodMarks, placeName: (place: Place) => string): string {
  const visits = marks.ordered ? visitsTo(marks.places, place).map(ordinal).join(' and ') : '';
  const heard = marks.heard.some((mark) => mark.look !== 'hint' && samePlace(mark.place, place));
  return [placeName(place), visits, isRoot(marks, place) ? 'root' : '', heard ? 'heard' : '']
    .filter(Boolean)
    .join(', ');
}

/** The tap layer's rows: an ARIA grid of real elements, a row for each string. */
export function renderCells(
  frame: NeckFrame,
  instrument: Instrument,
  marks: WoodMarks,
  at: Place,
  placeName: (place: Place) => string,
): readonly TemplateResult[] {
  const cursor = heldIn(frame, at);
  const px = (value: number) => `${value.toFixed(2)}px`;
  const cell = (place: Place): TemplateResult => {
    const { x, y, width, height } = cellOf(frame, place);
    return html`<div
      role="gridcell"
      class="cell"
      data-string=${place.string}
      data-fret=${place.fret}
      aria-colindex=${place.fret + 1}
      aria-label=${cellName(place, marks, placeName)}
      aria-selected=${holds(marks.places, place) ? 'true' : 'false'}
      tabindex=${samePlace(place, cursor) ? 0 : -1}
      .style=${`left: ${px(x)}; top: ${px(y)}; width: ${px(width)}; height: ${px(height)}`}
    ></div>`;
  };
  const frets = fretsShown(frame.window);
  return stringNumbers(instrument).map(
    (string) =>
      html`<div role="row" aria-rowindex=${string}>${frets.map((fret) => cell({ string, fret }))}</div>`,
  );
}
