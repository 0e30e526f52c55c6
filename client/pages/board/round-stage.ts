import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  standardGuitar,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { octave } from '../../../shared/theory/pitch.ts';
import { sign } from '../../components/signs.ts';
import '../../fretboard/neck.ts';
import { placeName } from '../../fretboard/state.ts';
import { boardStyles } from './board-styles.ts';
import { chartWidth } from './chart-notes.ts';
import { heads, mostHeads, shareBar } from './heads.ts';
import { isOrAre, lengthStep, tasksOf, timeInWords, type RoundStageView } from './words.ts';

/** What is marked on the neck, and nothing of what it sounds. */
function neckLabel(rootString: number | null, asked: Place | null): string {
  if (asked) return `The neck, with ${placeName(asked)} marked`;
  return rootString === null
    ? 'The neck'
    : `The neck, with the root string, string ${String(rootString)}, marked`;
}

/** A round before its reveal: what is asked and how many are done. The neck beside it says where strings are. */
@customElement('board-round')
export class BoardRound extends LitElement {
  static override styles = [
    boardStyles,
    css`
      :host {
        column-gap: calc(80 * var(--unit));
        display: grid;
        grid-template-columns: minmax(0, 1fr) calc(var(--chart-width, 490) * var(--unit));
        grid-template-rows: minmax(0, 1fr);
      }
      .words {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        grid-template-rows: 1fr auto;
        min-height: 0;
      }
      .task {
        align-self: center;
        display: grid;
        gap: calc(28 * var(--unit));
        grid-template-columns: minmax(0, 1fr);
      }
      .held {
        align-items: center;
        display: flex;
        font-size: var(--text-title);
        gap: calc(40 * var(--unit));
      }
      .held svg {
        color: var(--brass);
        height: 1em;
        width: 1em;
      }
      h1.second {
        font-size: calc(72 * var(--unit));
      }
      .levels {
        display: grid;
        gap: calc(20 * var(--unit));
      }
      .levels :is(h1, h2) {
        font-size: calc(58 * var(--unit));
      }
      .levels p {
        font-size: calc(40 * var(--unit));
        line-height: 1.2;
        text-wrap: pretty;
      }
      .count {
        display: grid;
        gap: calc(20 * var(--unit));
        grid-template-columns: minmax(0, 1fr);
      }
      .count strong {
        font-family: var(--face-title);
        font-size: calc(92 * var(--unit));
        font-weight: 600;
        line-height: 1;
      }
      @media (max-aspect-ratio: 1/1) {
        :host {
          grid-template-columns: minmax(0, 1fr);
          grid-template-rows: auto auto;
          row-gap: calc(48 * var(--unit));
        }
        .words {
          gap: calc(48 * var(--unit));
        }
        rootcall-neck {
          height: calc(900 * var(--unit));
          margin-inline: auto;
          width: calc(470 * var(--unit));
        }
      }
    `,
  ];

  @property({ attribute: false }) stage: RoundStageView | null = null;
  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property() naming: NoteNaming = 'english';
  @property({ type: Number }) leastText = 44;

  protected override willUpdate(): void {
    this.style.setProperty('--chart-width', chartWidth(this.instrument, 71, 490));
  }

  override render() {
    const { stage } = this;
    if (!stage) return nothing;
    const asked = this.asked;
    const isHeld = stage.kind === 'held';
    return html`<div class="words">
        <div class="task">
          ${
            isHeld
              ? html`<p class="held title-face">${sign('fermata')} Held.</p>
                  <hr class="rule" />`
              : nothing
          }
          ${stage.harder.length > 0 ? this.levels(stage) : this.only(stage)}
          ${
            isHeld || stage.seconds === null
              ? nothing
              : html`<p class="soft">Time: ${timeInWords(stage.seconds)}</p>`
          }
        </div>
        <div class="count">
          ${this.marks(stage)}
          <p class="lead">
            ${
              stage.of === 0
                ? 'Nobody is in yet'
                : html`<strong>${stage.done}</strong> of ${stage.of} ${isOrAre(stage.done)} done`
            }
          </p>
        </div>
      </div>
      <rootcall-neck
        material="ink"
        .instrument=${this.instrument}
        .window=${this.window}
        .notes=${asked ? [{ place: asked, look: 'asked' }] : []}
        .highlightString=${asked ? null : (stage.rootString as StringNumber | null)}
        .leastText=${this.leastText}
        label=${neckLabel(stage.rootString, asked)}
      ></rootcall-neck>`;
  }

  private only({ kind, task }: RoundStageView) {
    const { title, detail } = task.wording[this.naming];
    return html`<h1 class=${kind === 'held' ? 'second' : lengthStep(title, [16, 26, 40])}>${title}</h1>
      <p class="lead">${detail}</p>`;
  }

  /** All levels, none before another; once held their titles are enough. */
  private levels(stage: RoundStageView) {
    return html`<ul class="levels">
      ${tasksOf(stage).map(([level, { wording }], index) => {
        const { title, detail } = wording[this.naming];
        const heading = html`<span class="soft">${level}:</span> ${title}`;
        return html`<li>
          ${index === 0 ? html`<h1>${heading}</h1>` : html`<h2>${heading}</h2>`}
          ${stage.kind === 'held' ? nothing : html`<p>${detail}</p>`}
        </li>`;
      })}
    </ul>`;
  }

  private marks({ done, of }: RoundStageView) {
    if (of === 0) return nothing;
    return of > mostHeads ? shareBar(done, of) : heads(done, of, 14, 84);
  }

  private get asked(): Place | null {
    const { input } = this.stage?.task ?? {};
    return input?.kind === 'name' ? input.place : null;
  }

  /** The frets to the octave, from the nut unless what is asked lies higher. */
  private get window(): FretRange {
    const { fretCount } = this.instrument;
    const count = Math.min(octave, fretCount);
    const highest = this.asked?.fret ?? this.stage?.task.range?.high ?? count;
    const last = Math.min(fretCount, Math.max(count, highest));
    return { low: (last - count + 1) as Fret, high: last as Fret };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-round': BoardRound;
  }
}
