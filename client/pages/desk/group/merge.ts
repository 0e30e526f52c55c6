import { LitElement, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Student } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { fieldText, formOf } from '../refusal.ts';

/** Two lines of the register are one person: the first leaves it. */
export class MergeEvent extends Event {
  static readonly kind = 'desk-merge';
  readonly id: string;
  readonly into: string;
  constructor(id: string, into: string) {
    super(MergeEvent.kind);
    this.id = id;
    this.into = into;
  }
}

/** Asks which two, and once more before it is done: it can't be undone. */
@customElement('desk-merge')
export class DeskMerge extends LitElement {
  static override styles = [deskStyles];

  @property({ attribute: false }) students: readonly Student[] = [];
  @state() private pair: readonly [Student, Student] | null = null;

  override render() {
    if (this.pair) return this.question(...this.pair);
    return html`<form class="stack" @submit=${this.choose}>
      <label
        >Leaves the register
        <select name="from" required>
          ${this.options()}
        </select></label
      >
      <label
        >Stays, and gets the answers
        <select name="into" required>
          ${this.options()}
        </select></label
      >
      <div><button>Make them one…</button></div>
    </form>`;
  }

  private options() {
    return html`<option value=""></option>
      ${this.students.map(({ id, name }) => html`<option value=${id} dir="auto">${name}</option>`)}`;
  }

  private question(from: Student, into: Student) {
    return html`<div class="stack">
      <p role="alert">
        All answers of <bdi>${from.name}</bdi> go to <bdi>${into.name}</bdi>, and <bdi>${from.name}</bdi>
        leaves the register. Where both answered a round, the later answer stays. This can’t be undone.
      </p>
      <div class="row">
        <button @click=${() => this.merge(from, into)}>Make them one</button>
        <button @click=${() => (this.pair = null)}>Keep both</button>
      </div>
    </div>`;
  }

  private choose(event: SubmitEvent) {
    const form = formOf(event);
    if (!form) return;
    const [from, into] = ['from', 'into'].map((field) =>
      this.students.find(({ id }) => id === fieldText(form, field)),
    );
    if (from && into && from !== into) this.pair = [from, into];
  }

  private merge(from: Student, into: Student) {
    this.pair = null;
    this.dispatchEvent(new MergeEvent(from.id, into.id));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-merge': DeskMerge;
  }
}
