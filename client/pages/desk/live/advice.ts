import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { adviceFor, type Advice } from '../../../../shared/exercise/score.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { sign, type SignName } from '../../../components/signs.ts';
import { deskStyles } from '../desk-styles.ts';
import { figuresOf, isSettled, percent } from './figures.ts';

const words: Readonly<Record<Exclude<Advice, 'none'>, { readonly sign: SignName; readonly text: string }>> = {
  'go-on': { sign: 'next', text: 'Go on.' },
  compare: { sign: 'end-repeat', text: 'Let neighbours compare for a minute, then ask again.' },
  'show-again': { sign: 'lozenge', text: 'Show it again, then ask again.' },
  'look-at-exercise': { sign: 'lozenge', text: 'Look at the exercise itself: does it say what you mean?' },
};

/** What the share right suggests, once answers are in. Nothing happens by itself. */
@customElement('desk-advice')
export class DeskAdvice extends LitElement {
  static override styles = [
    deskStyles,
    css`
      p {
        align-items: center;
        background: var(--brass-wash);
        border-radius: var(--radius-sheet);
        display: flex;
        font-size: var(--text-lead);
        gap: var(--space-3);
        min-height: 48px;
        padding: var(--space-2) 1.25rem;
      }
      .sign {
        color: var(--brass);
      }
      @container (max-width: 48rem) {
        p {
          font-size: var(--text-body);
          padding-inline: var(--space-3);
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;

  override render() {
    return html`<div role="status">${this.line()}</div>`;
  }

  private line() {
    const { view } = this;
    if (!view || !isSettled(view)) return nothing;
    const { right, done } = figuresOf(view);
    const advice = adviceFor(right, done);
    if (advice === 'none') return nothing;
    return html`<p>
      ${sign(words[advice].sign)}
      <span><b>${percent(right, done)} % right.</b> ${words[advice].text}</span>
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-advice': DeskAdvice;
  }
}
