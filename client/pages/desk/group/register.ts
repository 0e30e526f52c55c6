import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import type { NewStudent } from '../../../exchange/register-file.ts';
import type { Student } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { moreTimeWords } from '../more-time.ts';
import { fieldText, formOf, refusalLine } from '../refusal.ts';
import './merge.ts';
import type { MergeEvent } from './merge.ts';
import { saveFile } from '../../../charts/save-file.ts';
import './register-import.ts';
import type { ImportStudentsEvent } from './register-import.ts';
import { namesIn } from './words.ts';

export type RegisterChange =
  | { readonly kind: 'add'; readonly names: readonly string[] }
  | { readonly kind: 'import'; readonly students: readonly NewStudent[] }
  | { readonly kind: 'change'; readonly id: string; readonly fields: Partial<Omit<Student, 'id' | 'alias'>> }
  | { readonly kind: 'merge'; readonly id: string; readonly into: string }
  | { readonly kind: 'remove'; readonly id: string };

export class RegisterEvent extends Event {
  static readonly kind = 'desk-register';
  readonly change: RegisterChange;
  constructor(change: RegisterChange) {
    super(RegisterEvent.kind, { bubbles: true });
    this.change = change;
  }
}

/** As long as the server takes a name. */
const mostLetters = 40;

