import { css } from 'lit';

export const planStyles = css`
  .top {
    display: grid;
    gap: var(--space-2);
  }
  .title input {
    font-family: var(--face-title);
    font-size: 1.5rem;
    font-weight: 600;
  }
  @media (max-width: 30rem) {
    .title input {
      font-size: var(--text-lead);
      padding-inline: var(--space-2);
    }
  }
  .bar {
    align-items: center;
    background: var(--page);
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    margin-inline: calc(-1 * var(--margin));
    padding: var(--space-2) var(--margin);
    position: sticky;
    top: 0;
    z-index: 2;
  }
  .bar button {
    max-width: min(24rem, 100%);
    overflow: hidden;
  }
  .bar button span {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .bar p {
    margin-left: auto;
  }
  .news {
    border-left: 3px solid var(--brass);
    padding-left: var(--space-3);
  }
  .head {
    display: grid;
    gap: var(--space-3);
  }
  .ways {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 14rem), 1fr));
  }
  .ways button {
    align-content: start;
    display: grid;
    gap: var(--space-1);
    justify-content: start;
    justify-items: start;
    padding: var(--space-4);
    text-align: start;
  }
  .ways b {
    font-family: var(--face-title);
    font-size: var(--text-lead);
  }
  .ways .soft {
    font-weight: 400;
  }
`;
