import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { deskStyles } from '../desk-styles.ts';
import type { InstrumentEvent } from '../instrument/instrument-picker.ts';
import '../instrument/instrument-picker.ts';
import { ChangeEvent } from './change-event.ts';
import { choiceField } from './choice-field.ts';
import { chordFields } from './chord-fields.ts';
import { firstDraft, type Draft } from './draft.ts';
import { extraFields } from './extra-fields.ts';
import { circleStyles } from './maker-styles.ts';
import { scaleFields } from './scale-fields.ts';
import { strictnessField } from './strictness-field.ts';
import { limitWords, limits } from './words.ts';

/** What an exercise has beyond kind, root and string: way of playing, strictness, instrument, time. */
@customElement('desk-maker-details')
export class DeskMakerDetails extends LitElement {
  static override styles = [
    deskStyles,
    circleStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
        padding-top: var(--space-2);
      }
      .inner {
        align-items: center;
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
        padding-left: 36px;
      }
      .inner select,
      .inner input:not([type='checkbox']) {
        width: 6rem;
      }
      .inner label:not(.tick) {
        align-items: center;
        display: flex;
        font-weight: 400;
      }
      .range {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) draft: Draft = firstDraft(standardGuitar.id);
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @property({ attribute: false }) ofGroup: InstrumentId = standardGuitar.id;
  @property({ type: Boolean }) timed = false;

  override render() {
    const { draft, naming, ofGroup } = this;
    const { kind } = draft;
    return html`${kind === 'build' ? chordFields(draft, naming, this.change) : nothing}
      ${kind === 'scale' ? scaleFields(draft, this.change) : nothing}
      ${kind === 'name' ? nothing : strictnessField(draft, this.change)}
      ${kind === 'build' || kind === 'scale' ? extraFields(draft, this.change) : nothing}
      ${this.timed ? this.limit() : nothing}
      <desk-instrument-picker
        .value=${draft.instrument}
        .naming=${naming}
        .ofGroup=${ofGroup}
        @desk-instrument=${({ instrument }: InstrumentEvent) => this.change({ instrument })}
      ></desk-instrument-picker>`;
  }

  private limit() {
    const { seconds } = this.draft;
    const all = seconds === null || limits.includes(seconds) ? limits : [...limits, seconds];
    return choiceField(
      'Time',
      {
        choices: [['', limitWords(null)], ...all.map((limit) => [String(limit), limitWords(limit)] as const)],
      },
      String(seconds ?? ''),
      (value) => this.change({ seconds: value === '' ? null : Number(value) }),
    );
  }

  private readonly change = (change: Partial<Draft>): void => {
    this.dispatchEvent(new ChangeEvent(change));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-maker-details': DeskMakerDetails;
  }
}
