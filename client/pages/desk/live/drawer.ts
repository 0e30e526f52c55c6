import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { isEmpty, noAnswer } from '../../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { exerciseFor, levelName, levelOf } from '../../../../shared/exercise/levels.ts';
import type { DeskRoundView, DeskStudentView, DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { neckOf, verdictNote } from './answer-text.ts';
import { CommandEvent, PanelEvent } from './events.ts';
import { countedAnswer, inOrder, type Standing } from './figures.ts';
import { usualKeys, type KeySettings } from './keys.ts';
import { shownName } from './shown-name.ts';
import { currentRound } from './steps.ts';
import { standingSign } from './standing-sign.ts';
import './student-detail.ts';
import { goesByTurns } from './turns.ts';
import { waySign } from './way-sign.ts';
import { cameBy, tellsWays } from './ways.ts';

/** The register beside the live class: who slipped first, and what can be done for each. */
@customElement('desk-drawer')
export class DeskDrawer extends LitElement {
  static override styles = [
    deskStyles,
    css`
      .head {
        align-items: center;
        display: flex;
        justify-content: space-between;
      }
      .head button {
        font-weight: 400;
        min-height: 36px;
      }
      li {
        align-items: start;
        border-bottom: 1px solid var(--line);
        column-gap: var(--space-2);
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
      }
      desk-student-detail {
        grid-column: 1 / -1;
      }
      .turn {
        font-size: var(--text-small);
        margin-block: 2px;
        min-height: 29px;
        min-width: 3.4rem;
        padding: 0 var(--space-2);
      }
      .turn.has {
        background: var(--brass-wash);
        border-color: var(--ink);
        font-weight: 600;
      }
      .student {
        background: none;
        border: 0;
        border-radius: 4px;
        display: grid;
        font-weight: 400;
        gap: var(--space-2);
        /* The way, where it is told, has a column of its own. */
        grid-auto-flow: column;
        grid-template-columns: 1.5rem minmax(0, 1fr);
        justify-content: normal;
        min-height: 33px;
        padding: 4px 0;
        text-align: left;
        width: 100%;
      }
      .student[aria-expanded='true'] {
        font-weight: 600;
      }
      /* Where both are too long for one line, the note goes below the name. */
      .told {
        align-items: baseline;
        column-gap: var(--space-2);
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        overflow-wrap: anywhere;
      }
      .student .soft {
        font-size: var(--text-small);
      }
      .standing svg {
        display: block;
        height: 1.25rem;
        width: 1.25rem;
      }
      .way {
        color: var(--soft);
        font-size: var(--text-small);
      }
      .way svg {
        display: block;
      }
      .right {
        color: var(--felt);
      }
      .slip {
        color: var(--rose);
      }
      @media (max-width: 60rem) {
        kbd {
          display: none;
        }
      }
      @media (pointer: coarse) {
        .student,
        .turn {
          min-height: 44px;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ type: Boolean }) hiding = false;
  @property({ attribute: false }) keys: KeySettings = usualKeys;
  @state() private openId: string | null = null;

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const round = currentRound(view);
    const rows = inOrder(view.students, round?.phase === 'open');
    return html`
      <div class="head">
        <h2 tabindex="-1">Students</h2>
        <button class="plain" @click=${() => this.dispatchEvent(new PanelEvent('students'))}>
          Close
          ${this.keys.letters ? html`<kbd aria-hidden="true">${this.keys.letterOf.students.toUpperCase()}</kbd>` : nothing}
        </button>
      </div>
      ${rows.length === 0 ? html`<p class="soft">Nobody is on the register yet.</p>` : nothing}
      <ul>
        ${repeat(
          rows,
          ({ student }) => student.id,
          ({ student, standing }) => this.row(view, student, round ? standing : presenceOnly(student)),
        )}
      </ul>
    `;
  }

  private row(view: DeskView, student: DeskStudentView, standing: Standing) {
    const open = this.openId === student.id;
    const name = shownName(view, student, this.hiding);
    const answer = currentRound(view) ? (countedAnswer(student) ?? student.late) : null;
    const covered = this.hiding && currentRound(view)?.phase !== 'revealed';
    return html`<li>
      <button class="student" aria-expanded=${open} @click=${() => this.turn(student.id)}>
        ${standingSign(standing)}
        <span class="told">
          <span dir="auto">${name}</span>
          <span class="soft">${noteOf(student, standing, currentRound(view), covered)}</span>
        </span>
        ${answer && !isEmpty(answer) && tellsWays(view) ? waySign(cameBy(answer)) : nothing}
      </button>
      ${this.turnButton(view, student, name)}
      ${
        open
          ? html`<desk-student-detail
              .view=${view}
              .student=${student}
              .shownName=${name}
              .hiding=${this.hiding}
            ></desk-student-detail>`
          : nothing
      }
    </li>`;
  }

  /** What opens below a student's row is brought into sight. */
  private async turn(id: DeskStudentView['id']) {
    this.openId = this.openId === id ? null : id;
    if (this.openId === null) return;
    await this.updateComplete;
    const detail = this.renderRoot.querySelector('desk-student-detail');
    await detail?.updateComplete;
    detail?.closest('li')?.scrollIntoView({ block: 'nearest' });
  }

  private turnButton(view: DeskView, { id, presence }: DeskStudentView, name: string) {
    const has = view.turn === id;
    if (!goesByTurns(view) || (presence !== 'here' && !has)) return nothing;
    const word = has ? 'Plays' : 'Turn';
    return html`<button
      class=${has ? 'turn has' : 'turn'}
      aria-label=${`${word}: ${name}`}
      title=${has ? 'Takes the turn back' : 'Gives the turn'}
      @click=${() => this.dispatchEvent(new CommandEvent({ kind: 'give-turn', studentId: has ? null : id }))}
    >
      ${word}
    </button>`;
  }
}

/** Between rounds only presence counts. */
function presenceOnly(student: DeskStudentView): Standing {
  return student.presence;
}

/** Which level was answered, and what came of it. */
function noteOf(
  student: DeskStudentView,
  standing: Standing,
  round: DeskRoundView | null,
  covered: boolean,
): string {
  const answer = countedAnswer(student) ?? student.late;
  // Where the answer key is hidden, the name of a slip would give it away.
  const note = standingNote(
    student,
    standing,
    round && !covered ? exerciseFor(round, answer ?? noAnswer) : null,
  );
  const level =
    round && round.harder.length > 0 && answer && !isEmpty(answer) ? levelName(levelOf(answer)) : '';
  return [level, note].filter(Boolean).join(': ');
}

function standingNote(student: DeskStudentView, standing: Standing, exercise: Exercise | null): string {
  const answer = countedAnswer(student);
  const notDone = answer && !answer.done ? ', not done' : '';
  const late = student.late ? (student.late.counted ? ', late' : ', late one kept') : '';
  switch (standing) {
    case 'slip':
    case 'unclear':
      return (answer && exercise ? verdictNote(answer.verdict, neckOf(exercise)) : 'slip') + notDone + late;
    case 'right': {
      const inverted = answer && exercise ? verdictNote(answer.verdict, neckOf(exercise)) : '';
      const more = answer?.accepted ? 'accepted' : answer?.by === 'teacher' ? 'entered' : inverted;
      return (more + notDone + late).replace(/^, /, '');
    }
    case 'late':
      return 'late';
    case 'placing':
      return answer?.way ? 'playing' : 'placing';
    case 'waiting':
      return 'waiting';
    case 'here':
      return '';
    case 'away':
      return 'out of touch';
    case 'absent':
      return 'no device';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-drawer': DeskDrawer;
  }
}
