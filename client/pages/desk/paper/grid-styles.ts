import { css } from 'lit';

/** A wide table in its own scroll; names stay in sight. */
export const gridStyles = css`
  :host {
    display: block;
    max-height: 75vh;
    overflow: auto;
  }
  table {
    border-collapse: separate;
    border-spacing: 0;
  }
  th,
  td {
    border-bottom: 1px solid var(--line);
    padding: var(--space-1) var(--space-2);
    text-align: start;
    vertical-align: top;
  }
  thead th {
    background: var(--sheet);
    min-width: 9rem;
    position: sticky;
    top: 0;
    vertical-align: bottom;
    z-index: 1;
  }
  thead th .soft {
    display: block;
    font-weight: 400;
  }
  th:first-child {
    background: var(--sheet);
    inset-inline-start: 0;
    max-width: 11rem;
    min-width: 5.5rem;
    overflow-wrap: break-word;
    padding-inline-start: 0;
    position: sticky;
    z-index: 1;
  }
  thead th:first-child {
    z-index: 2;
  }
  tbody th {
    font-weight: 400;
    padding-top: var(--space-3);
  }
  select {
    width: auto;
  }
  .said {
    display: block;
    max-width: 12rem;
    min-height: 1.5em;
    padding-top: 2px;
  }
  .said .sign {
    height: 1.2em;
    width: 1.2em;
  }
  .right .said {
    color: var(--felt);
  }
  .slip .said,
  .unread .said {
    color: var(--rose);
  }
  @media (max-width: 480px) {
    thead th {
      min-width: 7.5rem;
    }
    th:first-child {
      max-width: 6rem;
      min-width: 4rem;
    }
  }
`;
