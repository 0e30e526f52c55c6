import { html, svg, type TemplateResult } from 'lit';
import type { CameBy } from './ways.ts';

/** How an answer came: a sign told apart by its shape, with its word for the pointer and a screen reader. */
export function waySign(way: CameBy): TemplateResult {
  return html`<span class="way" title=${way}
    ><svg
      class="sign"
      viewBox="0 0 24 24"
      width="1.2em"
      height="1.2em"
      fill="none"
      stroke="currentColor"
      stroke-width="1.8"
      stroke-linecap="round"
      aria-hidden="true"
    >
      ${shapes[way]}</svg
    ><span class="visually-hidden">${way}</span></span
  >`;
}

const shapes: Readonly<Record<CameBy, ReturnType<typeof svg>>> = {
  // Sound that spreads.
  played: svg`<path d="M5 12h.01M9.4 8.6a5 5 0 0 1 0 6.8M13 5.4a9.4 9.4 0 0 1 0 13.2M16.6 2.6a13.4 13.4 0 0 1 0 18.8" />`,
  // The plug with five pins.
  MIDI: svg`<circle cx="12" cy="12" r="9" /><path d="M6.8 12h.01M8.4 8.4h.01M12 6.9h.01M15.6 8.4h.01M17.2 12h.01" stroke-width="2.6" />`,
  // A finger on a string.
  tapped: svg`<path d="M2 12h4.5M17.5 12H22" /><circle cx="12" cy="12" r="5" />`,
  // A pencil.
  entered: svg`<path d="m5 19 1.2-4.6L16.4 4.2a1.4 1.4 0 0 1 2 0l1.4 1.4a1.4 1.4 0 0 1 0 2L9.6 17.8z" />`,
};
