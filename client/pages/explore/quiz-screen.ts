import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { isEmpty, noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { explain } from '../../../shared/exercise/explain.ts';
import type { Playing } from '../../../shared/exercise/heard.ts';
import { inputOf, playingOf } from '../../../shared/exercise/input.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { namedText } from '../../../shared/exercise/name-words.ts';
import type { RootAt } from '../../../shared/exercise/proposals.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import '../../components/name-keypad.ts';
import type { NamedEvent } from '../../components/name-keypad.ts';
import type { PlaceToggledEvent } from '../../fretboard/events.ts';
import { tapped } from '../../fretboard/placing.ts';
import { revealedChart } from '../stand/chart.ts';
import { nextTap, tappedFor, tapsAlone } from '../stand/heard-answer.ts';
import { HeardHere } from '../stand/heard-here.ts';
import { heardOnNeck } from '../stand/heard-on-neck.ts';
import '../stand/paper.ts';
import type { ListenEvent, PlayedEvent, SaidEvent, WayEvent } from '../stand/play-events.ts';
import '../stand/playing.ts';
import { roundStyle } from '../stand/round-style.ts';
import { browserHasMidi, waysOffered, type ChosenWay } from '../stand/ways.ts';
import { tapForHeardWords, tapWords } from '../stand/words.ts';
import { ExploringEvent, SettingsEvent } from './events.ts';
import { exploreStyles } from './explore-style.ts';
import { exploreHeader } from './header.ts';
import type { Ideas } from './ideas.ts';
import { questionOf, type Scope } from './question.ts';
import { quizStyle } from './quiz-style.ts';
import type { Seen } from './seen.ts';
import type { Settings } from './settings.ts';
import { countWords } from './words.ts';
import './wood.ts';

const scopes: readonly (readonly [Scope, string])[] = [
  ['this', 'This one'],
  ['any', 'Any root of this kind'],
];

/** From this many letters on a title is set smaller, as on the Stand. */
const longTitle = 14;

/** A quiz with oneself: one question at a time, judged here as a class's answers are. The count is kept in memory only. */
@customElement('explore-quiz')
export class ExploreQuiz extends LitElement {
  static override readonly styles = [...exploreStyles, roundStyle, quizStyle];

  @property({ attribute: false }) settings: Settings | null = null;
  @property({ attribute: false }) at: RootAt | null = null;
  @property({ attribute: false }) ideas: Ideas | null = null;
  @property({ attribute: false }) seen: Seen | undefined;
  @state() private scope: Scope = 'this';
  @state() private exercise: Exercise | null = null;
  @state() private answer: Answer = noAnswer;
  @state() private listens = false;
  @state() private verdict: Verdict | null = null;
  @state() private count = { right: 0, asked: 0 };

  readonly #heard = new HeardHere();

  protected override willUpdate(_changed: PropertyValues<this>): void {
    if (this.exercise === null) this.#ask();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { settings, exercise, verdict } = this;
    if (!settings || !exercise) return nothing;
    return verdict ? this.#answered(settings, exercise, verdict) : this.#question(settings, exercise);
  }

  #question(settings: Settings, exercise: Exercise): TemplateResult {
    const { title, detail } = wordingOf(exercise, settings.naming);
    const { answer } = this;
    const isName = exercise.kind === 'name';
    const playing = playingOf(exercise);
    const english = wordingOf(exercise, 'english').title;
    return html`<div class=${isName ? 'round with-keys' : 'round'}>
      ${exploreHeader(html`${this.#scopeField()}<span class="count">${countWords(this.count)}</span>`)}
      <div class="task">
        <h1 tabindex="-1" class=${title.length > longTitle && !isName ? 'long' : ''}>${title}</h1>
        <p class="soft">${detail}</p>
      </div>
      <explore-wood
        .instrument=${settings.instrument}
        .places=${answer.places}
        .heard=${playing ? heardOnNeck(settings.instrument, answer, this.#heard.hint, playing, english) : []}
        .asked=${isName ? exercise.place : null}
        .range=${isName ? exercise.range : null}
        .leftHanded=${settings.leftHanded}
        @place-toggled=${this.#onPlace}
      ></explore-wood>
      ${
        isName
          ? html`<rootcall-name-keypad
              .wanted=${exercise.wanted}
              .naming=${settings.naming}
              .named=${answer.named}
              @named=${this.#onNamed}
            ></rootcall-name-keypad>`
          : nothing
      }
      ${playing ? this.#panel(settings, playing, english) : nothing}
      <div class="bar">
        <button type="button" @click=${this.#onBack}>Back</button>
        <button type="button" ?disabled=${isEmpty(answer)} @click=${this.#onAgain}>
          ${answer.heard ? 'Again' : 'Clear'}
        </button>
        <button type="button" class="primary" ?disabled=${isEmpty(answer)} @click=${this.#onLook}>
          Look at it
        </button>
      </div>
    </div>`;
  }

  #panel(settings: Settings, playing: Playing, task: string): TemplateResult {
    const ways = waysOf(playing);
    return html`<div class="keys">
      <stand-playing
        .ways=${ways}
        .way=${wayIn(settings, playing)}
        may="on"
        .playing=${playing}
        .instrument=${settings.instrument}
        .answer=${this.answer}
        .task=${task}
        .naming=${settings.naming}
        .open=${true}
        .listens=${this.listens}
        @stand-way=${({ way }: WayEvent) => this.dispatchEvent(new SettingsEvent({ way }))}
        @stand-listen=${({ on }: ListenEvent) => (this.listens = on)}
        @stand-said=${({ words }: SaidEvent) => this.#say(words)}
        @stand-played=${this.#onPlayed}
      ></stand-playing>
    </div>`;
  }

  #scopeField(): TemplateResult {
    return html`<select aria-label="What is asked" @change=${this.#onScope}>
      ${scopes.map(
        ([scope, words]) => html`<option value=${scope} .selected=${scope === this.scope}>${words}</option>`,
      )}
    </select>`;
  }

  #answered(settings: Settings, exercise: Exercise, verdict: Verdict): TemplateResult {
    const { instrument, naming, leftHanded } = settings;
    const { answer } = this;
    const { heading, text, tryThis } = explain(exercise, answer, verdict, naming);
    const { title, detail } = wordingOf(exercise, naming);
    const reveal = { exercise, notes: answerKey(exercise) };
    return html`<div class="answered">
      <stand-paper
        group="The neck"
        .student=${countWords(this.count)}
        .above=${`${title}. ${detail}`}
        .heading=${heading}
        .words=${text}
        .tryThis=${tryThis}
        .right=${verdict.kind === 'right'}
        .chart=${revealedChart(instrument, reveal, answer, verdict, naming)}
        .instrument=${instrument}
        .leftHanded=${leftHanded}
      ></stand-paper>
      <div class="bar">
        <button type="button" @click=${this.#onBack}>Back</button>
        <button type="button" class="primary" @click=${this.#onNext}>Next</button>
      </div>
    </div>`;
  }

  #ask(): void {
    const { at, ideas, seen, scope, exercise } = this;
    if (!at || !ideas) return;
    this.exercise = questionOf(at, ideas, seen, scope, exercise, Math.random) ?? null;
    this.answer = noAnswer;
    this.#heard.forget();
    this.verdict = null;
  }

  #say(words: string): void {
    this.dispatchEvent(new ExploringEvent({}, words));
  }

  readonly #onScope = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    this.scope = event.target.value === 'any' ? 'any' : 'this';
    this.#ask();
    this.#sayQuestion();
  };

  #sayQuestion(): void {
    if (!this.exercise || !this.settings) return;
    const { title, detail } = wordingOf(this.exercise, this.settings.naming);
    this.#say(`${title}. ${detail}`);
  }

  readonly #onPlace = ({ place }: PlaceToggledEvent): void => {
    const { exercise, answer, settings } = this;
    const input = exercise ? inputOf(exercise) : null;
    if (!exercise || !settings || input?.kind !== 'places') return;
    const { playing } = input;
    if (answer.heard && playing && wayIn(settings, playing) !== 'tap') {
      this.answer = tappedFor(answer, place, playing);
      this.#say(tapForHeardWords(answer, this.answer, place, playing));
      this.#lookIfDone(playing, playing.as === 'chord');
      return;
    }
    const before = tapsAlone(answer);
    this.answer = tapped(before, place, input);
    this.#say(tapWords(before, this.answer, place, input));
  };

  readonly #onPlayed = (event: PlayedEvent): void => {
    const { exercise, answer } = this;
    const playing = exercise ? playingOf(exercise) : null;
    this.answer = this.#heard.take(event, answer);
    this.requestUpdate();
    if (playing && this.answer !== answer) this.#lookIfDone(playing, event.isFinal);
  };

  /** A chord is judged once it is heard whole, a line as soon as it is right, both with the taps that they need. */
  #lookIfDone(playing: Playing, isFinal: boolean): void {
    const { exercise, answer } = this;
    if (!exercise || nextTap(answer, playing)) return;
    if (isFinal || judge(exercise, answer).kind === 'right') this.#onLook();
  }

  /** Takes back what was heard, and what was placed before is there again; else clears. */
  readonly #onAgain = (): void => {
    this.answer = this.answer.heard ? this.#heard.again(this.answer) : noAnswer;
  };

  readonly #onNamed = ({ named }: NamedEvent): void => {
    const { exercise, settings } = this;
    if (exercise?.kind !== 'name' || !settings) return;
    this.answer = { places: [], named };
    this.#say(`${namedText(named, exercise.wanted, settings.naming)}.`);
  };

  readonly #onLook = (): void => {
    const { exercise, answer, settings } = this;
    if (!exercise || !settings || isEmpty(answer)) return;
    const verdict = judge(exercise, answer);
    const right = this.count.right + (verdict.kind === 'right' ? 1 : 0);
    this.verdict = verdict;
    this.count = { right, asked: this.count.asked + 1 };
    const { heading, text, tryThis } = explain(exercise, answer, verdict, settings.naming);
    this.#say([`${heading}.`, text, tryThis, `${countWords(this.count)}.`].filter(Boolean).join(' '));
    void this.#focusOn('.primary');
  };

  readonly #onNext = (): void => {
    this.#ask();
    this.#sayQuestion();
    void this.#focusOn('h1');
  };

  readonly #onBack = (): void => {
    this.dispatchEvent(new ExploringEvent({ stage: 'see' }));
  };

  /** The button that was pressed is gone: the keyboard goes on from what stands in its place. */
  async #focusOn(selector: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus({ preventScroll: true });
  }
}

function waysOf(playing: Playing): readonly ChosenWay[] {
  return waysOffered(playing, 'on', false, browserHasMidi());
}

/** The way that is chosen, as far as this browser has it. */
function wayIn({ way }: Settings, playing: Playing): ChosenWay {
  return waysOf(playing).includes(way) ? way : 'tap';
}

declare global {
  interface HTMLElementTagNameMap {
    'explore-quiz': ExploreQuiz;
  }
}
