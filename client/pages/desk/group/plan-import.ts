import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { failure, type Result } from '../../../../shared/lib/result.ts';
import { instrumentById, standardGuitar } from '../../../../shared/theory/fretboard.ts';
import type { FoundPlan } from '../../../exchange/read-plan.ts';
import { randomId } from '../../../lib/random-id.ts';
import { api } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { NamingHere } from '../naming-here.ts';
import { refusalLine } from '../refusal.ts';
import { NavigateEvent, planPath } from '../routes.ts';

/** Takes a plan from a file. What it would do is told first; nothing changes before the teacher has said so. */
@customElement('desk-plan-import')
export class DeskPlanImport extends LitElement {
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
      .refused {
        max-height: 16rem;
        overflow: auto;
      }
      .refused li {
        border-top: 1px solid var(--line);
        overflow-wrap: anywhere;
        padding-block: var(--space-1);
      }
      h3 {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property() groupId = '';
  @state() private found: FoundPlan | null = null;
  @state() private refusal = '';
  /** A second press while the first is on its way would make a second plan. */
  private isTaking = false;
  private readonly naming = new NamingHere(this);

  override render() {
    return html`<details>
      <summary>Import a plan</summary>
      <div class="stack">
        <label
          >A plan file of Rootcall, or chord charts as MusicXML
          <input
            type="file"
            accept=".json,.musicxml,.xml,application/json,application/vnd.recordare.musicxml+xml"
            @change=${this.choose}
          />
        </label>
        ${refusalLine(this.refusal)}
        <div role="status">${this.found ? this.report(this.found) : nothing}</div>
      </div>
    </details>`;
  }

  private report(found: FoundPlan) {
    const { title, exercises, refused } = found;
    const taken = exercises.length;
    return html`<div class="stack">
      <h3 dir="auto">${title}</h3>
      <p>
        ${
          refused.length === 0
            ? `${exerciseCount(taken)}. All of it can be asked here.`
            : `${exerciseCount(taken)} can be taken; ${String(refused.length)} can’t:`
        }
      </p>
      ${
        refused.length === 0
          ? nothing
          : html`<ul class="refused" tabindex="0" aria-label="What can’t be taken">
              ${refused.slice(0, mostTold).map(({ what, reason }) => html`<li><b>${what}</b>: ${reason}</li>`)}
              ${refused.length > mostTold ? html`<li>And ${refused.length - mostTold} more.</li>` : nothing}
            </ul>`
      }
      <div class="row">
        ${
          taken === 0 && refused.length > 0
            ? nothing
            : html`<button @click=${() => this.take(found)}>
                ${refused.length === 0 ? 'Take this plan' : `Take the other ${String(taken)}`}
              </button>`
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
    const read = await this.read(file);
    // The same file may be chosen again once it was mended.
    if (input) input.value = '';
    if (read.ok) this.found = read.value;
    else this.refusal = read.error;
  };

  /** The formats come when they are needed: few classes begin with a file. */
  private async read(file: File): Promise<Result<FoundPlan, string>> {
    try {
      const [{ textOfFile }, { readPlan }] = await Promise.all([
        import('../../../exchange/file-text.ts'),
        import('../../../exchange/read-plan.ts'),
      ]);
      const text = await textOfFile(file);
      if (!text.ok) return text;
      const detail = await api.group(this.groupId);
      if (!detail.ok) return failure(detail.error.message);
      const { group } = detail.value;
      return readPlan(text.value, file.name, {
        instrument: instrumentById(group.instrument) ?? standardGuitar,
        naming: this.naming.of(group.naming),
      });
    } catch {
      return failure('The file could not be read. Reload the page and try again.');
    }
  }

  private readonly leave = (): void => {
    this.found = null;
    this.refusal = '';
  };

  private async take({ title, aim, points, exercises }: FoundPlan) {
    if (this.isTaking) return;
    this.isTaking = true;
    const named = exercises.map((exercise) => ({ ...exercise, id: randomId() }));
    const reply = await api.addPlan(this.groupId, { title, aim, points, exercises: named });
    this.isTaking = false;
    if (reply.ok) this.dispatchEvent(new NavigateEvent(planPath(reply.value.id)));
    else this.refusal = reply.error.message;
  }
}

/** Of a long score, lines enough to see what it is about. */
const mostTold = 300;

function exerciseCount(count: number): string {
  return count === 1 ? '1 exercise' : `${String(count)} exercises`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-import': DeskPlanImport;
  }
}
