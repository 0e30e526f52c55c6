import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Chart } from '../../../../shared/exercise/chart.ts';
import { cautionsOf } from '../../../../shared/plans/words.ts';
import type { InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { MediaQuery } from '../../../lib/media-query.ts';
import { randomId } from '../../../lib/random-id.ts';
import { api, type GroupDetail } from '../api.ts';
import '../around/around.ts';
import { deskStyles, pageStyles as deskPageStyles } from '../desk-styles.ts';
import { choiceField } from '../maker/choice-field.ts';
import { firstDraft } from '../maker/draft.ts';
import { circleStyles, segmentStyles } from '../maker/maker-styles.ts';
import { NamingHere } from '../naming-here.ts';
import { refusalLine } from '../refusal.ts';
import { groupPath } from '../routes.ts';
import { handoutStyles } from './handout-styles.ts';
import { itemsField } from './items-field.ts';
import { pageStyles } from './page-styles.ts';
import { pageView, type Headed } from './page-view.ts';
import { chosenOf, legibleSheet, pagesOf, type Page, type Sheet } from './pages.ts';
import { pageSize } from './paper.ts';
import { PreviewScale } from './preview-scale.ts';
import { PrintSize } from './print-size.ts';
import { blankInstrument, kindField, settingsFields } from './settings-fields.ts';
import { choices, loadSettings, saveSettings } from './settings.ts';
import { itemsOf, type SheetItem, type SheetSettings } from './sheet.ts';

/** A sheet for the group: charts, empty charts or a quiz, seen as it will be printed. */
@customElement('desk-handout')
export class DeskHandout extends LitElement {
  static override styles = [
    deskStyles,
    deskPageStyles,
    circleStyles,
    segmentStyles,
    pageStyles,
    handoutStyles,
  ];

  @property() groupId = '';
  @state() private detail: GroupDetail | null = null;
  @state() private planId = new URLSearchParams(location.search).get('plan') ?? '';
  @state() private items: readonly SheetItem[] = [];
  @state() private settings: SheetSettings = loadSettings();
  /** Null until the teacher writes another. */
  @state() private ownTitle: string | null = null;
  /** Of empty charts; null for the group's. */
  @state() private instrument: InstrumentId | null = null;
  @state() private adding = false;
  @state() private refusal = '';
  @query('dialog') private dialog?: HTMLDialogElement;
  private readonly naming = new NamingHere(this);
  private readonly wide = new MediaQuery(this, '(min-width: 60.01rem)');
  private readonly printSize = new PrintSize(this);
  private readonly scale = new PreviewScale(this);

  /** Not on connecting: the element is defined after it is made, and has its properties only now. */
  protected override willUpdate(properties: PropertyValues<this>) {
    if (properties.has('groupId')) void this.load();
  }

  protected override updated() {
    this.printSize.set(pageSize(this.settings));
    this.scale.observe(this.renderRoot.querySelector('.pages'));
  }

  override render() {
    const { detail, settings } = this;
    if (!detail) return html`<main>${refusalLine(this.refusal)}</main>`;
    const { group } = detail;
    const naming = settings.naming === 'group' ? group.naming : settings.naming;
    const sheet = legibleSheet({ settings, naming, items: this.offered });
    const pages = pagesOf(sheet);
    const headed: Headed = {
      title: this.titleNow,
      school: group.school,
      group: group.name,
      caution: cautionFor(sheet),
      instrument: this.instrument ?? group.instrument,
      naming,
      settings: sheet.settings,
      isPlans: this.planId !== '',
      hasLevels: chosenOf(sheet).some(({ number }) => /[a-c]$/.test(number)),
    };
    return html`<main class="handout">
      <div class="top">
        <p>
          <a class="back" href=${groupPath(group.id)}><bdi>${group.name}</bdi></a>
        </p>
        <h1>Handout</h1>
        ${refusalLine(this.refusal)}
      </div>
      <div class="pages" .style=${`--scale: ${this.scale.of(pageSize(settings)).toFixed(4)}`}>
        ${
          pages.length === 0
            ? html`<p>Nothing on the sheet yet. Take a plan, or add a chart.</p>`
            : pages.map((page) => pageView(page, headed))
        }
      </div>
      <aside>
        <details class="sheet" ?open=${this.wide.now}>
          <summary>Settings and printing</summary>
          <div class="stack">
            ${this.actions(pages, sheet)} ${this.fields(detail, naming)} ${this.chooser(detail, naming)}
          </div>
        </details>
      </aside>
      ${this.adding ? this.around(detail) : nothing}
    </main>`;
  }

  /** The quiz is the plan's: only its exercises have a place in the results. */
  private get offered(): readonly SheetItem[] {
    const isPlans = this.settings.kind === 'quiz' && this.planId !== '';
    return isPlans ? this.items.filter(({ number }) => number !== '') : this.items;
  }

  private get titleNow(): string {
    if (this.ownTitle !== null) return this.ownTitle;
    const plan = this.settings.kind === 'blank' ? undefined : this.plan;
    return plan?.title ?? choices.kind[this.settings.kind];
  }

  private get plan() {
    return this.detail?.plans.find(({ id }) => id === this.planId);
  }

  private countText(pages: readonly Page[], { settings: { perPage } }: Sheet): string {
    const count = pages.length === 1 ? '1 page' : `${String(pages.length)} pages`;
    const fewer =
      perPage < this.settings.perPage
        ? `, ${String(perPage)} on each: ${String(this.settings.perPage)} would be too small to read`
        : '';
    return `${count}, ${choices.paper[this.settings.paper]}${fewer}`;
  }

  private actions(pages: readonly Page[], sheet: Sheet) {
    return html`<div class="row">
      <button class="primary" ?disabled=${pages.length === 0} @click=${() => print()}>Print</button>
      <span class="soft" role="status">${this.countText(pages, sheet)}</span>
    </div>`;
  }

  private fields({ group }: GroupDetail, naming: NoteNaming) {
    const { settings } = this;
    return html`${kindField(settings, this.change)}
      <label
        >Title
        <input
          maxlength="80"
          .value=${this.titleNow}
          @change=${({ target }: Event) => {
            const text = target instanceof HTMLInputElement ? target.value.trim() : '';
            this.ownTitle = text === '' ? null : text;
          }}
        />
      </label>
      ${settingsFields(settings, this.change)}
      ${
        settings.kind === 'blank'
          ? blankInstrument(
              this.instrument ?? group.instrument,
              group.instrument,
              naming,
              (instrument) => (this.instrument = instrument),
            )
          : nothing
      }`;
  }

  private chooser({ plans }: GroupDetail, naming: NoteNaming) {
    const { settings } = this;
    if (settings.kind === 'blank') return nothing;
    const isPlansQuiz = settings.kind === 'quiz' && this.planId !== '';
    return html`${choiceField(
        'From the plan',
        { choices: [['', 'none'], ...plans.map(({ id, title }) => [id, title] as const)] },
        this.planId,
        (id) => this.takePlan(id),
      )}
      <section class="stack" aria-labelledby="on-it">
        <h2 id="on-it">On the sheet</h2>
        ${itemsField({
          items: this.offered,
          naming,
          explained: settings.kind === 'charts' && settings.explained,
          change: (id, change) => {
            this.items = this.items.map((item) => (item.id === id ? { ...item, ...change } : item));
          },
        })}
        ${
          isPlansQuiz
            ? nothing
            : html`<div><button type="button" @click=${this.openAround}>Add a chart</button></div>`
        }
      </section>`;
  }

  private around({ group }: GroupDetail) {
    return html`<dialog class="widest" aria-labelledby="adding" @close=${() => (this.adding = false)}>
      <div class="stack">
        <h2 id="adding">Add a chart</h2>
        <desk-around
          into="sheet"
          .from=${firstDraft(group.instrument)}
          .naming=${this.naming.of(group.naming)}
          .take=${this.addCharts}
          .takeMaps=${this.addCharts}
        >
          <button type="button" @click=${() => this.dialog?.close()}>Back to the sheet</button>
        </desk-around>
      </div>
    </dialog>`;
  }

  private readonly openAround = async (): Promise<void> => {
    this.adding = true;
    await this.updateComplete;
    this.dialog?.showModal();
  };

  private readonly addCharts = (charts: readonly Chart[]): Promise<boolean> => {
    const added = charts.map((chart) => ({ id: randomId(), number: '', chart, line: null, chosen: true }));
    this.items = [...this.items, ...added];
    return Promise.resolve(true);
  };

  private readonly change = (change: Partial<SheetSettings>): void => {
    this.settings = { ...this.settings, ...change };
    saveSettings(this.settings);
  };

  /** What was added freely stays. */
  private takePlan(id: string) {
    this.planId = id;
    this.items = [
      ...itemsOf(this.plan?.exercises ?? []),
      ...this.items.filter(({ number }) => number === ''),
    ];
  }

  private async load() {
    const reply = await api.group(this.groupId);
    this.refusal = reply.ok ? '' : reply.error.message;
    if (!reply.ok) return;
    this.detail = reply.value;
    this.takePlan(this.plan ? this.planId : '');
  }
}

/** What to mind, where the charts are to be played. */
function cautionFor(sheet: Sheet): string {
  const exercises = chosenOf(sheet).flatMap(({ chart }) =>
    chart.kind === 'build' || chart.kind === 'scale' ? [{ exercise: chart }] : [],
  );
  return exercises.length === 0 ? '' : cautionsOf({ exercises }).join(' ');
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-handout': DeskHandout;
  }
}
