import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { Playing } from '../../../shared/exercise/heard.ts';
import {
  midiAt,
  place,
  standardGuitar,
  stringNumbers,
  type Instrument,
} from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import type { MidiNote } from '../../../shared/theory/pitch.ts';
import { along } from '../../components/sound/level-wedge.ts';
import { cautionWords } from '../../components/sound/words.ts';
import '../../components/switch.ts';
import type { SwitchTurnedEvent } from '../../components/switch.ts';
import type { EarEvent, MicrophoneState } from '../../listening/events.ts';
import type { Click } from '../../listening/click.ts';
import { openListening, type Listening } from '../../listening/listening.ts';
import { isTooLoud } from '../../listening/room.ts';
import type { Gathered } from '../../midi/gather.ts';
import type { MidiEvent, MidiState } from '../../midi/midi-events.ts';
import type { MidiListening } from '../../midi/midi-input.ts';
import { baseStyle } from '../../styles/base.ts';
import { keyInWords } from './key-in-words.ts';
import {
  afterHeard,
  draftOf,
  mostPitches,
  newListening,
  withAnswer,
  withMidi,
  type PlayDraft,
} from './play-draft.ts';
import { ListenEvent, PlayedEvent, SaidEvent, WayEvent } from './play-events.ts';
import {
  afterwards,
  heardSaid,
  hindrance,
  panelWords,
  turnWords,
  whyListen,
  type Panel,
} from './play-words.ts';
import { playingStyle } from './playing-style.ts';
import { wayChoice } from './way-choice.ts';
import type { ChosenWay, MayPlay } from './ways.ts';

/** What is heard is read aloud once nothing more came for so long, in milliseconds. */
const sayAfter = 1000;
/** A room is too loud once it has been so for so long, in seconds. */
const loudFor = 3;
/** The level moves in so many steps: not every tenth of a second is worth drawing. */
const steps = 12;
/** Beats a minute to choose from. */
const tempi = [50, 60, 70, 80, 90, 100, 120, 140] as const;

/**
 * How an exercise is answered: by taps, by playing to the microphone, or by MIDI. One line: the way, the switch with its
 * level, what was heard. It opens the microphone while it is wanted and closes it after; it holds no answer.
 */
@customElement('stand-playing')
export class StandPlaying extends LitElement {
  static override readonly styles = [baseStyle, playingStyle];

  /** To choose from here; none where the screen offers them elsewhere. */
  @property({ attribute: false }) ways: readonly ChosenWay[] = [];
  @property({ reflect: true }) way: ChosenWay = 'tap';
  @property() may: MayPlay = 'on';
  @property({ attribute: false }) playing: Playing = { as: 'line', taps: [] };
  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property({ attribute: false }) answer: Answer = noAnswer;
  /** The task's English title: in its light notes are named. */
  @property() task = '';
  @property() naming: NoteNaming = 'english';
  /** What is played counts now. */
  @property({ type: Boolean }) open = false;
  /** The student lets this page listen. */
  @property({ type: Boolean }) listens = false;

  /** Known at once where no press could change it. */
  @state() private microphone: MicrophoneState = isSecureContext ? 'off' : 'insecure';
  @state() private midi: MidiState = 'off';
  /** The click's tempo; 0 while it is silent. */
  @state() private tempo = 0;
  @state() private level = 0;
  @state() private tooLoud = false;
  @state() private draft: PlayDraft = draftOf(noAnswer);

