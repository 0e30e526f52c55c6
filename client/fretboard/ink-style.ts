import { css } from 'lit';

export const inkStyle = css`
  .chart {
    display: block;
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    overflow: visible;
    font-family: var(--face-text);
    font-weight: 600;
    --paper: var(--chart-paper, var(--sheet));
  }
  .chart text {
    text-anchor: middle;
    dominant-baseline: central;
    fill: var(--ink);
  }
  .chart .ink {
    stroke: var(--ink);
    stroke-linecap: square;
  }
  .chart .nut-bar {
    stroke-linecap: butt;
  }
  .band {
    stroke: var(--brass-wash);
  }
  .brass-fill {
    fill: var(--brass);
  }
  .chart .capo {
    stroke: var(--ink);
    stroke-linecap: round;
  }
  .digit-ring {
    fill: none;
    stroke: var(--control);
  }
  .chart .digit,
  .chart .gutter {
    fill: var(--soft);
  }
  .chart .digit.lit {
    fill: var(--on-fill);
    font-weight: 700;
  }
  .chart .gutter {
    font-weight: 400;
  }
  .chart .gutter.marked {
    fill: var(--ink);
    font-weight: 700;
  }
  .chart .ends {
    text-anchor: end;
  }
  .chart .begins {
    text-anchor: start;
  }
  .filled {
    fill: var(--ink);
  }
  .chart .inside {
    fill: var(--on-fill);
    font-weight: 700;
  }
  .chart .plain {
    font-weight: 700;
  }
  /* In the string's and wire's way, so a rim of paper keeps it clear. */
  .chart .visits {
    font-weight: 700;
    paint-order: stroke;
    stroke: var(--paper);
    stroke-linejoin: round;
    stroke-width: 5px;
    text-anchor: start;
  }
  .optional,
  .sounding {
    fill: var(--paper);
    stroke: var(--ink);
  }
  .optional {
    stroke-dasharray: 4 3;
  }
  .bare {
    fill: var(--paper);
  }
  .expected {
    fill: var(--paper);
    stroke: var(--felt);
  }
  .chart .felt {
    fill: var(--felt);
    font-weight: 700;
  }
  .chart .asked {
    fill: var(--brass-wash);
    stroke: var(--brass);
  }
  .slip {
    fill: var(--paper);
    stroke: var(--rose);
  }
  .cross {
    fill: none;
    stroke: var(--ink);
    stroke-linecap: round;
  }
  .slur {
    fill: none;
    stroke: var(--rose);
    stroke-linecap: round;
  }
  .slur-head {
    fill: var(--rose);
  }
  .heat {
    stroke: var(--ink);
  }
  .heat-1 {
    fill: var(--heat-1);
  }
  .heat-2 {
    fill: var(--heat-2);
  }
  .heat-3 {
    fill: var(--heat-3);
  }
  .heat-4 {
    fill: var(--heat-4);
  }
  .chart .on-heat-1 {
    fill: var(--on-heat-1);
  }
  .chart .on-heat-2 {
    fill: var(--on-heat-2);
  }
  .chart .on-heat-3 {
    fill: var(--on-heat-3);
  }
  .chart .on-heat-4 {
    fill: var(--on-heat-4);
  }
  .arriving .chart {
    animation: printed var(--crossfade) ease-out;
  }
  .arriving .slur {
    stroke-dasharray: 1;
    animation: drawn var(--slur) var(--crossfade) ease-out backwards;
  }
  .arriving .slur-head {
    animation: printed var(--press) calc(var(--crossfade) + var(--slur)) backwards;
  }
  @keyframes printed {
    from {
      opacity: 0;
    }
  }
  @keyframes drawn {
    from {
      stroke-dashoffset: 1;
    }
  }
  @media (forced-colors: active) {
    .chart {
      forced-color-adjust: none;
      background: var(--paper);
    }
  }
`;
