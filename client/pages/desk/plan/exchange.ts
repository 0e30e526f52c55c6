import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { levelsOf } from '../../../../shared/exercise/levels.ts';
import type { PlanContent } from '../../../../shared/plans/plan.ts';
import { saveFile } from '../../../charts/save-file.ts';
import type { Group } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { NamingHere } from '../naming-here.ts';
import { refusalLine } from '../refusal.ts';

/** Saves a plan as a file of its own, and its charts as MusicXML. */
@customElement('desk-plan-exchange')
export class DeskPlanExchange extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) plan: PlanContent | null = null;
  @property({ attribute: false }) group: Group | null = null;
  @state() private refusal = '';
  private readonly naming = new NamingHere(this);

  override render() {
    const { plan, group } = this;
    if (!plan || !group) return nothing;
    return html`<details>
      <summary>Save as a file</summary>
      <div class="stack">
        <p class="soft small">
          The plan file holds everything of the plan, for another group or another Rootcall. MusicXML holds
          the charts and notes, for a notation program.
        </p>
        <div class="row">
          <button @click=${() => this.savePlan(plan)}>Plan file (JSON)</button>
          <button ?disabled=${plan.exercises.length === 0} @click=${() => this.saveScore(plan, group)}>
            Charts (MusicXML)
          </button>
        </div>
        ${refusalLine(this.refusal)}
      </div>
    </details>`;
  }

  /** The formats come when they are needed: few classes begin with a file. */
  private savePlan(plan: PlanContent) {
    return this.save(async () => {
      const { planFileOf } = await import('../../../exchange/plan-file.ts');
      saveFile(plan.title, 'json', new Blob([planFileOf(plan)], { type: 'application/json' }));
    });
  }

  private saveScore(plan: PlanContent, group: Group) {
    return this.save(async () => {
      const { musicXmlOf } = await import('../../../exchange/musicxml-out.ts');
      const { title, exercises } = plan;
      const naming = this.naming.of(group.naming);
      const text = musicXmlOf({ title, exercises: exercises.flatMap(levelsOf), naming });
      saveFile(title, 'musicxml', new Blob([text], { type: 'application/vnd.recordare.musicxml+xml' }));
    });
  }

  private async save(make: () => Promise<void>) {
    this.refusal = '';
    try {
      await make();
    } catch {
      this.refusal = 'The file could not be made. Reload the page and try again.';
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-exchange': DeskPlanExchange;
  }
}
