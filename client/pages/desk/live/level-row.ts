import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { levelName, type Level } from '../../../../shared/exercise/levels.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { circleStyles, segmentStyles } from '../maker/maker-styles.ts';
import { levelsOfRound, viewAtLevel } from './at-level.ts';
import { figuresOf } from './figures.ts';
import { currentRound } from './steps.ts';

/** The teacher looks at one level, or at all of them: null. */
export class LevelShownEvent extends Event {
  static readonly kind = 'desk-level';
  readonly level: Level | null;
  constructor(level: Level | null) {
    super(LevelShownEvent.kind);
    this.level = level;
  }
}

/** The levels side by side with what was found of each; one press looks at one alone. Nothing where there is only one. */
@customElement('desk-level-row')
export class DeskLevelRow extends LitElement {
  static override styles = [
    deskStyles,
    circleStyles,
    segmentStyles,
    css`
      .segments label {
        min-width: 0;
      }
      .segments span {
        align-content: center;
        display: grid;
        justify-content: center;
        padding: 2px;
        text-align: center;
        white-space: normal;
      }
      small {
        font-size: var(--text-small);
        font-variant-numeric: lining-nums;
        font-weight: 400;
        line-height: 1.2;
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ attribute: false }) level: Level | null = null;

  override render() {
    const { view } = this;
    const round = view && currentRound(view);
    if (!round || round.harder.length === 0) return nothing;
    return html`<fieldset class="segments">
      <legend class="visually-hidden">Level to look at</legend>
      ${[null, ...levelsOfRound(round)].map((level) => this.choice(view, level))}
    </fieldset>`;
  }

  private choice(view: DeskView, level: Level | null) {
    const { done, right } = figuresOf(level === null ? view : viewAtLevel(view, level));
    return html`<label>
      <input
        type="radio"
        name="level"
        .checked=${level === this.level}
        @change=${() => this.dispatchEvent(new LevelShownEvent(level))}
      /><span
        >${level === null ? 'All' : levelName(level)}
        <small>${done === 0 ? 'no answers' : `${String(right)} of ${String(done)} right`}</small></span
      >
    </label>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-level-row': DeskLevelRow;
  }
}
