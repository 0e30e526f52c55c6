import { css } from 'lit';
import { baseStyle } from '../../styles/base.ts';

/** What all stages of the Board share. Every size is a multiple of `--unit`, 1 px of a 1920 × 1080 picture. */
export const boardStyles = [
  baseStyle,
  css`
    :host {
      color: var(--ink);
      display: block;
      font-family: var(--face-text);
      font-size: var(--text-body);
      font-weight: var(--weight-text);
      line-height: 1.3;
      min-height: 0;
      min-width: 0;
    }
    ul {
      list-style: none;
    }
    .title-face {
      font-family: var(--face-title);
      font-weight: 600;
      line-height: 1.12;
    }
    h1 {
      letter-spacing: -0.01em;
      line-height: 1.12;
      overflow-wrap: anywhere;
    }
    h1.long-1 {
      font-size: calc(104 * var(--unit));
    }
    h1.long-2 {
      font-size: calc(84 * var(--unit));
    }
    h1.long-3 {
      font-size: calc(64 * var(--unit));
    }
    .rule {
      border-width: calc(2 * var(--unit)) 0 calc(6 * var(--unit));
      height: calc(12 * var(--unit));
      width: 100%;
    }
    .share-bar {
      display: block;
      width: 100%;
    }
    .share-bar .rail {
      fill: none;
      stroke: var(--control);
      stroke-width: 1.5px;
    }
    .share-bar .part {
      fill: var(--ink);
      transition: width var(--count);
    }
    .lead {
      text-wrap: pretty;
    }
    .nowrap {
      white-space: nowrap;
    }
  `,
];
