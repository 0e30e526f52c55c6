import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { answerOf, isEmpty, noAnswer, type Answer } from '../../../../shared/exercise/answer.ts';
import type { Exercise, Finger } from '../../../../shared/exercise/exercise.ts';
import { atLevel, levelName, levelOf, levelsUpTo, type Level } from '../../../../shared/exercise/levels.ts';
import { inputOf } from '../../../../shared/exercise/input.ts';
import { placeText } from '../../../../shared/exercise/phrases.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { StudentId } from '../../../../shared/protocol/ids.ts';
import { distinct } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { NamedEvent } from '../../../components/name-keypad.ts';
import '../../../components/name-keypad.ts';
import type { PlaceToggledEvent, RootMarkedEvent } from '../../../fretboard/events.ts';
import { rootMarked, takenBack, tapped, type PlacesInput } from '../../../fretboard/placing.ts';
import { deskStyles } from '../desk-styles.ts';
import { choiceField, segments } from '../maker/choice-field.ts';
import { circleStyles, segmentStyles } from '../maker/maker-styles.ts';
import { fingers } from '../maker/words.ts';
import '../tap-neck.ts';
import { CommandEvent } from './events.ts';
import { enteredFrom } from './played.ts';

/** The dialog has done its work, or was left. */
export class EnteredEvent extends Event {
  static readonly kind = 'desk-entered';
  constructor() {
    super(EnteredEvent.kind);
  }
}

/** The teacher enters what a student without a device shows on the neck, or says. */
@customElement('desk-enter-answer')
export class DeskEnterAnswer extends LitElement {
  static override styles = [
    deskStyles,
    circleStyles,
    segmentStyles,
    css`
      .extras {
        align-items: end;
        display: grid;
        gap: var(--space-3);
        grid-template-columns: repeat(auto-fit, minmax(12rem, 1fr));
      }
      .finger {
        display: grid;
        gap: var(--space-1);
      }
      .label {
        font-weight: 600;
      }
    `,
  ];

  /** The exercise at each level that it is asked at. */
  @property({ attribute: false }) levels: readonly Exercise[] = [];
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @property({ attribute: false }) studentId: StudentId | null = null;
  @property() shownName = '';
  /** What the student has given so far. */
  @property({ attribute: false }) from: Answer = noAnswer;
  @state() private answer: Answer = noAnswer;
  @query('dialog') private dialog?: HTMLDialogElement;

  override connectedCallback() {
    super.connectedCallback();
    this.answer = enteredFrom(answerOf(this.from));
  }

  override firstUpdated() {
    this.dialog?.showModal();
  }

  override render() {
    const { levels } = this;
    const level = levelOf(this.answer);
    const exercise = levels[level - 1];
    if (!exercise) return nothing;
    const { title, detail } = wordingOf(exercise, this.naming);
    const input = inputOf(exercise);
    return html`<dialog aria-labelledby="entering" @close=${() => this.dispatchEvent(new EnteredEvent())}>
      <div class="stack">
        <div>
          <h2 id="entering"><bdi>${this.shownName}</bdi>: ${title}</h2>
          <p class="soft">${detail}</p>
        </div>
        ${levels.length > 1 ? this.levelChoice(level) : nothing}
        ${
          input.kind === 'name'
            ? html`<rootcall-name-keypad
                .wanted=${input.wanted}
                .naming=${this.naming}
                .named=${this.answer.named}
                @named=${({ named }: NamedEvent) => (this.answer = atLevel({ places: [], named }, level))}
              ></rootcall-name-keypad>`
            : this.places(exercise, input)
        }
        <div class="row">
          <button class="primary" aria-disabled=${isEmpty(this.answer)} @click=${this.enter}>
            Enter this answer
          </button>
          <button @click=${() => (this.answer = atLevel(noAnswer, level))}>Clear</button>
          <button @click=${() => this.dialog?.close()}>Leave it</button>
        </div>
      </div>
    </dialog>`;
  }

  /** Another level is another question: it starts with nothing. */
  private levelChoice(level: Level) {
    const choices = levelsUpTo(this.levels.length).map((one) => [String(one), levelName(one)] as const);
    return segments('Level', 'level', choices, String(level), (chosen) => {
      this.answer = atLevel(noAnswer, Number(chosen) as Level);
    });
  }

  private places(exercise: Exercise, input: PlacesInput) {
    const { answer } = this;
    return html`<desk-tap-neck
        .instrument=${exercise.instrument}
        .places=${answer.places}
        .ordered=${input.ordered}
        .root=${answer.root ?? null}
        @place-toggled=${({ place }: PlaceToggledEvent) => (this.answer = tapped(answer, place, input))}
        @taken-back=${() => (this.answer = takenBack(answer))}
        @root-marked=${({ place }: RootMarkedEvent) => {
          if (input.marksRoot) this.answer = rootMarked(answer, place);
        }}
      >
        ${
          input.ordered
            ? html`<button
                aria-disabled=${answer.places.length === 0}
                @click=${() => (this.answer = takenBack(answer))}
              >
                Take back the last
              </button>`
            : nothing
        }
      </desk-tap-neck>
      ${
        input.marksRoot || input.asksFinger
          ? html`<div class="extras">
              ${input.marksRoot ? this.rootChoice() : nothing}
              ${input.asksFinger ? this.fingerChoice() : nothing}
            </div>`
          : nothing
      }`;
  }

  private rootChoice() {
    const { places, root } = this.answer;
    const spots = distinct(places);
    return choiceField(
      'Marked as the root',
      { choices: [['', 'none yet'], ...spots.map((spot) => [placeText(spot), placeText(spot)] as const)] },
      root ? placeText(root) : '',
      (text) => {
        const { root: _, ...rest } = this.answer;
        const chosen = spots.find((spot) => placeText(spot) === text);
        this.answer = chosen ? { ...rest, root: chosen } : rest;
      },
    );
  }

  private fingerChoice() {
    return html`<div class="finger">
      <span class="label">Finger on the root</span>
      ${segments(
        'Finger on the root',
        'finger',
        fingers.map((finger) => [String(finger), String(finger)]),
        String(this.answer.finger ?? ''),
        (finger) => (this.answer = { ...this.answer, finger: Number(finger) as Finger }),
      )}
    </div>`;
  }

  private enter() {
    const { studentId, answer } = this;
    if (isEmpty(answer) || !studentId) return;
    this.dispatchEvent(new CommandEvent({ kind: 'enter', studentId, ...answer, places: [...answer.places] }));
    this.dialog?.close();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-enter-answer': DeskEnterAnswer;
  }
}
