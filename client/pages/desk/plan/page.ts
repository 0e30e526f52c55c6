import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { mostPlanned } from '../../../../shared/protocol/plans.ts';
import type { PlanContent } from '../../../../shared/plans/plan.ts';
import type { PlanEdit } from '../../../../shared/plans/edit.ts';
import { randomId } from '../../../lib/random-id.ts';
import { api, groupOfPlan, type Group } from '../api.ts';
import { deskStyles, pageStyles } from '../desk-styles.ts';
import { NamingHere } from '../naming-here.ts';
import { refusalLine } from '../refusal.ts';
import { NavigateEvent, groupPath, handoutPath, paperPath, planPath } from '../routes.ts';
import { rememberDeleted } from './deleted.ts';
import './exchange.ts';
import { planHead, planTitle, type HeadWays } from './head.ts';
import type { LineEvent } from './line-event.ts';
import './making.ts';
import type { EditsEvent, Making } from './making.ts';
import { openStore } from './open-store.ts';
import { planStyles } from './page-styles.ts';
import './parts.ts';
import type { DeskPlanParts } from './parts.ts';
import type { PlanStore, Saving } from './store.ts';
import { editsFor } from './wishes.ts';
import { lengthWords, standsAt } from './words.ts';

const savingWords: Readonly<Record<Saving, string>> = {
  saved: 'Saved',
  saving: 'Saving',
  'not-saved': 'Not saved yet. It is tried again by itself; keep this page open.',
  gone: 'This plan was deleted at another Desk.',
};

/** A plan: exercises in the order in which they are to be asked. Every change is saved by itself and can be undone. */
@customElement('desk-plan')
export class DeskPlan extends LitElement {
  static override styles = [deskStyles, pageStyles, planStyles];

  @property() planId = '';
  @state() private group: Group | null = null;
  @state() private store: PlanStore | null = null;
  @state() private refusal = '';
  @state() private said = '';
  @state() private deleting = false;
  @state() private making: Making | null = null;
  @query('desk-plan-parts') private parts?: DeskPlanParts;
  @query('button.primary') private adding?: HTMLElement;
  private readonly naming = new NamingHere(this);

  override connectedCallback() {
    super.connectedCallback();
    addEventListener('keydown', this.onKey);
    for (const kind of ['focus', 'online']) addEventListener(kind, this.look);
    addEventListener('beforeunload', this.onUnload);
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    removeEventListener('keydown', this.onKey);
    for (const kind of ['focus', 'online']) removeEventListener(kind, this.look);
    removeEventListener('beforeunload', this.onUnload);
    this.takeTyped();
  }

  protected override willUpdate(properties: PropertyValues<this>) {
    if (properties.has('planId')) void this.load();
  }

  override render() {
    const { store, group } = this;
    if (!store || !group) return html`<main>${refusalLine(this.refusal)}</main>`;
    const { plan } = store;
    const naming = this.naming.of(group.naming);
    return html`<main @desk-plan-line=${this.onLine}>
      <div class="top">
        <p>
          <a class="back" href=${groupPath(group.id)}><bdi>${group.name}</bdi></a>
        </p>
        <h1 class="visually-hidden">Plan: ${plan.title}</h1>
        ${planTitle(plan, this.headWays)}
        <div class="row">
          <span class="soft small">${lengthWords(plan.exercises)}</span>
          <a href=${handoutPath(group.id, this.planId)}>Handout</a>
          <a href=${paperPath(this.planId)}>Results from paper</a>
        </div>
      </div>
      ${this.bar(store)}
      <div role="status" class="visually-hidden">${this.said}</div>
      ${refusalLine(this.refusal)}
      <section class="sheet">${planHead(plan, this.headWays)}</section>
      <section class="sheet stack">
        ${
          plan.exercises.length === 0
            ? this.ways()
            : html`<desk-plan-parts
                  .exercises=${plan.exercises}
                  .instrument=${group.instrument}
                  .naming=${naming}
                ></desk-plan-parts>
                <div class="row">
                  <button class="primary" @click=${() => this.make({ kind: 'hand' })}>Add an exercise</button>
                  <button @click=${() => this.make({ kind: 'five' })}>Make me five</button>
                  <button @click=${() => this.make({ kind: 'around' })}>From a root</button>
                </div>`
        }
      </section>
      <section class="sheet">
        <desk-plan-exchange .plan=${plan} .group=${group}></desk-plan-exchange>
      </section>
      ${this.foot(plan)}
      ${
        this.making
          ? html`<desk-plan-making
              .making=${this.making}
              .exercises=${plan.exercises}
              .instrument=${group.instrument}
              .naming=${naming}
              @desk-edits=${(event: EditsEvent) => {
                if (!this.edit(event.words, event.edits)) event.preventDefault();
              }}
              @close=${this.endMaking}
            ></desk-plan-making>`
          : nothing
      }
    </main>`;
  }

