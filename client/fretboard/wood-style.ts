import { css } from 'lit';

export const woodStyle = css`
  .wood-neck {
    display: block;
    overflow: visible;
    font-family: var(--face-text);
    font-weight: 600;
  }
  .wood-neck text {
    text-anchor: middle;
    dominant-baseline: central;
  }
  .edge {
    stop-color: var(--wood-edge);
  }
  .wood {
    stop-color: var(--wood);
  }
  .lit {
    stop-color: var(--wood-lit);
  }
  .dark {
    stop-color: var(--wire-shade);
    stop-opacity: 0.6;
  }
  .clear {
    stop-color: var(--wire-shade);
    stop-opacity: 0;
  }
  .board,
  .head {
    stroke: var(--binding);
    stroke-width: 1.2;
    stroke-linejoin: round;
  }
  .head {
    fill: var(--wood);
  }
  .grain {
    stroke: var(--wood-edge);
    opacity: 0.28;
  }
  .grain.fair {
    stroke: var(--inlay);
    opacity: 0.07;
  }
  .inlay {
    stroke: var(--inlay);
    stroke-linecap: round;
    opacity: 0.85;
  }
  .wire-shade {
    stroke: var(--wire-shade);
    opacity: 0.75;
  }
  .wire {
    stroke: var(--wire);
    stroke-linecap: round;
  }
  .wire-light {
    stroke: var(--bone);
    opacity: 0.6;
  }
  .nut {
    fill: var(--bone);
    stroke: var(--bone-shade);
    stroke-width: 0.8;
    stroke-linejoin: round;
  }
  .string-cast {
    stroke: var(--wire-shade);
    opacity: 0.5;
  }
  .string,
  .string-core {
    stroke: var(--string);
  }
  .string-core {
    stroke: var(--string-shade);
  }
  .winding {
    stroke-dasharray: 1.25 0.95;
  }
  .open .circle {
    fill: var(--wood-edge);
    stroke: var(--string);
    transition: fill var(--state);
  }
  .open text {
    fill: var(--string);
  }
  .open.on .circle {
    fill: var(--bone);
    stroke: var(--bone);
  }
  .open.on text:not(.name) {
    fill: var(--on-bone);
  }
  .open.on .rim {
    fill: none;
    stroke: var(--sent-rim);
  }
  .fret {
    fill: var(--soft);
    font-weight: 400;
  }
  .fret.marked {
    fill: var(--ink);
    font-weight: 700;
  }
  .disc {
    animation: placed var(--state) ease-out;
  }
  .cast {
    fill: var(--wire-shade);
    opacity: 0.55;
  }
  .bone {
    fill: var(--bone);
  }
  .rim {
    fill: none;
    stroke: var(--sent-rim);
  }
  .disc .rim {
    transition:
      r var(--state),
      stroke-width var(--state);
  }
  .pin {
    fill: var(--sent-rim);
    animation: placed var(--state) ease-out;
  }
  .order {
    fill: var(--on-bone);
    font-weight: 700;
  }
  .heard {
    fill: none;
    stroke: var(--bone);
  }
  .heard.hint {
    stroke-dasharray: 3 3;
  }
  .heard.candidate {
    stroke: var(--wire);
  }
  .asked circle {
    fill: var(--wood-edge);
    stroke: var(--wire);
  }
  .asked text {
    fill: var(--bone);
    font-weight: 700;
  }
  .capo line {
    stroke-linecap: round;
  }
  .capo .pad {
    stroke: var(--wire-shade);
  }
  .capo .bar {
    stroke: var(--string-shade);
  }
  .capo .light {
    stroke: var(--string);
    opacity: 0.7;
  }
  .capo text {
    fill: var(--ink);
  }
  .finger {
    fill: none;
    stroke: var(--wire);
    stroke-width: 2.6;
    animation: placed var(--press) ease-out;
  }
  @keyframes placed {
    from {
      opacity: 0;
    }
  }
  @media (forced-colors: active) {
    .wood-neck {
      forced-color-adjust: none;
    }
  }
`;
