import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { distinct, instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { answerChart } from '../../fretboard/answer-chart.ts';
import '../../charts/chart.ts';
import { chartView } from '../../charts/chart-marks.ts';
import '../../fretboard/neck.ts';
import { placeName } from '../../fretboard/state.ts';
import { givenChart, keyChart } from './chart-notes.ts';

const chartStyles = css`
  :host {
    display: block;
  }
  rootcall-chart,
  rootcall-neck {
    height: 100%;
    width: 100%;
  }
  /* A long neck is as high as its width makes it, unless whoever shows it says otherwise. */
  :host([lying]) {
    align-content: center;
    display: grid;
  }
  .lying {
    height: var(--lying-height, auto);
  }
`;

/** The answer key of an exercise, engraved; nothing where the exercise can't be asked. */
@customElement('desk-key-chart')
export class DeskKeyChart extends LitElement {
  static override styles = chartStyles;

  @property({ attribute: false }) exercise: Exercise | null = null;
  @property({ attribute: false }) naming: NoteNaming = 'english';

  override render() {
    const { exercise } = this;
    if (!exercise || !checkExercise(exercise).ok) return nothing;
    const { naming } = this;
    const view = chartView(keyChart(exercise, naming));
    this.toggleAttribute('lying', view === 'lying');
    return html`<rootcall-chart
      class=${view}
      .view=${view}
      .chart=${exercise}
      .naming=${naming}
      .label=${`Answer key: ${wordingOf(exercise, naming).title}`}
    ></rootcall-chart>`;
  }
}

/** One student's answer, engraved with its corrections. */
@customElement('desk-answer-chart')
export class DeskAnswerChart extends LitElement {
  static override styles = chartStyles;

  @property({ attribute: false }) exercise: Exercise | null = null;
  @property({ attribute: false }) answer: (Answer & { readonly verdict: Verdict }) | null = null;
  /** False while the answer key is hidden: then only what was placed is drawn. */
  @property({ type: Boolean }) withKey = true;

  override render() {
    const { exercise, answer } = this;
    if (!exercise || !answer) return nothing;
    const neck = instrumentById(exercise.instrument) ?? standardGuitar;
    const { notes, corrections } = this.withKey
      ? answerChart(neck, exercise, answerKey(exercise), answer, answer.verdict)
      : { notes: givenChart(answer), corrections: [] };
    const view = chartView(notes);
    this.toggleAttribute('lying', view === 'lying');
    return html`<rootcall-neck
      class=${view}
      material="ink"
      .view=${view}
      .instrument=${neck}
      .notes=${notes}
      .corrections=${corrections}
      .label=${`Answer: ${distinct(answer.places).map(placeName).join('; ')}`}
    ></rootcall-neck>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-key-chart': DeskKeyChart;
    'desk-answer-chart': DeskAnswerChart;
  }
}