  private bar(store: PlanStore) {
    const back = (label: string, words: string | null, act: () => void) =>
      html`<button aria-disabled=${words === null} @click=${act}>
        <span>${words === null ? label : `${label}: ${words}`}</span>
      </button>`;
    // That all is well need not be read out after each press.
    const isFine = store.saving === 'saved' || store.saving === 'saving';
    return html`<div class="bar">
      ${back('Undo', store.undoes, this.undo)} ${back('Redo', store.redoes, this.redo)}
      <p role=${isFine ? nothing : 'alert'} class=${isFine ? 'soft small' : 'refusal'}>
        ${savingWords[store.saving]}
      </p>
      ${store.saving === 'gone' ? html`<button @click=${this.postCopy}>Bring it back</button>` : nothing}
      <div role="status">${store.news === '' ? nothing : html`<p class="news">${store.news}</p>`}</div>
    </div>`;
  }

  /** How an empty plan gets its first exercises. */
  private ways() {
    const way = (words: string, more: string, making: Making) =>
      html`<button class=${making.kind === 'five' ? 'primary' : ''} @click=${() => this.make(making)}>
        <b>${words}</b><span class="soft">${more}</span>
      </button>`;
    return html`<p>Nothing in it yet. Exercises are asked in the order in which they stand here.</p>
      <div class="ways">
        ${way('Make me five', 'Say what to practise, and take what is made.', { kind: 'five' })}
        ${way('From a root', 'See what lies round a root, and take what you like.', { kind: 'around' })}
        ${way('Add an exercise', 'Make one by hand.', { kind: 'hand' })}
      </div>`;
  }

  private foot(plan: PlanContent) {
    return html`<div class="row">
      ${
        this.deleting
          ? html`<span>Delete this plan? Classes that used it keep what was asked.</span>
              <button @click=${() => this.deletePlan(plan)}>Delete the plan</button>
              <button @click=${() => (this.deleting = false)}>Keep it</button>`
          : html`<button @click=${this.postCopy}>Duplicate this plan</button>
              <button @click=${() => (this.deleting = true)}>Delete this plan</button>`
      }
    </div>`;
  }

  private readonly headWays: HeadWays = {
    write: (words, to) => this.edit(words, [{ kind: 'write', to }]),
    refuse: (sentence) => (this.refusal = sentence),
  };

  private make(making: Making) {
    this.making = making;
  }

  /** The dialog gives the focus back, unless what opened it is gone. */
  private readonly endMaking = async (): Promise<void> => {
    this.making = null;
    await this.updateComplete;
    if (!this.shadowRoot?.activeElement) this.adding?.focus();
  };

  private edit(words: string, edits: readonly PlanEdit[]): boolean {
    const { store } = this;
    if (!store) return false;
    const added = edits.filter(({ kind }) => kind === 'insert' || kind === 'duplicate').length;
    const isTooLong = store.plan.exercises.length + added > mostPlanned;
    this.refusal = isTooLong ? `A plan holds ${String(mostPlanned)} exercises at most.` : '';
    if (isTooLong || !store.edit(words, edits)) return false;
    this.said = `Done: ${words}.`;
    return true;
  }

