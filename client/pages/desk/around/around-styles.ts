import { css } from 'lit';

/** The fields scroll with what is found; the way out stays in reach. */
export const aroundStyles = css`
  :host {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr) auto;
    max-height: calc(100dvh - 11rem);
  }
  .fields {
    align-content: start;
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
    margin: calc(-1 * var(--space-1));
    overflow: auto;
    padding: var(--space-1);
  }
  .front {
    align-items: end;
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-3) var(--space-5);
  }
  .pair {
    display: grid;
    flex: 1 1 17rem;
    gap: var(--space-3);
    max-width: 26rem;
  }
  .pair.named {
    grid-template-columns: minmax(5rem, 1fr) minmax(0, 2fr);
  }
  .pair:not(.named) {
    flex: 0 1 7rem;
  }
  .strings > div {
    width: calc(6 * (var(--target) + var(--space-2)));
    max-width: 100%;
  }
  .label {
    display: block;
    font-weight: 600;
    padding-bottom: var(--space-1);
  }
  .frets .segments span {
    min-height: calc(var(--target) - 2px);
  }
  .end {
    border-top: 1px solid var(--line);
    justify-content: space-between;
    padding-top: var(--space-3);
  }
  /* Where little would be left to scroll, the whole dialog does. */
  @media (max-height: 42rem) {
    :host {
      max-height: none;
    }
  }
  @media (max-width: 30rem) {
    .what .segments {
      flex-wrap: wrap;
    }
    .what .segments label {
      box-shadow: 0 -1px 0 var(--control);
      flex-basis: 30%;
    }
  }
`;

/** What is found: charts with their names, from the nut to the bridge. */
export const foundStyles = css`
  :host {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
  }
  .choices {
    max-width: 16rem;
  }
  h3 {
    font-size: var(--text-body);
  }
  h4 {
    font-size: var(--text-body);
    margin: 0;
  }
  .problem {
    border-left: 4px solid var(--brass);
    padding-left: var(--space-3);
  }
  .problem:empty {
    display: none;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1);
  }
  .buttons button {
    padding-inline: var(--space-3);
  }
  /* From the nut on the left to the bridge on the right, as a neck lies. */
  .ways {
    display: grid;
    gap: var(--space-4) var(--space-5);
    grid-template-columns: repeat(auto-fit, minmax(min(17.5rem, 100%), 1fr));
  }
  ol {
    display: grid;
    gap: 0 var(--space-5);
    grid-template-columns: repeat(auto-fill, minmax(min(17.5rem, 100%), 1fr));
  }
  li {
    align-items: center;
    border-top: 1px solid var(--line);
    display: grid;
    gap: var(--space-2) var(--space-3);
    grid-template-columns: 8.5rem minmax(0, 1fr);
    padding-block: var(--space-3);
  }
  li:has(> .lying),
  li:has(> .beside:first-child) {
    grid-template-columns: minmax(0, 1fr);
  }
  section h3 {
    padding-bottom: var(--space-2);
  }
  .upright {
    height: 9.5rem;
  }
  /* One string of it holds notes: no larger than its neighbours. */
  li > .lying {
    height: 8rem;
  }
  .beside {
    display: grid;
    gap: var(--space-2);
  }
  .further {
    border-top: 1px solid var(--line);
    display: grid;
    gap: var(--space-4) var(--space-5);
    grid-template-columns: repeat(auto-fit, minmax(min(17.5rem, 100%), 1fr));
    padding-top: var(--space-3);
  }
  .further > div {
    align-content: start;
    display: grid;
    gap: var(--space-1);
  }
  .layers {
    align-items: start;
    display: grid;
    gap: var(--space-3);
    grid-template-columns: repeat(auto-fit, minmax(10rem, 1fr));
  }
  .chords {
    align-items: start;
    display: grid;
    gap: var(--space-3);
    grid-template-columns: 1fr 2fr 1.5fr 1.25fr 1.25fr;
  }
  .settled {
    display: grid;
    gap: var(--space-1);
  }
  .range {
    display: grid;
    gap: var(--space-2);
    grid-template-columns: 1fr 1fr;
  }
  .map {
    display: grid;
    gap: var(--space-3);
  }
  .title {
    align-items: end;
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2) var(--space-5);
    justify-content: space-between;
  }
  .scroll {
    overflow-x: auto;
  }
  rootcall-chart-row {
    --chart-width: 9.5rem;
  }
  .scroll rootcall-chart {
    height: 13rem;
    min-width: 36rem;
  }
  @media (max-width: 48rem) {
    .chords {
      grid-template-columns: repeat(6, minmax(0, 1fr));
    }
    .chords > * {
      grid-column: span 3;
    }
    .chords > :nth-child(1) {
      grid-column: span 2;
    }
    .chords > :nth-child(2) {
      grid-column: span 4;
    }
  }
  @media (max-width: 30rem) {
    rootcall-chart-row {
      --chart-width: 8rem;
    }
    li:has(> .upright) {
      grid-template-columns: 7.5rem minmax(0, 1fr);
    }
    .buttons button {
      padding-inline: var(--space-2);
    }
  }
`;
