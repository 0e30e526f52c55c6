import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { chartNotes, checkChart, type Chart } from '../../shared/exercise/chart.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { standardGuitar, type FretRange, type Instrument } from '../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import type { InkRows } from '../fretboard/ink-frame.ts';
import '../fretboard/neck.ts';
import type { ChartView, Marks } from './chart-marks.ts';
import { chartInWords, chartTitle } from './chart-words.ts';
import { drawnCharts } from './drawn.ts';
import './tab-line.ts';
import { hasTab, tabColumns } from './tab.ts';

/** A blank chart has room for an X or O by the nut, whether one belongs there or not. */
const blankRows: InkRows = { openRow: true, fingerRow: false };

/**
 * A chart on paper. It fills its box; where the box has no height of its own, it takes a fitting one. Without a
 * `chart`, an empty neck of `instrument` in `window`.
 */
@customElement('rootcall-chart')
export class ChartElement extends LitElement {
  static override readonly styles = css`
    :host {
      display: grid;
      gap: var(--space-2);
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: minmax(0, 1fr) auto;
      min-width: 0;
    }
    :host([hidden]) {
      display: none;
    }
  `;

  @property({ attribute: false }) chart: Chart | null = null;
  /** The chart's notes, where they are known already. */
  @property({ attribute: false }) key: readonly KeyNote[] | null = null;
  @property() view: ChartView = 'auto';
  @property() marks: Marks = 'degrees';
  @property() naming: NoteNaming = 'english';
  @property({ type: Boolean, attribute: 'left-handed' }) leftHanded = false;
  /** With a line of tablature below, where the chart can be played from one. */
  @property({ type: Boolean }) tab = false;
  /** The same window without what is in it: to be written into. */
  @property({ type: Boolean }) blank = false;
  /** Of a blank chart. */
  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  /** Null: as much of the neck as the marks need. */
  @property({ attribute: false }) window: FretRange | null = null;
  /** Null: the rows beside the frets that the marks need. */
  @property({ attribute: false }) rows: InkRows | null = null;
  /** In place of the title, for whoever hears the chart. */
  @property() label = '';

  protected override render(): TemplateResult | typeof nothing {
    const { chart } = this;
    if (!chart) return this.#blank('Blank chart', this.instrument, this.window);
    // A chart whose notes are known was checked when they were.
    if (this.key === null && !checkChart(chart).ok) return nothing;
    const key = this.key ?? chartNotes(chart);
    const [drawn] = drawnCharts([chart], this, [key]);
    if (!drawn) return nothing;
    const title = this.label || chartTitle(chart, this.naming);
    const { instrument, notes, rows, view } = drawn;
    const window = this.window ?? drawn.window;
    if (this.blank) return this.#blank(`${title}, blank`, instrument, window, view);
    return html`<rootcall-neck
        material="ink"
        .view=${view}
        .instrument=${instrument}
        .leftHanded=${this.leftHanded}
        .window=${window}
        .rows=${this.rows ?? rows}
        .notes=${notes}
        .label=${`${title}. ${chartInWords(chart, this.naming, key).join('; ')}`}
      ></rootcall-neck>
      ${
        this.tab && hasTab(chart)
          ? html`<rootcall-tab
              .columns=${tabColumns(chart, key)}
              .strings=${instrument.openStrings.length}
            ></rootcall-tab>`
          : nothing
      }`;
  }

  #blank(label: string, instrument: Instrument, window: FretRange | null, view = this.view): TemplateResult {
    return html`<rootcall-neck
        material="ink"
        .view=${view === 'auto' ? 'upright' : view}
        .instrument=${instrument}
        .leftHanded=${this.leftHanded}
        .window=${window}
        .rows=${this.rows ?? blankRows}
        .notes=${[]}
        .label=${label}
      ></rootcall-neck>
      ${
        this.tab
          ? html`<rootcall-tab .columns=${[]} .strings=${instrument.openStrings.length}></rootcall-tab>`
          : nothing
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-chart': ChartElement;
  }
}