  private readonly onLine = ({ id, wish }: LineEvent): void => {
    const { store, group } = this;
    const own = store?.plan.exercises.find((one) => one.id === id);
    if (!store || !group || !own) return;
    if (wish.kind === 'make') return this.make({ kind: 'level', id, level: wish.level });
    const index = store.plan.exercises.indexOf(own);
    const how = { naming: this.naming.of(group.naming), newId: randomId() };
    const worded = editsFor(wish, own, store.plan.exercises, how);
    if (!worded || !this.edit(worded.words, worded.edits)) return;
    switch (wish.kind) {
      case 'move':
        this.said = standsAt(store.plan.exercises, id);
        return;
      case 'step':
      case 'part':
        this.said = standsAt(store.plan.exercises, id);
        void this.focusOn(id, wish.kind === 'part' ? 'part' : wish.by === 1 ? 'down' : 'up');
        return;
      case 'take':
        void this.focusOn((store.plan.exercises[index] ?? store.plan.exercises.at(-1))?.id, 'down');
        return;
      case 'take-level':
      case 'ask-instead':
        void this.focusOn(id, 'down');
        return;
      case 'duplicate':
      case 'swap-level':
        return;
    }
  };

  /** What was pressed moved, or is gone: the focus goes to a button of this line, or to what makes the first one. */
  private async focusOn(id: string | undefined, wish: string): Promise<void> {
    await this.updateComplete;
    if (id === undefined) this.adding?.focus();
    else await this.parts?.focusOn(id, wish);
  }

  private readonly undo = (): void => {
    const words = this.store?.undo();
    if (words) this.said = `Undone: ${words}.`;
  };

  private readonly redo = (): void => {
    const words = this.store?.redo();
    if (words) this.said = `Done again: ${words}.`;
  };

  /** In a field the browser's own undo is meant, in a dialog nothing of the page behind it. */
  private readonly onKey = (event: KeyboardEvent): void => {
    const [target] = event.composedPath();
    const isTyped = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
    if (isTyped || this.making || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const isRedo = (key === 'z' && event.shiftKey) || (key === 'y' && event.ctrlKey);
    if (!isRedo && key !== 'z') return;
    event.preventDefault();
    if (isRedo) this.redo();
    else this.undo();
  };

  private readonly onUnload = (event: Event): void => {
    this.takeTyped();
    if (this.store?.saving === 'saving') event.preventDefault();
  };

  /** What is typed is taken when its field is left; here the page is left before that. */
  private takeTyped() {
    for (const field of this.renderRoot.querySelectorAll('input, textarea'))
      field.dispatchEvent(new Event('change'));
  }

  private readonly look = (): void => void this.store?.refresh();

  private async load() {
    this.store = null;
    this.deleting = false;
    const { planId } = this;
    const reply = await groupOfPlan(planId);
    if (planId !== this.planId) return;
    this.refusal = reply.ok ? '' : reply.error.message;
    if (!reply.ok) return;
    this.group = reply.value.group;
    const plan = reply.value.plans.find(({ id }) => id === planId);
    this.store = plan ? openStore(plan, () => this.requestUpdate()) : null;
  }

  /** A plan of its own with what is on the screen. */
  private readonly postCopy = async (): Promise<void> => {
    const { store, group } = this;
    if (!store || !group) return;
    const { title, exercises, ...rest } = store.plan;
    const reply = await api.addPlan(group.id, {
      ...rest,
      title: store.saving === 'gone' ? title : copyTitle(title),
      exercises: exercises.map((one) => ({ ...one, id: randomId() })),
    });
    if (reply.ok) this.dispatchEvent(new NavigateEvent(planPath(reply.value.id)));
    else this.refusal = reply.error.message;
  };

  private async deletePlan(plan: PlanContent) {
    const { group } = this;
    const reply = await api.removePlan(this.planId);
    if (!reply.ok) this.refusal = reply.error.message;
    else if (group) {
      rememberDeleted(group.id, plan);
      this.dispatchEvent(new NavigateEvent(groupPath(group.id)));
    }
  }
}

/** "Triads, copy"; a title has 80 characters at most. */
function copyTitle(title: string): string {
  return `${title.slice(0, 74)}, copy`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan': DeskPlan;
  }
}
