import { css } from 'lit';

/** A plan's lines: number, words, chart, what can be done. */
export const planStyles = css`
  .title input {
    font-family: var(--face-title);
    font-size: 1.5rem;
    font-weight: 600;
  }
  li {
    align-items: center;
    border-top: 1px solid var(--line);
    display: grid;
    gap: var(--space-2) var(--space-4);
    grid-template-columns: 1.5rem minmax(0, 1fr) 12rem auto;
    padding-block: var(--space-3);
  }
  li:first-child {
    border-top: 0;
  }
  desk-key-chart {
    --lying-height: 6.5rem;
  }
  desk-key-chart:not([lying]) {
    height: 7.5rem;
  }
  dialog.wide {
    max-width: min(60rem, calc(100vw - 2 * var(--space-2)));
  }
  dialog.widest {
    max-width: min(76rem, calc(100vw - 2 * var(--space-2)));
  }
  .buttons {
    display: flex;
    gap: var(--space-1);
  }
  @media (max-width: 48rem) {
    li {
      grid-template-columns: 1.25rem minmax(0, 1fr) 8rem;
    }
    .buttons {
      flex-wrap: wrap;
      grid-column: 1 / -1;
    }
  }
  /* On the smallest screens the chart stands below the words. */
  @media (max-width: 23rem) {
    li {
      grid-template-columns: 1.25rem minmax(0, 1fr);
    }
    desk-key-chart {
      grid-column: 2;
      max-width: 10rem;
    }
    .buttons button {
      padding-inline: var(--space-2);
    }
  }
`;
