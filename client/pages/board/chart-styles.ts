import { css } from 'lit';

/** A printed chart with words beside it, or below them where the chart has to lie. */
export const chartStyles = css`
  .chart-stage {
    column-gap: calc(88 * var(--unit));
    display: grid;
    grid-template-columns: calc(var(--chart-width, 680) * var(--unit)) minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr);
    height: 100%;
  }
  .words {
    align-content: center;
    display: grid;
    gap: calc(24 * var(--unit));
    grid-template-columns: minmax(0, 1fr);
    min-width: 0;
  }
  .words > div {
    align-content: start;
    display: grid;
    gap: calc(28 * var(--unit));
  }
  .words .rule {
    margin-block: calc(16 * var(--unit));
  }
  .chart-stage.long {
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: minmax(calc(500 * var(--unit)), 1fr) auto;
    row-gap: calc(24 * var(--unit));
  }
  .long .words {
    align-content: start;
    column-gap: calc(88 * var(--unit));
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
  }
  .long .rule {
    display: none;
  }
  .long h1 {
    font-size: calc(60 * var(--unit));
  }
  .long .lead {
    font-size: var(--text-body);
  }
  .long .words > div {
    gap: calc(12 * var(--unit));
  }
  @media (max-aspect-ratio: 1/1) {
    .chart-stage {
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: calc(820 * var(--unit)) auto;
      row-gap: calc(48 * var(--unit));
    }
    .chart-stage.long {
      grid-template-rows: calc(440 * var(--unit)) auto;
    }
    .long .words {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
