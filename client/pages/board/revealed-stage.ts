import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { explainForClass } from '../../../shared/exercise/explain.ts';
import { levelName } from '../../../shared/exercise/levels.ts';
import type { RevealView } from '../../../shared/protocol/views.ts';
import { standardGuitar, type Instrument } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import '../../fretboard/neck.ts';
import { boardStyles } from './board-styles.ts';
import { chartWidth, isLong, revealChart } from './chart-notes.ts';
import { chartStyles } from './chart-styles.ts';
import { lengthStep, placeLine, sharesOf, type RevealedStageView } from './words.ts';

type Slip = NonNullable<RevealedStageView['slip']>;

/** Whether the chart can only show an example of what is right. */
function isOneOfMany({ exercise }: RevealView): boolean {
  return exercise.kind === 'build' && exercise.voicing.kind === 'any';
}

/** The printed answer, what the class found, and the one slip worth a sentence. */
@customElement('board-revealed')
export class BoardRevealed extends LitElement {
  static override styles = [
    boardStyles,
    chartStyles,
    css`
      .found {
        font-size: calc(76 * var(--unit));
        line-height: 1.1;
      }
      .found strong {
        font-size: calc(150 * var(--unit));
        font-weight: 600;
        line-height: 0.9;
      }
      .shares {
        display: flex;
        flex-wrap: wrap;
        font-size: calc(54 * var(--unit));
        gap: 0 calc(56 * var(--unit));
      }
      .shares li {
        white-space: nowrap;
      }
      .shares strong {
        font-size: calc(92 * var(--unit));
        font-weight: 600;
      }
      .slip {
        font-size: calc(54 * var(--unit));
        max-width: 30em;
        text-wrap: pretty;
      }
      .long .found {
        font-size: calc(54 * var(--unit));
      }
      .long .found strong {
        font-size: calc(84 * var(--unit));
      }
      .long .shares strong {
        font-size: calc(64 * var(--unit));
      }
      .long .slip {
        font-size: calc(46 * var(--unit));
        max-width: none;
      }
    `,
  ];

  @property({ attribute: false }) stage: RevealedStageView | null = null;
  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property() naming: NoteNaming = 'english';
  @property({ type: Number }) leastText = 44;

  protected override willUpdate(): void {
    this.style.setProperty('--chart-width', chartWidth(this.instrument, 98, 680));
  }

  override render() {
    const { stage, naming } = this;
    if (!stage) return nothing;
    const { task, reveal, slip, harder } = stage;
    const { detail } = task.wording[naming];
    const title = (harder.length > 0 ? `${levelName(1)}: ` : '') + task.wording[naming].title;
    // A slip of another level is told by words alone: it has no place on this chart.
    const drawn = slip?.level === 1 ? slip.example : null;
    const chart = revealChart(reveal, drawn, naming);
    const long = isLong([...chart.notes.filter(({ look }) => look !== 'muted').map(({ place }) => place)]);
    return html`<div class=${long ? 'chart-stage long' : 'chart-stage'}>
      <rootcall-neck
        material="ink"
        view=${long ? 'lying' : 'upright'}
        .instrument=${this.instrument}
        .notes=${chart.notes}
        .corrections=${chart.corrections}
        .leastText=${this.leastText}
        label=${`Chart: ${title}`}
      ></rootcall-neck>
      <div class="words">
        <div>
          <h1 class=${lengthStep(title, [14, 22, 36])}>${title}</h1>
          <p class="lead soft">
            ${placeLine(reveal, naming) ?? detail}${isOneOfMany(reveal) ? ' Here is one.' : nothing}
          </p>
        </div>
        <hr class="rule" />
        <div>${this.found(stage)} ${slip === null ? nothing : this.slip(stage, slip)}</div>
      </div>
    </div>`;
  }

  private found(stage: RevealedStageView) {
    const { share, harder } = stage;
    const shares = sharesOf(stage);
    if (shares.length === 0) return html`<p class="lead">Nobody has answered this time.</p>`;
    if (harder.length === 0)
      return html`<p class="found title-face"><strong>${share.right}</strong> of ${share.of} found it</p>`;
    return html`<ul class="shares title-face">
      ${shares.map(([level, { right, of }]) => html`<li>${level} <strong>${right}</strong> of ${of}</li>`)}
    </ul>`;
  }

  private slip({ reveal, harder }: RevealedStageView, { level, example }: Slip) {
    const { exercise } = harder[level - 2]?.reveal ?? reveal;
    return html`<p class="slip">
      <b>The slip to know${level > 1 ? `, ${levelName(level).toLowerCase()} level` : ''}:</b>
      ${explainForClass(exercise, example, this.naming)}
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-revealed': BoardRevealed;
  }
}
