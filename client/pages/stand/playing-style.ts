import { css } from 'lit';

/** One line above the bar; on a wide screen a column beside the neck. */
export const playingStyle = css`
  :host {
    align-items: center;
    display: flex;
    gap: var(--space-2);
    min-height: 3.5rem;
    padding: var(--space-1) var(--margin);
    position: relative;
  }
  /* Words alone. */
  :host([way='midi']) {
    min-height: 2.5rem;
  }
  :host([way='tap']) {
    min-height: 1.75rem;
    padding-block: 2px;
  }
  .way {
    flex: none;
    padding-inline-start: var(--space-2);
  }
  .listen {
    flex: none;
    flex-direction: column;
    font-size: var(--text-small);
    gap: 3px;
    line-height: 1;
    padding: var(--space-1) var(--space-2);
  }
  .listen[aria-checked='true'] {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
  }
  .level {
    background: var(--line);
    border-radius: 2px;
    display: block;
    height: 4px;
    overflow: hidden;
    width: 100%;
  }
  .level span {
    background: var(--ink);
    display: block;
    height: 100%;
    transform: scaleX(0);
    transform-origin: left;
    /* Ten times a second, and nothing around it is painted again. */
    will-change: transform;
  }
  .click {
    flex: none;
    padding-inline-start: var(--space-2);
  }
  .words {
    flex: 1;
    font-size: var(--text-small);
    line-height: 1.15;
    min-width: 0;
  }
  a {
    color: inherit;
    white-space: nowrap;
  }
  .why {
    background: var(--sheet);
    border-radius: var(--radius-sheet);
    box-shadow: var(--elevation);
    display: grid;
    font-size: var(--text-small);
    gap: var(--space-2);
    inset: auto var(--margin) var(--space-1);
    line-height: 1.25;
    padding: var(--space-3) var(--space-4);
    position: absolute;
    z-index: 1;
  }
  .choice {
    align-items: center;
    display: flex;
    gap: var(--space-4);
    justify-content: space-between;
  }
  .choice a {
    align-items: center;
    display: inline-flex;
    min-height: var(--target);
  }
  rootcall-switch {
    font-weight: 600;
  }
  @media (max-width: 359px) {
    :host {
      gap: var(--space-1);
      padding-block: 0;
    }
    .listen {
      padding-inline: var(--space-1);
    }
  }
  @media (min-aspect-ratio: 6/5) {
    :host {
      align-items: stretch;
      flex-direction: column;
      padding: 0 0 0 var(--space-3);
      width: 8.5rem;
    }
    .listen {
      min-height: var(--target);
    }
    .words {
      flex: none;
    }
    .click {
      width: 100%;
    }
    .why {
      inset: var(--space-2) 100% auto auto;
      /* Within the screen, whatever stands to the right of it. */
      width: min(22rem, 100vw - 16rem);
    }
  }
  /* A small phone lying. */
  @media (min-aspect-ratio: 6/5) and (max-height: 359px) {
    .why {
      inset-block-start: -4rem;
    }
  }
`;
