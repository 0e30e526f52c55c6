import { css } from 'lit';

/** Header, three columns, bar; on a narrow screen the columns beside the middle come over it. */
export const classPageStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto minmax(0, 1fr) auto;
    height: 100vh;
    height: 100dvh;
  }
  .columns {
    display: grid;
    grid-template-columns: 14.75rem minmax(0, 1fr);
    min-height: 0;
    position: relative;
  }
  .columns.with-drawer {
    grid-template-columns: 14.75rem minmax(0, 1fr) 18.5rem;
  }
  aside,
  main {
    min-height: 0;
    overflow: auto;
    overscroll-behavior: contain;
    padding: var(--space-4);
  }
  .plan {
    border-right: 1px solid var(--line);
    padding-inline: 10px;
  }
  .students {
    background: var(--sheet);
    border-left: 1px solid var(--line);
  }
  main {
    align-content: start;
    /* What stands in it goes by the width that the columns beside it leave. */
    container-type: inline-size;
    display: flex;
    flex-direction: column;
    padding-inline: var(--space-5);
  }
  main > :last-child {
    flex: 1 0 auto;
  }
  .notice {
    align-items: center;
    background: var(--brass-wash);
    border-bottom: 1px solid var(--line);
    display: flex;
    flex-wrap: wrap;
    font-weight: 600;
    gap: var(--space-1) var(--space-4);
    justify-content: space-between;
    padding: var(--space-2) var(--margin);
  }
  .refused {
    border-left: 4px solid var(--rose);
  }
  .close {
    display: none;
  }
  .opening {
    padding: var(--space-5) var(--margin);
  }
  @media (max-width: 74rem) {
    .columns.with-drawer {
      grid-template-columns: 12.5rem minmax(0, 1fr) 16.5rem;
    }
    .columns {
      grid-template-columns: 12.5rem minmax(0, 1fr);
    }
    main {
      padding-inline: var(--space-4);
    }
  }
  @media (max-width: 60rem) {
    .columns,
    .columns.with-drawer {
      grid-template-columns: minmax(0, 1fr);
    }
    main {
      padding: var(--space-3);
    }
    aside {
      background: var(--page);
      border: 0;
      inset: 0;
      position: absolute;
      z-index: 1;
    }
    .plan:not(.over) {
      display: none;
    }
    /* What a panel covers is out of the keyboard's way too. */
    .with-drawer main,
    .over ~ main {
      overflow: hidden;
    }
    .with-drawer main > *,
    .over ~ main > * {
      visibility: hidden;
    }
    .close {
      display: block;
      background: var(--page);
      margin: calc(-1 * var(--space-4)) 0 0;
      padding: var(--space-2) 0;
      position: sticky;
      text-align: right;
      top: calc(-1 * var(--space-4));
      z-index: 1;
    }
  }
`;
