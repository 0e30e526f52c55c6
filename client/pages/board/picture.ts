import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { assertNever } from '../../../shared/lib/assert.ts';
import type { BoardView } from '../../../shared/protocol/views.ts';
import {
  instrumentById,
  standardGuitar,
  type Instrument,
  type InstrumentId,
} from '../../../shared/theory/fretboard.ts';
import { boardStyles } from './board-styles.ts';
import './header.ts';
import './revealed-stage.ts';
import './round-stage.ts';
import './score-stage.ts';
import './show-stage.ts';
import './waiting-stage.ts';
import { announcement } from './words.ts';

function instrumentOf(id: InstrumentId): Instrument {
  return instrumentById(id) ?? standardGuitar;
}

/** The whole projected picture, from the view alone. */
@customElement('board-picture')
export class BoardPicture extends LitElement {
  static override styles = [
    boardStyles,
    css`
      :host {
        display: grid;
        /* Read by measure(). */
        font-size: calc(44 * var(--unit));
        grid-template-columns: minmax(0, 1fr);
        grid-template-rows: auto minmax(0, 1fr);
        height: 100vh;
        height: 100dvh;
        padding: calc(84 * var(--unit)) var(--margin);
        row-gap: calc(40 * var(--unit));
      }
      main {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        grid-template-rows: minmax(0, 1fr);
        min-height: 0;
      }
      @media (max-aspect-ratio: 1/1) {
        :host {
          height: auto;
          min-height: 100dvh;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: BoardView | null = null;
  /** The smallest text of a chart that has room, in px of this window: 44 of a 1920 × 1080 picture. */
  @state() private leastText = 44;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('resize', this.measure);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('resize', this.measure);
  }

  protected override firstUpdated(): void {
    this.measure();
  }

  override render() {
    const { view } = this;
    return html`${view ? html`<header><board-header .view=${view}></board-header></header>` : nothing}
      <main>${view ? this.stage(view) : nothing}</main>
      <p class="visually-hidden" role="status">${view ? announcement(view) : nothing}</p>`;
  }

  private stage({ address, code, here, instrument, naming, stage }: BoardView) {
    const { leastText } = this;
    switch (stage.kind) {
      case 'waiting':
        return html`<board-waiting .address=${address} .code=${code} .here=${here}></board-waiting>`;
      case 'show':
        return html`<board-show
          .show=${stage.show}
          .instrument=${instrumentOf(stage.show.kind === 'chart' ? stage.show.instrument : instrument)}
          .naming=${naming}
          .leastText=${leastText}
        ></board-show>`;
      case 'open':
      case 'held':
        return html`<board-round
          .stage=${stage}
          .instrument=${instrumentOf(stage.task.instrument)}
          .naming=${naming}
          .leastText=${leastText}
        ></board-round>`;
      case 'revealed':
        return html`<board-revealed
          .stage=${stage}
          .instrument=${instrumentOf(stage.task.instrument)}
          .naming=${naming}
          .leastText=${leastText}
        ></board-revealed>`;
      case 'score':
      case 'over':
        return html`<board-score .score=${stage.score} .over=${stage.kind === 'over'}></board-score>`;
      default:
        return assertNever(stage);
    }
  }

  private readonly measure = (): void => {
    this.leastText = parseFloat(getComputedStyle(this).fontSize);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'board-picture': BoardPicture;
  }
}
