import { css } from 'lit';

export const neckStyle = css`
  :host {
    display: block;
    min-width: 0;
    min-height: 0;
  }
  :host([hidden]) {
    display: none;
  }
  .frame {
    position: relative;
    width: 100%;
    height: 100%;
  }
  .wood-neck {
    position: absolute;
    inset: 0;
  }
  .taps {
    position: absolute;
    inset: 0;
    /* A finger on the neck plays, it doesn't scroll; two fingers may still zoom. */
    touch-action: pinch-zoom;
    -webkit-user-select: none;
    user-select: none;
    -webkit-tap-highlight-color: transparent;
  }
  [role='row'] {
    display: contents;
  }
  .cell {
    position: absolute;
    cursor: pointer;
  }
  .taps[aria-disabled='true'] .cell {
    cursor: default;
  }
  .cell:focus {
    outline: none;
  }
  .cell:focus-visible {
    border-radius: 6px;
    outline: 3px solid var(--bone);
    outline-offset: -3px;
    box-shadow: 0 0 0 2px var(--wire-shade);
  }
`;
