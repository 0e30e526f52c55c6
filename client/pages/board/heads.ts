import { html, type TemplateResult } from 'lit';
import '../../components/noteheads.ts';

/** Above this, heads would be too small to count: the number is beside them anyway, and a bar shows the share. */
export const mostHeads = 39;

/**
 * Noteheads of one size however many there are; `space` is one head's room, in px of the 1920 × 1080 picture.
 * `.style` is set by script: a content security policy without inline styles lets it through.
 */
export function heads(filled: number, of: number, perRow: number, space: number): TemplateResult {
  const width = Math.min(of, perRow) * space + space / 3;
  return html`<rootcall-noteheads
    .filled=${filled}
    .of=${of}
    .perRow=${perRow}
    .style=${`width: calc(${width.toFixed(0)} * var(--unit)); max-width: 100%`}
    aria-hidden="true"
  ></rootcall-noteheads>`;
}

/** The share of a large group as a bar; styled by `boardStyles`. */
export function shareBar(filled: number, of: number): TemplateResult {
  return html`<svg class="share-bar" viewBox="0 0 600 20" aria-hidden="true">
    <rect class="rail" x="1" y="1" width="598" height="18" />
    <rect class="part" x="4" y="4" width=${(592 * Math.min(1, filled / of)).toFixed(1)} height="12" />
  </svg>`;
}
