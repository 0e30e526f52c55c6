import { css } from 'lit';

/** Upright: task, neck, bar under the thumb. Wide: task and bar in one row, and the neck lies below. */
export const roundStyle = css`
  .round {
    display: grid;
    grid-template:
      'header window' auto
      'task task' auto
      'neck neck' minmax(0, 1fr)
      'bar bar' auto / minmax(0, 1fr) auto;
    height: 100%;
  }
  header {
    grid-area: header;
  }
  .task {
    grid-area: task;
    min-width: 0;
    padding: 0 var(--margin) var(--space-1);
  }
  .title {
    align-items: baseline;
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-3);
    justify-content: space-between;
  }
  .task p {
    line-height: 1.25;
  }
  .time {
    white-space: nowrap;
  }
  .window {
    align-self: center;
    grid-area: window;
    margin-inline-end: var(--margin);
    padding-inline: var(--space-3);
    white-space: nowrap;
  }
  rootcall-neck {
    grid-area: neck;
    justify-self: center;
    max-width: 27rem;
    width: calc(100% - var(--margin));
  }
  .bar {
    /* As tall with words as with buttons: the neck must not move at the hold. */
    grid-area: bar;
    min-height: calc(4.5rem + 1px);
  }
  .bar button {
    min-height: 3rem;
  }
  .bar .primary {
    flex: 1;
    white-space: nowrap;
  }
  .standing {
    align-items: center;
    color: var(--soft);
    display: grid;
    font-size: var(--text-small);
    justify-items: center;
    line-height: 1.1;
    min-width: 2.75rem;
  }
  .report {
    flex: 1;
    font-size: var(--text-small);
    line-height: 1.25;
    min-width: 0;
  }
  .report b {
    display: block;
    font-size: var(--text-body);
  }
  .report-sign {
    font-size: 1.25rem;
  }
  @media (max-width: 359px) {
    .bar {
      gap: var(--space-2);
      min-height: calc(3.75rem + 1px);
      padding-block: var(--space-2);
    }
    .bar button {
      min-height: var(--target);
      padding-inline: var(--space-3);
    }
  }

  @media (min-aspect-ratio: 6/5) {
    .round {
      grid-template:
        'header task window bar' auto
        'neck neck neck neck' minmax(0, 1fr) / auto minmax(0, 1fr) auto auto;
      padding: var(--space-1) calc(var(--margin) + env(safe-area-inset-right)) var(--space-2)
        calc(var(--margin) + env(safe-area-inset-left));
    }
    header {
      padding: 0 var(--space-3) 0 0;
    }
    header span {
      display: none;
    }
    .task {
      align-self: center;
      padding: 0;
    }
    .task h1 {
      font-size: min(var(--text-title), 1.5rem);
      line-height: 1.05;
    }
    .task p {
      font-size: var(--text-small);
      line-height: 1.15;
      margin: 0;
    }
    .bar {
      background: none;
      border: 0;
      min-height: 3.5rem;
      padding: 0;
    }
    .bar .primary {
      min-width: 9rem;
    }
    .report {
      max-width: 15rem;
    }
    rootcall-neck {
      align-self: center;
      height: 100%;
      max-height: 26rem;
      max-width: none;
      width: 100%;
    }
  }
  /* Change says the same: a second line would push the neck down. */
  @media (min-aspect-ratio: 6/5) and (max-width: 960px) {
    .more {
      display: none;
    }
  }
  @media (min-aspect-ratio: 6/5) and (min-height: 600px) {
    .round {
      padding: var(--space-4) var(--space-6) var(--space-5);
    }
    .task h1 {
      font-size: 2rem;
    }
    .task p {
      font-size: var(--text-body);
    }
  }
`;
