import { svg, type SVGTemplateResult } from 'lit';

/** Cents from the middle to either end, and pixels for each. */
const reach = 50;
const each = 3;
const middle = reach * each + 14;
const width = middle * 2;
/** Where the rule lies, from the top. */
const rule = 40;

const ticks = Array.from({ length: 21 }, (_, index) => (index - 10) * 5);

/**
 * An engraved rule from 50 cents flat to 50 sharp; the note itself is its final barline, and the string a lozenge below
 * it. Without a reading only the rule is drawn.
 */
export function tunerScale(cents: number | null): SVGTemplateResult {
  const at = cents === null ? null : Math.max(-reach, Math.min(reach, cents));
  return svg`<svg viewBox="0 0 ${width} 74" aria-hidden="true" fill="currentColor">
    ${ticks.map(tick)}
    <path d="M14 ${rule - 0.6}h${width - 28}v1.2h-${width - 28}z" />
    <path d="M${middle - 4} 8h1.6v${rule - 8}h-1.6zM${middle - 0.6} 8h4.6v${rule - 8}h-4.6z" />
    ${[-reach, -25, 25, reach].map(
      (value) =>
        svg`<text x=${middle + value * each} y="14" text-anchor="middle">${value > 0 ? '+' : '−'}${Math.abs(value)}</text>`,
    )}
    ${at === null ? null : needle(at)}
  </svg>`;
}

function tick(value: number): SVGTemplateResult {
  const height = value % 25 === 0 ? 18 : value % 10 === 0 ? 12 : 7;
  return svg`<path d="M${middle + value * each - 0.6} ${rule - height}h1.2v${height}h-1.2z" />`;
}

function needle(at: number): SVGTemplateResult {
  const x = middle + at * each;
  return svg`<g class="needle" transform=${`translate(${x.toFixed(1)} 0)`}>
    <path d="M-0.9 22h1.8v22h-1.8z" /><path d="M0 44l11 13-11 13-11-13z" />
  </g>`;
}
