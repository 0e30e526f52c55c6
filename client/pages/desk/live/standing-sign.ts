import { html, svg, type TemplateResult } from 'lit';
import { sign } from '../../../components/signs.ts';
import type { Standing } from './figures.ts';

const words: Readonly<Record<Standing, string>> = {
  slip: 'slip',
  unclear: 'unclear',
  late: 'late',
  right: 'right',
  placing: 'placing',
  waiting: 'waiting',
  here: 'here',
  away: 'out of touch',
  absent: 'no device',
};

/** The sign before a student's name: told apart by its shape, named for a screen reader. */
export function standingSign(standing: Standing): TemplateResult {
  return html`<span class="standing ${standing}"
    >${shape(standing)}<span class="visually-hidden">${words[standing]}</span></span
  >`;
}

function shape(standing: Standing) {
  switch (standing) {
    case 'slip':
    case 'unclear':
      return sign('slip');
    case 'right':
      return sign('tick');
    case 'late':
      return own(svg`<circle cx="12" cy="12" r="8" /><path d="M12 7v5l3.5 2.5" />`);
    case 'placing':
      return own(svg`<path d="M6 12h.01M12 12h.01M18 12h.01" stroke-width="3.4" />`);
    case 'waiting':
    case 'here':
      return sign('waiting');
    case 'away':
    case 'absent':
      return own(svg`<circle cx="12" cy="12" r="2.6" />`);
  }
}

function own(lines: TemplateResult | ReturnType<typeof svg>): TemplateResult {
  return html`<svg
    class="sign"
    viewBox="0 0 24 24"
    width="1.5em"
    height="1.5em"
    fill="none"
    stroke="currentColor"
    stroke-width="1.7"
    stroke-linecap="round"
    aria-hidden="true"
  >
    ${lines}
  </svg>`;
}
