import { css, type CSSResultGroup } from 'lit';
import { baseStyle } from '../../styles/base.ts';

/** What the Desk's pages add to the base: forms, dialogs, rows, denser controls. */
export const deskStyles: CSSResultGroup = [
  baseStyle,
  css`
    :host {
      --target: 40px;
    }
    fieldset {
      border: 0;
      margin: 0;
      min-width: 0;
      padding: 0;
    }
    ul,
    ol {
      list-style: none;
    }
    legend {
      font-weight: 600;
      padding: 0 0 var(--space-1);
    }
    a {
      color: inherit;
      text-decoration-color: var(--control);
      text-underline-offset: 0.2em;
    }
    a.back {
      display: inline-block;
      font-size: var(--text-small);
      line-height: 24px;
      min-height: 24px;
    }
    summary {
      cursor: pointer;
      font-weight: 600;
      padding-block: var(--space-2);
    }
    /* What a closed part holds. */
    summary .soft {
      display: block;
      font-weight: 400;
    }
    .row {
      align-items: center;
      display: flex;
      flex-wrap: wrap;
      gap: var(--space-2) var(--space-3);
    }
    .stack {
      display: grid;
      gap: var(--space-4);
      grid-template-columns: minmax(0, 1fr);
    }
    button.plain {
      background: none;
      border-color: transparent;
      padding-inline: var(--space-2);
      text-decoration: underline;
      text-decoration-color: var(--control);
      text-underline-offset: 0.2em;
    }
    button.narrow {
      min-width: var(--target);
      padding-inline: var(--space-2);
    }
    label {
      display: grid;
      gap: var(--space-1);
    }
    label > .soft {
      font-weight: 400;
    }
    label.tick {
      align-items: center;
      column-gap: var(--space-3);
      font-weight: 400;
      grid-template-columns: auto 1fr;
      min-height: 32px;
    }
    input:not([type='checkbox'], [type='radio']),
    select,
    textarea {
      font-weight: 400;
      min-width: 0;
      padding-block: 6px;
      width: 100%;
    }
    input[type='checkbox'],
    input[type='radio'] {
      accent-color: var(--ink);
      height: 24px;
      margin: 0;
      width: 24px;
    }
    textarea {
      resize: vertical;
    }
    .refusal {
      border-left: 4px solid var(--rose);
      color: var(--rose);
      font-weight: 600;
      padding-left: var(--space-3);
    }
    .refusal:empty {
      display: none;
    }
    dialog {
      background: var(--sheet);
      border: 1px solid var(--control);
      border-radius: var(--radius-sheet);
      color: var(--ink);
      margin: auto;
      max-height: calc(100dvh - 2 * var(--space-3));
      max-width: min(48rem, calc(100vw - 2 * var(--space-2)));
      overflow: auto;
      padding: var(--space-5);
      width: 100%;
    }
    dialog::backdrop {
      background: var(--page);
      opacity: 0.85;
    }
    @media (max-width: 480px) {
      dialog {
        padding: var(--space-4) var(--space-3);
      }
    }
    @media (pointer: coarse) {
      :host {
        --target: 44px;
      }
    }
  `,
];

/** A page in one column, for everything but the live class. */
export const pageStyles = css`
  :host {
    display: block;
  }
  main {
    display: grid;
    gap: var(--space-5);
    grid-template-columns: minmax(0, 1fr);
    margin: 0 auto;
    max-width: 68rem;
    padding: var(--space-5) var(--margin) var(--space-7);
  }
  main.slim {
    max-width: 28rem;
  }
`;
