import { css } from 'lit';

/** Letters and degrees seven in a row, intervals by their words; one row of all where the window is wide. */
export const keypadStyle = css`
  :host {
    display: block;
  }
  .keys,
  .group {
    display: grid;
    gap: var(--keypad-gap, 6px);
  }
  .letters,
  .degrees {
    grid-template-columns: repeat(7, minmax(0, 1fr));
  }
  .intervals {
    grid-template-columns: repeat(3, minmax(0, 1fr));
  }
  .note {
    grid-template-columns: repeat(7, minmax(0, 1fr));
  }
  .letters {
    grid-column: 1 / -1;
  }
  .signs {
    grid-column: span 3;
    grid-template-columns: repeat(3, minmax(0, 1fr));
  }
  button {
    font-size: 1.125rem;
    line-height: 1.05;
    padding: 0;
  }
  .intervals button {
    font-size: var(--text-small);
    font-weight: 500;
    padding-inline: 2px;
    text-wrap: balance;
  }
  /* What was chosen stays to be seen after the hold. */
  button[aria-checked='true'],
  button[aria-checked='true']:disabled {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
    color: var(--ink);
  }
  .name {
    align-self: center;
    font-family: var(--face-title);
    font-size: 1.75rem;
    font-weight: 600;
    grid-column: span 4;
    line-height: 1;
    text-align: center;
    white-space: nowrap;
  }
  @media (max-width: 359px) {
    :host {
      --keypad-gap: 4px;
    }
    .intervals button {
      min-height: 2.25rem;
    }
  }
  @media (min-aspect-ratio: 6/5) {
    .note {
      grid-template-columns: minmax(0, 7fr) minmax(0, 3fr) minmax(5.5rem, 2fr);
    }
    .letters,
    .signs,
    .name {
      grid-column: auto;
    }
    .intervals {
      grid-template-columns: repeat(7, minmax(0, 1fr));
    }
  }
  @media (min-aspect-ratio: 6/5) and (min-width: 1000px) {
    .degrees {
      grid-template-columns: repeat(14, minmax(0, 1fr));
    }
  }
`;
