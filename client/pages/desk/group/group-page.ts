import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ReadyPlan } from '../../../../shared/plans/ready-plan.ts';
import { pointsOf } from '../../../../shared/plans/words.ts';
import type { PlanContent } from '../../../../shared/plans/plan.ts';
import { api, type Answered, type GroupDetail } from '../api.ts';
import { deskStyles, pageStyles } from '../desk-styles.ts';
import { emptyPlan, planned } from '../planned.ts';
import { NamingHere } from '../naming-here.ts';
import { fieldText, formOf, refusalLine } from '../refusal.ts';
import { NavigateEvent, classPath, homePath, planPath, handoutPath } from '../routes.ts';
import { deletedFrom, forgetDeleted } from '../plan/deleted.ts';
import { lengthWords } from '../plan/words.ts';
import { spacedCode } from '../spaced-code.ts';
import { percent } from '../live/figures.ts';
import { groupFields, settingsIn } from './group-fields.ts';
import './plan-import.ts';
import './register.ts';
import type { RegisterEvent } from './register.ts';
import './shelf.ts';
import type { TakePlanEvent } from './shelf.ts';
import { dayOf, groupLine } from './words.ts';

/** One group: its register, plans, settings and past classes, and the door to the next class. */
@customElement('desk-group')
export class DeskGroup extends LitElement {
  static override styles = [
    deskStyles,
    pageStyles,
    css`
      .open {
        align-items: end;
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr) auto;
      }
      li {
        align-items: center;
        border-top: 1px solid var(--line);
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
        justify-content: space-between;
        padding-block: var(--space-2);
      }
      .new {
        align-items: end;
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr) auto;
      }
      form.stack + .stack {
        margin-top: var(--space-4);
      }
      .columns {
        align-items: start;
        display: grid;
        gap: var(--space-5);
        grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
      }
      summary {
        cursor: pointer;
        font-weight: 600;
        padding-block: var(--space-2);
      }
      @media (max-width: 60rem) {
        .columns {
          grid-template-columns: minmax(0, 1fr);
        }
      }
      @media (max-width: 480px) {
        .open {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property() groupId = '';
  @state() private detail: GroupDetail | null = null;
  @state() private refusal = '';
  @state() private said = '';
  @state() private deleting = false;
  private readonly naming = new NamingHere(this);

  override connectedCallback() {
    super.connectedCallback();
    void this.load();
  }

  override render() {
    const { detail } = this;
    if (!detail) return html`<main>${this.refusal === '' ? nothing : refusalLine(this.refusal)}</main>`;
    const { group } = detail;
    return html`<main>
      <div>
        <p><a class="back" href=${homePath}>All groups</a></p>
        <h1 dir="auto">${group.name}</h1>
        <p class="soft">${groupLine(group, this.naming.of(group.naming))}</p>
        <div role="status" class="visually-hidden">${this.said}</div>
        ${refusalLine(this.refusal)}
      </div>
      ${this.door(detail)}
      <div class="columns">
        <section class="sheet stack">
          <h2>Register</h2>
          <desk-register .students=${detail.students} @desk-register=${this.changeRegister}></desk-register>
        </section>
        <div class="stack">${this.plans(detail)} ${this.pastClasses(detail)} ${this.settings(detail)}</div>
      </div>
    </main>`;
  }

  private door({ group, plans }: GroupDetail) {
    if (group.openClass)
      return html`<section class="sheet row">
        <a class="button primary" href=${classPath(group.openClass.id)}>Back to the class</a>
        <span>A class is open. Its code is <b>${spacedCode(group.openClass.code)}</b>.</span>
      </section>`;
    return html`<form class="sheet open" @submit=${this.openClass}>
      <label
        >Plan for this class
        <select name="plan">
          ${plans.map(
            (plan, index) => html`<option value=${plan.id} .selected=${index === 0}>${plan.title}</option>`,
          )}
          <option value="">No plan: ask on the spot</option>
        </select></label
      >
      <button class="primary">Open the class</button>
      <a href="/check">Check this network beforehand</a>
    </form>`;
  }

  private plans({ group, plans }: GroupDetail) {
    const deleted = deletedFrom(group.id);
    return html`<section class="sheet stack">
      <h2>Plans</h2>
      ${
        deleted
          ? html`<p role="status" class="row">
              <span>“<bdi>${deleted.title}</bdi>” is deleted.</span>
              <button @click=${() => this.bringBack(deleted)}>Bring it back</button>
            </p>`
          : nothing
      }
      <ul>
        ${plans.map(
          (plan) =>
            html`<li>
              <a dir="auto" href=${planPath(plan.id)}>${plan.title}</a>
              <span class="soft small">${lengthWords(plan.exercises)}</span>
            </li>`,
        )}
      </ul>
      <form class="new" @submit=${this.addPlan}>
        <label>New plan <input name="title" required maxlength="80" /></label>
        <button>Add a plan</button>
      </form>
      <p><a href=${handoutPath(group.id)}>Charts to print, without a plan</a></p>
      <details>
        <summary>Ready plans: a course from string 2</summary>
        <desk-shelf
          .instrument=${group.instrument}
          .naming=${this.naming.of(group.naming)}
          @desk-take-plan=${({ plan }: TakePlanEvent) => this.takePlan(plan)}
        ></desk-shelf>
      </details>
      <desk-plan-import .groupId=${group.id}></desk-plan-import>
    </section>`;
  }

  private pastClasses({ classes }: GroupDetail) {
    const past = classes.filter((one) => one.closedAt !== null);
    return html`<section class="sheet stack">
      <h2>Past classes</h2>
      ${past.length === 0 ? html`<p class="soft">None yet.</p>` : nothing}
      <ul>
        ${past.map((one) => {
          const right = percent(one.share.right, one.share.of);
          return html`<li>
            <span>${dayOf(one.openedAt)}</span>
            ${
              one.rounds === 0
                ? nothing
                : html`<a class="small" href=${`/charts/${one.id}`}
                    >Charts<span class="visually-hidden"> of ${dayOf(one.openedAt)}</span></a
                  >`
            }
            <span class="soft small"
              >${count(one.rounds, 'round', 'rounds')}${right === null ? '' : `, ${String(right)} % right`}</span
            >
          </li>`;
        })}
      </ul>
    </section>`;
  }

  private settings({ group }: GroupDetail) {
    return html`<section class="sheet">
      <details>
        <summary>Settings of this group</summary>
        <form class="stack" @submit=${this.saveSettings}>
          ${groupFields(group, this.naming.of(group.naming))}
          <div><button>Save the settings</button></div>
        </form>
        <div class="stack">
          <hr />
          ${
            this.deleting
              ? html`<p>
                    This deletes the register, plans, classes and all answers of <bdi>${group.name}</bdi>.
                  </p>
                  <div class="row">
                    <button @click=${this.deleteGroup}>Delete <bdi>${group.name}</bdi> for good</button>
                    <button @click=${() => (this.deleting = false)}>Keep it</button>
                  </div>`
              : html`<div><button @click=${() => (this.deleting = true)}>Delete this group</button></div>`
          }
        </div>
      </details>
    </section>`;
  }

  private async load() {
    const reply = await api.group(this.groupId);
    if (reply.ok) this.detail = reply.value;
    else this.refusal = reply.error.message;
  }

  /** Says what came of a change, and shows the group as the server has it now. */
  private async settle(reply: Awaited<Answered<object>>, said: string) {
    this.refusal = reply.ok ? '' : reply.error.message;
    this.said = reply.ok ? said : '';
    await this.load();
    return reply.ok;
  }

  private async changeRegister(event: RegisterEvent) {
    const { change } = event;
    switch (change.kind) {
      case 'add':
        return this.settle(await api.addStudents(this.groupId, change.names), 'Added to the register.');
      case 'import':
        return this.settle(await api.importStudents(this.groupId, change.students), 'Added to the register.');
      case 'change':
        return this.settle(await api.changeStudent(change.id, change.fields), 'Saved.');
      case 'merge':
        return this.settle(await api.mergeStudents(change.id, change.into), 'The two are one now.');
      case 'remove':
        return this.settle(await api.removeStudent(change.id), 'Taken off the register.');
    }
  }

  private async openClass(event: SubmitEvent) {
    const form = formOf(event);
    if (!form) return;
    const plan = fieldText(form, 'plan');
    const reply = await api.openClass(this.groupId, plan === '' ? null : plan);
    if (reply.ok) this.dispatchEvent(new NavigateEvent(classPath(reply.value.id)));
    else this.refusal = reply.error.message;
  }

  private async takePlan(plan: ReadyPlan) {
    const reply = await api.addPlan(this.groupId, {
      title: plan.title,
      aim: plan.aim,
      points: pointsOf(plan, this.detail?.group.naming ?? 'english'),
      exercises: plan.exercises.map(({ exercise, ...rest }) => planned(exercise, rest)),
    });
    if (reply.ok) this.dispatchEvent(new NavigateEvent(planPath(reply.value.id)));
    else this.refusal = reply.error.message;
  }

  private async addPlan(event: SubmitEvent) {
    const form = formOf(event);
    if (!form) return;
    const reply = await api.addPlan(this.groupId, emptyPlan(fieldText(form, 'title')));
    if (reply.ok) this.dispatchEvent(new NavigateEvent(planPath(reply.value.id)));
    else this.refusal = reply.error.message;
  }

  private async bringBack(plan: PlanContent) {
    const reply = await api.addPlan(this.groupId, plan);
    if (reply.ok) forgetDeleted();
    await this.settle(reply, `“${plan.title}” is back.`);
  }

  private async saveSettings(event: SubmitEvent) {
    const form = formOf(event);
    if (form)
      await this.settle(await api.changeGroup(this.groupId, settingsIn(form)), 'The settings are saved.');
  }

  private async deleteGroup() {
    const reply = await api.removeGroup(this.groupId);
    if (reply.ok) this.dispatchEvent(new NavigateEvent(homePath));
    else this.refusal = reply.error.message;
  }
}

function count(n: number, one: string, many: string): string {
  return `${String(n)} ${n === 1 ? one : many}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-group': DeskGroup;
  }
}
