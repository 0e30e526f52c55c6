import { css } from 'lit';

/** Choices that look like what they choose: circled strings, a row of kinds. */
export const circleStyles = css`
  /* As many strings as there are stand in one row, smaller where they have to. */
  .strings > div {
    display: flex;
    gap: min(var(--space-2), 1.4vw);
  }
  .strings label {
    flex: 0 1 var(--target);
    min-width: 0;
  }
  .strings span {
    align-items: center;
    border: 1px solid var(--control);
    aspect-ratio: 1;
    border-radius: 50%;
    cursor: pointer;
    display: flex;
    font-weight: 600;
    justify-content: center;
    position: relative;
  }
  .segments input,
  .strings input {
    height: 1px;
    opacity: 0;
    position: absolute;
    width: 1px;
  }
  .strings input:checked + span {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
    z-index: 1;
  }
  input:focus-visible + span {
    outline: 3px solid var(--brass);
    outline-offset: 2px;
    z-index: 2;
  }
`;

/** A row of buttons of which one is on. */
export const segmentStyles = css`
  .segments {
    border: 1px solid var(--control);
    border-radius: var(--radius-control);
    display: flex;
    overflow: hidden;
  }
  .segments label {
    flex: 1;
  }
  .segments span {
    align-items: center;
    border-left: 1px solid var(--control);
    cursor: pointer;
    display: flex;
    font-weight: 600;
    justify-content: center;
    min-height: var(--target);
    padding-inline: var(--space-3);
    white-space: nowrap;
  }
  .segments label:first-of-type span {
    border-left-color: transparent;
  }
  .segments input:checked + span {
    background: var(--brass-wash);
    box-shadow: inset 0 0 0 2px var(--ink);
  }
  .segments label:first-of-type input:checked + span {
    border-radius: calc(var(--radius-control) - 1px) 0 0 calc(var(--radius-control) - 1px);
  }
  .segments label:last-of-type input:checked + span {
    border-radius: 0 calc(var(--radius-control) - 1px) calc(var(--radius-control) - 1px) 0;
  }
  .segments input:focus-visible + span {
    outline-offset: -5px;
  }
  @media (max-width: 40rem) {
    .segments span {
      padding-inline: var(--space-2);
    }
  }
`;

export const makerStyles = css`
  /* The fields scroll, the button that takes them stays in reach. */
  .maker {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr) auto;
    max-height: calc(100dvh - 10rem);
  }
  .fields {
    align-content: start;
    align-items: start;
    display: grid;
    gap: var(--space-4) var(--space-5);
    grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
    margin: calc(-1 * var(--space-1));
    overflow: auto;
    padding: var(--space-1);
  }
  .end {
    border-top: 1px solid var(--line);
    padding-top: var(--space-3);
  }
  .pair {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr));
  }
  /* A root is short, what is built on it has a long name. */
  .pair.named {
    grid-template-columns: minmax(5rem, 1fr) minmax(0, 2fr);
  }
  /* What is asked and what is right stays in sight while the fields scroll. */
  .preview {
    display: grid;
    gap: var(--space-3);
    min-height: 15rem;
    position: sticky;
    top: 0;
  }
  .preview desk-key-chart {
    --lying-height: 11rem;

    height: 15rem;
  }
  .preview desk-key-chart[lying] {
    height: auto;
  }
  .problem {
    border-left: 4px solid var(--brass);
    flex: 1 0 100%;
    padding-left: var(--space-3);
  }
  .problem:empty {
    display: none;
  }
  h3 {
    font-size: var(--text-lead);
  }
  @media (max-width: 40rem) {
    .fields {
      grid-template-columns: minmax(0, 1fr);
    }
    .preview {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      min-height: 0;
      position: static;
    }
    .preview desk-key-chart:not([lying]) {
      height: 12rem;
    }
    .preview desk-key-chart {
      --lying-height: 9rem;
    }
    .preview:has([lying]) {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
