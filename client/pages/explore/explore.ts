import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { assertNever } from '../../../shared/lib/assert.ts';
import { browserStore } from '../../lib/key-store.ts';
import { baseStyle } from '../../styles/base.ts';
import type { Exploring, ExploringEvent, SettingsEvent, Stage } from './events.ts';
import { firstIdeas } from './ideas.ts';
import './quiz-screen.ts';
import './root-screen.ts';
import './see-screen.ts';
import { firstOf, from, seenFrom, type Seen } from './seen.ts';
import { keepSettings, readSettings, type Settings } from './settings.ts';
import './settings-screen.ts';
import { seenWords } from './words.ts';

const storage = browserStore(() => localStorage);

/** Exploring alone: no class, no server. A root on any string, what lies around it both ways, a quiz with oneself. */
@customElement('rootcall-explore')
export class Explore extends LitElement {
  static override readonly styles = [
    baseStyle,
    css`
      :host {
        display: grid;
        grid-template: minmax(0, 1fr) / minmax(0, 1fr);
        height: 100vh;
        height: 100dvh;
        position: relative;
      }
      /* A large screen is read from further away. */
      @media (min-width: 1600px) and (min-height: 900px) {
        :host {
          --target: 3.25rem;
          --text-body: 1.3125rem;
          --text-lead: 1.5625rem;
          --text-small: 1.125rem;
          --text-title: 2.5rem;

          font-size: var(--text-body);
        }
      }
      main {
        min-height: 0;
        overflow: hidden auto;
      }
    `,
  ];

  @state() private now: Exploring = { stage: 'root', place: null, ideas: firstIdeas, index: 0 };
  @state() private settings: Settings = readSettings(storage);
  @state() private spoken = '';
  #all: readonly Seen[] = [];
  /** Where the settings lead back to. */
  #before: Stage = 'root';

  protected override willUpdate(changed: PropertyValues): void {
    if (!changed.has('now') && !changed.has('settings')) return;
    const at = this.#at;
    this.#all = at ? seenFrom(at, this.now.ideas) : [];
  }

  protected override render(): TemplateResult {
    return html`<main @exploring=${this.#onExploring} @explore-settings=${this.#onSettings}>
        ${this.#screen(this.now)}
      </main>
      <p class="visually-hidden" aria-live="polite">${this.spoken}</p>`;
  }

  #screen({ stage, place, ideas, index }: Exploring): TemplateResult {
    const { settings } = this;
    switch (stage) {
      case 'root':
        return html`<explore-root .settings=${settings} .place=${place}></explore-root>`;
      case 'see':
        return html`<explore-see
          .settings=${settings}
          .at=${this.#at}
          .ideas=${ideas}
          .all=${this.#all}
          .index=${index}
        ></explore-see>`;
      case 'quiz':
        return html`<explore-quiz
          .settings=${settings}
          .at=${this.#at}
          .ideas=${ideas}
          .seen=${this.#all[index]}
        ></explore-quiz>`;
      case 'settings':
        return html`<explore-settings .settings=${settings} .back=${this.#before}></explore-settings>`;
      default:
        return assertNever(stage);
    }
  }

  get #at() {
    const { place, ideas } = this.now;
    return place ? from(this.settings.instrument, place, ideas) : null;
  }

  readonly #onExploring = ({ change, words }: ExploringEvent): void => {
    const { stage, ideas } = this.now;
    const next = { ...this.now, ...change };
    if (Object.keys(change).length > 0) this.now = next;
    if (words !== '') this.spoken = words;
    if (next.stage === stage) return;
    if (stage !== 'settings') this.#before = stage;
    if (stage === 'root' && next.stage === 'see' && next.place) {
      const at = from(this.settings.instrument, next.place, ideas);
      const all = seenFrom(at, ideas);
      const index = firstOf(all);
      this.now = { ...next, index };
      this.spoken = seenWords(at, all, index, this.settings.naming);
    }
    void this.#focusTitle();
  };

  readonly #onSettings = ({ change }: SettingsEvent): void => {
    this.settings = { ...this.settings, ...change };
    keepSettings(storage, change);
    // Of another instrument the place may not be there, and what lies around it is another thing.
    if (!change.instrument) return;
    this.#before = 'root';
    this.now = { ...this.now, place: null, index: 0 };
  };

  /** Another screen: reading and keyboard go on from its title. */
  async #focusTitle(): Promise<void> {
    await this.updateComplete;
    const screen = this.renderRoot.querySelector('main')?.firstElementChild;
    if (!(screen instanceof LitElement)) return;
    await screen.updateComplete;
    screen.renderRoot.querySelector('h1')?.focus({ preventScroll: true });
    this.renderRoot.querySelector('main')?.scrollTo(0, 0);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-explore': Explore;
  }
}
