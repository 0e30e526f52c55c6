import { css } from 'lit';

/** Under the head of a page that is read; in print a plain list, no chart cut in two. */
export const chartsStyle = css`
  section,
  footer,
  .fields {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
  }
  .refusal:empty {
    display: none;
  }
  ol,
  ul {
    list-style: none;
  }
  .charts > li + li {
    border-top: 1px solid var(--line);
    margin-top: var(--space-5);
    padding-top: var(--space-5);
  }
  section {
    gap: var(--space-2);
  }
  section + section {
    margin-top: var(--space-5);
  }
  rootcall-chart {
    background: var(--sheet);
    border-radius: var(--radius-sheet);
    box-shadow: var(--elevation);
    max-height: 22rem;
    max-width: 26rem;
    padding: var(--space-3);
  }
  /* All places of a note need the length of the neck. */
  rootcall-chart.wide {
    max-width: none;
  }
  /* The tablature below takes what it needs; the chart keeps its own size. */
  rootcall-chart.tabbed {
    max-height: none;
    max-width: 22rem;
  }
  hgroup {
    display: grid;
    gap: var(--space-1);
  }
  summary {
    align-content: center;
    cursor: pointer;
    font-weight: 600;
    min-height: var(--target);
  }
  details li {
    padding-block: 2px;
  }
  .fields {
    max-width: 26rem;
    padding-block: var(--space-2) var(--space-3);
  }
  .field {
    display: grid;
    gap: var(--space-1);
  }
  a {
    color: inherit;
    text-underline-offset: 0.2em;
  }
  footer a {
    display: inline-block;
    padding-block: var(--space-2);
  }
  @media print {
    :host {
      max-width: none;
      padding: 0;
    }
    header,
    .screen {
      display: none;
    }
    /* Not every browser parts a grid between two pages, or keeps one together. */
    main,
    section {
      display: block;
    }
    section {
      break-inside: avoid;
    }
    ol,
    rootcall-chart,
    footer {
      margin-top: var(--space-3);
    }
    rootcall-chart {
      box-shadow: none;
      max-height: 18rem;
      max-width: 24rem;
      padding-inline: 0;
    }
    rootcall-chart.tabbed {
      max-width: 20rem;
    }
  }
`;
