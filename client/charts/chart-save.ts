import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Chart } from '../../shared/exercise/chart.ts';
import { baseStyle } from '../styles/base.ts';
import { usualSettings, type ChartSettings } from './chart-marks.ts';
import { chartPng } from './chart-png.ts';
import { chartPicture, chartSvg } from './chart-svg.ts';
import { embeddedFaces } from './faces.ts';
import { fileName } from './file-name.ts';
import { printAlone } from './print-alone.ts';
import { saveFile } from './save-file.ts';

/** A small menu: the charts as a file, in one picture where there are several. */
@customElement('rootcall-chart-save')
export class ChartSave extends LitElement {
  static override readonly styles = [
    baseStyle,
    css`
      :host {
        display: inline-block;
      }
      details {
        align-items: center;
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1);
      }
      summary {
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      .choices {
        display: flex;
        flex-wrap: wrap;
        min-width: 0;
        gap: var(--space-1);
      }
      summary,
      button {
        padding-inline: var(--space-3);
      }
      .problem {
        border-left: 4px solid var(--rose);
        padding-left: var(--space-3);
      }
      .problem:empty {
        display: none;
      }
    `,
  ];

  @property({ attribute: false }) charts: readonly Chart[] = [];
  @property({ attribute: false }) settings: ChartSettings = usualSettings;
  /** What the charts are, in words: the file is called by it. */
  @property() name = '';
  @state() private problem = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    // Of other charts by now: what was opened belonged to those before.
    const details = changed.has('name') ? this.renderRoot.querySelector('details') : null;
    if (details) details.open = false;
  }

  protected override render(): TemplateResult {
    const { name } = this;
    return html`<details @keydown=${this.#onKey} @toggle=${() => (this.problem = '')}>
        <summary class="button" aria-label=${name === '' ? 'Save as' : `Save as: ${name}`}>Save as…</summary>
        <div class="choices" role="group" aria-label="Kind of file">
          <button type="button" aria-label="SVG picture" @click=${this.#asSvg}>SVG</button>
          <button type="button" aria-label="PNG picture" @click=${this.#asPng}>PNG</button>
          <button type="button" aria-label="PDF, by printing" @click=${this.#asPdf}>PDF</button>
        </div>
      </details>
      <p class="problem small" role="status">${this.problem}</p>`;
  }

  readonly #asSvg = async (): Promise<void> => {
    const text = chartSvg(this.charts, this.settings, await embeddedFaces());
    this.#keep(new Blob([text], { type: 'image/svg+xml' }), 'svg');
  };

  readonly #asPng = async (): Promise<void> => {
    const png = await chartPng(chartPicture(this.charts, this.settings));
    this.problem = png.ok ? '' : png.error;
    if (png.ok) this.#keep(png.value, 'png');
  };

  readonly #asPdf = (): void => {
    printAlone([chartPicture(this.charts, this.settings)], fileName(this.name, 'pdf').replace(/\.pdf$/, ''));
    this.#close();
  };

  #keep(file: Blob, ending: string): void {
    saveFile(this.name, ending, file);
    this.#close();
  }

  #close(): void {
    const details = this.renderRoot.querySelector('details');
    if (!details?.open) return;
    details.open = false;
    details.querySelector('summary')?.focus();
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.renderRoot.querySelector('details')?.open) return;
    // Only the menu: it may stand in a dialog.
    event.stopPropagation();
    event.preventDefault();
    this.#close();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-chart-save': ChartSave;
  }
}
