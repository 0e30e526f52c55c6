import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exercise, ExerciseKind } from '../../../../shared/exercise/exercise.ts';
import { scaleWords, wordingOf } from '../../../../shared/exercise/wording.ts';
import {
  instrumentById,
  standardGuitar,
  stringNumbers,
  type StringNumber,
} from '../../../../shared/theory/fretboard.ts';
import { formatName, type NoteNaming } from '../../../../shared/theory/naming.ts';
import { formatNoteName, parseNoteName } from '../../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import type { ScaleId } from '../../../../shared/theory/tables/scales.ts';
import '../charts.ts';
import { deskStyles } from '../desk-styles.ts';
import { changed, exerciseOf, firstDraft, problemOf, type Draft } from './draft.ts';
import { makerStyles } from './maker-styles.ts';
import type { ChangeEvent } from './change-event.ts';
import './maker-details.ts';
import { kindWords, limitWords, qualityChoices, strictnessWords, usualRoots } from './words.ts';

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
  static override styles = [deskStyles, makerStyles];

  /** Where to start from. */
  @property({ attribute: false }) from: Draft = firstDraft(standardGuitar.id);
  @property({ attribute: false }) naming: NoteNaming = 'english';
  /** What the button says that takes the exercise. */
  @property() words = 'Take it';
  /** Whether a time limit makes sense here. */
  @property({ type: Boolean }) timed = false;
  @property({ type: Boolean }) keyHidden = false;
  @state() private draft: Draft = this.from;

  protected override willUpdate(properties: PropertyValues<this>) {
    if (properties.has('from')) this.draft = this.from;
  }

  override render() {
    const { draft } = this;
    const problem = problemOf(draft);
    return html`<form class="maker" @submit=${this.submit}>
      <div class="fields">
        <div class="stack">
          ${this.kinds()}
          <div class="pair">${this.root()} ${this.what()}</div>
          ${this.strings()}
          <details>
            <summary>
              How strict, which way${this.timed ? ', how long' : ''}
              <span class="soft small">${this.summary()}</span>
            </summary>
            <desk-maker-details
              .draft=${draft}
              .timed=${this.timed}
              @desk-change=${(event: ChangeEvent) => this.change(event.change)}
            ></desk-maker-details>
          </details>
        </div>
        ${this.preview(problem)}
      </div>
      <div class="row end">
        <button class="primary" aria-disabled=${problem !== null}>${this.words}</button>
        <slot></slot>
      </div>
    </form>`;
  }

  private kinds() {
    const kinds = Object.entries(kindWords) as [ExerciseKind, string][];
    return html`<fieldset class="segments">
      <legend class="visually-hidden">Kind of exercise</legend>
      ${kinds.map(
        ([kind, words]) =>
          html`<label
            ><input
              type="radio"
              name="kind"
              .checked=${kind === this.draft.kind}
              @change=${() => this.change({ kind })}
            /><span>${words}</span></label
          >`,
      )}
    </fieldset>`;
  }

  private root() {
    const chosen = formatNoteName(this.draft.root);
    const usual = usualRoots.some((root) => formatNoteName(root) === chosen);
    const roots = usual ? usualRoots : [...usualRoots, this.draft.root];
    return html`<label
      >${this.draft.kind === 'find' ? 'Note' : 'Root'}
      <select
        @change=${(event: Event) => {
          const root = parseNoteName(valueOf(event));
          if (root) this.change({ root });
        }}
      >
        ${roots.map((root) => {
          const text = formatNoteName(root);
          return html`<option value=${text} .selected=${text === chosen}>
            ${formatName(root, this.naming)}
          </option>`;
        })}
      </select></label
    >`;
  }

  private what() {
    switch (this.draft.kind) {
      case 'find':
        return nothing;
      case 'build':
        return this.choice('Chord', qualityChoices, this.draft.quality, (quality) =>
          this.change({ quality: quality as ChordQuality }),
        );
      case 'scale':
        return this.choice('Scale', scaleWords, this.draft.scale, (scale) =>
          this.change({ scale: scale as ScaleId }),
        );
    }
  }

  private choice(
    label: string,
    words: Readonly<Record<string, string>>,
    chosen: string,
    choose: (value: string) => void,
  ) {
    return html`<label
      >${label}
      <select @change=${(event: Event) => choose(valueOf(event))}>
        ${Object.entries(words).map(
          ([value, text]) => html`<option value=${value} .selected=${value === chosen}>${text}</option>`,
        )}
      </select></label
    >`;
  }

  private strings() {
    const neck = instrumentById(this.draft.instrument) ?? standardGuitar;
    const numbers = stringNumbers(neck);
    const last = numbers.length;
    const hint = (string: StringNumber) =>
      string === 1 ? ', thinnest' : string === last ? ', thickest' : '';
    return html`<fieldset class="strings">
      <legend>${this.draft.kind === 'find' ? 'String' : 'Root on string'}</legend>
      <div>
        ${[...numbers]
          .reverse()
          .map(
            (rootString) =>
              html`<label
                ><input
                  type="radio"
                  name="string"
                  aria-label=${`String ${String(rootString)}${hint(rootString)}`}
                  .checked=${rootString === this.draft.rootString}
                  @change=${() => this.change({ rootString })}
                /><span aria-hidden="true">${rootString}</span></label
              >`,
          )}
      </div>
    </fieldset>`;
  }

  private summary() {
    const { draft } = this;
    const strict = strictnessWords[draft.strictness];
    return `${strict}${this.timed ? ` · ${limitWords(draft.seconds)}` : ''}`;
  }

  private preview(problem: string | null) {
    if (problem !== null)
      return html`<div class="preview"><p class="problem" role="status">${problem}</p></div>`;
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

  private change(change: Partial<Draft>) {
    this.draft = changed(this.draft, change);
  }

  private submit(event: SubmitEvent) {
    event.preventDefault();
    if (problemOf(this.draft) !== null) return;
    this.dispatchEvent(new MadeEvent(exerciseOf(this.draft), this.timed ? this.draft.seconds : null));
  }
}

function valueOf(event: Event): string {
  return event.target instanceof HTMLSelectElement ? event.target.value : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-maker': DeskMaker;
  }
}
