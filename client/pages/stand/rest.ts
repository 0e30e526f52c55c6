import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { StandOwnView, StandSharedView } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import '../../components/switch.ts';
import { AliasEvent, LeaveEvent, NamingEvent } from './events.ts';
import './programme.ts';
import { WayEvent } from './play-events.ts';
import { standStyles } from './stand-style.ts';
import { browserHasMidi, type ChosenWay } from './ways.ts';
import { restWords } from './words.ts';

/** Note names to choose from; the first leaves it to the class. */
const namings: readonly (readonly [NoteNaming | '', string])[] = [
  ['', 'as the class'],
  ['english', 'C D E … B'],
  ['german', 'C D E … H (German)'],
  ['solfege', 'do re mi'],
];

/** Ways to answer, for the exercises that allow them. */
const ways: readonly (readonly [ChosenWay, string])[] = [
  ['tap', 'by tapping'],
  ['play', 'by playing if I may'],
  ['midi', 'by MIDI'],
];

/** Between exercises: a rest, and the few things that a student may set. */
@customElement('stand-rest')
export class StandRest extends LitElement {
  static override readonly styles = [
    standStyles,
    css`
      stand-programme {
        display: block;
        height: 100%;
      }
      .bar {
        gap: var(--space-4);
        justify-content: space-between;
      }
      .bar rootcall-switch {
        flex: 1 1 8rem;
        max-width: 14rem;
        font-size: var(--text-small);
      }
      .bar.settings {
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
      }
      .naming {
        align-items: center;
        display: flex;
        flex: 1 1 14rem;
        font-size: var(--text-small);
        font-weight: inherit;
        gap: var(--space-3);
        justify-content: space-between;
        order: 1;
        white-space: nowrap;
      }
      select {
        min-width: 0;
      }
      .bar button {
        white-space: nowrap;
      }
      .naming select {
        width: 12rem;
      }
      @media (min-width: 700px) {
        .bar.settings {
          flex-wrap: nowrap;
        }
        .bar rootcall-switch {
          flex-basis: auto;
        }
        .naming {
          flex: 0 1 auto;
          order: 0;
        }
      }
      form {
        display: grid;
        gap: var(--space-1);
        grid-template-columns: minmax(0, 1fr);
      }
      .row {
        display: flex;
        gap: var(--space-2);
      }
      .meanwhile {
        align-items: center;
        color: var(--soft);
        display: inline-flex;
        min-height: var(--target);
      }
      .links {
        column-gap: var(--space-4);
        display: flex;
        flex-wrap: wrap;
      }
      input {
        flex: 1;
        min-width: 0;
      }
    `,
  ];

  @property({ attribute: false }) shared: StandSharedView | null = null;
  @property({ attribute: false }) own: StandOwnView | null = null;
  @property({ type: Boolean }) leftHanded = false;
  /** Null: the class's. */
  @property({ attribute: false }) naming: NoteNaming | null = null;
  /** The last exercise was taken back. */
  @property({ type: Boolean }) voided = false;
  @property() way: ChosenWay = 'tap';
  @state() private leaving = false;

  protected override render(): TemplateResult | typeof nothing {
    const { shared, own } = this;
    if (!shared || !own) return nothing;
    return html`<stand-programme
      resting
      .group=${shared.group}
      .school=${shared.school}
      .heading=${`You are in,\n${own.name}`}
      .words=${
        this.voided
          ? 'That exercise was taken back, and nothing of it counts. The next one comes here by itself.'
          : 'Rest. The next exercise comes here by itself, so both hands can stay on the guitar.'
      }
      .more=${restWords(shared.next, shared.here)}
    >
      ${shared.wantsAlias ? this.#aliasForm(own.alias) : nothing}
      <p class="small links">
        <a class="meanwhile" href="/explore">Explore the neck meanwhile</a>
        <a class="meanwhile" href="/sound">Tuner and sound</a>
      </p>
      <div slot="bar" class=${this.leaving ? 'bar' : 'bar settings'}>
        ${
          this.leaving
            ? html`<span>Leave this device to somebody else?</span>
                <span class="row">
                  <button type="button" @click=${() => (this.leaving = false)}>Stay</button>
                  <button type="button" @click=${() => this.dispatchEvent(new LeaveEvent())}>Leave</button>
                </span>`
            : html`<rootcall-switch .on=${this.leftHanded}>Left-handed neck</rootcall-switch>
                ${this.#namingChoice()} ${this.#wayChoice()}
                <button type="button" @click=${() => (this.leaving = true)}>Not me</button>`
        }
      </div>
    </stand-programme>`;
  }

  #namingChoice(): TemplateResult {
    return html`<label class="naming">
      Note names
      <select @change=${this.#onNaming}>
        ${namings.map(
          ([naming, words]) =>
            html`<option value=${naming} .selected=${naming === (this.naming ?? '')}>${words}</option>`,
        )}
      </select>
    </label>`;
  }

  #wayChoice(): TemplateResult {
    const open = ways.filter(([way]) => way !== 'midi' || browserHasMidi());
    return html`<label class="naming">
      Answer
      <select @change=${this.#onWay}>
        ${open.map(
          ([way, words]) => html`<option value=${way} .selected=${way === this.way}>${words}</option>`,
        )}
      </select>
    </label>`;
  }

  #aliasForm(alias: string | null): TemplateResult {
    return html`<form @submit=${this.#onAlias}>
      <label for="alias" class="small">A name for the list at the end, if you like</label>
      <span class="row">
        <input id="alias" name="alias" maxlength="20" autocomplete="off" dir="auto" .value=${alias ?? ''} />
        <button>Keep</button>
      </span>
    </form>`;
  }

  readonly #onNaming = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    const { value } = event.target;
    const [naming] = namings.find(([other]) => other === value) ?? [''];
    this.dispatchEvent(new NamingEvent(naming === '' ? null : naming));
  };

  readonly #onWay = ({ target }: Event): void => {
    if (!(target instanceof HTMLSelectElement)) return;
    const [way] = ways.find(([other]) => other === target.value) ?? [];
    if (way) this.dispatchEvent(new WayEvent(way));
  };

  readonly #onAlias = (event: SubmitEvent): void => {
    event.preventDefault();
    const typed = this.renderRoot.querySelector('input')?.value.trim() ?? '';
    this.dispatchEvent(new AliasEvent(typed === '' ? null : typed));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'stand-rest': StandRest;
  }
}
