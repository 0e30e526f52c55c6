import { LitElement, html, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exercise, ExerciseKind } from '../../../../shared/exercise/exercise.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import { standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import { instrumentName } from '../../../../shared/theory/instrument.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import type { ToneSetId } from '../../../../shared/theory/tone-sets.ts';
import '../charts.ts';
import { deskStyles } from '../desk-styles.ts';
import type { UnreadEvent } from '../instrument/instrument-picker.ts';
import type { ChangeEvent } from './change-event.ts';
import { changed } from './changed.ts';
import { choiceField, segments } from './choice-field.ts';
import { exerciseOf, firstDraft, instrumentOf, problemOf, type Draft } from './draft.ts';
import './maker-details.ts';
import { circleStyles, makerStyles, segmentStyles } from './maker-styles.ts';
import { nameFields } from './name-fields.ts';
import { qualityChoices, scaleChoices } from './qualities.ts';
import { rootField } from './root-field.ts';
import { stringField } from './string-field.ts';
import { kindWords, limitWords, strictnessWords } from './words.ts';

/** An exercise that can be asked has been made. */
export class MadeEvent extends Event {
  static readonly kind = 'desk-made';
  readonly exercise: Exercise;
  readonly seconds: number | null;
  constructor(exercise: Exercise, seconds: number | null) {
    super(MadeEvent.kind);
    this.exercise = exercise;
    this.seconds = seconds;
  }
}

/**
 * Makes an exercise: kind, root, string and what hangs on them in front, everything else one press away,
 * and beside it what it would ask and what would be right.
 */
@customElement('desk-maker')
export class DeskMaker extends LitElement {
  static override styles = [deskStyles, circleStyles, segmentStyles, makerStyles];

  /** Where to start from. */
  @property({ attribute: false }) from: Draft = firstDraft(standardGuitar.id);
  @property({ attribute: false }) naming: NoteNaming = 'english';
  /** What an exercise is on unless it says otherwise. */
  @property({ attribute: false }) ofGroup: InstrumentId = standardGuitar.id;
  /** What the button says that takes the exercise. */
  @property() words = 'Take it';
  /** Whether a time limit makes sense here. */
  @property({ type: Boolean }) timed = false;
  @property({ type: Boolean }) keyHidden = false;
  @state() private draft: Draft = this.from;
  /** Why the instrument that is being typed can't be read. */
  @state() private unread = '';

  protected override willUpdate(properties: PropertyValues<this>) {
    if (!properties.has('from')) return;
    this.draft = this.from;
    this.unread = '';
  }

  override render() {
    const { draft } = this;
    const problem = this.problem();
    return html`<form class="maker" @submit=${this.submit}>
      <div class="fields">
        <div class="stack">
          ${segments('Kind of exercise', 'kind', Object.entries(kindWords), draft.kind, (kind) =>
            this.change({ kind: kind as ExerciseKind }),
          )}
          ${this.front()}
          <details>
            <summary>
              ${draft.kind === 'name' ? 'Which instrument' : 'How strict, which way'}${this.timed ? ', how long' : ''}
              <span class="soft small">${this.summary()}</span>
            </summary>
            <desk-maker-details
              .draft=${draft}
              .naming=${this.naming}
              .ofGroup=${this.ofGroup}
              .timed=${this.timed}
              @desk-unread=${({ problem }: UnreadEvent) => (this.unread = problem)}
              @desk-change=${(event: ChangeEvent) => this.change(event.change)}
            ></desk-maker-details>
          </details>
        </div>
        ${this.preview(problem)}
      </div>
      <div class="row end">
        <p class="problem" role="alert">${problem}</p>
        <button class="primary" aria-disabled=${problem !== null}>${this.words}</button>
        <slot></slot>
      </div>
    </form>`;
  }

  private problem(): string | null {
    return this.unread === '' ? problemOf(this.draft) : this.unread;
  }

  /** What the first glance needs of each kind. */
  private front() {
    const { draft, naming } = this;
    const root = (label: string) =>
      rootField(label, draft.root, naming, (note) => this.change({ root: note }));
    switch (draft.kind) {
      case 'find':
        return html`<div class="pair">
            ${root('Note')}
            ${choiceField(
              'Where',
              {
                choices: [
                  ['one', 'one place'],
                  ['every', 'every place'],
                ],
              },
              draft.every ? 'every' : 'one',
              (value) => this.change({ every: value === 'every' }),
            )}
          </div>
          ${this.strings('String')}`;
      case 'name':
        return nameFields(draft, naming, this.change);
      case 'build':
        return html`<div class="pair named">
            ${root('Root')}
            ${choiceField('Chord', qualityChoices, draft.quality, (value) =>
              this.change({ quality: value as ChordQuality }),
            )}
          </div>
          ${this.strings('Root on string')}`;
      case 'scale':
        return html`<div class="pair named">
            ${root('Root')}
            ${choiceField('Scale', scaleChoices, draft.scale, (value) =>
              this.change({ scale: value as ToneSetId }),
            )}
          </div>
          ${this.strings('Root on string')}`;
    }
  }

  private strings(legend: string) {
    const { draft } = this;
    return stringField(legend, instrumentOf(draft), [draft.rootString], 'one', (rootString) =>
      this.change({ rootString }),
    );
  }

  private summary() {
    const { draft } = this;
    const parts = [
      draft.kind === 'name' ? '' : strictnessWords[draft.strictness],
      draft.instrument === this.ofGroup ? '' : instrumentName(instrumentOf(draft), this.naming),
      this.timed ? limitWords(draft.seconds) : '',
    ];
    return parts.filter((part) => part !== '').join(' · ');
  }

  private preview(problem: string | null) {
    if (problem !== null) return html`<div class="preview"></div>`;
    const exercise = exerciseOf(this.draft);
    const { title, detail } = wordingOf(exercise, this.naming);
    return html`<div class="preview">
      <div role="status">
        <h3>${title}</h3>
        <p class="soft small">${detail}</p>
      </div>
      ${
        this.keyHidden
          ? html`<p class="soft small">The answer key is hidden.</p>`
          : html`<desk-key-chart .exercise=${exercise} .naming=${this.naming}></desk-key-chart>`
      }
    </div>`;
  }

  private readonly change = (change: Partial<Draft>): void => {
    this.draft = changed(this.draft, change);
  };

  private submit(event: SubmitEvent) {
    event.preventDefault();
    if (this.problem() !== null) return;
    this.dispatchEvent(new MadeEvent(exerciseOf(this.draft), this.timed ? this.draft.seconds : null));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-maker': DeskMaker;
  }
}
