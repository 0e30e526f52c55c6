import { css } from 'lit';

/** What every element shares: text, titles, rules, buttons, fields, key caps, the focus ring. */
export const baseStyle = css`
  :host,
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  ol {
    margin: 0;
    padding: 0;
  }
  h1,
  h2,
  .figure {
    font-family: var(--face-title);
    font-weight: 600;
    line-height: 1.15;
    text-wrap: balance;
  }
  h1 {
    font-size: var(--text-title);
  }
  h2 {
    font-size: var(--text-lead);
  }
  .figure {
    font-size: var(--text-figure);
    line-height: 1;
  }
  .lead {
    font-size: var(--text-lead);
  }
  .small {
    font-size: var(--text-small);
  }
  .soft {
    color: var(--soft);
  }
  .columns {
    font-variant-numeric: tabular-nums;
  }

  /* The programme rule: thin over thick. */
  hr {
    border: solid var(--ink);
    border-width: var(--rule-thin) 0 var(--rule-thick);
    height: calc(var(--rule-thin) * 3 + var(--rule-thick));
    margin: 0;
  }

  .sheet {
    background: var(--sheet);
    border-radius: var(--radius-sheet);
    box-shadow: var(--elevation);
    padding: var(--space-4);
  }

  button,
  .button {
    align-items: center;
    background: var(--sheet);
    border: 1px solid var(--control);
    border-radius: var(--radius-control);
    color: var(--ink);
    cursor: pointer;
    display: inline-flex;
    font: inherit;
    font-weight: 600;
    gap: var(--space-2);
    justify-content: center;
    min-height: var(--target);
    padding: var(--space-2) var(--space-4);
    text-decoration: none;
    touch-action: manipulation;
    transition: background-color var(--press);
  }
  button:hover,
  .button:hover {
    border-color: var(--ink);
  }
  button:active,
  .button:active {
    background: var(--brass-wash);
  }
  /* One on each screen: the next sensible step. */
  button.primary,
  .button.primary {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--on-fill);
  }
  button.primary:active,
  .button.primary:active {
    background: var(--soft);
  }
  button:disabled,
  button[aria-disabled='true'] {
    background: none;
    border-color: var(--line);
    color: var(--soft);
    cursor: default;
  }
  .primary .soft {
    color: inherit;
    font-weight: 400;
  }

  input:not([type='checkbox'], [type='radio']),
  select,
  textarea {
    background: var(--sheet);
    border: 1px solid var(--control);
    border-radius: var(--radius-control);
    color: var(--ink);
    font: inherit;
    /* Below 16 px a phone zooms the page when the field is touched. */
    font-size: max(16px, 1em);
    min-height: var(--target);
    padding: var(--space-2) var(--space-3);
  }
  /* Its arrow is drawn here: that of some browsers is grey, and takes the room of the words. */
  select {
    appearance: none;
    background-image:
      linear-gradient(45deg, transparent 50%, currentcolor 50%),
      linear-gradient(-45deg, transparent 50%, currentcolor 50%);
    background-position:
      calc(100% - 0.9rem) 55%,
      calc(100% - 0.6rem) 55%;
    background-repeat: no-repeat;
    background-size: 0.3rem 0.3rem;
    padding-inline-end: 1.5rem;
  }
  input[aria-invalid='true'] {
    border-color: var(--rose);
    border-width: 2px;
  }
  label {
    font-weight: 600;
  }

  kbd {
    border: 1px solid currentcolor;
    border-bottom-width: 3px;
    border-radius: 5px;
    display: inline-block;
    font: inherit;
    font-size: 0.8125rem;
    font-weight: 600;
    line-height: 1.3;
    min-width: 1.75em;
    padding: 0.15em 0.4em;
    text-align: center;
  }

  :focus-visible {
    outline: 3px solid var(--brass);
    outline-offset: 2px;
  }

  .sign {
    flex: none;
    vertical-align: middle;
  }

  .visually-hidden {
    clip-path: inset(50%);
    height: 1px;
    overflow: hidden;
    position: absolute;
    white-space: nowrap;
    width: 1px;
  }

  @media (forced-colors: active) {
    button,
    .button {
      border-color: ButtonBorder;
    }
  }
`;
