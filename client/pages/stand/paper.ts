import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { standardGuitar, type Instrument } from '../../../shared/theory/fretboard.ts';
import '../../components/legend.ts';
import { sign } from '../../components/signs.ts';
import '../../fretboard/neck.ts';
import type { Chart } from './chart.ts';
import { standHeader } from './header.ts';
import { landscape, MediaQuery } from '../../lib/media-query.ts';
import { paperStyle } from './paper-style.ts';
import { standStyles } from './stand-style.ts';

/** A page to read: words first, because the explanation teaches, then the chart in print. */
@customElement('stand-paper')
export class StandPaper extends LitElement {
  static override readonly styles = [standStyles, paperStyle];

  @property() group = '';
  @property() student = '';
  @property() above = '';
  @property() heading = '';
  @property() words = '';
  /** What to try, on its own line. */
  @property() tryThis = '';
  /** What the student placed is right, or counts as right. */
  @property({ type: Boolean }) right = false;
  @property({ attribute: false }) chart: Chart | null = null;
  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property({ type: Boolean }) leftHanded = false;

  readonly #landscape = new MediaQuery(this, landscape);

  protected override render(): TemplateResult {
    const { chart } = this;
    // The words are reached by keys too: on a very low screen they scroll.
    return html`<div class="paper">
      ${standHeader(this.group, this.student)}
      <div class="words" tabindex="0">
        ${this.above === '' ? nothing : html`<p class="soft">${this.above}</p>`}
        <h1>${this.right ? sign('tick') : nothing}${this.heading}</h1>
        ${this.words === '' ? nothing : html`<p class="lead">${this.words}</p>`}
        ${this.tryThis === '' ? nothing : html`<p class="lead try">${this.tryThis}</p>`}
      </div>
      ${
        chart
          ? html`<div class="chart">
              <rootcall-neck
                material="ink"
                .label=${`Chart: ${this.above || this.heading}`}
                .instrument=${this.instrument}
                .view=${this.#landscape.now ? 'lying' : 'upright'}
                .leftHanded=${this.leftHanded}
                .window=${chart.window}
                .notes=${chart.notes}
                .corrections=${chart.corrections}
              ></rootcall-neck>
              ${
                chart.legend.length === 0
                  ? nothing
                  : html`<rootcall-legend .entries=${chart.legend}></rootcall-legend>`
              }
            </div>`
          : nothing
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'stand-paper': StandPaper;
  }
}
