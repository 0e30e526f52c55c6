import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { sign, type SignName } from '../../../components/signs.ts';
import { deskStyles } from '../desk-styles.ts';
import { StepEvent } from './events.ts';
import { usualKeys, type KeySettings } from './keys.ts';
import { actionOf, asksAgain, nextStep, type Step } from './steps.ts';

interface Look {
  readonly step: Step;
  readonly words: string;
  readonly sign?: SignName;
}

/** The bottom bar: every step of a round, the next sensible one filled. */
@customElement('desk-bar')
export class DeskBar extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        background: var(--sheet);
        border-top: 1px solid var(--line);
        display: flex;
        gap: var(--space-3);
        padding: var(--space-3) var(--margin);
      }
      .steps {
        display: grid;
        flex: 1;
        gap: var(--space-3);
        grid-template-columns: repeat(4, minmax(min-content, 1fr)) auto auto;
      }
      button {
        font-weight: 600;
        min-height: 66px;
        padding-inline: var(--space-4);
        white-space: nowrap;
      }
      .big {
        font-family: var(--face-title);
        font-size: 1.6rem;
        gap: var(--space-4);
        justify-content: flex-start;
        padding-inline: 1.25rem;
      }
      .keys {
        display: inline-flex;
        gap: var(--space-1);
      }
      .big .keys {
        margin-left: auto;
      }
      kbd {
        font-family: var(--face-text);
      }
      svg {
        flex: none;
        height: 1.8rem;
        width: 1.8rem;
      }
      .more {
        display: none;
      }
      @media (max-width: 74rem) {
        .steps {
          gap: var(--space-2);
        }
        .big {
          font-size: 1.25rem;
          gap: var(--space-2);
          padding-inline: var(--space-3);
        }
      }
      @media (max-width: 60rem) {
        :host {
          align-items: end;
          gap: var(--space-2);
          padding: var(--space-2) var(--space-3) calc(var(--space-2) + env(safe-area-inset-bottom));
        }
        .steps {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
        .steps button {
          display: none;
        }
        .steps button.primary {
          display: inline-flex;
          grid-column: 1 / -1;
          order: 1;
        }
        .steps.all button {
          display: inline-flex;
          justify-content: flex-start;
          min-height: 52px;
        }
        .steps.all .big {
          font-size: 1.1rem;
        }
        .steps.all button.primary {
          font-size: 1.25rem;
          min-height: 66px;
        }
        .keys {
          display: none;
        }
        .more {
          display: inline-flex;
          min-width: 66px;
          padding-inline: var(--space-2);
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ attribute: false }) keys: KeySettings = usualKeys;
  /** On a narrow screen: whether the other steps are shown too. */
  @state() private all = false;

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const again = asksAgain(view);
    const looks: readonly Look[] = [
      {
        step: 'ask',
        words: again ? 'Ask again' : 'Ask',
        sign: again ? 'end-repeat' : 'start-repeat',
      },
      { step: 'hold', words: 'Hold', sign: 'fermata' },
      { step: 'reveal', words: 'Reveal', sign: 'final-barline' },
      { step: 'next', words: 'Next', sign: 'next' },
      { step: 'void', words: 'Void' },
      { step: 'undo', words: 'Undo' },
    ];
    const sensible = nextStep(view);
    return html`<div
        class=${classMap({ steps: true, all: this.all })}
        role="group"
        aria-label="Steps of the round"
      >
        ${looks.map((look) => this.button(look, view, sensible))}
      </div>
      <button class="more" aria-expanded=${this.all} @click=${() => (this.all = !this.all)}>
        ${this.all ? 'Less' : 'More'}
      </button>`;
  }

  private button({ step, words, sign: name }: Look, view: DeskView, sensible: Step | null) {
    const key = this.keys.letterOf[step].toUpperCase();
    const filled = step === sensible;
    const unavailable = actionOf(step, view).kind === 'nothing';
    return html`<button
      class=${classMap({ big: name !== undefined, primary: filled })}
      aria-disabled=${unavailable}
      aria-keyshortcuts=${this.keys.letters ? key : nothing}
      @click=${() => this.press(step, unavailable)}
    >
      ${name ? sign(name) : nothing}${words}
      <span class="keys" aria-hidden="true">
        ${this.keys.letters ? html`<kbd>${key}</kbd>` : nothing}
        ${filled && this.keys.pedal ? html`<kbd>pedal</kbd>` : nothing}
      </span>
    </button>`;
  }

  private press(step: Step, unavailable: boolean) {
    this.all = false;
    if (!unavailable) this.dispatchEvent(new StepEvent(step));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-bar': DeskBar;
  }
}
