import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { levelName, levelsOf, levelsUpTo, type Level } from '../../../../shared/exercise/levels.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { sign } from '../../../components/signs.ts';
import type { Student } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { neckOf, verdictNote } from '../live/answer-text.ts';
import { cellKey, type Draft } from './draft.ts';
import { pastedCells } from './pasted.ts';
import { cellHint } from './read-cell.ts';
import { levelIn, type Cell, type Reader } from './results.ts';
import { gridStyles } from './grid-styles.ts';

/** Something in the grid was typed, pasted or chosen. */
export class DraftEvent extends Event {
  static readonly kind = 'desk-draft';
  readonly change: Partial<Draft>;
  constructor(change: Partial<Draft>) {
    super(DraftEvent.kind);
    this.change = change;
  }
}

/** Students by exercises, to be typed into like a spreadsheet; under each cell stands what it is worth. */
@customElement('desk-paper-grid')
export class DeskPaperGrid extends LitElement {
  static override styles = [deskStyles, gridStyles];

  @property({ attribute: false }) students: readonly Student[] = [];
  @property({ attribute: false }) exercises: readonly PlannedExercise[] = [];
  @property({ attribute: false }) draft: Draft | null = null;
  @property({ attribute: false }) reader: Reader | null = null;
  @property() naming: NoteNaming = 'english';

  override render() {
    const { draft, reader } = this;
    if (!draft || !reader) return nothing;
    const levels = Math.max(...this.exercises.map((one) => levelsOf(one).length));
    return html`<table @keydown=${this.onKey} @paste=${this.onPaste} @focusin=${this.onFocus}>
      <caption class="visually-hidden">
        Results of each student for each exercise
      </caption>
      <thead>
        <tr>
          <th scope="col">Student</th>
          ${levels > 1 ? html`<th scope="col">Level</th>` : nothing}
          ${this.exercises.map((planned, column) => this.head(planned, column))}
        </tr>
      </thead>
      <tbody>
        ${this.students.map((student, row) => this.row(student, row, levels, draft, reader))}
      </tbody>
    </table>`;
  }

  private head({ exercise }: PlannedExercise, column: number) {
    const { title, detail } = wordingOf(exercise, this.naming);
    return html`<th scope="col" title=${detail}>
      ${column + 1}. ${title}
      <span class="soft small">${cellHint(exercise, this.naming)}</span>
    </th>`;
  }

  private row(student: Student, row: number, levels: number, draft: Draft, reader: Reader) {
    return html`<tr>
      <th scope="row"><bdi>${student.name}</bdi></th>
      ${levels > 1 ? html`<td>${this.levelChoice(student, levels, draft)}</td>` : nothing}
      ${this.exercises.map((planned, column) => {
        const text = draft.cells[cellKey(student.id, planned.id)] ?? '';
        const cell = reader.cell(planned, levelIn(draft, student.id, planned), text);
        const at = `${String(row)}-${String(column)}`;
        return html`<td class=${classOf(cell)}>
          <input
            id=${`cell-${at}`}
            data-row=${row}
            data-column=${column}
            aria-label=${`${student.name}, ${String(column + 1)}: ${wordingOf(planned.exercise, this.naming).title}`}
            aria-describedby=${`said-${at}`}
            aria-invalid=${cell.kind === 'unread'}
            autocapitalize="off"
            autocomplete="off"
            spellcheck="false"
            maxlength="60"
            .value=${live(text)}
            @input=${(event: Event) => this.fill(row, column, [[valueOf(event)]])}
          />
          <span class="said small" id=${`said-${at}`}>${saidOf(cell)}</span>
        </td>`;
      })}
    </tr>`;
  }

  private levelChoice({ id, name }: Student, levels: number, draft: Draft) {
    return html`<select
      aria-label=${`Level of ${name}`}
      @change=${(event: Event) =>
        this.change({ levels: { ...draft.levels, [id]: Number(valueOf(event)) as Level } })}
    >
      ${levelsUpTo(levels).map(
        (level) =>
          html`<option value=${level} .selected=${level === (draft.levels[id] ?? 1)}>
            ${levelName(level)}
          </option>`,
      )}
    </select>`;
  }

