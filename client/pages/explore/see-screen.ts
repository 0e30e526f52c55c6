import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { chartNotes, chartWordings } from '../../../shared/exercise/chart.ts';
import type { RootAt } from '../../../shared/exercise/proposals.ts';
import '../../components/legend.ts';
import { keyNote } from '../../fretboard/key-notes.ts';
import { layerLegend } from '../../fretboard/layer-legend.ts';
import '../../fretboard/neck.ts';
import { placeName } from '../../fretboard/state.ts';
import { landscape, MediaQuery } from '../../lib/media-query.ts';
import { chartView } from '../../charts/chart-marks.ts';
import { ExploringEvent, type Exploring } from './events.ts';
import { exploreStyles } from './explore-style.ts';
import { exploreHeader } from './header.ts';
import { field } from './field.ts';
import { ideaChoices, ideaKinds, type Ideas } from './ideas.ts';
import {
  firstOf,
  from,
  joinWords,
  likeIn,
  marksOf,
  onNextString,
  seenFrom,
  spoken,
  type Seen,
} from './seen.ts';
import { seeStyle } from './see-style.ts';
import type { Settings } from './settings.ts';
import { careWords, nothingWords, seenWords, whichWords } from './words.ts';

/** From this many letters on a title is set smaller. */
const longTitle = 16;

/** What needs more room than a chord. */
function lengthOf({ chart }: Seen): string {
  return chart.kind === 'map' ? 'map' : chartView(chartNotes(chart).map(keyNote)) === 'lying' ? 'long' : '';
}

/** What lies around the root, one chart at a time, both ways along the neck. */
@customElement('explore-see')
export class ExploreSee extends LitElement {
  static override readonly styles = [...exploreStyles, seeStyle];

  @property({ attribute: false }) settings: Settings | null = null;
  @property({ attribute: false }) at: RootAt | null = null;
  @property({ attribute: false }) ideas: Ideas | null = null;
  @property({ attribute: false }) all: readonly Seen[] = [];
  @property({ type: Number }) index = 0;

  readonly #landscape = new MediaQuery(this, landscape);

  protected override render(): TemplateResult | typeof nothing {
    const { settings, at, ideas } = this;
    if (!settings || !at || !ideas) return nothing;
    const seen = this.all[this.index];
    const title = this.#title(settings);
    const next = onNextString(at);
    return html`<div class=${`see ${seen ? lengthOf(seen) : ''}`}>
      ${exploreHeader()}
      <div class="words">
        <h1 tabindex="-1" class=${title.length > longTitle ? 'long' : ''}>${title}</h1>
        <p class="soft">Root on ${placeName(at.place)}</p>
        <button type="button" @click=${this.#onString}>On string ${next.string}</button>
      </div>
      <div class="choices">${this.#choices(ideas)}</div>
      <div class="chart">${seen ? this.#chart(settings, at, seen) : this.#nothing()}</div>
      <div class="bar">
        <button type="button" @click=${() => this.#go({ stage: 'root' })}>Another root</button>
        <button type="button" class="primary" ?disabled=${!seen} @click=${() => this.#go({ stage: 'quiz' })}>
          Quiz yourself
        </button>
      </div>
    </div>`;
  }

  #choices(ideas: Ideas): TemplateResult {
    const { kind } = ideas;
    return html`<fieldset class="kinds">
        <legend class="visually-hidden">What lies around the root</legend>
        ${ideaKinds.map(
          ([value, words]) =>
            html`<label
              ><input
                type="radio"
                name="kind"
                value=${value}
                .checked=${value === kind}
                @change=${() => this.#look({ ...ideas, kind: value })}
              /><span>${words}</span></label
            >`,
        )}
      </fieldset>
      ${field({
        label: whichWords[kind],
        bare: true,
        ...ideaChoices[kind],
        chosen: ideas[kind],
        choose: (value) => this.#look({ ...ideas, [kind]: value }),
      })}`;
  }

  #chart(settings: Settings, at: RootAt, seen: Seen): TemplateResult {
    const { naming, labels, leftHanded, instrument } = settings;
    const notes = marksOf(seen, labels, naming);
    const view = this.#landscape.now ? chartView(notes) : 'upright';
    const isMap = seen.chart.kind === 'map';
    const join = joinWords(at, seen);
    return html`<p class="step">
        <b>${seen.name}</b> <span class="soft">${this.index + 1} of ${this.all.length}</span>
      </p>
      <div class="steps">
        ${this.#stepButton(-1, isMap ? 'Fewer notes' : 'Towards the nut')}
        ${this.#stepButton(1, isMap ? 'More notes' : 'Towards the bridge')}
      </div>
      <rootcall-neck
        material="ink"
        class=${view}
        .label=${`Chart: ${this.#title(settings)}, ${seen.name}`}
        .instrument=${instrument}
        .view=${view}
        .leftHanded=${leftHanded}
        .notes=${notes}
        .window=${seen.chart.kind === 'map' ? seen.chart.range : null}
      ></rootcall-neck>
      <p class="visually-hidden" id="notes">${spoken(at, seen, naming)}</p>
      <rootcall-legend
        .entries=${[{ sign: 'lozenge', words: 'root' }, ...layerLegend(notes)]}
      ></rootcall-legend>
      <div class="care small soft">
        ${join === '' ? nothing : html`<p>${join}</p>`}
        <p>${careWords}</p>
      </div>`;
  }

  #stepButton(way: 1 | -1, words: string): TemplateResult {
    const isEnd = !this.all[this.index + way];
    return html`<button
      type="button"
      aria-disabled=${isEnd ? 'true' : 'false'}
      @click=${() => {
        if (!isEnd) this.#step(this.index + way);
      }}
    >
      ${words}
    </button>`;
  }

  #nothing(): TemplateResult {
    return html`<p>${nothingWords}</p>`;
  }

  #title({ naming }: Settings): string {
    const chart = this.all[this.index]?.chart;
    return chart ? chartWordings(chart)[naming].title : 'Nothing here';
  }

  #step(index: number): void {
    const { settings, at } = this;
    if (settings && at) this.#go({ index }, seenWords(at, this.all, index, settings.naming));
  }

  #look(ideas: Ideas): void {
    this.#turn({ ideas }, firstOf);
  }

  readonly #onString = (): void => {
    const { at, all, index } = this;
    if (at) this.#turn({ place: onNextString(at) }, (there) => likeIn(there, all[index]));
  };

  /** To another idea or another place, and there to the chart that comes first. */
  #turn(change: Partial<Exploring>, indexIn: (all: readonly Seen[]) => number): void {
    const { settings, at, ideas } = this;
    if (!settings || !at || !ideas) return;
    const then = { place: at.place, ideas, ...change };
    const there = from(settings.instrument, then.place ?? at.place, then.ideas);
    const all = seenFrom(there, then.ideas);
    const index = indexIn(all);
    this.#go({ ...then, index }, seenWords(there, all, index, settings.naming));
  }

  #go(change: Partial<Exploring>, words = ''): void {
    this.dispatchEvent(new ExploringEvent(change, words));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'explore-see': ExploreSee;
  }
}
