import { html, type TemplateResult } from 'lit';
import type { Fret, FretRange } from '../../../../shared/theory/fretboard.ts';
import { valueOf } from './field-value.ts';

/** Two frets; the other one moves along where they would cross. */
export function rangeField(
  { low, high }: FretRange,
  last: number,
  choose: (range: FretRange) => void,
): TemplateResult {
  const field = (words: string, value: Fret, take: (fret: Fret) => void) =>
    html`<label
      >${words}
      <input
        type="number"
        min="0"
        max=${last}
        .value=${String(value)}
        @change=${(event: Event) => {
          const fret = Math.round(Number(valueOf(event)));
          if (fret >= 0 && fret <= last) take(fret as Fret);
        }}
      />
    </label>`;
  return html`<span class="range"
    >${field('Frets', low, (fret) => choose({ low: fret, high: Math.max(fret, high) as Fret }))}
    ${field('to', high, (fret) => choose({ low: Math.min(fret, low) as Fret, high: fret }))}</span
  >`;
}
