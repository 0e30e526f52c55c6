import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { Finger } from '../../../shared/exercise/exercise.ts';
import type { Playing } from '../../../shared/exercise/heard.ts';
import type { Level } from '../../../shared/exercise/levels.ts';
import { namedText } from '../../../shared/exercise/name-words.ts';
import type { StandStage, TaskView } from '../../../shared/protocol/views.ts';
import { instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import type { NamedEvent } from '../../components/name-keypad.ts';
import '../../components/name-keypad.ts';
import type { PlaceToggledEvent, RootMarkedEvent, WindowsFittedEvent } from '../../fretboard/events.ts';
import '../../fretboard/neck.ts';
import type { PlacesInput } from '../../fretboard/placing.ts';
import { roundBar } from './bar.ts';
import { AnswerEvent, LevelEvent } from './events.ts';
import { extrasRow } from './extras.ts';
import { afterFinger, afterRootMark, afterTakingBack, afterTap, type Given } from './given.ts';
import { HeardHere } from './heard-here.ts';
import { levelRow } from './levels.ts';
import { standHeader } from './header.ts';
import { WayEvent, type PlayedEvent } from './play-events.ts';
import { landscape, MediaQuery } from '../../lib/media-query.ts';
import { NeckWindow } from './neck-window.ts';
import { PlayParts } from './play-parts.ts';
import { roundStyle } from './round-style.ts';
import { standStyles } from './stand-style.ts';
import { wayChoice } from './way-choice.ts';
import { browserHasMidi, waysOffered, type ChosenWay, type MayPlay } from './ways.ts';
import { openWords, timeWords, type Standing } from './words.ts';

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
  @property({ attribute: false }) answer: Answer = noAnswer;
  /** The level that `stage` asks, and the one whose answer counts while nothing is placed here. */
  @property({ attribute: false }) level: Level = 1;
  @property({ attribute: false }) counting: Level | null = null;
  @property() naming: NoteNaming = 'english';
  @property({ type: Boolean }) done = false;
  @property({ type: Boolean }) timeUp = false;
  @property() standing: Standing = 'nothing';
  @property({ type: Boolean }) leftHanded = false;

  /** How the student likes to answer, and whether this Stand may listen, and does; whether MIDI is wanted here. */
  @property() way: ChosenWay = 'tap';
  @property() may: MayPlay = 'off';
  @property({ type: Boolean }) listens = false;
  @property({ type: Boolean }) wantsMidi = false;

  /** A tap marks the root instead of placing. */
  @state() private marking = false;
  /** Done was pressed while something that is asked for was open; nothing has changed since. */
  @state() private reminded = false;
  readonly #heard = new HeardHere();
  readonly #playParts = new PlayParts(this);
  readonly #neckWindow = new NeckWindow(this);
  readonly #landscape = new MediaQuery(this, landscape);

  protected override willUpdate(changed: PropertyValues<this>): void {
    const isNew = changed.has('stage') && changed.get('stage')?.roundId !== this.stage?.roundId;
    if (isNew || changed.has('level')) {
      this.#neckWindow.forget();
      this.marking = false;
      this.reminded = false;
      this.#heard.forget();
    }
    if (this.#hasPanel) void this.#playParts.want();
    if (changed.has('answer') && this.answer.places.length === 0) this.marking = false;
  }

  /** What is asked for, where it is places. */
  get #input(): PlacesInput | null {
    const { input } = this.stage?.task ?? {};
    return input?.kind === 'places' ? input : null;
  }

  get #playing(): Playing | null {
    return this.#input?.playing ?? null;
  }

  get #ways(): readonly ChosenWay[] {
    return waysOffered(this.#playing, this.may, this.wantsMidi, browserHasMidi());
  }

  /** The way that is chosen, as far as it is open here. */
  get #way(): ChosenWay {
    return this.#ways.includes(this.way) ? this.way : 'tap';
  }

  /** Taps alone need no more room. */
  get #hasPanel(): boolean {
    const { answer, may } = this;
    const isTold = may === 'wait' || may === 'turn' || answer.heard !== undefined;
    return this.#playing !== null && (this.#way !== 'tap' || isTold);
  }

  get #closed(): boolean {
    return this.stage?.kind === 'held' || this.timeUp;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { stage } = this;
    if (!stage) return nothing;
    const { task } = stage;
    const { title, detail } = task.wording[this.naming];
    const name = task.input.kind === 'name';
    const levels = stage.harder.length + 1;
    const ways = this.#ways;
    const looks = {
      round: true,
      'with-keys': name,
      'with-levels': levels > 1,
      'with-ways': ways.length > 1,
    };
    return html`<div class=${classMap(looks)}>
      ${standHeader(this.group, this.student)}
      ${wayChoice(ways, this.#way, this.#closed, (way) => this.dispatchEvent(new WayEvent(way)))}
      ${levelRow(this.level, levels, this.#closed, (level) => this.dispatchEvent(new LevelEvent(level)))}
      <div class="task">
        <h1 class=${title.length > longTitle && !name ? 'long' : ''}>${title}</h1>
        <p class="soft">
          ${detail}
          ${stage.seconds === null ? nothing : html`<span class="time">${timeWords(stage.seconds)}</span>`}
        </p>
      </div>
      ${name ? nothing : this.#neckWindow.button(task)} ${this.#neck(task)} ${this.#keys(task)}
      <div class="bar">${this.#bar(stage)}</div>
    </div>`;
  }

  #neck(task: TaskView): TemplateResult {
    const { input, instrument } = task;
    return html`<rootcall-neck
      material="wood"
      label="Neck"
      .instrument=${instrumentById(instrument) ?? standardGuitar}
      .view=${this.#landscape.now ? 'lying' : 'upright'}
      .leftHanded=${this.leftHanded}
      .window=${this.#neckWindow.shown(task)}
      .places=${this.answer.places}
      .heard=${this.#playParts.marks(task, this.answer, this.#heard)}
      .ordered=${input.kind === 'places' && input.ordered && !this.answer.heard}
      .marksRoot=${input.kind === 'places' && input.marksRoot && !this.answer.heard}
      .root=${this.answer.root ?? null}
      .asked=${input.kind === 'name' ? input.place : null}
      .sent=${this.standing === 'safe' || this.standing === 'late'}
      .disabled=${this.#closed || this.done}
      @place-toggled=${this.#onToggled}
      @root-marked=${this.#onRootMarked}
      @taken-back=${this.#onTakenBack}
      @windows-fitted=${this.#onFitted}
    ></rootcall-neck>`;
  }

  /** What is given besides places, or instead of them. */
  #keys(task: TaskView): TemplateResult | typeof nothing {
    const { input } = task;
    const disabled = this.#closed || this.done;
    if (input.kind === 'name')
      return html`<rootcall-name-keypad
        .wanted=${input.wanted}
        .naming=${this.naming}
        .named=${this.answer.named}
        .disabled=${disabled}
        @named=${this.#onNamed}
      ></rootcall-name-keypad>`;
    const { answer } = this;
    const extras = extrasRow({
      // Where one plays, the root is tapped after it.
      input: answer.heard || this.#way === 'play' ? { ...input, marksRoot: false } : input,
      answer,
      marking: this.marking,
      disabled,
      onMark: () => (this.marking = !this.marking),
      onFinger: this.#onFinger,
    });
    const panel = this.#hasPanel ? this.#panel(task, !disabled) : nothing;
    return extras === nothing && panel === nothing
      ? nothing
      : html`<div class="keys">${extras}${panel}</div>`;
  }

  #panel({ wording, instrument }: TaskView, open: boolean): TemplateResult {
    return html`<stand-playing
      .way=${this.#way}
      .may=${this.may}
      .playing=${this.#playing}
      .instrument=${instrumentById(instrument) ?? standardGuitar}
      .answer=${this.answer}
      .task=${wording.english.title}
      .naming=${this.naming}
      .open=${open}
      .listens=${this.listens}
      @stand-played=${this.#onPlayed}
    ></stand-playing>`;
  }

  #bar({ kind, task }: RoundStage): TemplateResult {
    const { answer, standing, counting, done, marking, reminded } = this;
    const closed = kind === 'held' ? 'held' : this.timeUp ? 'time-up' : null;
    return roundBar({
      input: task.input,
      answer,
      playing: this.#way !== 'tap',
      standing,
      counting,
      state: closed ?? (done ? 'done' : reminded ? 'reminded' : marking ? 'marking' : 'open'),
      onClear: this.#onClear,
      onAgain: this.#onAgain,
      onTakeBack: this.#onTakenBack,
      onDone: this.#onDone,
      onChange: this.#onChange,
    });
  }

  readonly #onFitted = (event: WindowsFittedEvent): void => {
    this.#neckWindow.fit(event.windows);
  };

  /** What is given has changed. */
  #give({ answer, words }: Given): void {
    this.reminded = false;
    this.dispatchEvent(new AnswerEvent(answer, false, words));
  }

  readonly #onToggled = ({ place }: PlaceToggledEvent): void => {
    const input = this.#input;
    if (!input) return;
    const { answer, marking } = this;
    this.#give(marking ? afterRootMark(answer, place) : afterTap(answer, place, input, this.#way));
  };

  readonly #onPlayed = (event: PlayedEvent): void => {
    const { answer } = this;
    // At once: the next note may come before this page is drawn again.
    this.answer = this.#heard.take(event, answer);
    this.requestUpdate();
    if (this.answer === answer) return;
    this.marking = false;
    this.#give({ answer: this.answer, words: '' });
  };

  readonly #onAgain = (): void => {
    this.#give({ answer: this.#heard.again(this.answer), words: 'What was heard is taken back.' });
  };

  readonly #onRootMarked = ({ place }: RootMarkedEvent): void => {
    this.#give(afterRootMark(this.answer, place));
  };

  readonly #onTakenBack = (): void => {
    const given = this.#input && afterTakingBack(this.answer, this.#input);
    if (given) this.#give(given);
  };

  readonly #onFinger = (finger: Finger): void => {
    this.#give(afterFinger(this.answer, finger));
  };

  readonly #onNamed = ({ named }: NamedEvent): void => {
    const input = this.stage?.task.input;
    if (input?.kind !== 'name') return;
    const words = `${namedText(named, input.wanted, this.naming)}.`;
    this.#give({ answer: { places: [], named }, words });
  };

  readonly #onClear = (): void => {
    this.marking = false;
    this.#give({ answer: noAnswer, words: 'Cleared.' });
  };

  readonly #onDone = (): void => {
    const { task } = this.stage ?? {};
    const open = task ? openWords(task.input, this.answer) : '';
    this.marking = false;
    if (open !== '' && !this.reminded) {
      this.reminded = true;
      this.dispatchEvent(new AnswerEvent(this.answer, false, `Still open: ${open}.`));
      void this.#focusOn('.primary');
      return;
    }
    this.reminded = false;
    this.dispatchEvent(new AnswerEvent(this.answer, true, 'Done. Yours to change until the hold.'));
    void this.#focusOn('.change');
  };

  readonly #onChange = (): void => {
    this.dispatchEvent(new AnswerEvent(this.answer, false, 'Yours to change.'));
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
