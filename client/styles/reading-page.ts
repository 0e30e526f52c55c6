import { css } from 'lit';

/** A page that is read: one column, the way home above it. */
export const readingPageStyle = css`
  :host {
    display: block;
    margin-inline: auto;
    max-width: 42rem;
    padding: var(--space-3) var(--margin) calc(var(--space-5) + env(safe-area-inset-bottom));
  }
  header a {
    align-items: center;
    color: inherit;
    display: inline-flex;
    gap: var(--space-2);
    min-height: var(--target);
    text-decoration: none;
  }
  main {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
  }
`;