  /** Puts texts in the cells from here on; what would lie outside is left out. */
  private fill(row: number, column: number, texts: readonly (readonly string[])[]) {
    const cells = { ...this.draft?.cells };
    for (const [down, line] of texts.entries())
      for (const [across, text] of line.entries()) {
        const student = this.students[row + down];
        const planned = this.exercises[column + across];
        if (student && planned) cells[cellKey(student.id, planned.id)] = text;
      }
    this.change({ cells });
  }

  private change(change: Partial<Draft>) {
    this.dispatchEvent(new DraftEvent(change));
  }

  /** Enter and the arrows go from cell to cell, left and right only from the end of what is written. */
  private onKey(event: KeyboardEvent) {
    const input = cellIn(event);
    if (!input || event.altKey || event.ctrlKey || event.metaKey || event.isComposing) return;
    const step = stepOf(event, input);
    if (!step) return;
    event.preventDefault();
    const { row, column } = placeOf(input);
    const next = this.renderRoot.querySelector<HTMLInputElement>(
      `#cell-${String(row + step[0])}-${String(column + step[1])}`,
    );
    next?.focus();
    next?.select();
  }

  /** The titles that stay in sight would cover the cell that was gone to. */
  private onFocus(event: FocusEvent) {
    const corner = this.renderRoot.querySelector<HTMLElement>('thead th');
    const cell = cellIn(event)?.closest('td');
    if (!corner || !cell) return;
    this.style.scrollPadding = `${String(corner.offsetHeight)}px 0 0 ${String(corner.offsetWidth)}px`;
    cell.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  private onPaste(event: ClipboardEvent) {
    const input = cellIn(event);
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!input || !/[\t\n\r]/.test(text)) return;
    event.preventDefault();
    const { row, column } = placeOf(input);
    this.fill(row, column, pastedCells(text));
  }
}

function stepOf({ key, shiftKey }: KeyboardEvent, input: HTMLInputElement): readonly [number, number] | null {
  const { selectionStart, selectionEnd, value } = input;
  const isWhole = selectionStart === 0 && selectionEnd === value.length;
  switch (key) {
    case 'Enter':
      return [shiftKey ? -1 : 1, 0];
    case 'ArrowDown':
      return [1, 0];
    case 'ArrowUp':
      return [-1, 0];
    case 'ArrowLeft':
      return !shiftKey && (isWhole || selectionEnd === 0) ? [0, -1] : null;
    case 'ArrowRight':
      return !shiftKey && (isWhole || selectionStart === value.length) ? [0, 1] : null;
    default:
      return null;
  }
}

function cellIn(event: Event): HTMLInputElement | null {
  const [target] = event.composedPath();
  return target instanceof HTMLInputElement ? target : null;
}

function placeOf({ dataset }: HTMLInputElement): { readonly row: number; readonly column: number } {
  return { row: Number(dataset['row']), column: Number(dataset['column']) };
}

function classOf(cell: Cell): string {
  return cell.kind === 'judged' ? (cell.verdict.kind === 'right' ? 'right' : 'slip') : cell.kind;
}

function saidOf(cell: Cell) {
  switch (cell.kind) {
    case 'empty':
      return nothing;
    case 'unread':
      return cell.why;
    case 'judged': {
      const { verdict, exercise } = cell;
      const isRight = verdict.kind === 'right';
      const note = verdictNote(verdict, neckOf(exercise));
      return html`${sign(isRight ? 'tick' : 'slip')}
      ${isRight ? `right${note === '' ? '' : `, ${note}`}` : note}`;
    }
  }
}

function valueOf({ target }: Event): string {
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-paper-grid': DeskPaperGrid;
  }
}
