import { css } from 'lit';
import { homeLinkStyle } from '../../styles/reading-page.ts';
import { standStyles } from '../stand/stand-style.ts';

/** What every screen of the page shares: the Stand's frame, a header with a way home, fields under their words. */
export const exploreStyles = [
  ...standStyles,
  homeLinkStyle,
  css`
    header .where {
      border-inline-start: 1px solid var(--control);
      padding-inline-start: var(--space-2);
    }
    header .plain,
    header .end {
      margin-inline-start: auto;
    }
    .plain {
      background: none;
      border-color: transparent;
      padding-inline: var(--space-2);
      text-decoration: underline;
      text-underline-offset: 0.2em;
    }
    h1:focus {
      outline: none;
    }
    .field {
      display: grid;
      font-size: var(--text-small);
      gap: 2px;
      min-width: 0;
    }
    .field select {
      min-width: 0;
      width: 100%;
    }
    .bar button {
      line-height: 1.1;
      min-height: 3rem;
    }
    .bar .primary {
      flex: 1;
    }
    @media (max-width: 359px) {
      .bar {
        gap: var(--space-2);
        padding-block: var(--space-2) calc(var(--space-2) + env(safe-area-inset-bottom));
      }
      .bar button {
        min-height: var(--target);
        padding-inline: var(--space-3);
      }
    }
  `,
];
