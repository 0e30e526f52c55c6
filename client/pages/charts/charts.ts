import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { levelName, levelsOf, type Level, type Levelled } from '../../../shared/exercise/levels.ts';
import { cautionsOf } from '../../../shared/plans/words.ts';
import type { ChartsView } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { chartInWords } from '../../charts/chart-words.ts';
import '../../charts/chart.ts';
import '../../components/mark.ts';
import '../../components/switch.ts';
import type { SwitchTurnedEvent } from '../../components/switch.ts';
import { browserStore } from '../../lib/key-store.ts';
import { baseStyle } from '../../styles/base.ts';
import { readingPageStyle } from '../../styles/reading-page.ts';
import { field } from '../explore/field.ts';
import { chartsStyle } from './charts-style.ts';
import { classInAddress, loadCharts } from './load.ts';
import { keepSettings, marksChoices, namingChoices, readSettings, type Settings } from './settings.ts';
import { aboutLine, wordsOf } from './words.ts';

const storage = browserStore(() => localStorage);

/** The charts of a class, for whoever has its link: to play from, to read, to hear, to print. */
@customElement('rootcall-charts')
export class ChartsPage extends LitElement {
  static override readonly styles = [baseStyle, readingPageStyle, chartsStyle];

  @state() private view: ChartsView | null = null;
  @state() private refusal = '';
  @state() private settings: Settings = readSettings(storage);

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('visibilitychange', this.#onVisible);
    void this.#load();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('visibilitychange', this.#onVisible);
  }

  protected override render(): TemplateResult {
    const { view } = this;
    return html`<header>
        <a href="/"><rootcall-mark></rootcall-mark>Rootcall</a>
      </header>
      <main>
        <hgroup>
          <h1>Charts of the class</h1>
          ${view ? html`<p class="soft" dir="auto">${aboutLine(view, this.#naming(view))}</p>` : nothing}
        </hgroup>
        <hr />
        <p class="refusal lead" role="status">${this.refusal}</p>
        ${view ? this.#charts(view) : nothing}
      </main>`;
  }

  #charts(view: ChartsView): TemplateResult {
    const naming = this.#naming(view);
    if (view.exercises.length === 0)
      return html`<p class="lead">
        Nothing has been revealed yet. After a reveal its chart is here: look at this page again then.
      </p>`;
    const all = view.exercises.flatMap(levelsOf).map((exercise) => ({ exercise }));
    return html`${this.#settings()}
      <ol class="charts">
        ${view.exercises.map((levelled) => html`<li>${this.#levels(levelled, naming)}</li>`)}
      </ol>
      <hr />
      <footer>
        <p class="soft">${cautionsOf({ exercises: all }).join(' ')}</p>
        <p class="screen"><a href="/explore">Try it: explore the neck from any root</a></p>
      </footer>`;
  }

  #settings(): TemplateResult {
    const { settings } = this;
    return html`<details class="screen settings">
      <summary>How charts are drawn</summary>
      <div class="fields">
        ${field({
          label: 'In the marks',
          choices: marksChoices,
          chosen: settings.marks,
          choose: (value) => {
            const chosen = marksChoices.find(([marks]) => marks === value);
            if (chosen) this.#set({ marks: chosen[0] });
          },
        })}
        ${field({
          label: 'Note names',
          choices: namingChoices,
          chosen: settings.naming ?? '',
          choose: (value) => {
            const chosen = namingChoices.find(([naming]) => naming === value)?.[0] ?? '';
            this.#set({ naming: chosen === '' ? null : chosen });
          },
        })}
        <rootcall-switch
          .on=${settings.leftHanded}
          @switch-turned=${({ on }: SwitchTurnedEvent) => this.#set({ leftHanded: on })}
          >Left-handed neck</rootcall-switch
        >
        <p class="small soft">Kept on this device.</p>
        <button type="button" @click=${() => print()}>Print the charts</button>
      </div>
    </details>`;
  }

  #levels(levelled: Levelled, naming: NoteNaming): TemplateResult {
    const levels = levelsOf(levelled);
    return html`${levels.map((exercise, index) =>
      this.#chart(exercise, naming, levels.length > 1 ? `${levelName((index + 1) as Level)} level: ` : ''),
    )}`;
  }

  #chart(exercise: Exercise, naming: NoteNaming, level: string): TemplateResult {
    const { title, detail } = wordsOf(exercise, naming);
    const { marks, leftHanded } = this.settings;
    return html`<section>
      <h2>${level}${title}</h2>
      <p>${detail}</p>
      <rootcall-chart
        class=${exercise.kind === 'find' ? 'wide' : exercise.kind === 'scale' ? 'tabbed' : ''}
        .chart=${exercise}
        .marks=${marks}
        .naming=${naming}
        .leftHanded=${leftHanded}
        .tab=${exercise.kind === 'scale'}
      ></rootcall-chart>
      <details class="screen">
        <summary>In words<span class="visually-hidden">: ${title}</span></summary>
        <ul>
          ${chartInWords(exercise, naming).map((line) => html`<li>${line}</li>`)}
        </ul>
      </details>
    </section>`;
  }

  #naming(view: ChartsView): NoteNaming {
    return this.settings.naming ?? view.naming;
  }

  #set(change: Partial<Settings>): void {
    this.settings = { ...this.settings, ...change };
    keepSettings(storage, change);
  }

  /** A class that goes on has more to show when somebody comes back to the page. */
  readonly #onVisible = (): void => {
    if (document.visibilityState === 'visible') void this.#load();
  };

  async #load(): Promise<void> {
    const loaded = await loadCharts(classInAddress(location.pathname));
    if (loaded.ok) this.view = loaded.value;
    this.refusal = loaded.ok || this.view ? '' : loaded.error;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-charts': ChartsPage;
  }
}
