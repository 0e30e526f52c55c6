import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Fret, FretRange } from '../../../../shared/theory/fretboard.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import type { DeskRoundView, DeskView } from '../../../../shared/protocol/views.ts';
import '../../../components/legend.ts';
import { slurs } from '../../../fretboard/key-notes.ts';
import '../../../fretboard/neck.ts';
import { MediaQuery } from '../../../lib/media-query.ts';
import { deskStyles } from '../desk-styles.ts';
import { neckOf } from './answer-text.ts';
import { figuresOf } from './figures.ts';
import { commonSlip, heatMap, partlyShown } from './slips.ts';
import { currentRound } from './steps.ts';

function partlyText(count: number): string {
  return `${String(count)} played: only ${count === 1 ? 'its' : 'their'} taps are here`;
}

/** The frets that the map shows at least, so that it does not jump while answers come in. */
const usualLast = 12;

/** Everybody's answers on one neck, counted in numbers, with a slur from the commonest slip to the right place. */
@customElement('desk-heat-map')
export class DeskHeatMap extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
      }
      section {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
        grid-template-rows: auto minmax(0, 1fr);
        height: 100%;
      }
      header {
        align-items: center;
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-5);
        justify-content: space-between;
      }
      h2 {
        font-family: var(--face-text);
        font-size: var(--text-body);
      }
      /* The map takes what room is left and never asks for more. */
      .map {
        min-height: 8.5rem;
        position: relative;
      }
      rootcall-neck {
        inset: 0;
        position: absolute;
      }
      @media (min-width: 60.01rem) and (max-height: 52rem) {
        .sheet {
          gap: var(--space-1);
          padding-block: var(--space-2);
        }
        .map {
          min-height: 7rem;
        }
      }
      @media (max-width: 60rem) {
        .sheet {
          padding: var(--space-3) var(--space-2);
        }
        .map {
          min-height: 0;
        }
        rootcall-neck {
          position: static;
        }
        .upright {
          height: 42rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ type: Boolean }) covered = false;

  /** On a phone a lying neck leaves no room for numbers. */
  private readonly phone = new MediaQuery(this, '(max-width: 30rem)');

  override render() {
    const { view } = this;
    const round = view && currentRound(view);
    if (!round) return nothing;
    const partly = partlyShown(view);
    return html`<section class="sheet" aria-label="Where the answers lie">
      <header>
        <h2>Where the answers lie</h2>
        ${
          this.covered
            ? nothing
            : html`${partly === 0 ? nothing : html`<p class="soft small">${partlyText(partly)}</p>`}<rootcall-legend
                  .entries=${[
                    round.harder.length > 0
                      ? { sign: 'disc', words: 'all levels; numbers count answers' }
                      : { sign: 'ring', words: 'the answer key; numbers count answers' },
                  ]}
                ></rootcall-legend>`
        }
      </header>
      ${this.covered ? html`<p class="soft">Hidden until the reveal.</p>` : this.map(view, round)}
    </section>`;
  }

  private map(view: DeskView, round: DeskRoundView) {
    const heat = heatMap(view);
    const slip = commonSlip(view);
    const neck = neckOf(round.exercise);
    const last = Math.max(usualLast, ...heat.map(({ place }) => place.fret));
    const window: FretRange = { low: 1 as Fret, high: Math.min(last, neck.fretCount) as Fret };
    const { done, right } = figuresOf(view);
    const lies = this.phone.now ? 'upright' : 'lying';
    return html`<div class="map">
      <rootcall-neck
        class=${lies}
        material="ink"
        .view=${lies}
        .instrument=${neck}
        .window=${window}
        .heat=${heat}
        .corrections=${slip && round.harder.length === 0 ? slurs(slip.corrections, answerKey(round.exercise)) : []}
        .label=${`Answers on the neck: ${String(done)} in, ${String(right)} right`}
      ></rootcall-neck>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-heat-map': DeskHeatMap;
  }
}
