import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { groupPath } from '../routes.ts';
import { spacedCode } from '../spaced-code.ts';
import '../../../components/mark.ts';
import { HideEvent, PanelEvent } from './events.ts';
import { figuresOf } from './figures.ts';
import { usualKeys, type KeySettings, type LetterAction } from './keys.ts';

/** The live Desk's top line: whose class this is, its code, who is here. */
@customElement('desk-header')
export class DeskHeader extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        align-items: center;
        border-bottom: 1px solid var(--line);
        display: flex;
        gap: var(--space-2) var(--space-5);
        min-height: 52px;
        padding: var(--space-1) var(--margin);
      }
      .mark {
        align-items: center;
        display: flex;
        font-family: var(--face-title);
        font-size: 1.35rem;
        font-weight: 600;
        gap: var(--space-2);
        min-height: 44px;
        text-decoration: none;
      }
      h1 {
        font: inherit;
      }
      .group {
        display: flex;
        gap: var(--space-1) var(--space-5);
        min-width: 0;
      }
      .group > * {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .facts {
        align-items: center;
        display: flex;
        gap: var(--space-3) var(--space-4);
        margin-left: auto;
        white-space: nowrap;
      }
      .code b {
        letter-spacing: 0.06em;
      }
      .hiding {
        background: var(--brass-wash);
        border-color: var(--ink);
      }
      nav {
        display: flex;
        gap: var(--space-2);
      }
      nav button {
        padding-inline: var(--space-3);
        white-space: nowrap;
      }
      .narrow-only {
        display: none;
      }
      button {
        min-height: 36px;
        padding-block: 2px;
      }
      @media (max-width: 74rem) {
        .school {
          display: none;
        }
        .facts {
          gap: var(--space-3);
        }
      }
      @media (max-width: 60rem) {
        :host {
          flex-wrap: wrap;
          gap: var(--space-1) var(--space-2);
          padding: var(--space-1) var(--space-3);
        }
        .mark span,
        .word,
        .wide-only {
          display: none;
        }
        .group {
          flex: 1;
          font-weight: 600;
        }
        .facts {
          flex-wrap: wrap;
          gap: var(--space-1) var(--space-3);
        }
        .narrow-only {
          display: inline-flex;
        }
        nav {
          flex-basis: 100%;
        }
        nav button {
          flex: 1 1 auto;
          min-height: 40px;
          padding-inline: var(--space-1);
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ attribute: false }) keys: KeySettings = usualKeys;
  @property({ type: Boolean }) hiding = false;
  @property({ type: Boolean }) drawerOpen = false;

  /** For when the drawer closes under the focus. */
  focusStudents() {
    this.renderRoot.querySelector<HTMLElement>('#students')?.focus();
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const { here } = figuresOf(view);
    const boards =
      view.boards === 0
        ? html`<a href=${`/board/${view.code}`} target="_blank" rel="noopener">Open the Board</a>`
        : html`<span class="soft">Board connected</span>`;
    const { letters, letterOf } = this.keys;
    const letter = (action: LetterAction) => letterOf[action].toUpperCase();
    const key = (action: LetterAction) =>
      letters ? html`<kbd class="wide-only" aria-hidden="true">${letter(action)}</kbd>` : nothing;
    return html`
      <a class="mark" href=${groupPath(view.groupId)} aria-label="Rootcall, to the group">
        <rootcall-mark></rootcall-mark><span>Rootcall</span>
      </a>
      <h1 class="group">
        <span dir="auto">${view.group}</span><span dir="auto" class="school soft">${view.school}</span>
      </h1>
      <div class="facts">
        <span class="code"
          ><span class="word">Code </span
          ><b>${spacedCode(view.code)}</b>${view.settings.locked ? ', locked' : nothing}</span
        >
        <span>${here} here</span>
        <span class="wide-only">${boards}</span>
      </div>
      <nav aria-label="Panels">
        <button class="narrow-only" @click=${() => this.dispatchEvent(new PanelEvent('plan'))}>Plan</button>
        <button
          id="students"
          aria-expanded=${this.drawerOpen}
          aria-keyshortcuts=${letters ? letter('students') : nothing}
          @click=${() => this.dispatchEvent(new PanelEvent('students'))}
        >
          Students${key('students')}
        </button>
        <button
          class=${this.hiding ? 'hiding' : ''}
          aria-keyshortcuts=${letters ? letter('hide') : nothing}
          title="Hides names and the answer key, for a shared screen"
          @click=${() => this.dispatchEvent(new HideEvent())}
        >
          ${this.hiding ? 'Show names' : 'Hide names'}${key('hide')}
        </button>
        <button @click=${() => this.dispatchEvent(new PanelEvent('class'))}>Class</button>
      </nav>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-header': DeskHeader;
  }
}
