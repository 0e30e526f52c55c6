import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { Playing } from '../../../shared/exercise/heard.ts';
import { standardGuitar, type Instrument } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import type { EarEvent } from '../../listening/events.ts';
import { baseStyle } from '../../styles/base.ts';
import { keyInWords } from './key-in-words.ts';
import { clickChoice, listenSwitch, soundCheckLink, whyCard } from './play-controls.ts';
import { afterHeard, draftOf, newListening, withAnswer, withMidi, type PlayDraft } from './play-draft.ts';
import { ListenEvent, PlayedEvent, SaidEvent, WayEvent } from './play-events.ts';
import { PlayInput } from './play-input.ts';
import { afterwards, heardSaid, hindrance, panelWords, turnWords, type Panel } from './play-words.ts';
import { playingStyle } from './playing-style.ts';
import { wayChoice } from './way-choice.ts';
import type { ChosenWay, MayPlay } from './ways.ts';

/** What is heard is read aloud once nothing more came for so long, in milliseconds. */
const sayAfter = 1000;

/**
 * How an exercise is answered: by taps, by playing to the microphone, or by MIDI. One line: the way, the switch with its
 * level, what was heard. It holds no answer.
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

  @state() private draft: PlayDraft = draftOf(noAnswer);

  readonly #input = new PlayInput(this, {
    onHeard: (event) => this.#onHeard(event),
    onMidi: (places, heard) => this.#take(draftOf(withMidi(this.draft.answer, places, heard)), false),
    // Some browsers would ask again with every exercise.
    onRefused: () => this.dispatchEvent(new ListenEvent(false)),
    onClosed: () => this.#onClosed(),
  });
  #sayTimer: ReturnType<typeof setTimeout> | undefined;
  #news = '';

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#sayTimer);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('answer') && this.answer !== this.draft.answer)
      this.draft = withAnswer(this.draft, this.answer);
    if (this.answer.way !== 'midi') this.#input.midi.forget();
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('playing') || changed.has('instrument'))
      this.#input.listenFor(this.playing.as, this.instrument);
    this.#input.want(this.#isOpen ? this.way : 'tap');
    this.#sayNews();
  }

  protected override render(): TemplateResult {
    const panel = this.#panel;
    const { isWell } = this.#input.microphone;
    const isPlay = this.way === 'play';
    const isAsked = isPlay && !this.listens && this.open && isWell && !panel.answer.heard;
    return html`${wayChoice(this.ways, this.way, !this.open, (way) => this.dispatchEvent(new WayEvent(way)))}
      ${isPlay && !isAsked ? this.#controls() : nothing}
      <p class="words">
        ${isAsked ? nothing : panelWords(panel)}
        ${isPlay && hindrance(panel) !== '' ? soundCheckLink : nothing}
      </p>
      ${isAsked ? whyCard(turnWords(panel), this.#listen) : nothing}`;
  }

  #controls(): TemplateResult {
    const { microphone, click } = this.#input;
    const on = this.open && this.listens && microphone.isWell;
    return html`${listenSwitch(on, microphone.level, !this.open, this.#listen)}
    ${this.#isScale ? clickChoice(click.tempo, !this.#isOpen, this.#onTempo) : nothing}`;
  }

  get #isOpen(): boolean {
    return this.open && (this.way !== 'play' || this.listens);
  }

  get #panel(): Panel {
    const { open, way, may, listens, playing, naming } = this;
    const { microphone, midi } = this.#input;
    const { answer, hint, isDoubtful } = this.draft;
    return {
      open,
      way,
      may,
      listens,
      microphone: microphone.state,
      midi: midi.state,
      tooLoud: microphone.tooLoud,
      answer,
      hint,
      isDoubtful,
      playing,
      names: { key: keyInWords(this.task), naming },
    };
  }

  get #isScale(): boolean {
    return this.playing.as === 'line' && !this.task.startsWith('Find ');
  }

  readonly #listen = (on: boolean): void => {
    this.#input.close(true);
    this.dispatchEvent(new ListenEvent(on));
  };

  readonly #onTempo = (tempo: number): void => {
    void this.#input.click.play(tempo);
    this.requestUpdate();
  };

  #onHeard(event: EarEvent): void {
    const next = afterHeard(this.draft, event, this.playing);
    if (next !== this.draft) this.#take(next, event.kind === 'chord' && event.isFinal && !event.isDoubtful);
  }

  #onClosed(): void {
    const next = newListening(this.draft);
    if (this.draft.hint.length > 0) this.#take(next, false);
    this.draft = next;
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
