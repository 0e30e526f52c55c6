import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { browserStore } from '../../../lib/key-store.ts';
import { api, groupOfPlan, type GroupDetail, type Plan } from '../api.ts';
import { deskStyles, pageStyles } from '../desk-styles.ts';
import { dateField, dayOf } from '../group/words.ts';
import { refusalLine } from '../refusal.ts';
import { classPath, groupPath, planPath } from '../routes.ts';
import { draftEntry, forgetDraft, keepDraft, newDraft, readDraft, type Draft } from './draft.ts';
import './grid.ts';
import type { DraftEvent } from './grid.ts';
import { Reader, resultsIn } from './results.ts';

const storage = browserStore(() => localStorage);

/** Results of a quiz on paper, typed in afterwards; saved, they are a class that is over. */
@customElement('desk-paper')
export class DeskPaper extends LitElement {
  static override styles = [
    deskStyles,
    pageStyles,
    css`
      main {
        max-width: none;
      }
      .day {
        max-width: 14rem;
      }
      .said {
        max-width: 48rem;
      }
      h1 {
        margin-block: var(--space-1) var(--space-2);
      }
    `,
  ];

  @property() planId = '';
  @state() private detail: GroupDetail | null = null;
  @state() private plan: Plan | null = null;
  @state() private draft: Draft = newDraft(dateField(Date.now()));
  @state() private refusal = '';
  /** Asked once more before saving: a class can't be deleted by itself. */
  @state() private asking = false;
  @state() private busy = false;
  /** The class that the results have become. */
  @state() private saved: Saved | null = null;
  /** In the naming of the group, in which its students write. */
  private reader = new Reader('english');

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('storage', this.onStorage);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('storage', this.onStorage);
  }

  /** Not before: this module comes after its element, and with it what was set on it. */
  protected override willUpdate(properties: PropertyValues<this>) {
    if (!properties.has('planId')) return;
    this.draft = readDraft(storage, this.planId) ?? this.draft;
    void this.load();
  }

  override render() {
    const { detail, plan } = this;
    if (!detail || !plan) return html`<main>${refusalLine(this.refusal)}</main>`;
    return html`<main>
      <div class="said">
        <p>
          <a class="back" href=${planPath(plan.id)}><bdi>${plan.title}</bdi></a>
        </p>
        <h1>Results from paper</h1>
        <p class="soft">
          What each student wrote, a cell for each exercise; empty where they wrote nothing. + is right, - is
          not yet. Enter and the arrow keys go from cell to cell, and cells copied from a spreadsheet can be
          pasted.
        </p>
      </div>
      ${this.grid(detail, plan)}
    </main>`;
  }

  private grid({ group, students }: GroupDetail, plan: Plan) {
    if (plan.exercises.length === 0) return html`<p>This plan has no exercises yet.</p>`;
    if (students.length === 0)
      return html`<p>Nobody is on the register yet. <a href=${groupPath(group.id)}>To the group</a></p>`;
    return html`<section class="sheet" aria-label="Results">
        <desk-paper-grid
          .students=${students}
          .exercises=${plan.exercises}
          .draft=${this.draft}
          .reader=${this.reader}
          .naming=${group.naming}
          @desk-draft=${({ change }: DraftEvent) => this.change(change)}
        ></desk-paper-grid>
      </section>
      ${this.saving(students, plan)}`;
  }

  private saving(students: GroupDetail['students'], plan: Plan) {
    const { results, answers, unread } = resultsIn(this.draft, students, plan.exercises, this.reader);
    const today = dateField(Date.now());
    return html`<section class="stack said" aria-label="Save">
      <label class="day"
        >Day of the quiz
        <input
          type="date"
          max=${today}
          required
          .value=${live(this.draft.day)}
          @change=${(event: Event) => this.chooseDay(event, today)}
        />
      </label>
      <div role="status">
        ${unread === 0 ? nothing : html`<p>${unread === 1 ? 'One cell' : `${String(unread)} cells`} can’t be read yet.</p>`}
        ${this.saved && answers === 0 ? this.savedLine(this.saved) : nothing}
      </div>
      ${refusalLine(this.refusal)}
      ${
        this.asking
          ? html`<p role="alert">
                ${count(answers, 'answer', 'answers')} of ${count(results.length, 'student', 'students')}
                become a class of ${dayOf(timeOf(this.draft.day))} that is over. It can’t be taken back by
                itself.
              </p>
              <div class="row">
                <button class="primary" aria-disabled=${this.busy} @click=${() => this.save(plan, results)}>
                  Save the results
                </button>
                <button @click=${() => (this.asking = false)}>Type on</button>
              </div>`
          : html`<div class="row">
              <button
                class="primary"
                aria-disabled=${answers === 0 || unread > 0}
                @click=${() => (this.asking = answers > 0 && unread === 0)}
              >
                Save the results…
              </button>
              <span class="soft small">Until then they are kept on this device.</span>
            </div>`
      }
    </section>`;
  }

  private savedLine({ id, day, before }: Saved) {
    return html`<p>
      ${before ? 'They were saved at the first try; what was changed since then is not among them.' : nothing}
      Saved as the class of ${dayOf(timeOf(day))}. <a href=${classPath(id)}>Look at it</a>, or go
      ${this.detail ? html`<a href=${groupPath(this.detail.group.id)}>back to the group</a>` : nothing}.
    </p>`;
  }

  private change(change: Partial<Draft>) {
    this.draft = { ...this.draft, ...change };
    this.asking = false;
    this.refusal = '';
    keepDraft(storage, this.planId, this.draft);
  }

  /** Another window of this quiz: what is typed there is here too, so that neither writes over the other. */
  private readonly onStorage = ({ key }: StorageEvent): void => {
    if (key !== draftEntry(this.planId)) return;
    const kept = readDraft(storage, this.planId);
    this.draft = kept ?? newDraft(this.draft.day);
    this.asking = false;
    this.refusal = kept ? '' : 'These results were saved in another window.';
  };

  private chooseDay({ target }: Event, today: string) {
    if (!(target instanceof HTMLInputElement)) return;
    const { value } = target;
    if (value === '' || value > today) this.refusal = 'Choose today or an earlier day.';
    else this.change({ day: value });
    this.requestUpdate();
  }

  private async save(plan: Plan, results: Parameters<typeof api.addPaper>[1]['results']) {
    if (this.busy) return;
    this.busy = true;
    const { id, day } = this.draft;
    const today = dateField(Date.now());
    const at = day === today ? Date.now() : timeOf(day);
    const reply = await api.addPaper(plan.id, { id, revision: plan.revision, at, results });
    this.busy = false;
    this.asking = false;
    if (reply.ok) {
      forgetDraft(storage, this.planId);
      this.saved = { ...reply.value, day };
      this.draft = newDraft(day);
      this.refusal = '';
      return;
    }
    const { code, message } = reply.error;
    const isOutOfDate = code === 'plan-changed' || code === 'student-unknown';
    if (isOutOfDate) await this.load();
    this.refusal = isOutOfDate ? `${message} Rows and columns are up to date now.` : message;
  }

  private async load() {
    const reply = await groupOfPlan(this.planId);
    this.refusal = reply.ok ? '' : reply.error.message;
    if (!reply.ok) return;
    this.detail = reply.value;
    this.reader = new Reader(reply.value.group.naming);
    this.plan = reply.value.plans.find(({ id }) => id === this.planId) ?? null;
  }
}

interface Saved {
  readonly id: string;
  readonly day: string;
  readonly before: boolean;
}

/** Noon of a day, in this device's time zone. */
function timeOf(day: string): number {
  return new Date(`${day}T12:00:00`).getTime();
}

function count(n: number, one: string, many: string): string {
  return `${String(n)} ${n === 1 ? one : many}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-paper': DeskPaper;
  }
}
