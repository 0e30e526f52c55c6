import { css } from 'lit';

/** Upright: words, choices, chart, bar, and what doesn't fit scrolls. Wide: the chart beside the rest. */
export const seeStyle = css`
  .see {
    display: grid;
    grid-template:
      'header' auto
      'words' auto
      'choices' auto
      'chart' minmax(0, 1fr)
      'bar' auto / minmax(0, 1fr);
    /* As high as the window, but never so low that a chart can't be read: then the page scrolls under its bar. */
    height: max(100%, 41rem);
  }
  /* Nine frets. */
  .see.map {
    height: max(100%, 50rem);
  }
  /* Twelve, along one string. */
  .see.long {
    height: max(100%, 66rem);
  }
  .see.long rootcall-neck {
    max-height: none;
  }
  header {
    grid-area: header;
  }
  .words {
    align-items: center;
    display: grid;
    gap: 0 var(--space-3);
    grid-area: words;
    grid-template-columns: minmax(0, 1fr) auto;
    padding: 0 var(--margin) var(--space-2);
  }
  .words h1 {
    line-height: 1.1;
  }
  .words h1.long {
    font-size: calc(0.77 * var(--text-title));
  }
  .words button {
    grid-column: 2;
    grid-row: 1 / span 2;
    padding-inline: var(--space-3);
    white-space: nowrap;
  }
  .choices {
    display: grid;
    gap: var(--space-2);
    grid-area: choices;
    padding: 0 var(--margin) var(--space-3);
  }
  .kinds {
    border: 0;
    display: grid;
    grid-template-columns: 3fr 4fr 3fr 3fr;
    margin: 0;
    min-width: 0;
    padding: 0;
  }
  .kinds label {
    position: relative;
  }
  .kinds input {
    cursor: pointer;
    inset: 0;
    margin: 0;
    opacity: 0;
    position: absolute;
  }
  .kinds span {
    align-items: center;
    background: var(--sheet);
    border: 1px solid var(--control);
    display: flex;
    justify-content: center;
    margin-inline-start: -1px;
    min-height: var(--target);
  }
  .kinds label:first-of-type span {
    border-radius: var(--radius-control) 0 0 var(--radius-control);
    margin-inline-start: 0;
  }
  .kinds label:last-of-type span {
    border-radius: 0 var(--radius-control) var(--radius-control) 0;
  }
  .kinds input:checked + span {
    background: var(--brass-wash);
    border-color: var(--ink);
    box-shadow: inset 0 0 0 1px var(--ink);
    position: relative;
  }
  .kinds input:focus-visible + span {
    outline: 3px solid var(--brass);
    outline-offset: 2px;
    position: relative;
  }
  .chart {
    align-content: start;
    background: var(--sheet);
    border-top: 1px solid var(--line);
    display: grid;
    gap: var(--space-2);
    grid-area: chart;
    grid-template: auto auto minmax(0, 1fr) auto auto / minmax(0, 1fr);
    min-height: 0;
    padding: var(--space-2) var(--margin) var(--space-3);
  }
  .step {
    align-items: baseline;
    display: flex;
    gap: var(--space-3);
    justify-content: space-between;
    line-height: 1.2;
  }
  .step span {
    white-space: nowrap;
  }
  .steps {
    display: grid;
    gap: var(--space-2);
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
  }
  .steps button {
    line-height: 1.1;
    padding-inline: var(--space-2);
  }
  .chart rootcall-neck {
    height: 100%;
    justify-self: center;
    max-height: 30rem;
    max-width: 26rem;
    min-height: 0;
    width: 100%;
  }
  .care {
    line-height: 1.3;
    text-wrap: pretty;
  }
  .bar {
    bottom: 0;
    grid-area: bar;
    position: sticky;
  }
  @media (max-width: 359px) {
    .see:not(.map, .long) {
      height: max(100%, 37.5rem);
    }
    .kinds span {
      font-size: var(--text-small);
    }
    .words,
    .choices {
      padding-bottom: var(--space-1);
    }
    .choices,
    .chart {
      gap: var(--space-1);
    }
    .chart {
      padding-top: var(--space-1);
    }
  }
  @media (min-aspect-ratio: 6/5) {
    .see {
      grid-template:
        'header chart' auto
        'words chart' auto
        'choices chart' auto
        '. chart' minmax(0, 1fr)
        'bar chart' auto / minmax(19rem, 2fr) minmax(0, 3fr);
      height: 100%;
    }
    .see.map,
    .see.long {
      height: 100%;
    }
    .words,
    .choices {
      padding-inline: var(--space-5);
    }
    .chart {
      border-inline-start: 1px solid var(--line);
      border-top: 0;
      grid-template: auto auto minmax(0, 1fr) auto auto / minmax(0, 1fr);
      padding: var(--space-3) calc(var(--space-5) + env(safe-area-inset-right)) var(--space-3) var(--space-5);
    }
    .chart rootcall-neck {
      align-self: center;
      max-height: 38rem;
      max-width: 30rem;
    }
    .chart rootcall-neck.lying {
      max-width: none;
    }
    .bar {
      padding-inline: var(--space-5);
    }
  }
  @media (min-aspect-ratio: 6/5) and (min-height: 600px) {
    .words {
      padding-block: var(--space-4);
    }
    .words h1 {
      font-size: 2.5rem;
    }
  }
`;
