import { css } from 'lit';

/** One exercise of a plan: grip, what it asks at each level, charts, what can be done with it. */
export const lineStyles = css`
  /* Far from the window nothing of a line is laid out. */
  :host {
    contain-intrinsic-size: auto 12rem;
    content-visibility: auto;
    display: grid;
    gap: var(--space-2);
    grid-template-columns: minmax(0, 1fr);
    padding: var(--space-1);
  }
  .level {
    align-content: start;
    display: grid;
    gap: var(--space-2) var(--space-4);
    grid-template-columns: minmax(0, 1fr) 13rem;
    grid-template-rows: auto 1fr;
  }
  .words,
  .below {
    align-content: start;
    display: grid;
    gap: var(--space-1);
  }
  .level > :nth-child(2) {
    grid-row: 1 / 3;
    grid-column: 2;
  }
  .levels {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 13rem), 1fr));
  }
  .levels .level {
    border-left: 1px solid var(--line);
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto auto 1fr;
    padding-left: var(--space-3);
  }
  .levels .level > :nth-child(2) {
    grid-area: auto;
  }
  .levels .level:first-child {
    border-left: 0;
    padding-left: 0;
  }
  h3 {
    font-size: var(--text-lead);
    font-weight: 600;
    line-height: 1.25;
  }
  .chart,
  desk-key-chart {
    height: 7.5rem;
  }
  desk-key-chart {
    --lying-height: 6.5rem;
  }
  .buttons {
    align-items: center;
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-2);
  }
  .buttons .plain {
    padding-inline: var(--space-1);
  }
  .buttons label {
    align-items: center;
    display: flex;
    gap: var(--space-2);
  }
  .buttons select {
    width: auto;
  }
  @media (max-width: 40rem) {
    .level {
      grid-template-columns: minmax(0, 1fr) 8.5rem;
    }
    .below {
      grid-column: 1 / -1;
    }
    .level > :nth-child(2) {
      grid-row: 1;
    }
  }
  @media (max-width: 23rem) {
    .level {
      grid-template-columns: minmax(0, 1fr);
    }
    .level > :nth-child(2) {
      grid-area: auto;
    }
  }
`;
