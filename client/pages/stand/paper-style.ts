import { css } from 'lit';

/** Words, and a printed chart under them, or beside them where the window is wide. */
export const paperStyle = css`
  .paper {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto auto minmax(17rem, 1fr);
    height: 100%;
  }
  .words {
    display: grid;
    gap: var(--space-2);
    justify-self: center;
    max-width: 34rem;
    padding: var(--space-2) calc(var(--margin) + var(--space-1)) var(--space-4);
    width: 100%;
  }
  .words .lead {
    line-height: 1.35;
    text-wrap: pretty;
  }
  .words .soft {
    text-wrap: balance;
  }
  .words .try {
    font-weight: 700;
  }
  h1 .sign {
    color: var(--felt);
    height: 1em;
    margin-inline-end: 0.25em;
    vertical-align: -0.1em;
    width: 1em;
  }
  .chart {
    background: var(--sheet);
    border-top: 1px solid var(--line);
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr) auto;
    min-height: 0;
    padding: var(--space-3) var(--margin) calc(var(--space-3) + env(safe-area-inset-bottom));
  }
  .chart rootcall-neck {
    height: 100%;
    justify-self: center;
    max-height: 36rem;
    max-width: 26rem;
    width: 100%;
  }
  @media (min-aspect-ratio: 6/5) {
    .paper {
      grid-template: 'header chart' auto 'words chart' minmax(0, 1fr) / minmax(0, 5fr) minmax(0, 6fr);
      height: 100%;
    }
    header {
      grid-area: header;
    }
    .words {
      align-content: safe center;
      grid-area: words;
      overflow-y: auto;
      padding: var(--space-2) var(--space-5);
    }
    .chart {
      border-inline-start: 1px solid var(--line);
      border-top: 0;
      grid-area: chart;
      grid-template-rows: minmax(0, 1fr) auto;
      padding-inline: var(--space-4) calc(var(--space-4) + env(safe-area-inset-right));
    }
    .chart rootcall-neck {
      align-self: center;
      max-width: none;
    }
  }
  /* Where not all words fit, what was said of the answer comes first; the task is known. */
  @media (min-aspect-ratio: 6/5) and (max-height: 360px) {
    .words {
      gap: var(--space-1);
      padding-inline: var(--space-4);
    }
    .words .soft {
      font-size: var(--text-small);
      order: 1;
    }
    h1 {
      font-size: 1.25rem;
    }
  }
  @media (min-aspect-ratio: 6/5) and (min-height: 600px) {
    .words {
      padding-inline: var(--space-6);
    }
    h1 {
      font-size: 2.5rem;
    }
    .lead {
      font-size: 1.375rem;
    }
  }
`;
