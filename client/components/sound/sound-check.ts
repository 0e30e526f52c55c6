import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  standardGuitar,
  stringNumbers,
  type Instrument,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { obstacle } from '../../listening/asking.ts';
import type { MicrophoneState } from '../../listening/events.ts';
import { isTooLoud } from '../../listening/room.ts';
import { openListening, type Listening } from '../../listening/listening.ts';
import { baseStyle } from '../../styles/base.ts';
import '../switch.ts';
import type { SwitchTurnedEvent } from '../switch.ts';
import { levelWedge } from './level-wedge.ts';
import { soundCheckStyle } from './sound-check-style.ts';
import { heardNow, nothingHeard, type HeardNow } from './heard-now.ts';
import { tunerScale } from './tuner-scale.ts';
import { lowestToTune, tunedString, type Tuned } from './tuning.ts';
import {
  alteredWords,
  cautionWords,
  centsFigure,
  centsWords,
  levelWords,
  privacyWords,
  roomWords,
  stateWords,
  stringName,
  tooLoudWords,
  tunedSaid,
  tuneWords,
  whyWords,
} from './words.ts';

/** A screen reader hears a string once its reading has stood for so long, in milliseconds. */
const sayAfter = 1500;

/** Whether this device hears a guitar, whether the room is quiet enough for it, and whether the strings are in tune. */
@customElement('rootcall-sound-check')
export class SoundCheck extends LitElement {
  static override readonly styles = [baseStyle, soundCheckStyle];

  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property() naming: NoteNaming = 'english';
  /** That of the page around it; without one the element opens its own, and ends it. */
  @property({ attribute: false }) listening: Listening | null = null;

  @state() private microphone: MicrophoneState = obstacle() ?? 'off';
  @state() private heard: HeardNow = nothingHeard;
  /** The one string that is being tuned; null: whichever sounds. */
  @state() private chosen: StringNumber | null = null;
  @state() private spoken = '';
  #own: Listening | null = null;
  #ends: (() => void)[] = [];
  #sayTimer: ReturnType<typeof setTimeout> | undefined;
  #toSay = '';

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#sayTimer);
    this.#follow(null);
    this.#own?.stop();
    this.#own = null;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('listening')) this.#follow(this.listening ?? this.#own);
    if (changed.has('instrument')) {
      this.chosen = null;
      this.#listenFor();
    }
  }

  protected override updated(): void {
    this.#saySoon();
  }

  protected override render(): TemplateResult {
    const listens = this.microphone === 'listening';
    const { sentence, help } = stateWords(this.microphone);
    return html`<div class="asking words">
        ${listens ? nothing : html`<p>${whyWords}</p>`}
        <rootcall-switch
          .on=${listens || this.microphone === 'asking' || this.microphone === 'busy'}
          @switch-turned=${this.#onSwitch}
          >Listen</rootcall-switch
        >
        <p class="small soft">${privacyWords}</p>
      </div>
      ${
        sentence === ''
          ? nothing
          : html`<div class="hindrance words">
              <p><strong>${sentence}</strong></p>
              <p>${help}</p>
            </div>`
      }
      ${listens && this.#listens?.isAltered ? html`<p class="hindrance">${alteredWords}</p>` : nothing}
      ${this.#tuner()} ${listens ? this.#level() : nothing}
      <p class="small soft">${cautionWords}</p>
      <p class="visually-hidden" role="status">${this.spoken}</p>`;
  }

  #level(): TemplateResult {
    const { loudness, level, floor, guitar } = this.heard;
    return html`<dl>
      <dt>Level</dt>
      <dd class=${level === 'clipped' ? 'level clipped' : 'level'}>
        ${levelWedge(loudness, floor)}<span>${levelWords[level]}</span>
      </dd>
      <dt>Room</dt>
      <dd>${floor === null ? 'Listening to it' : roomWords(floor, guitar)}</dd>
    </dl>`;
  }

  #tuner(): TemplateResult {
    const tuned = this.#tuned;
    const { instrument, naming } = this;
    const name = (string: StringNumber) => stringName(instrument, string, naming);
    return html`<section class="sheet tuner" aria-labelledby="tuner">
      <h2 id="tuner">Tuner</h2>
      <div class="strings" role="group" aria-label="Tune one string">
        ${stringNumbers(instrument)
          .toReversed()
          .map(
            (string) =>
              html`<button
                type="button"
                class=${string === tuned?.string ? 'sounds' : ''}
                aria-pressed=${string === this.chosen ? 'true' : 'false'}
                @click=${() => (this.chosen = string === this.chosen ? null : string)}
              >
                <span class="digit"><span class="visually-hidden">string </span>${string}</span>
                <span>${name(string)}</span>
              </button>`,
          )}
      </div>
      <div class="reading">
        <span>${tuned ? html`String ${tuned.string}` : nothing}</span>
        <span class="figure">${tuned ? name(tuned.string) : '–'}</span>
        <span class="cents columns">${tuned ? centsFigure(tuned.cents) : nothing}</span>
      </div>
      <div class="scale">${tunerScale(tuned?.cents ?? null)}</div>
      <p class="verdict">
        ${
          tuned
            ? html`<strong>${centsWords(tuned.cents)}</strong>${tuneWords(tuned.cents)}`
            : this.microphone === 'listening'
              ? 'Play one open string at a time.'
              : 'Turn Listen on, and play one open string.'
        }
      </p>
    </section>`;
  }

  get #tuned(): Tuned | undefined {
    const { tuning } = this.heard;
    return tuning ? tunedString(tuning.frequency, this.instrument, this.chosen) : undefined;
  }

  /** Whoever listens now. */
  get #listens(): Listening | null {
    return this.listening ?? this.#own;
  }

  readonly #onSwitch = async ({ on }: SwitchTurnedEvent): Promise<void> => {
    if (!on) return this.#listens?.stop();
    if (!this.#listens) {
      const own = await openListening();
      // The page may have gone on meanwhile.
      if (!this.isConnected) return;
      this.#own = own;
      this.#follow(own);
    }
    this.#listenFor();
    await this.#listens?.start();
  };

  #listenFor(): void {
    this.#listens?.listenFor('tuning', lowestToTune(this.instrument));
  }

  #follow(listening: Listening | null): void {
    for (const end of this.#ends) end();
    this.#ends = [];
    this.heard = nothingHeard;
    this.microphone = listening?.state ?? obstacle() ?? 'off';
    if (!listening) return;
    const onState = () => {
      this.microphone = listening.state;
      if (listening.state !== 'listening') this.heard = nothingHeard;
    };
    this.#ends = [
      listening.onState(onState),
      listening.onHeard((event) => (this.heard = heardNow(this.heard, event))),
    ];
  }

  /** Read aloud is only what stands for a while: a string's reading, or what hinders. */
  #saySoon(): void {
    const words = this.#words();
    if (words === this.#toSay) return;
    this.#toSay = words;
    clearTimeout(this.#sayTimer);
    this.#sayTimer = setTimeout(() => (this.spoken = words), words === '' ? 0 : sayAfter);
  }

  #words(): string {
    const { sentence, help } = stateWords(this.microphone);
    if (sentence !== '') return `${sentence} ${help}`;
    const tuned = this.#tuned;
    if (tuned) return tunedSaid(tuned, this.instrument, this.naming);
    const { floor, guitar } = this.heard;
    return floor !== null && isTooLoud(floor, guitar) ? tooLoudWords : '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-sound-check': SoundCheck;
  }
}
