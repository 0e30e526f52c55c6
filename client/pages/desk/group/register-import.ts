import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { NewStudent, ReadRegister } from '../../../exchange/register-file.ts';
import type { Student } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { fieldText, formOf, refusalLine } from '../refusal.ts';

export class ImportStudentsEvent extends Event {
  static readonly kind = 'desk-import-students';
  readonly students: readonly NewStudent[];
  constructor(students: readonly NewStudent[]) {
    super(ImportStudentsEvent.kind);
    this.students = students;
  }
}

/** Brings a table into the register. What it would do is told first; one press then does it. */
@customElement('desk-register-import')
export class DeskRegisterImport extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
      }
      ::file-selector-button {
        font: inherit;
        margin-right: var(--space-2);
      }
      ul {
        max-height: 14rem;
        overflow: auto;
      }
      li {
        border-top: 1px solid var(--line);
        overflow-wrap: anywhere;
        padding-block: var(--space-1);
      }
      textarea {
        white-space: pre;
      }
    `,
  ];

  @property({ attribute: false }) students: readonly Student[] = [];
  @state() private read: ReadRegister | null = null;
  @state() private refusal = '';

  override render() {
    return html`<div class="stack">
      <p class="soft small">
        A CSV file, or rows copied from a spreadsheet: name, seat, team, more time. Titles may stand in the
        first row, in any order.
      </p>
      <label>Table <input type="file" accept=".csv,.tsv,.txt,text/csv" @change=${this.choose} /></label>
      <form class="stack" @submit=${this.paste}>
        <label>Or paste the rows <textarea name="rows" rows="4" required></textarea></label>
        <div><button>Look at the rows</button></div>
      </form>
      ${refusalLine(this.refusal)}
      <div role="status">${this.read ? this.report(this.read) : nothing}</div>
    </div>`;
  }

  private report({ added, there, refused, unread }: ReadRegister) {
    return html`<div class="stack">
      <p>
        ${String(added.length)} to add, ${String(there.length)} there already, ${String(refused.length)} left
        out. Nothing has changed yet.
      </p>
      ${list(
        'To add',
        added.map(({ name, seatNumber, team }) => {
          const rest = [seatNumber === null ? '' : `seat ${String(seatNumber)}`, team ?? ''];
          return html`<bdi>${name}</bdi
            >${rest.filter((one) => one !== '').map((one) => html`, <bdi>${one}</bdi>`)}`;
        }),
      )}
      ${list(
        'There already, and left as they are',
        there.map(({ line, name }) => html`Line ${line}: <bdi>${name}</bdi>`),
      )}
      ${list(
        'Left out',
        refused.map(({ line, name, reason }) =>
          name === '' ? html`Line ${line}: ${reason}` : html`Line ${line}, <bdi>${name}</bdi>: ${reason}`,
        ),
      )}
      ${unread.length === 0 ? nothing : html`<p>Not read: <bdi>${unread.join(', ')}</bdi>.</p>`}
      <div class="row">
        ${
          added.length === 0
            ? nothing
            : html`<button @click=${() => this.add(added)}>Add these ${String(added.length)}</button>`
        }
        <button @click=${this.leave}>Leave it</button>
      </div>
    </div>`;
  }

  private readonly choose = async ({ target }: Event): Promise<void> => {
    const input = target instanceof HTMLInputElement ? target : null;
    const file = input?.files?.[0];
    if (!file) return;
    this.leave();
    try {
      const { textOfFile } = await import('../../../exchange/file-text.ts');
      const text = await textOfFile(file);
      if (text.ok) await this.look(text.value);
      else this.refusal = text.error;
    } catch {
      this.refusal = failed;
    }
    // The same file may be chosen again once it was mended.
    if (input) input.value = '';
  };

  private readonly paste = async (event: SubmitEvent): Promise<void> => {
    const form = formOf(event);
    if (!form) return;
    this.leave();
    try {
      await this.look(fieldText(form, 'rows'));
    } catch {
      this.refusal = failed;
    }
  };

  private async look(text: string) {
    const { readRegister } = await import('../../../exchange/register-file.ts');
    this.read = readRegister(text, this.students);
  }

  private readonly leave = (): void => {
    this.read = null;
    this.refusal = '';
  };

  private add(students: readonly NewStudent[]) {
    this.leave();
    this.renderRoot.querySelector('form')?.reset();
    this.dispatchEvent(new ImportStudentsEvent(students));
  }
}

const failed = 'The table could not be read. Reload the page and try again.';

function list(title: string, items: readonly unknown[]) {
  if (items.length === 0) return nothing;
  return html`<div>
    <h3>${title}</h3>
    <ul tabindex="0" aria-label=${title}>
      ${items.map((item) => html`<li>${item}</li>`)}
    </ul>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-register-import': DeskRegisterImport;
  }
}
