import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { noAnswer } from '../../../../shared/exercise/answer.ts';
import { patternText } from '../../../../shared/exercise/pattern.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { exerciseFor, levelName, levelOf, levelsOf } from '../../../../shared/exercise/levels.ts';
import { separatingExercise } from '../../../../shared/exercise/likely.ts';
import type { UnclearVerdict } from '../../../../shared/exercise/verdict.ts';
import { instrumentById, standardGuitar } from '../../../../shared/theory/fretboard.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type {
  DeskAnswerView,
  DeskRoundView,
  DeskStudentView,
  DeskView,
} from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { moreTimeWords } from '../more-time.ts';
import '../charts.ts';
import './enter-answer.ts';
import { answerSentences, neckOf, verdictText } from './answer-text.ts';
import { CommandEvent, PanelEvent } from './events.ts';
import { countedAnswer } from './figures.ts';
import { asDrawn } from './played.ts';
import { currentRound } from './steps.ts';

type MoreTime = 1 | 1.25 | 1.5 | 2 | 3;

/** What the teacher can do for one student: look, accept, count, enter, give time or a team, remove. */
@customElement('desk-student-detail')
export class DeskStudentDetail extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
        padding: 0 0 var(--space-3);
      }
      .two {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: 1fr 1fr;
      }
      button {
        font-size: var(--text-small);
        min-height: 34px;
        padding: 2px var(--space-2);
      }
      label {
        font-size: var(--text-small);
      }
      @media (pointer: coarse) {
        button {
          min-height: 44px;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ attribute: false }) student: DeskStudentView | null = null;
  /** The name as it may be shown now. */
  @property() shownName = '';
  @property({ type: Boolean }) hiding = false;
  @state() private seeing = false;
  @state() private entering = false;
  @state() private removing = false;

  override render() {
    const { view, student } = this;
    if (!view || !student) return nothing;
    const round = currentRound(view);
    const answer = countedAnswer(student);
    const shown = answer ?? student.late;
    const covered = this.hiding && round?.phase !== 'revealed';
    const exercise = round && exerciseFor(round, shown ?? noAnswer);
    const neck = instrumentById(view.instrument) ?? standardGuitar;
    return html`
      ${student.pattern && !covered ? html`<p class="small">${patternText(student.pattern, 'student', neck)}</p>` : nothing}
      ${
        exercise && shown && !covered && shown.verdict.kind === 'unclear'
          ? this.unclear(exercise, shown.verdict)
          : nothing
      }
      ${round && shown ? this.judged(round.id, student, answer) : nothing}
      ${this.seeing && round && shown ? this.seen(view, round, shown, covered) : nothing}
      ${view.closed ? nothing : this.settings(view, student)}
      ${
        this.entering && round
          ? html`<desk-enter-answer
              .levels=${levelsOf(round)}
              .naming=${view.naming}
              .shownName=${this.shownName}
              .from=${student.answer ?? noAnswer}
              .studentId=${student.id}
              @desk-entered=${() => (this.entering = false)}
            ></desk-enter-answer>`
          : nothing
      }
    `;
  }

  /** What was given, on the neck and in words. */
  private seen(view: DeskView, round: DeskRoundView, answer: DeskAnswerView, covered: boolean) {
    const exercise = exerciseFor(round, answer);
    const drawn = asDrawn(exercise, answer);
    const said = answerSentences(exercise, answer, view.naming);
    return html`${
        round.harder.length === 0
          ? nothing
          : html`<p class="small">
              <b>${levelName(levelOf(answer))} level:</b> ${wordingOf(exercise, view.naming).title}
            </p>`
      }
      ${
        exercise.kind === 'name' || drawn.heard
          ? nothing
          : html`<desk-answer-chart
              .exercise=${exercise}
              .answer=${drawn}
              .withKey=${!covered}
            ></desk-answer-chart>`
      }
      <p class="small">
        ${said.join(' ')}
        ${covered || answer.verdict.kind === 'unclear' ? nothing : verdictText(answer.verdict, neckOf(exercise))}
      </p>`;
  }

  private unclear(exercise: Exercise, verdict: UnclearVerdict) {
    const question = separatingExercise(exercise, verdict.causes);
    return html`<p class="small">${verdictText(verdict, neckOf(exercise))}</p>
      ${
        question
          ? html`<button @click=${() => this.dispatchEvent(new PanelEvent('make', question))}>
              Ask the question that separates them
            </button>`
          : nothing
      }`;
  }

  private judged(roundId: CommandRound, student: DeskStudentView, answer: DeskAnswerView | null) {
    const { late } = student;
    const shown = answer ?? late;
    return html`<div class="two">
      <button aria-expanded=${this.seeing} @click=${() => (this.seeing = !this.seeing)}>See answer</button>
      ${
        shown && (shown.accepted || shown.verdict.kind !== 'right')
          ? html`<button
              @click=${() =>
                this.send({ kind: 'accept', roundId, studentId: student.id, accepted: !shown.accepted })}
            >
              ${shown.accepted ? 'Not accepted' : 'Accept it'}
            </button>`
          : nothing
      }
      ${
        late
          ? html`<button
              @click=${() =>
                this.send({ kind: 'count-late', roundId, studentId: student.id, counted: !late.counted })}
            >
              ${late.counted ? 'Don’t count it' : 'Count it'}
            </button>`
          : nothing
      }
    </div>`;
  }

  private settings(view: DeskView, student: DeskStudentView) {
    return html`
      ${
        view.stage === 'round'
          ? html`<button @click=${() => (this.entering = true)}>Enter an answer</button>`
          : nothing
      }
      ${this.hiding ? nothing : this.nameField(student)}
      <div class="two">
        <label
          >Time
          <select
            @change=${(event: Event) => {
              const moreTime = Number(textOf(event)) as MoreTime;
              this.send({ kind: 'set-student', studentId: student.id, moreTime });
            }}
          >
            ${moreTimeWords.map(
              ([factor, words]) =>
                html`<option value=${factor} ?selected=${factor === student.moreTime}>${words}</option>`,
            )}
          </select></label
        >
        <label
          >Team
          <input
            maxlength="20"
            .value=${student.team ?? ''}
            @change=${(event: Event) => {
              const team = textOf(event).trim();
              this.send({ kind: 'set-student', studentId: student.id, team: team === '' ? null : team });
            }}
          />
        </label>
      </div>
      ${
        student.presence === 'absent'
          ? nothing
          : this.removing
            ? html`<div class="two">
                <button @click=${() => this.removeDevice(student)}>Remove the device</button>
                <button @click=${() => (this.removing = false)}>Keep it</button>
              </div>`
            : html`<button @click=${() => (this.removing = true)}>Remove from this class</button>`
      }
    `;
  }

  private nameField({ id, name }: DeskStudentView) {
    return html`<label
      >Name
      <input
        maxlength="40"
        dir="auto"
        .value=${live(name)}
        @change=${(event: Event) => {
          const text = textOf(event).trim();
          if (text !== '') this.send({ kind: 'set-student', studentId: id, name: text });
          this.requestUpdate();
        }}
      />
    </label>`;
  }

  private removeDevice(student: DeskStudentView) {
    this.removing = false;
    this.send({ kind: 'remove', studentId: student.id });
  }

  private send(command: CommandEvent['command']) {
    this.dispatchEvent(new CommandEvent(command));
  }
}

type CommandRound = Extract<CommandEvent['command'], { kind: 'accept' }>['roundId'];

function textOf(event: Event): string {
  const { target } = event;
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-student-detail': DeskStudentDetail;
  }
}
