import { svg, type SVGTemplateResult } from 'lit';

/** The quietest sound that is drawn, in dB of full scale. */
const quietest = -72;

/** How far along a loudness lies, 0 to 1. */
export function along(loudness: number): number {
  return Math.min(1, Math.max(0, 1 - loudness / quietest));
}

/** Loudness as a hairpin that fills with ink; an upright line marks the room's own noise. */
export function levelWedge(loudness: number | null, floor: number | null): SVGTemplateResult {
  const at = (value: number | null) => (value === null ? 0 : along(value) * 300);
  const room = at(floor);
  return svg`<svg viewBox="0 0 304 36" aria-hidden="true" preserveAspectRatio="none">
    <defs><clipPath id="heard"><rect width=${at(loudness)} height="36" /></clipPath></defs>
    <path class="heard" clip-path="url(#heard)" d="M2 18 302 2v32z" />
    <path d="M302 2 2 18l300 16" fill="none" stroke="currentColor" stroke-width="1.6" vector-effect="non-scaling-stroke" />
    ${floor === null ? null : svg`<path d="M${room} 0v36" stroke="currentColor" stroke-width="1.6" stroke-dasharray="3 3" vector-effect="non-scaling-stroke" />`}
  </svg>`;
}
