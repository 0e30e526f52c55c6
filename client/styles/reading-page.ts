import { css } from 'lit';

/** The way home in a page's header. */
export const homeLinkStyle = css`
  header a {
    align-items: center;
    color: inherit;
    display: inline-flex;
    gap: var(--space-2);
    min-height: var(--target);
    text-decoration: none;
  }
`;

/** A page that is read: one column, the way home above it. */
export const readingPageStyle = [
  homeLinkStyle,
  css`
    :host {
      display: block;
      margin-inline: auto;
      max-width: 42rem;
      padding: var(--space-3) var(--margin) calc(var(--space-5) + env(safe-area-inset-bottom));
    }
    main {
      display: grid;
      gap: var(--space-4);
      grid-template-columns: minmax(0, 1fr);
    }
  `,
];
