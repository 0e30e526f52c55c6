import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ShowView } from '../../../shared/protocol/views.ts';
import { standardGuitar, type Instrument } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import '../../components/legend.ts';
import { mutedNotes } from '../../fretboard/key-notes.ts';
import { layerLegend } from '../../fretboard/layer-legend.ts';
import '../../fretboard/neck.ts';
import { boardStyles } from './board-styles.ts';
import { chartStyles } from './chart-styles.ts';
import { chartWidth, isLong, keyChart, tapsChart, tapsWindow } from './chart-notes.ts';
import { stepText } from '../../lib/step-text.ts';
import { lengthStep } from './words.ts';

/** A chart, or the teacher's own taps, without a question. */
@customElement('board-show')
export class BoardShow extends LitElement {
  static override styles = [
    boardStyles,
    chartStyles,
    css`
      .taps {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr);
        height: 100%;
        row-gap: calc(40 * var(--unit));
      }
      rootcall-legend {
        --legend-from: start;
      }
      @media (max-aspect-ratio: 1/1) {
        .taps {
          align-content: start;
          grid-template-rows: auto calc(520 * var(--unit));
        }
      }
    `,
  ];

  @property({ attribute: false }) show: ShowView | null = null;
  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property() naming: NoteNaming = 'english';
  @property({ type: Number }) leastText = 44;

  protected override willUpdate(): void {
    this.style.setProperty('--chart-width', chartWidth(this.instrument, 98, 680));
  }

  override render() {
    const { show } = this;
    if (!show) return nothing;
    if (show.kind === 'taps')
      return html`<div class="taps">
        <h1 class="long-3">On the neck now</h1>
        <rootcall-neck
          material="ink"
          view="lying"
          .instrument=${this.instrument}
          .window=${tapsWindow(this.instrument, show.places)}
          .notes=${tapsChart(show.places)}
          .leastText=${this.leastText}
          label="Places on the neck"
        ></rootcall-neck>
      </div>`;
    const { title, detail } = show.wording[this.naming];
    const long = isLong(show.notes.map(({ place }) => place));
    const notes = [...keyChart(show.notes), ...mutedNotes(show.silent)];
    const layers = layerLegend(notes);
    return html`<div class=${long ? 'chart-stage long' : 'chart-stage'}>
      <rootcall-neck
        material="ink"
        view=${long ? 'lying' : 'upright'}
        .instrument=${this.instrument}
        .notes=${notes}
        .leastText=${this.leastText}
        label=${`Chart: ${title}`}
      ></rootcall-neck>
      <div class="words">
        <h1 class=${lengthStep(title, [14, 22, 36])}>${title}</h1>
        <p class="lead">${detail}</p>
        ${
          layers.length === 0
            ? nothing
            : html`<rootcall-legend
                .entries=${[{ sign: 'lozenge', words: 'root' }, ...layers]}
              ></rootcall-legend>`
        }
        ${show.step ? html`<p class="lead soft">${stepText(show.step)}</p>` : nothing}
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-show': BoardShow;
  }
}