  #listening: Listening | null = null;
  #listensFor = '';
  #midi: MidiListening | null = null;
  #gathered: Gathered = [];
  #click: Click | null = null;
  #quietAt = 0;
  #ends: (() => void)[] = [];
  /** By which way something is open, or opening. */
  #wanted: ChosenWay = 'tap';
  /** Each opening is another; one that was given up meanwhile ends. */
  #turn = 0;
  #sayTimer: ReturnType<typeof setTimeout> | undefined;
  #news = '';

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('visibilitychange', this.#onVisibility);
    this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('visibilitychange', this.#onVisibility);
    clearTimeout(this.#sayTimer);
    this.#close();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('answer') && this.answer !== this.draft.answer)
      this.draft = withAnswer(this.draft, this.answer);
    if (this.answer.way !== 'midi') this.#gathered = [];
  }

  protected override updated(changed: PropertyValues<this>): void {
    const wanted = this.#isOpen ? this.way : 'tap';
    if (wanted !== this.#wanted) {
      this.#close();
      this.#wanted = wanted;
      if (wanted === 'play') void this.#openEar();
      if (wanted === 'midi') void this.#openMidi();
    }
    if (changed.has('playing') || changed.has('instrument')) this.#listenFor();
    this.#sayNews();
  }

  protected override render(): TemplateResult {
    const panel = this.#panel;
    const isAsked = this.way === 'play' && !this.listens && this.open && this.#isWell && !panel.answer.heard;
    return html`${wayChoice(this.ways, this.way, !this.open, (way) => this.dispatchEvent(new WayEvent(way)))}
      ${this.way === 'play' && !isAsked ? this.#listenSwitch() : nothing}
      ${this.way === 'play' && !isAsked && this.#isScale ? this.#clickChoice() : nothing}
      <p class="words">
        ${isAsked ? nothing : panelWords(panel)}
        ${this.way === 'play' && hindrance(panel) !== '' ? html`<a href="/sound">Sound check</a>` : nothing}
      </p>
      ${isAsked ? this.#why() : nothing}`;
  }

  /** At the first wish: why, what travels, how to play in health. */
  #why(): TemplateResult {
    const turn = turnWords(this.#panel);
    return html`<section class="why" aria-label="Before you play">
      ${turn === '' ? nothing : html`<p><strong>${turn}</strong></p>`}
      <p>${whyListen}</p>
      <p class="soft">${cautionWords}</p>
      <div class="choice">
        <rootcall-switch .on=${false} @switch-turned=${({ on }: SwitchTurnedEvent) => this.#listen(on)}
          >Listen</rootcall-switch
        >
        <a href="/sound">Sound check</a>
      </div>
    </section>`;
  }

  /** The level stands in the switch: one sees that it hears. */
  #listenSwitch(): TemplateResult {
    const on = this.open && this.listens && this.#isWell;
    return html`<button
      type="button"
      class="listen"
      role="switch"
      aria-checked=${on ? 'true' : 'false'}
      ?disabled=${!this.open}
      @click=${() => this.#listen(!on)}
    >
      Listen
      <span class="level"
        ><span .style=${`transform: scaleX(${(this.level / steps).toFixed(2)})`}></span
      ></span>
    </button>`;
  }

  /** For scales: in time with a click, if the student likes. */
  #clickChoice(): TemplateResult {
    return html`<select class="click" aria-label="Click" @change=${this.#onTempo} ?disabled=${!this.#isOpen}>
      <option value="0" .selected=${this.tempo === 0}>No click</option>
      ${tempi.map(
        (tempo) => html`<option value=${tempo} .selected=${tempo === this.tempo}>Click ${tempo}</option>`,
      )}
    </select>`;
  }

