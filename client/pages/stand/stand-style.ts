import { css } from 'lit';
import { baseStyle } from '../../styles/base.ts';

/** The frame of every screen of the Stand: a header, the matter, a bar under the thumb. */
export const standStyles = [
  baseStyle,
  css`
    :host {
      display: block;
      height: 100%;
      min-height: 0;
    }
    header {
      align-items: center;
      color: var(--soft);
      display: flex;
      font-size: var(--text-small);
      gap: var(--space-2);
      min-height: 2.25rem;
      min-width: 0;
      padding: var(--space-1) var(--margin) 0;
    }
    header rootcall-mark {
      font-size: 0.9375rem;
    }
    header span {
      min-width: 0;
      overflow: hidden;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    header .student {
      /* Not its inline start: that turns round with a name that is written from the right. */
      margin-left: auto;
    }
    .bar {
      align-items: center;
      background: var(--sheet);
      border-top: 1px solid var(--line);
      display: flex;
      gap: var(--space-3);
      padding: var(--space-3) var(--margin) calc(var(--space-3) + env(safe-area-inset-bottom));
    }
    .bar .sign {
      color: var(--brass);
    }
    @media (min-width: 360px) {
      header {
        min-height: 2.625rem;
      }
      header rootcall-mark {
        font-size: 1.0625rem;
      }
    }
  `,
];
