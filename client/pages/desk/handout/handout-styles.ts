import { css } from 'lit';

/** The Desk's page round the sheet: the pages, and the settings at their side. On a phone these are a drawer below. */
export const handoutStyles = css`
  main.handout {
    align-items: start;
    grid-template-columns: minmax(0, 1fr) 22rem;
    max-width: 90rem;
  }
  .top {
    grid-column: 1 / -1;
  }
  .pages {
    align-content: start;
    display: grid;
    gap: var(--space-5);
    grid-template-columns: minmax(0, 1fr);
    justify-items: center;
  }
  .frame {
    box-shadow: var(--elevation);
    outline: 1px solid var(--control);
  }
  aside {
    position: sticky;
    top: var(--space-4);
  }
  aside > details {
    max-height: calc(100dvh - 2 * var(--space-4));
    overflow: auto;
  }
  .fields {
    align-items: end;
    display: grid;
    gap: var(--space-3);
    grid-template-columns: repeat(2, minmax(0, 1fr));
  }
  .fields .tick {
    grid-column: 1 / -1;
  }
  .segments span {
    padding-inline: var(--space-2);
  }
  .items {
    display: grid;
    gap: var(--space-2);
  }
  .items .own-line {
    font-size: var(--text-small);
  }
  dialog.widest {
    max-width: min(76rem, calc(100vw - 2 * var(--space-2)));
  }
  @media (max-width: 60rem) {
    main.handout {
      grid-template-columns: minmax(0, 1fr);
    }
    aside {
      bottom: 0;
      margin-inline: calc(-1 * var(--margin));
      top: auto;
      z-index: 1;
    }
    aside > details {
      border-radius: var(--radius-sheet) var(--radius-sheet) 0 0;
      border-top: 1px solid var(--control);
      max-height: 70dvh;
      padding-block: var(--space-1);
    }
  }
  @media (min-width: 60.01rem) {
    aside > details > summary {
      display: none;
    }
  }
  @media print {
    main.handout {
      display: block;
      max-width: none;
      padding: 0;
    }
    main.handout > :not(.pages) {
      display: none;
    }
    .pages {
      display: block;
    }
    .frame {
      box-shadow: none;
      outline: 0;
    }
  }
`;
