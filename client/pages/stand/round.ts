import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { StandStage } from '../../../shared/protocol/views.ts';
import {
  instrumentById,
  standardGuitar,
  type FretRange,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import { sign } from '../../components/signs.ts';
import type { PlaceToggledEvent, WindowsFittedEvent } from '../../fretboard/events.ts';
import '../../fretboard/neck.ts';
import { holds, placeName, toggled } from '../../fretboard/state.ts';
import { windowHolding } from '../../fretboard/wood-frame.ts';
import { AnswerEvent } from './events.ts';
import { standHeader } from './header.ts';
import { landscape, MediaQuery } from '../../lib/media-query.ts';
import { roundStyle } from './round-style.ts';
import { standStyles } from './stand-style.ts';
import { windowsFor } from './windows.ts';
import { heldWords, standingWord, timeWords, windowWords, type Standing } from './words.ts';

export type RoundStage = Extract<StandStage, { readonly kind: 'open' | 'held' }>;

/** From this many letters on a title is set smaller, so that it keeps to one line beside the window's button. */
const longTitle = 14;

/** A question, and a wooden neck to answer it on. */
@customElement('stand-round')
export class StandRound extends LitElement {
  static override readonly styles = [standStyles, roundStyle];

  @property() group = '';
  @property() student = '';
  @property({ attribute: false }) stage: RoundStage | null = null;
  @property({ attribute: false }) places: readonly Place[] = [];
  @property({ type: Boolean }) done = false;
  @property({ type: Boolean }) timeUp = false;
  @property() standing: Standing = 'nothing';
  @property({ type: Boolean }) leftHanded = false;

  @state() private fitted: readonly FretRange[] = [];
  @state() private chosen: FretRange | null = null;

  readonly #landscape = new MediaQuery(this, landscape);

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('stage') && changed.get('stage')?.roundId !== this.stage?.roundId) this.chosen = null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { stage } = this;
    if (!stage) return nothing;
    const { task } = stage;
    const closed = stage.kind === 'held' || this.timeUp;
    const window = this.#window();
    return html`<div class="round">
      ${standHeader(this.group, this.student)}
      <div class="task">
        <h1 class=${task.title.length > longTitle ? 'long' : ''}>${task.title}</h1>
        <p class="soft">
          ${task.detail}
          ${stage.seconds === null ? nothing : html`<span class="time">${timeWords(stage.seconds)}</span>`}
        </p>
      </div>
      ${this.#windowButton(window)}
      <rootcall-neck
        material="wood"
        label="Neck"
        .instrument=${instrumentById(task.instrument) ?? standardGuitar}
        .view=${this.#landscape.now ? 'lying' : 'upright'}
        .leftHanded=${this.leftHanded}
        .window=${window}
        .placesPerString=${task.placesPerString}
        .places=${this.places}
        .sent=${this.standing === 'safe' || this.standing === 'late'}
        .disabled=${closed || this.done}
        @place-toggled=${this.#onToggled}
        @windows-fitted=${this.#onFitted}
      ></rootcall-neck>
      <div class="bar">
        ${closed ? this.#heldBar(stage.kind === 'held') : this.done ? this.#doneBar() : this.#openBar()}
      </div>
    </div>`;
  }

  #openBar(): TemplateResult {
    const count = this.places.length;
    return html`<button type="button" ?disabled=${count === 0} @click=${this.#onClear}>Clear</button>
      ${
        this.standing === 'nothing'
          ? nothing
          : html`<span class="standing">
              ${sign(this.standing === 'placed' || this.standing === 'kept' ? 'placed' : 'sent')}
              ${standingWord[this.standing]}
            </span>`
      }
      <button type="button" class="primary" ?disabled=${count === 0} @click=${this.#onDone}>
        Done <span class="soft">${count} placed</span>
      </button>`;
  }

  #doneBar(): TemplateResult {
    const unsent = this.standing === 'placed' || this.standing === 'kept';
    return html`<span class="report-sign">${sign(unsent ? 'placed' : 'sent')}</span>
      <p class="report">
        <b>${this.standing === 'safe' ? 'Done and safe.' : 'Done.'}</b>
        <span class="more">
          ${this.standing === 'kept' ? 'Kept on this phone.' : 'Yours to change until the hold.'}
        </span>
      </p>
      <button type="button" class="change" @click=${this.#onChange}>Change</button>`;
  }

  #heldBar(held: boolean): TemplateResult {
    return html`<span class="report-sign">${sign('fermata')}</span>
      <p class="report"><b>${held ? 'Held. Eyes up.' : 'Time is up.'}</b> ${heldWords(this.standing)}</p>`;
  }

  /** Names the window that a press leads to; where all frets fit there is nothing to press. */
  #windowButton(shown: FretRange | null): TemplateResult | typeof nothing {
    const windows = this.#windows();
    if (windows.length < 2) return nothing;
    const at = windows.findIndex(({ low }) => low === shown?.low);
    const next = windows[(at + 1) % windows.length];
    if (!next) return nothing;
    return html`<button type="button" class="window" @click=${() => (this.chosen = next)}>
      ${windowWords(next)}
    </button>`;
  }

  /** The window the student chose, else that of the range asked, else the one by the nut. */
  #window(): FretRange | null {
    const windows = this.#windows();
    const range = this.chosen ?? this.#range();
    return (range ? windowHolding(windows, range) : windows[0]) ?? null;
  }

  #windows(): readonly FretRange[] {
    return windowsFor(this.fitted, this.#range());
  }

  #range(): FretRange | null {
    return (this.stage?.task.range ?? null) as FretRange | null;
  }

  readonly #onFitted = (event: WindowsFittedEvent): void => {
    this.fitted = event.windows;
  };

  readonly #onToggled = ({ place }: PlaceToggledEvent): void => {
    const taken = holds(this.places, place);
    const places = toggled(this.places, place, this.stage?.task.placesPerString ?? 'many');
    this.dispatchEvent(
      new AnswerEvent(places, false, `${taken ? 'Taken back' : 'Placed'} ${placeName(place)}.`),
    );
  };

  readonly #onClear = (): void => {
    this.dispatchEvent(new AnswerEvent([], false, 'Cleared.'));
  };

  readonly #onDone = (): void => {
    this.dispatchEvent(new AnswerEvent(this.places, true, 'Done. Yours to change until the hold.'));
    void this.#focusOn('.change');
  };

  readonly #onChange = (): void => {
    this.dispatchEvent(new AnswerEvent(this.places, false, 'Yours to change.'));
    void this.#focusOn('.primary');
  };

  /** The button that was pressed is gone: the keyboard goes on from the one in its place. */
  async #focusOn(selector: string): Promise<void> {
    await new Promise(requestAnimationFrame);
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus({ preventScroll: true });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'stand-round': StandRound;
  }
}
