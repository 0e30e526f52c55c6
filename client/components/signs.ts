import { svg, type SVGTemplateResult } from 'lit';

/**
 * The musician's own signs for the steps of a round, and the marks of a student's answer.
 * They take the text's colour and size, and always stand beside a word, so none is read aloud.
 */
export type SignName =
  | 'start-repeat'
  | 'end-repeat'
  | 'fermata'
  | 'final-barline'
  | 'next'
  | 'tick'
  | 'slip'
  | 'lozenge'
  | 'disc'
  | 'ring'
  | 'circle'
  | 'digit'
  | 'dot'
  | 'dashes'
  | 'visits'
  | 'placed'
  | 'sent'
  | 'waiting'
  | 'mark';

/** The fermata's bow, thick in the middle as an engraver cuts it. */
const bow = svg`<path d="M2.6 16.4C2.6 10 6.8 5.4 12 5.4s9.4 4.6 9.4 11h-1.5c-.6-4.7-3.7-7.8-7.9-7.8s-7.3 3.1-7.9 7.8z" />`;

const signs: Readonly<Record<SignName, SVGTemplateResult>> = {
  'start-repeat': svg`<path d="M4.6 4h3.6v16H4.6zM10.4 4h1.5v16h-1.5z" />
    <circle cx="16.6" cy="9.2" r="1.9" /><circle cx="16.6" cy="14.8" r="1.9" />`,
  'end-repeat': svg`<path d="M15.8 4h3.6v16h-3.6zM12.1 4h1.5v16h-1.5z" />
    <circle cx="7.4" cy="9.2" r="1.9" /><circle cx="7.4" cy="14.8" r="1.9" />`,
  fermata: svg`${bow}<circle cx="12" cy="16" r="2.3" />`,
  mark: svg`${bow}<path d="M12 12.1c.4 0 .7.2.9.4l2.9 2.9c.5.5.5 1.2 0 1.7l-2.9 2.9c-.5.5-1.3.5-1.8 0l-2.9-2.9c-.5-.5-.5-1.2 0-1.7l2.9-2.9c.2-.2.5-.4.9-.4z" />`,
  'final-barline': svg`<path d="M7.6 4h1.7v16H7.6zM12.4 4h4.2v16h-4.2z" />`,
  next: svg`<path d="M3.4 4h1.7v16H3.4zM8 10.9h8.2l-3-3 1.6-1.6 5.7 5.7-5.7 5.7-1.6-1.6 3-3H8z" />`,
  tick: svg`<path d="m4.4 12.4 2-1.9 3.5 3.8 7.8-9 2.1 1.8-9.8 11.3z" />`,
  slip: svg`<path d="M12 4.6a7.4 7.4 0 1 0 0 14.8 7.4 7.4 0 0 0 0-14.8zm0 1.8a5.6 5.6 0 1 1 0 11.2 5.6 5.6 0 0 1 0-11.2z" />
    <path d="m3 18.2 16.6-13.9 1.4 1.6L4.4 19.8z" />`,
  lozenge: svg`<path d="M12 3.2c.5 0 1 .2 1.3.6l6.9 6.9c.7.7.7 1.9 0 2.6l-6.9 6.9c-.7.7-1.9.7-2.6 0l-6.9-6.9c-.7-.7-.7-1.9 0-2.6l6.9-6.9c.3-.4.8-.6 1.3-.6z" />`,
  disc: svg`<circle cx="12" cy="12" r="7.4" />`,
  ring: svg`<path d="M12 4.2a7.8 7.8 0 1 0 0 15.6 7.8 7.8 0 0 0 0-15.6zm0 2.5a5.3 5.3 0 1 1 0 10.6 5.3 5.3 0 0 1 0-10.6z" />`,
  circle: svg`<path d="M12 4.2a7.8 7.8 0 1 0 0 15.6 7.8 7.8 0 0 0 0-15.6zm0 1.5a6.3 6.3 0 1 1 0 12.6 6.3 6.3 0 0 1 0-12.6z" />`,
  digit: svg`<text x="12" y="17.4" font-size="15" font-weight="700" text-anchor="middle">4</text>`,
  dot: svg`<circle cx="12" cy="12" r="3" />`,
  dashes: svg`<circle cx="12" cy="12" r="7.2" fill="none" stroke="currentColor" stroke-width="1.6" stroke-dasharray="2.6 1.92" />`,
  visits: svg`<text x="12" y="18" font-size="17" font-weight="700" text-anchor="middle">2</text>`,
  placed: svg`<path d="M12 2.4a9.6 9.6 0 1 0 0 19.2 9.6 9.6 0 0 0 0-19.2zm0 1.6a8 8 0 1 1 0 16 8 8 0 0 1 0-16z" />`,
  sent: svg`<path d="M12 2.4a9.6 9.6 0 1 0 0 19.2 9.6 9.6 0 0 0 0-19.2zm0 3.2a6.4 6.4 0 1 1 0 12.8 6.4 6.4 0 0 1 0-12.8z" />
    <circle cx="12" cy="12" r="2.3" />`,
  waiting: svg`<circle cx="12" cy="12" r="2.4" />`,
};

/** A sign as tall as one and a half letters; its box can be set by CSS. */
export function sign(name: SignName): SVGTemplateResult {
  return svg`<svg class="sign" viewBox="0 0 24 24" width="1.5em" height="1.5em" fill="currentColor" aria-hidden="true">${signs[name]}</svg>`;
}

/** A bar's rest on its staff: nothing is to be done yet. Ink in the text's colour, lines a shade lighter. */
export function barRest(): SVGTemplateResult {
  const lines = [0, 1, 2, 3, 4].map(
    (at) => svg`<path d="M0 ${2.5 + at * 10}h200" stroke="currentColor" stroke-width="1.1" opacity="0.5" />`,
  );
  return svg`<svg class="bar-rest" viewBox="0 0 200 45" width="200" height="45" fill="currentColor" aria-hidden="true">
    ${lines}<path d="M33 18h135v9H33z" /><path d="M31.4 11h2.8v23h-2.8zM166.8 11h2.8v23h-2.8z" />
  </svg>`;
}
