import { css } from 'lit';

/** The question laid out as the Stand's rounds are; the answer as its paper, over a bar. */
export const quizStyle = css`
  :host {
    height: 100%;
  }
  /* The field stays clear of the title below it. */
  .round header {
    padding-block: var(--space-1);
  }
  .round h1 {
    padding-bottom: 2px;
  }
  header select {
    margin-inline-start: auto;
    max-width: 11rem;
    min-width: 0;
  }
  /* The select says it. */
  header .where {
    display: none;
  }
  header .count {
    flex: none;
  }
  .answered {
    display: grid;
    grid-template: minmax(0, 1fr) auto / minmax(0, 1fr);
    height: 100%;
  }
  .answered .bar {
    background: var(--sheet);
    border-top: 1px solid var(--line);
    grid-area: auto;
    padding: var(--space-3) var(--margin) calc(var(--space-3) + env(safe-area-inset-bottom));
  }
  .answered stand-paper {
    overflow-y: auto;
  }
  @media (min-aspect-ratio: 6/5) {
    header .count {
      display: block;
    }
    .answered .bar {
      justify-content: flex-end;
    }
    .answered .primary {
      flex: 0 1 20rem;
    }
  }
  /* How it is answered stands beside the neck alone: the row above it is full. */
  @media (min-aspect-ratio: 6/5) and (min-width: 721px) {
    .round:not(.with-keys) {
      grid-template:
        'header task window bar bar' auto
        'neck neck neck neck keys' minmax(0, 1fr) / auto minmax(0, 1fr) auto auto auto;
    }
  }
  @media (min-aspect-ratio: 6/5) and (max-width: 960px) {
    header select {
      max-width: 7rem;
    }
    .round header .count {
      display: none;
    }
  }
`;
