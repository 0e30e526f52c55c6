import { css } from 'lit';

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
  .segments {
    display: flex;
    flex-wrap: wrap;
  }
  .segments label {
    flex: 1;
  }
  .segments span,
  .strings span {
    align-items: center;
    border: 1px solid var(--control);
    cursor: pointer;
    display: flex;
    font-weight: 600;
    justify-content: center;
    min-height: var(--target);
    white-space: nowrap;
  }
  .segments span {
    margin-left: -1px;
    padding-inline: var(--space-3);
  }
  .segments label:first-of-type span {
    border-radius: var(--radius-control) 0 0 var(--radius-control);
    margin-left: 0;
  }
  .segments label:last-of-type span {
    border-radius: 0 var(--radius-control) var(--radius-control) 0;
  }
  .segments input,
  .strings input {
    height: 1px;
    opacity: 0;
    position: absolute;
    width: 1px;
  }
  .segments input:checked + span,
  .strings input:checked + span {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
    position: relative;
  }
  input:focus-visible + span {
    outline: 3px solid var(--brass);
    outline-offset: 2px;
    position: relative;
    z-index: 1;
  }
  .strings > div {
    display: flex;
    gap: var(--space-2);
  }
  .strings span {
    border-radius: 50%;
    height: var(--target);
    width: var(--target);
  }
  .preview {
    display: grid;
    gap: var(--space-3);
    min-height: 15rem;
  }
  .preview desk-key-chart {
    height: 15rem;
  }
  .problem {
    border-left: 4px solid var(--brass);
    padding-left: var(--space-3);
  }
  h3 {
    font-size: var(--text-lead);
  }
  summary .soft {
    display: block;
    font-weight: 400;
  }
  @media (max-width: 40rem) {
    .fields {
      grid-template-columns: minmax(0, 1fr);
    }
    .segments span {
      padding-inline: var(--space-2);
    }
    .preview {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      min-height: 0;
    }
    .preview desk-key-chart {
      height: 12rem;
    }
  }
`;
