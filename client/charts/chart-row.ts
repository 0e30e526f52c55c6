import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { chartNotes, type Chart } from '../../shared/exercise/chart.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { Staged } from '../lib/staged.ts';
import { baseStyle } from '../styles/base.ts';
import './chart.ts';
import { usualSettings, type ChartSettings } from './chart-marks.ts';
import { chartTitle } from './chart-words.ts';
import { drawnCharts, type DrawnChart } from './drawn.ts';

/**
 * Charts in a row, such as the chords of a progression: a title over each, and all with as many frets, so that they can
 * be compared. What belongs to one of them stands below it, in the slots `below-0`, `below-1` and so on.
 */
@customElement('rootcall-chart-row')
export class ChartRow extends LitElement {
  static override readonly styles = [
    baseStyle,
    css`
      :host {
        display: block;
      }
      ol {
        align-items: start;
        display: grid;
        gap: var(--space-4) var(--space-3);
        grid-template-columns: repeat(auto-fill, minmax(min(var(--chart-width, 9rem), 100%), 1fr));
        list-style: none;
      }
      ol.lying {
        grid-template-columns: minmax(0, 1fr);
      }
      li {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
      }
      h3 {
        font-size: var(--text-body);
        text-align: center;
      }
    `,
  ];

  @property({ attribute: false }) charts: readonly Chart[] = [];
  /** The charts' notes, where they are known already. */
  @property({ attribute: false }) keys: readonly (readonly KeyNote[])[] | null = null;
  /** In place of the charts' own titles. */
  @property({ attribute: false }) titles: readonly string[] = [];
  @property({ attribute: false }) settings: ChartSettings = usualSettings;
  /** What they are together, for whoever hears them. */
  @property() label = 'Charts in a row';

  readonly #staged = new Staged(this);
  #drawn: readonly DrawnChart[] = [];

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { charts, keys, settings } = this;
    if (!changed.has('charts') && !changed.has('keys') && !changed.has('settings')) return;
    if (changed.has('charts')) this.#staged.start(charts.length);
    this.#drawn = charts.length === 0 ? [] : drawnCharts(charts, settings, keys ?? charts.map(chartNotes));
  }

  protected override render(): TemplateResult | typeof nothing {
    const { titles } = this;
    const drawn = this.#drawn;
    if (drawn.length === 0) return nothing;
    const { marks, naming, leftHanded, tab } = this.settings;
    return html`<ol aria-label=${this.label} class=${drawn[0]?.view ?? ''}>
      ${drawn.map(({ chart, key, view, window, rows }, index) => {
        const title = titles[index] ?? chartTitle(chart, naming);
        return html`<li>
          <h3>${title}</h3>
          ${
            this.#staged.has(index)
              ? html`<rootcall-chart
                  .chart=${chart}
                  .key=${key}
                  .view=${view}
                  .window=${window}
                  .rows=${rows}
                  .marks=${marks}
                  .naming=${naming}
                  .leftHanded=${leftHanded}
                  .tab=${tab}
                  .label=${`Chart: ${chartTitle(chart, naming)}`}
                ></rootcall-chart>`
              : nothing
          }
          <slot name=${`below-${String(index)}`}></slot>
        </li>`;
      })}
    </ol>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-chart-row': ChartRow;
  }
}