/** The teacher's list of students: one line each, many added at once. */
@customElement('desk-register')
export class DeskRegister extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }
      table {
        border-collapse: collapse;
        width: 100%;
      }
      th {
        font-size: var(--text-small);
        font-weight: 600;
        padding: 0 var(--space-1) var(--space-1);
        text-align: left;
      }
      td {
        border-top: 1px solid var(--line);
        padding: var(--space-1);
        vertical-align: middle;
      }
      .seat {
        width: 5rem;
      }
      .team {
        width: 8rem;
      }
      .time {
        width: 9.5rem;
      }
      .end {
        text-align: right;
        width: 1%;
      }
      summary {
        cursor: pointer;
        font-weight: 600;
        padding-block: var(--space-2);
      }
      @media (max-width: 40rem) {
        thead {
          clip-path: inset(50%);
          height: 1px;
          overflow: hidden;
          position: absolute;
        }
        tr {
          border-top: 1px solid var(--line);
          display: grid;
          gap: var(--space-1);
          grid-template-columns: 4.5rem 1fr 1fr auto;
          padding-block: var(--space-2);
        }
        td {
          border: 0;
          padding: 0;
        }
        td.name {
          grid-column: 1 / -1;
        }
        td.seat,
        td.team,
        td.time,
        td.end {
          width: auto;
        }
      }
      @media (max-width: 22rem) {
        tr {
          grid-template-columns: 4.5rem 1fr auto;
        }
        td.time {
          grid-column: 1 / -1;
          grid-row: 3;
        }
      }
    `,
  ];

  @property({ attribute: false }) students: readonly Student[] = [];
  /** Whose removal waits for a second press. */
  @state() private leaving: string | null = null;
  /** A pasted name that is longer than a name may be. */
  @state() private tooLong = '';

  override render() {
    return html`
      ${
        this.students.length === 0
          ? html`<p>Nobody is on the register yet. Paste the names, one a line.</p>`
          : this.table()
      }
      <details ?open=${this.students.length === 0}>
        <summary>Add names</summary>
        <form class="stack" @submit=${this.add}>
          <label
            >One name a line
            <textarea name="names" rows="6" required></textarea>
          </label>
          ${refusalLine(this.tooLong && `A name has room for ${String(mostLetters)} letters. Shorten “${this.tooLong}…”.`)}
          <div><button>Add to the register</button></div>
        </form>
      </details>
      <details>
        <summary>Bring in a table</summary>
        <desk-register-import
          .students=${this.students}
          @desk-import-students=${({ students }: ImportStudentsEvent) =>
            this.dispatchEvent(new RegisterEvent({ kind: 'import', students }))}
        ></desk-register-import>
      </details>
      ${this.merging()}
      ${
        this.students.length === 0
          ? nothing
          : html`<div><button @click=${this.save}>Save as a table (CSV)</button></div>`
      }
    `;
  }

  private readonly save = async (): Promise<void> => {
    const { registerFileOf } = await import('../../../exchange/register-file.ts');
    saveFile('Register', 'csv', new Blob([registerFileOf(this.students)], { type: 'text/csv' }));
  };

  private merging() {
    if (this.students.length < 2) return nothing;
    return html`<details>
      <summary>Make two students one</summary>
      <desk-merge
        .students=${this.students}
        @desk-merge=${({ id, into }: MergeEvent) =>
          this.dispatchEvent(new RegisterEvent({ kind: 'merge', id, into }))}
      ></desk-merge>
    </details>`;
  }

  private table() {
    const teams = new Set(this.students.flatMap(({ team }) => team ?? []));
    return html`<datalist id="teams">
        ${[...teams].map((team) => html`<option value=${team}></option>`)}
      </datalist>
      <table>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Seat</th>
            <th scope="col">Team</th>
            <th scope="col">Time</th>
            <th scope="col"><span class="visually-hidden">Take off</span></th>
          </tr>
        </thead>
        <tbody>
          ${repeat(
            this.students,
            ({ id }) => id,
            (student) => this.line(student),
          )}
        </tbody>
      </table>`;
  }

  private line(student: Student) {
    const { id, name, seatNumber, team, moreTime } = student;
    return html`<tr>
      <td class="name">
        <input
          aria-label="Name"
          dir="auto"
          .value=${live(name)}
          maxlength=${mostLetters}
          @change=${(event: Event) => {
            const text = valueOf(event);
            if (text !== '') this.change(id, { name: text });
          }}
        />
      </td>
      <td class="seat">
        <input
          aria-label=${`Seat number of ${name}`}
          placeholder="Seat"
          inputmode="numeric"
          pattern="[0-9]*"
          maxlength="3"
          .value=${live(seatNumber === null ? '' : String(seatNumber))}
          @change=${(event: Event) => {
            const text = valueOf(event);
            if (/^\d{0,3}$/.test(text)) this.change(id, { seatNumber: text === '' ? null : Number(text) });
          }}
        />
      </td>
      <td class="team">
        <input
          aria-label=${`Team of ${name}`}
          placeholder="Team"
          list="teams"
          maxlength="20"
          .value=${live(team ?? '')}
          @change=${(event: Event) => {
            const text = valueOf(event);
            this.change(id, { team: text === '' ? null : text });
          }}
        />
      </td>
      <td class="time">
        <select
          aria-label=${`Time for ${name}`}
          @change=${(event: Event) => this.change(id, { moreTime: Number(valueOf(event)) })}
        >
          ${moreTimeWords.map(
            ([factor, words]) =>
              html`<option value=${factor} ?selected=${factor === moreTime}>${words}</option>`,
          )}
        </select>
      </td>
      <td class="end">
        ${
          this.leaving === id
            ? html`<button @click=${() => this.takeOff(id)} aria-label=${`Take ${name} off for good`}>
                Sure?
              </button>`
            : html`<button
                class="narrow"
                @click=${() => (this.leaving = id)}
                aria-label=${`Take ${name} off the register`}
                title="Take off the register"
              >
                −
              </button>`
        }
      </td>
    </tr>`;
  }

  private change(id: string, fields: Partial<Omit<Student, 'id' | 'alias'>>) {
    this.dispatchEvent(new RegisterEvent({ kind: 'change', id, fields }));
  }

  private takeOff(id: string) {
    this.leaving = null;
    this.dispatchEvent(new RegisterEvent({ kind: 'remove', id }));
  }

  private add(event: SubmitEvent) {
    const form = formOf(event);
    const names = form ? namesIn(fieldText(form, 'names')) : [];
    if (!form || names.length === 0) return;
    this.tooLong = names.find((name) => name.length > mostLetters)?.slice(0, 20) ?? '';
    if (this.tooLong !== '') return;
    this.dispatchEvent(new RegisterEvent({ kind: 'add', names }));
    form.reset();
  }
}

function valueOf(event: Event): string {
  const { target } = event;
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value.trim() : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-register': DeskRegister;
  }
}
