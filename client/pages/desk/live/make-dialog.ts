import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Chart } from '../../../../shared/exercise/chart.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { addToPlan } from '../api.ts';
import '../around/around.ts';
import type { ShowEvent } from '../around/events.ts';
import { deskStyles } from '../desk-styles.ts';
import type { AskEvent, TakeEvent } from '../five/events.ts';
import '../five/make-five.ts';
import { segments } from '../maker/choice-field.ts';
import { onInstrument } from '../maker/changed.ts';
import { draftOf } from '../maker/draft-of.ts';
import { firstDraft, type Draft } from '../maker/draft.ts';
import '../maker/maker.ts';
import { circleStyles, segmentStyles } from '../maker/maker-styles.ts';
import type { MadeEvent } from '../maker/maker.ts';
import { refusalLine } from '../refusal.ts';
import { CommandEvent, PanelEvent } from './events.ts';
import { harderLine } from './harder-lines.ts';
import { planned } from './steps.ts';

/** What the exercise is made for: asked anew, asked instead of the planned one, or shown as a chart. */
export type MakePurpose = 'make' | 'change' | 'chart';

const titles: Readonly<Record<MakePurpose, string>> = {
  make: 'Ask something on the spot',
  change: 'Change it, then ask',
  chart: 'Show a chart',
};

/** One by hand, several at once, or what lies round a root. */
type How = 'hand' | 'five' | 'around';

const howWords: Readonly<Record<How, string>> = {
  hand: 'By hand',
  five: 'Make me five',
  around: 'From a root',
};

/** The exercise maker over the live Desk. */
@customElement('desk-make-dialog')
export class DeskMakeDialog extends LitElement {
  static override styles = [
    deskStyles,
    circleStyles,
    segmentStyles,
    css`
      .head {
        align-items: center;
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
        justify-content: space-between;
      }
      .five {
        max-width: min(60rem, calc(100vw - 2 * var(--space-2)));
      }
      /* It grows as cards come: what stands above them keeps its place. */
      .around {
        margin-top: var(--space-3);
        max-width: min(76rem, calc(100vw - 2 * var(--space-2)));
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property() purpose: MakePurpose = 'make';
  @property({ type: Boolean }) hiding = false;
  /** An exercise to start from, instead of what is nearest. */
  @property({ attribute: false }) start: Exercise | null = null;
  @state() private how: How = 'hand';
  @state() private refusal = '';
  @query('dialog') private dialog?: HTMLDialogElement;

  private draft: Draft | null = null;

  override firstUpdated() {
    this.dialog?.showModal();
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    this.draft ??= this.start ? draftOf(this.start, null) : startOf(view, this.purpose);
    const open = view.stage === 'round' && view.rounds.at(-1)?.phase === 'open';
    return html`<dialog
      class=${this.how}
      aria-labelledby="make-title"
      @close=${() => this.dispatchEvent(new PanelEvent(null))}
    >
      <div class="stack">
        <div class="head">
          <h2 id="make-title">${this.start ? 'The question that separates them' : titles[this.purpose]}</h2>
          ${
            this.purpose === 'change' || this.start
              ? nothing
              : segments('How to make it', 'how', this.hows, this.how, (how) => (this.how = how as How))
          }
        </div>
        ${open ? html`<p role="status">A round is open. Hold or void it, then come back to this.</p>` : nothing}
        ${refusalLine(this.refusal)} ${this.othersStay(view)} ${this.content(view, this.draft)}
      </div>
    </dialog>`;
  }

  /** Five at once are there to be asked. */
  private get hows() {
    return Object.entries(howWords).filter(([how]) => this.purpose === 'make' || how !== 'five');
  }

  private content(view: DeskView, draft: Draft) {
    switch (this.how) {
      case 'hand':
        return this.maker(view, draft);
      case 'five':
        return this.five(view);
      case 'around':
        return this.around(view, draft);
    }
  }

  private around(view: DeskView, draft: Draft) {
    return html`<desk-around
      .from=${draft}
      .naming=${view.naming}
      .take=${view.plan && ((exercises: readonly Exercise[]) => this.addTo(view, exercises))}
      .asking=${true}
      .keyHidden=${this.hiding && this.purpose !== 'chart'}
      @desk-ask=${({ exercise }: AskEvent) => this.ask(exercise)}
      @desk-show=${({ charts }: ShowEvent) => this.show(charts)}
    >
      <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
    </desk-around>`;
  }

  private maker(view: DeskView, draft: Draft) {
    return html`<desk-maker
      .from=${draft}
      .ofGroup=${view.instrument}
      .naming=${view.naming}
      .words=${this.purpose === 'chart' ? 'Show it' : 'Ask it now'}
      .timed=${this.purpose !== 'chart'}
      .keyHidden=${this.hiding && this.purpose !== 'chart'}
      @desk-made=${this.made}
    >
      <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
    </desk-maker>`;
  }

  private five(view: DeskView) {
    return html`<desk-make-five
      .instrument=${view.instrument}
      .naming=${view.naming}
      .planned=${view.plan !== null}
      .asking=${true}
      .keyHidden=${this.hiding}
      @desk-ask=${({ exercise }: AskEvent) => this.ask(exercise)}
      @desk-take=${({ exercises }: TakeEvent) => this.takeIn(view, exercises)}
    >
      <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
    </desk-make-five>`;
  }

  private ask(exercise: Exercise) {
    this.dispatchEvent(new CommandEvent({ kind: 'ask', exercise, seconds: null }));
    this.dialog?.close();
  }

  private show(charts: readonly Chart[]) {
    this.dispatchEvent(new CommandEvent({ kind: 'show-charts', charts: [...charts] }));
    this.dialog?.close();
  }

  private async takeIn(view: DeskView, exercises: readonly Exercise[]) {
    if (await this.addTo(view, exercises)) this.dialog?.close();
  }

  /** The plan is saved, and taken up by the class again where it stood. */
  private async addTo({ plan }: DeskView, exercises: readonly Exercise[]): Promise<boolean> {
    if (!plan) return false;
    const reply = await addToPlan(plan.id, exercises);
    this.refusal = reply.ok ? '' : reply.error.message;
    if (reply.ok) this.dispatchEvent(new CommandEvent({ kind: 'use-plan', planId: plan.id }));
    return reply.ok;
  }

  private othersStay({ naming }: DeskView) {
    const { harder } = this;
    return harder.length === 0
      ? nothing
      : html`<div class="soft small">
          <p>This is the first level. The others are asked as they are.</p>
          ${harderLine(harder, naming)}
        </div>`;
  }

  /** A planned exercise that is changed first keeps its other levels. */
  private get harder(): readonly Exercise[] {
    const next = this.view && planned(this.view);
    return this.purpose === 'change' && !this.start ? (next?.harder ?? []) : [];
  }

  private made({ exercise, seconds }: MadeEvent) {
    this.dispatchEvent(
      new CommandEvent(
        this.purpose === 'chart'
          ? { kind: 'show-charts', charts: [exercise] }
          : { kind: 'ask', exercise, harder: [...this.harder], seconds },
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
  return last ? onInstrument(draftOf(last.exercise, null), view.instrument) : firstDraft(view.instrument);
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-make-dialog': DeskMakeDialog;
  }
}
