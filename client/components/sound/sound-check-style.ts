import { css } from 'lit';

export const soundCheckStyle = css`
  :host {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
  }
  .hindrance {
    border-inline-start: 3px solid var(--brass);
    padding-inline-start: var(--space-3);
  }
  .hindrance strong {
    font-weight: 600;
  }
  .words {
    display: grid;
    gap: var(--space-1);
  }
  .asking {
    border-block: 1px solid var(--line);
    padding-block: var(--space-2);
  }
  .asking p {
    text-wrap: pretty;
  }

  .strings {
    display: grid;
    gap: var(--space-1);
    grid-auto-columns: minmax(0, 1fr);
    grid-auto-flow: column;
  }
  .strings button {
    background: none;
    border-color: transparent;
    border-radius: 0;
    flex-direction: column;
    font-weight: 400;
    gap: 0;
    line-height: 1.2;
    min-height: 3.5rem;
    min-width: 24px;
    padding: var(--space-1) 0;
  }
  .strings button:hover {
    border-color: var(--control);
  }
  /* Circled digit = string. */
  .digit {
    align-items: center;
    border: 1.5px solid currentcolor;
    border-radius: 50%;
    display: inline-flex;
    font-size: var(--text-small);
    font-weight: 600;
    height: 1.75em;
    justify-content: center;
    width: 1.75em;
  }
  .sounds .digit {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--on-fill);
  }
  .strings button[aria-pressed='true'] {
    border-color: var(--ink);
    border-radius: var(--radius-control);
  }

  .tuner {
    padding-block-end: var(--space-4);
  }
  .reading {
    align-items: baseline;
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr) auto minmax(0, 1fr);
    min-height: calc(var(--text-figure) * 1.2);
  }
  .reading .cents {
    text-align: end;
  }
  .reading .figure {
    min-width: 1em;
    text-align: center;
  }
  .scale {
    color: var(--ink);
    display: block;
    margin-inline: auto;
    max-width: 26rem;
  }
  .scale svg {
    display: block;
    overflow: visible;
    width: 100%;
  }
  .scale text {
    font-size: 13px;
    font-variant-numeric: tabular-nums;
  }
  .needle {
    color: var(--brass);
    fill: var(--brass);
  }
  .verdict {
    min-height: 1.4em;
    text-align: center;
  }

  dl {
    align-items: center;
    display: grid;
    gap: var(--space-2) var(--space-3);
    grid-template-columns: auto minmax(0, 1fr);
    margin: 0;
  }
  dt {
    font-weight: 600;
  }
  dd {
    margin: 0;
  }
  .level {
    align-items: center;
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(3rem, 8rem) minmax(0, 1fr);
    min-height: 2.8em;
  }
  .level svg {
    color: var(--ink);
    display: block;
    height: 1.5rem;
    width: 100%;
  }
  .heard {
    fill: var(--brass);
  }
  .clipped .heard {
    fill: var(--rose);
  }
`;
