import { LitElement, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { api, groupOfPlan, type Group, type Plan } from './api.ts';
import './around/around.ts';
import { deskStyles, pageStyles } from './desk-styles.ts';
import { onInstrument } from './maker/changed.ts';
import { draftOf } from './maker/draft-of.ts';
import { firstDraft, type Draft } from './maker/draft.ts';
import './five/make-five.ts';
import type { TakeEvent } from './five/events.ts';
import './maker/maker.ts';
import type { MadeEvent } from './maker/maker.ts';
import { NamingHere } from './naming-here.ts';
import { planned } from './planned.ts';
import { planLine, type LineWays } from './plan-line.ts';
import { planStyles } from './plan-styles.ts';
import { refusalLine } from './refusal.ts';
import { NavigateEvent, groupPath } from './routes.ts';

/** A plan: exercises in the order in which they are to be asked. Every change is saved at once. */
@customElement('desk-plan')
export class DeskPlan extends LitElement {
  static override styles = [deskStyles, pageStyles, planStyles];

  @property() planId = '';
  @state() private group: Group | null = null;
  @state() private plan: Plan | null = null;
  @state() private refusal = '';
  @state() private said = '';
  @state() private deleting = false;
  /** The line that the maker changes; the plan's length for a new one, several; null while it is closed. */
  @state() private making: number | 'five' | 'around' | null = null;
  private readonly naming = new NamingHere(this);
  @query('dialog') private dialog?: HTMLDialogElement;

  override connectedCallback() {
    super.connectedCallback();
    void this.load();
  }

  override render() {
    const { plan, group } = this;
    if (!plan || !group) return html`<main>${refusalLine(this.refusal)}</main>`;
    const asRead = { ...group, naming: this.naming.of(group.naming) };
    return html`<main>
      <div>
        <p>
          <a class="back" href=${groupPath(group.id)}><bdi>${group.name}</bdi></a>
        </p>
        <h1 class="visually-hidden">Plan: ${plan.title}</h1>
        <label class="title">
          <span class="visually-hidden">Title of the plan</span>
          <input .value=${plan.title} maxlength="80" @change=${this.rename} />
        </label>
      </div>
      <div role="status" class="visually-hidden">${this.said}</div>
      ${refusalLine(this.refusal)}
      <section class="sheet stack">
        ${
          plan.exercises.length === 0
            ? html`<p>Nothing in it yet. Exercises are asked in the order in which they stand here.</p>`
            : html`<ol>
                ${plan.exercises.map((planned, index) =>
                  planLine(planned, index, plan.exercises.length, asRead, this.ways),
                )}
              </ol>`
        }
        <div class="row">
          <button class="primary" @click=${() => this.make(plan.exercises.length)}>Add an exercise</button>
          <button @click=${() => this.make('five')}>Make me five</button>
          <button @click=${() => this.make('around')}>From a root</button>
        </div>
      </section>
      <div class="row">
        ${
          this.deleting
            ? html`<span>Delete this plan? Classes that used it keep what was asked.</span>
                <button @click=${this.deletePlan}>Delete the plan</button>
                <button @click=${() => (this.deleting = false)}>Keep it</button>`
            : html`<button @click=${() => (this.deleting = true)}>Delete this plan</button>`
        }
      </div>
      ${this.dialogOf(plan, group)}
    </main>`;
  }

  private dialogOf(plan: Plan, group: Group) {
    switch (this.making) {
      case null:
        return nothing;
      case 'five':
        return this.five(plan, group);
      case 'around':
        return this.around(plan, group);
      default:
        return this.maker(plan, group, this.making);
    }
  }

  private maker(plan: Plan, group: Group, index: number) {
    const existing = plan.exercises[index];
    return html`<dialog aria-labelledby="making" @close=${() => (this.making = null)}>
      <div class="stack">
        <h2 id="making">${existing ? 'Change the exercise' : 'Add an exercise'}</h2>
        <desk-maker
          .from=${this.startOf(plan, group, index)}
          .ofGroup=${group.instrument}
          .naming=${this.naming.of(group.naming)}
          .words=${existing ? 'Keep the change' : 'Add to the plan'}
          .timed=${true}
          @desk-made=${(event: MadeEvent) => this.made(plan, index, event)}
        >
          <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
        </desk-maker>
      </div>
    </dialog>`;
  }

  private five(plan: Plan, group: Group) {
    return html`<dialog class="wide" aria-labelledby="making" @close=${() => (this.making = null)}>
      <div class="stack">
        <h2 id="making">Make me five</h2>
        <desk-make-five
          .instrument=${group.instrument}
          .naming=${this.naming.of(group.naming)}
          .planned=${true}
          @desk-take=${({ exercises }: TakeEvent) => this.takeIn(plan, exercises)}
        >
          <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
        </desk-make-five>
      </div>
    </dialog>`;
  }

  private around(plan: Plan, group: Group) {
    return html`<dialog class="widest" aria-labelledby="making" @close=${() => (this.making = null)}>
      <div class="stack">
        <h2 id="making">From a root</h2>
        <desk-around
          .from=${this.startOf(plan, group, plan.exercises.length)}
          .naming=${this.naming.of(group.naming)}
          .take=${(exercises: readonly Exercise[]) => this.add(plan, exercises)}
        >
          <button type="button" @click=${() => this.dialog?.close()}>Leave it</button>
        </desk-around>
      </div>
    </dialog>`;
  }

  private takeIn(plan: Plan, exercises: readonly Exercise[]) {
    this.dialog?.close();
    void this.add(plan, exercises);
  }

  private add(plan: Plan, exercises: readonly Exercise[]): Promise<boolean> {
    const added = exercises.map((exercise) => planned(exercise));
    return this.save({ ...plan, exercises: [...plan.exercises, ...added] }, 'Added to the plan.');
  }

  private readonly ways: LineWays = {
    move: (from, to) => this.move(from, to),
    change: (index) => void this.make(index),
    take: (index) => this.take(index),
  };

  private from: { readonly index: number; readonly draft: Draft } | null = null;

  /** Once for each opening: the maker keeps what the teacher does to it. A new exercise starts from the last one. */
  private startOf(plan: Plan, group: Group, index: number): Draft {
    if (this.from?.index !== index) {
      const own = plan.exercises[index];
      const last = plan.exercises.at(-1);
      const draft = own
        ? draftOf(own.exercise, own.seconds)
        : last
          ? onInstrument(draftOf(last.exercise, last.seconds), group.instrument)
          : firstDraft(group.instrument);
      this.from = { index, draft };
    }
    return this.from.draft;
  }

  private async make(index: number | 'five' | 'around') {
    this.from = null;
    this.making = index;
    await this.updateComplete;
    this.dialog?.showModal();
  }

  private made(plan: Plan, index: number, { exercise, seconds }: MadeEvent) {
    const exercises = [...plan.exercises];
    exercises[index] = { ...(exercises[index] ?? planned(exercise)), exercise, seconds };
    this.dialog?.close();
    void this.save({ ...plan, exercises }, 'Saved.');
  }

  private move(from: number, to: number) {
    if (!this.plan) return;
    const exercises = [...this.plan.exercises];
    exercises.splice(to, 0, ...exercises.splice(from, 1));
    void this.save({ ...this.plan, exercises }, `Now number ${String(to + 1)}.`);
  }

  private take(index: number) {
    if (!this.plan) return;
    const exercises = this.plan.exercises.filter((_, at) => at !== index);
    void this.save({ ...this.plan, exercises }, 'Taken out.');
  }

  private readonly rename = (event: Event): void => {
    const title = event.target instanceof HTMLInputElement ? event.target.value.trim() : '';
    if (this.plan && title !== '') void this.save({ ...this.plan, title }, 'Saved.');
  };

  /** Shows the change at once; where the server refuses it, the plan comes back as it was. Whether it is saved. */
  private async save(plan: Plan, said: string): Promise<boolean> {
    const before = this.plan;
    this.plan = plan;
    const { id, title, aim, points, exercises, revision } = plan;
    const reply = await api.changePlan(id, { title, aim, points, exercises, revision });
    if (reply.ok) this.plan = { ...plan, ...reply.value };
    this.refusal = reply.ok ? '' : reply.error.message;
    this.said = reply.ok ? said : '';
    if (!reply.ok && this.plan === plan) this.plan = before;
    return reply.ok;
  }

  private async load() {
    const reply = await groupOfPlan(this.planId);
    this.refusal = reply.ok ? '' : reply.error.message;
    if (!reply.ok) return;
    this.group = reply.value.group;
    this.plan = reply.value.plans.find((plan) => plan.id === this.planId) ?? null;
  }

  private async deletePlan() {
    const reply = await api.removePlan(this.planId);
    if (reply.ok && this.group) this.dispatchEvent(new NavigateEvent(groupPath(this.group.id)));
    else if (!reply.ok) this.refusal = reply.error.message;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan': DeskPlan;
  }
}
