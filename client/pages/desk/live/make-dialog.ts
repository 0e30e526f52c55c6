import { LitElement, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { draftOf, firstDraft, type Draft } from '../maker/draft.ts';
import '../maker/maker.ts';
import type { MadeEvent } from '../maker/maker.ts';
import { CommandEvent, PanelEvent } from './events.ts';
import { planned } from './steps.ts';

/** What the exercise is made for: asked anew, asked instead of the planned one, or shown as a chart. */
export type MakePurpose = 'make' | 'change' | 'chart';

const titles: Readonly<Record<MakePurpose, string>> = {
  make: 'Ask something on the spot',
  change: 'Change it, then ask',
  chart: 'Show a chart',
};

/** The exercise maker over the live Desk. */
@customElement('desk-make-dialog')
export class DeskMakeDialog extends LitElement {
  static override styles = deskStyles;

  @property({ attribute: false }) view: DeskView | null = null;
  @property() purpose: MakePurpose = 'make';
  @property({ type: Boolean }) hiding = false;
  @query('dialog') private dialog?: HTMLDialogElement;

  private draft: Draft | null = null;

  override firstUpdated() {
    this.dialog?.showModal();
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    this.draft ??= startOf(view, this.purpose);
    const open = view.stage === 'round' && view.rounds.at(-1)?.phase === 'open';
    return html`<dialog aria-labelledby="make-title" @close=${() => this.dispatchEvent(new PanelEvent(null))}>
      <div class="stack">
        <h2 id="make-title">${titles[this.purpose]}</h2>
        ${open ? html`<p role="status">A round is open. Hold or void it, then come back to this.</p>` : nothing}
        <desk-maker
          .from=${this.draft}
          .naming=${view.naming}
          .words=${this.purpose === 'chart' ? 'Show it' : 'Ask it now'}
          .timed=${this.purpose !== 'chart'}
          .keyHidden=${this.hiding && this.purpose !== 'chart'}
          @desk-made=${this.made}
        >
          <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
        </desk-maker>
      </div>
    </dialog>`;
  }

  private made({ exercise, seconds }: MadeEvent) {
    this.dispatchEvent(
      new CommandEvent(
        this.purpose === 'chart' ? { kind: 'show-chart', exercise } : { kind: 'ask', exercise, seconds },
      ),
    );
    this.dialog?.close();
  }
}

/** Starts from what is nearest: the planned exercise, the last one asked, or the first of all. */
function startOf(view: DeskView, purpose: MakePurpose): Draft {
  const next = planned(view);
  if (purpose === 'change' && next) return draftOf(next.exercise, next.seconds);
  const last = view.rounds.at(-1);
  return last ? draftOf(last.exercise, null) : firstDraft(view.instrument);
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-make-dialog': DeskMakeDialog;
  }
}
