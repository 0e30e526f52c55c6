import { css } from 'lit';

export const fiveStyles = css`
  :host {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr) auto;
    max-height: calc(100dvh - 11rem);
  }
  .fields {
    align-content: start;
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr);
    margin: calc(-1 * var(--space-1));
    overflow: auto;
    padding: var(--space-1);
  }
  .wishes {
    align-items: start;
    display: grid;
    gap: var(--space-3) var(--space-5);
    grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr));
  }
  .again {
    align-self: center;
    scroll-margin: var(--space-2);
  }
  .label {
    font-weight: 600;
  }
  .roots,
  .more {
    align-content: start;
    display: grid;
    gap: var(--space-1);
  }
  .more {
    gap: var(--space-2);
  }
  .range {
    display: grid;
    gap: var(--space-2);
    grid-template-columns: 1fr 1fr;
  }
  .chips {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1);
  }
  .chips input {
    height: 1px;
    opacity: 0;
    position: absolute;
    width: 1px;
  }
  .chips span {
    align-items: center;
    border: 1px solid var(--control);
    border-radius: var(--radius-control);
    cursor: pointer;
    display: flex;
    font-weight: 600;
    justify-content: center;
    min-height: var(--target);
    min-width: var(--target);
    padding-inline: var(--space-2);
  }
  .chips input:checked + span {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
  }
  h3 {
    font-size: var(--text-body);
  }
  li {
    align-items: center;
    border-top: 1px solid var(--line);
    display: grid;
    gap: var(--space-2) var(--space-4);
    grid-template-columns: minmax(0, 1fr) 16rem auto;
    padding-block: var(--space-3);
  }
  desk-key-chart {
    --lying-height: 7rem;

    height: 7rem;
  }
  .buttons {
    display: grid;
    gap: var(--space-1);
  }
  .end label:not(.tick) {
    align-items: center;
    display: flex;
    gap: var(--space-2);
  }
  .end {
    border-top: 1px solid var(--line);
    padding-top: var(--space-3);
  }
  @media (max-width: 48rem) {
    li {
      grid-template-columns: minmax(0, 1fr) minmax(8rem, 45%);
    }
    .buttons {
      display: flex;
      flex-wrap: wrap;
      grid-column: 1 / -1;
    }
  }
`;
