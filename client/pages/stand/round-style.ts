import { css } from 'lit';

/** Upright: task, neck, bar under the thumb. Wide: task and bar in one row, and the neck lies below. */
export const roundStyle = css`
  .round {
    display: grid;
    grid-template:
      'header header' auto
      'title window' auto
      'detail detail' auto
      'neck neck' minmax(0, 1fr)
      'keys keys' auto
      'bar bar' auto / minmax(0, 1fr) auto;
    height: 100%;
  }
  header {
    grid-area: header;
  }
  /* In the header's row: the neck below needs the room. */
  .levels {
    align-self: center;
    display: flex;
    grid-area: header;
    justify-self: end;
    margin-inline-end: var(--margin);
    width: var(--levels);
  }
  .levels button {
    border-radius: 0;
    flex: 1;
    font-size: var(--text-small);
    min-height: var(--target);
    padding: 0;
  }
  .levels button:first-child {
    border-radius: var(--radius-control) 0 0 var(--radius-control);
  }
  .levels button:last-child {
    border-radius: 0 var(--radius-control) var(--radius-control) 0;
  }
  .levels button + button {
    margin-inline-start: -1px;
  }
  .with-levels {
    --levels: 12rem;
  }
  .with-levels header {
    min-height: 3.25rem;
    padding-inline-end: calc(var(--levels) + var(--margin) + var(--space-2));
  }
  .with-levels header span:not(.student) {
    display: none;
  }
  .with-levels .window::after {
    inset-block-start: -1px;
  }
  .round > .way {
    align-self: center;
    grid-area: header;
    justify-self: end;
    margin-inline-end: var(--margin);
    min-width: 0;
    padding-inline-start: var(--space-2);
    width: var(--way);
  }
  .with-ways {
    --way: 7.25rem;
  }
  .with-ways header {
    min-height: 3.25rem;
    padding-inline-end: calc(var(--way) + var(--margin) + var(--space-2));
  }
  .with-ways.with-levels header {
    padding-inline-end: calc(var(--way) + var(--levels) + var(--margin) + var(--space-4));
  }
  .round.with-levels > .way {
    margin-inline-end: calc(var(--levels) + var(--margin) + var(--space-2));
  }
  .task {
    display: contents;
  }
  .task h1 {
    align-self: center;
    grid-area: title;
    min-width: 0;
    padding-inline-start: var(--margin);
  }
  .task h1.long {
    font-size: calc(0.77 * var(--text-title));
  }
  .task p {
    grid-area: detail;
    line-height: 1.2;
    padding: 0 var(--margin) 3px;
  }
  .time {
    color: var(--ink);
    white-space: nowrap;
  }
  .window {
    align-self: center;
    grid-area: window;
    margin-inline: var(--space-2) var(--margin);
    min-height: 2.125rem;
    padding-inline: var(--space-3);
    position: relative;
    white-space: nowrap;
  }
  /* The target is larger than what is drawn: the neck below needs the room. */
  .window::after {
    content: '';
    inset: -5px;
    position: absolute;
  }
  rootcall-neck {
    grid-area: neck;
    justify-self: center;
    max-width: 27rem;
    width: calc(100% - var(--margin));
  }
  rootcall-name-keypad,
  .keys {
    grid-area: keys;
  }
  rootcall-name-keypad,
  .extras {
    padding: var(--space-2) var(--margin);
  }
  /* As high before it is loaded. */
  stand-playing:not(:defined) {
    display: block;
    min-height: 3.5rem;
  }
  rootcall-name-keypad {
    justify-self: center;
    max-width: 30rem;
    width: 100%;
  }
  .extras {
    align-items: end;
    display: flex;
    gap: var(--space-3);
    justify-content: center;
  }
  .extras button,
  .take-back {
    line-height: 1.1;
    padding-inline: var(--space-3);
  }
  .mark-root {
    flex: 1;
    max-width: 14rem;
  }
  .fingers {
    display: grid;
    gap: 2px var(--space-1);
    grid-template-columns: repeat(4, minmax(var(--target), 1fr));
  }
  .fingers span {
    color: var(--soft);
    font-size: var(--text-small);
    grid-column: 1 / -1;
    line-height: 1.1;
  }
  .fingers button {
    padding: 0;
  }
  /* Alone in their row they leave room for their words. */
  .fingers:only-child {
    align-items: center;
    grid-template-columns: auto repeat(4, minmax(var(--target), 1fr));
  }
  .fingers:only-child span {
    grid-column: auto;
    padding-inline-end: var(--space-1);
  }
  button[aria-pressed='true'],
  button[aria-pressed='true']:disabled {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
    color: var(--ink);
    font-weight: 700;
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
  .report ~ .primary {
    flex: none;
  }
  .report b {
    display: block;
    font-size: var(--text-body);
  }
  .report-sign {
    font-size: 1.25rem;
  }
  /* Levels and ways fill a row: whose Stand it is stands above them. */
  @media (max-width: 480px) and (max-aspect-ratio: 6/5) {
    .with-ways.with-levels header {
      line-height: 1.2;
      min-height: 0;
      padding-block: 2px calc(var(--target) + var(--space-1));
      padding-inline-end: var(--margin);
    }
    .with-ways.with-levels header rootcall-mark {
      font-size: var(--text-small);
    }
    .with-ways.with-levels header span:not(.student) {
      display: inline;
    }
    .with-ways.with-levels .levels,
    .round.with-ways.with-levels > .way {
      align-self: end;
      margin-block-end: 2px;
    }
    .round.with-ways.with-levels > .way {
      justify-self: start;
      margin-inline: var(--margin) 0;
    }
  }
  @media (max-width: 359px) {
    .with-levels {
      --levels: 10.5rem;
    }
    .with-ways {
      --way: 7rem;
    }
    .with-ways header span:not(.student) {
      display: none;
    }
    .bar {
      gap: var(--space-2);
      min-height: calc(3.75rem + 1px);
      padding-block: var(--space-2);
    }
    .bar button {
      min-height: var(--target);
      padding-inline: var(--space-3);
    }
    /* Four things in a row: the count goes below its word. */
    .take-back ~ .primary {
      flex-direction: column;
      gap: 0;
      line-height: 1.15;
    }
    .take-back ~ .standing {
      min-width: 0;
    }
    rootcall-name-keypad,
    .extras {
      padding-block: var(--space-1);
    }
    .extras {
      gap: var(--space-2);
    }
    .fingers {
      grid-template-columns: repeat(4, minmax(2.25rem, 1fr));
    }
  }

  @media (min-aspect-ratio: 6/5) {
    .round {
      grid-template:
        'header task window bar keys levels' auto
        'neck neck neck neck keys levels' minmax(0, 1fr) / auto minmax(0, 1fr) auto auto auto auto;
      padding: var(--space-1) calc(var(--margin) + env(safe-area-inset-right)) var(--space-2)
        calc(var(--margin) + env(safe-area-inset-left));
    }
    .round.with-keys {
      grid-template:
        'header task bar levels' auto
        'neck neck neck levels' minmax(0, 1fr)
        'keys keys keys keys' auto / auto minmax(0, 1fr) auto auto;
    }
    .levels {
      align-self: start;
      flex-direction: column;
      grid-area: levels;
      margin: var(--space-1) 0 0 var(--space-3);
      width: 4.5rem;
    }
    .levels button {
      flex: none;
    }
    .levels button:first-child {
      border-radius: var(--radius-control) var(--radius-control) 0 0;
    }
    .levels button:last-child {
      border-radius: 0 0 var(--radius-control) var(--radius-control);
    }
    .levels button + button {
      margin: -1px 0 0;
    }
    .with-levels header,
    .with-ways header,
    .with-ways.with-levels header {
      min-height: 0;
      padding-inline-end: var(--space-3);
    }
    .round > .way,
    .round.with-levels > .way {
      align-self: start;
      grid-area: keys;
      /* As deep as the bar's buttons beside it. */
      margin: var(--space-1) 0 0 var(--space-3);
      width: 7.75rem;
    }
    /* Alone it stands above the levels: the neck beside them needs the room. */
    .round.with-levels:not(:has(.keys)) > .way {
      grid-area: levels;
    }
    .with-ways:not(:has(.keys)) .levels {
      justify-self: end;
      margin-top: calc(var(--target) + var(--space-3));
    }
    .with-ways .keys {
      padding-top: calc(var(--target) + var(--space-3));
    }
    rootcall-name-keypad {
      max-width: none;
      padding: var(--space-2) 0 0;
    }
    .extras {
      align-items: stretch;
      flex-direction: column;
      padding: 0 0 0 var(--space-3);
      width: 7.5rem;
    }
    .keys {
      display: flex;
      flex-direction: column;
      gap: var(--space-3);
    }
    stand-playing:not(:defined) {
      width: 8.5rem;
    }
    .mark-root {
      flex: none;
      flex-direction: column;
      gap: 0;
      padding-inline: var(--space-2);
    }
    .fingers,
    .fingers:only-child {
      grid-template-columns: repeat(2, minmax(var(--target), 1fr));
    }
    .fingers:only-child span {
      grid-column: 1 / -1;
    }
    header {
      padding: 0 var(--space-3) 0 0;
    }
    header span:not(.student) {
      display: none;
    }
    header .student {
      max-width: 9rem;
    }
    .task {
      align-self: center;
      display: block;
      grid-area: task;
      min-width: 0;
    }
    .task h1,
    .task h1.long {
      font-size: min(var(--text-title), 1.5rem);
      line-height: 1.05;
      padding: 0;
    }
    .task p {
      font-size: var(--text-small);
      line-height: 1.15;
      padding: 2px 0 0;
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
  @media (min-aspect-ratio: 6/5) and (max-width: 960px) {
    /* The name below the mark: neither task nor bar gives way. */
    header {
      align-items: start;
      flex-direction: column;
      gap: 0;
      justify-content: center;
      line-height: 1.2;
    }
    header .student {
      margin: 0;
      max-width: 5rem;
    }
    /* Below the levels there is room for a name. */
    .with-levels header,
    .with-ways.with-levels header {
      align-self: end;
      grid-area: levels;
      justify-self: end;
      padding: 0;
      width: 4.5rem;
    }
    .with-levels header rootcall-mark {
      display: none;
    }
    .with-levels header .student {
      align-self: end;
      max-width: 100%;
    }
    .with-ways .window {
      margin-inline-end: var(--space-2);
      padding-inline: var(--space-2);
    }
    .with-ways .bar {
      gap: var(--space-2);
    }
    .with-ways .bar button {
      padding-inline: var(--space-3);
    }
    .with-ways .bar .primary {
      min-width: 7.5rem;
      padding-inline: var(--space-2);
    }
    .more {
      display: none;
    }
    /* Beside a button words are narrow: the task keeps its room. */
    .report:has(~ .primary) {
      max-width: 8.5rem;
    }
    .report ~ .primary {
      min-width: 5.5rem;
      padding-inline: var(--space-3);
    }
  }
  /* A small phone lying: task and bar would squeeze each other in one row. */
  @media (min-aspect-ratio: 6/5) and (max-width: 720px) {
    .round:not(.with-keys) {
      grid-template:
        'task window keys levels' auto
        'neck neck keys levels' minmax(0, 1fr)
        'bar bar keys levels' auto / minmax(0, 1fr) auto auto auto;
    }
    .round:not(.with-keys, .with-levels) header {
      grid-area: bar;
      justify-self: start;
      width: 5rem;
    }
    .round:not(.with-levels) header rootcall-mark {
      display: none;
    }
    .round:not(.with-keys, .with-levels) header .student {
      max-width: 100%;
    }
    .round:not(.with-keys, .with-levels) .bar {
      padding-inline-start: 5rem;
    }
    .round:not(.with-keys) .bar {
      min-height: calc(var(--target) + var(--space-1));
      padding-top: var(--space-1);
    }
    .round:not(.with-keys) .bar button {
      min-height: var(--target);
    }
    .report:has(~ .primary) {
      max-width: none;
    }
    .with-keys .bar .primary {
      min-width: 6rem;
    }
    .take-back ~ .primary {
      flex-direction: row;
      gap: var(--space-2);
    }
  }
  @media (min-aspect-ratio: 6/5) and (min-height: 600px) {
    .round {
      padding: var(--space-4) var(--space-6) var(--space-5);
    }
    .task h1,
    .task h1.long {
      font-size: 2rem;
    }
    .task p {
      font-size: var(--text-body);
    }
  }
`;