  get #isOpen(): boolean {
    return this.open && !document.hidden && (this.way !== 'play' || this.listens);
  }

  get #panel(): Panel {
    const { open, way, may, listens, microphone, midi, tooLoud, playing, naming } = this;
    const { answer, hint, isDoubtful } = this.draft;
    const names = { key: keyInWords(this.task), naming };
    return { open, way, may, listens, microphone, midi, tooLoud, answer, hint, isDoubtful, playing, names };
  }

  get #isScale(): boolean {
    return this.playing.as === 'line' && !this.task.startsWith('Find ');
  }

  /** Nothing hinders the microphone that is known of. */
  get #isWell(): boolean {
    return ['off', 'asking', 'listening'].includes(this.microphone);
  }

  readonly #onVisibility = (): void => {
    this.requestUpdate();
  };

  #listen(on: boolean): void {
    // A press that tries again: what hindered may be gone.
    this.#close();
    this.microphone = 'off';
    this.dispatchEvent(new ListenEvent(on));
    this.requestUpdate();
  }

  readonly #onTempo = async ({ target }: Event): Promise<void> => {
    if (!(target instanceof HTMLSelectElement)) return;
    this.tempo = Number(target.value);
    if (this.tempo === 0) this.#endClick();
    else if (this.#click) this.#click.bpm = this.tempo;
    else {
      const turn = this.#turn;
      const { Click } = await import('../../listening/click.ts');
      if (turn !== this.#turn || this.tempo === 0 || this.#click) return;
      this.#click = new Click(this.tempo);
    }
  };

  #endClick(): void {
    this.#click?.stop();
    this.#click = null;
    this.tempo = 0;
  }

  async #openMidi(): Promise<void> {
    const turn = this.#turn;
    try {
      const [{ MidiListening }, { gather, placesPlayed, asHeard }] = await Promise.all([
        import('../../midi/midi-input.ts'),
        import('../../midi/gather.ts'),
      ]);
      if (turn !== this.#turn) return;
      const midi = new MidiListening();
      this.#midi = midi;
      const onPlayed = (event: MidiEvent) => {
        const { as } = this.playing;
        if (event.kind === 'on' && as === 'line' && this.#gathered.length >= mostPitches) return;
        this.#gathered = gather(this.#gathered, event, as);
        if (event.kind === 'off' || this.#gathered.length === 0) return;
        const places = placesPlayed(this.#gathered, this.instrument);
        this.#take(draftOf(withMidi(this.draft.answer, places, asHeard(this.#gathered, as))), false);
      };
      this.#ends = [midi.onState(() => (this.midi = midi.state)), midi.onPlayed(onPlayed)];
      midi.instrument = this.instrument;
      this.midi = midi.state;
      await midi.start();
    } catch {
      if (turn === this.#turn) this.midi = 'unsupported';
    }
  }

  async #openEar(): Promise<void> {
    const turn = this.#turn;
    this.#quietAt = 0;
    this.draft = newListening(this.draft);
    try {
      const listening = await openListening();
      if (turn !== this.#turn) return;
      this.#listening = listening;
      this.#ends = [
        listening.onState(() => this.#onState(listening.state)),
        listening.onHeard((event) => this.#onHeard(event)),
      ];
      this.#listenFor();
      this.#onState(listening.state);
      await listening.start();
    } catch {
      if (turn === this.#turn) this.microphone = 'unsupported';
    }
  }

  #close(): void {
    this.#wanted = 'tap';
    this.#turn += 1;
    this.#endClick();
    for (const end of this.#ends) end();
    this.#ends = [];
    this.#listening?.stop();
    this.#listening = null;
    this.#listensFor = '';
    this.#midi?.stop();
    this.#midi = null;
    this.midi = 'off';
    if (this.#isWell) this.microphone = 'off';
    this.level = 0;
    this.tooLoud = false;
    if (this.draft.hint.length > 0) this.#take({ ...this.draft, hint: [] }, false);
  }

  /** Only where it is another thing: the ear would forget what it is just hearing. */
  #listenFor(): void {
    const open = stringNumbers(this.instrument).map((string) => midiAt(this.instrument, place(string, 0)));
    const lowest = Math.min(...open) as MidiNote;
    const wish = `${this.playing.as} ${String(lowest)}`;
    if (this.#listening && wish !== this.#listensFor) this.#listening.listenFor(this.playing.as, lowest);
    this.#listensFor = this.#listening ? wish : '';
    if (this.#midi) this.#midi.instrument = this.instrument;
  }

  #onState(now: MicrophoneState): void {
    this.microphone = now;
    // Some browsers would ask again with every exercise.
    if (now === 'refused') this.dispatchEvent(new ListenEvent(false));
  }

  #onHeard(event: EarEvent): void {
    if (event.kind === 'level') {
      this.level = Math.round(steps * along(event.loudness));
      // The first sound after none at all is taken for the room.
      if (!isTooLoud(event.floor)) this.#quietAt = event.at;
      this.tooLoud = event.at - this.#quietAt > loudFor;
    }
    const next = afterHeard(this.draft, event, this.playing);
    if (next !== this.draft) this.#take(next, event.kind === 'chord' && event.isFinal && !event.isDoubtful);
  }

  #take(next: PlayDraft, isFinal: boolean): void {
    this.draft = next;
    this.dispatchEvent(new PlayedEvent(next.answer, next.hint, isFinal));
    if (next.hint.length === 0) this.#sayLater();
  }

  /** Not with every note: a voice would never come to an end. */
  #sayLater(): void {
    clearTimeout(this.#sayTimer);
    this.#sayTimer = setTimeout(() => {
      const panel = this.#panel;
      const { heard } = panel.answer;
      if (heard) this.#say([heardSaid(heard, panel.names), afterwards(panel)].filter(Boolean).join(' '));
    }, sayAfter);
  }

  /** What hinders, and whose turn it is, once. */
  #sayNews(): void {
    const words = hindrance(this.#panel) || turnWords(this.#panel);
    if (words === this.#news) return;
    this.#news = words;
    if (words !== '') this.#say(words);
  }

  #say(words: string): void {
    this.dispatchEvent(new SaidEvent(words));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'stand-playing': StandPlaying;
  }
}
