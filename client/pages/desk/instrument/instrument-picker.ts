import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { instrumentById, standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import { tuningRow } from '../../../../shared/theory/instrument-id.ts';
import { instrumentName, tunedStrings } from '../../../../shared/theory/instrument.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { deskStyles } from '../desk-styles.ts';
import { refusalLine } from '../refusal.ts';
import { fieldsOf, instrumentIn, isOwnTuning, tuningGroups, type InstrumentFields } from './fields.ts';
import { tuningText } from './tuning-text.ts';

/** Another instrument was chosen; not sent while the fields can't be read. */
export class InstrumentEvent extends Event {
  static readonly kind = 'desk-instrument';
  readonly instrument: InstrumentId;
  constructor(instrument: InstrumentId) {
    super(InstrumentEvent.kind);
    this.instrument = instrument;
  }
}

/** What is typed can't be read as an instrument, in a sentence; or can again, and the sentence is empty. */
export class UnreadEvent extends Event {
  static readonly kind = 'desk-unread';
  readonly problem: string;
  constructor(problem: string) {
    super(UnreadEvent.kind, { bubbles: true, composed: true });
    this.problem = problem;
  }
}

const asTheGroup = '';
const own = 'own';

/**
 * Which instrument: its tuning in front; capo, frets, scale length and a tuning of one's own one press away. In a
 * form it is a field of its own name; what can't be read is said and keeps the form from being sent.
 */
@customElement('desk-instrument-picker')
export class DeskInstrumentPicker extends LitElement {
  static readonly formAssociated = true;
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-1);
        grid-template-columns: minmax(0, 1fr);
      }
      .more {
        display: grid;
        gap: var(--space-3);
        padding-block: var(--space-1) var(--space-3);
      }
      .numbers {
        align-items: end;
        display: grid;
        gap: var(--space-3);
        grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr));
      }
    `,
  ];

  @property() name = '';
  @property() label = 'Instrument';
  @property() value: InstrumentId = standardGuitar.id;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  /** The group's instrument, where the choice is to stay with it. */
  @property({ attribute: false }) ofGroup: InstrumentId | null = null;
  @state() private fields: InstrumentFields = fieldsOf(this.value, this.naming);

  private readonly internals = this.attachInternals();

  protected override willUpdate(properties: PropertyValues<this>) {
    const typed = instrumentIn(this.fields, this.naming);
    // What is being typed is kept; only another instrument or naming from outside replaces it.
    if (properties.has('naming') || (properties.has('value') && !(typed.ok && typed.value === this.value)))
      this.fields = fieldsOf(this.value, this.naming);
    const read = instrumentIn(this.fields, this.naming);
    this.internals.setFormValue(this.value);
    const field = this.renderRoot?.querySelector('select');
    if (read.ok) this.internals.setValidity({});
    else if (field) this.internals.setValidity({ customError: true }, read.error, field);
  }

  override render() {
    const { fields, naming, ofGroup } = this;
    const read = instrumentIn(fields, naming);
    const isGroups = ofGroup !== null && read.ok && read.value === ofGroup;
    const isOwn = isOwnTuning(fields, naming);
    return html`<label
        >${this.label}
        <select @change=${(event: Event) => this.choose(textOf(event))}>
          ${
            ofGroup === null
              ? nothing
              : html`<option value=${asTheGroup} .selected=${isGroups}>
                  As the group: ${nameOf(ofGroup, naming)}
                </option>`
          }
          ${tuningGroups.map(
            ({ words, tunings }) =>
              html`<optgroup label=${words}>
                ${tunings.map(
                  (id) =>
                    html`<option value=${id} .selected=${!isGroups && !isOwn && id === fields.tuning}>
                      ${tuningRow(id).name}
                    </option>`,
                )}
              </optgroup>`,
          )}
          ${
            isOwn && !isGroups
              ? html`<option value=${own} .selected=${true}>A tuning of your own</option>`
              : nothing
          }
        </select></label
      >
      <details>
        <summary>
          Capo, frets, scale length, own tuning
          ${read.ok ? html`<span class="soft small">${this.summary(read.value)}</span>` : nothing}
        </summary>
        <div class="more">
          <div class="numbers">
            ${this.number('Capo at fret', 'capo')} ${this.number('Frets', 'frets')}
            ${this.number('Scale length, mm', 'scale')}
          </div>
          <label
            >Open strings, lowest first
            <input
              autocapitalize="characters"
              autocomplete="off"
              spellcheck="false"
              .value=${fields.strings}
              aria-invalid=${!read.ok}
              @input=${(event: Event) => this.type({ strings: textOf(event) })}
            />
          </label>
        </div>
      </details>
      ${refusalLine(read.ok ? '' : read.error)}`;
  }

  private number(words: string, field: 'capo' | 'frets' | 'scale') {
    return html`<label
      >${words}
      <input
        inputmode="decimal"
        .value=${this.fields[field]}
        @input=${(event: Event) => this.type({ [field]: textOf(event) })}
      />
    </label>`;
  }

  /** How the fields were read, each string with its octave. */
  private summary(id: InstrumentId): string {
    const neck = instrumentById(id) ?? standardGuitar;
    const { capo, frets, scaleLengthMm } = neck.spec;
    const strings = tuningText(tunedStrings(neck.spec.tuning), this.naming);
    return `${strings} · ${capo === 0 ? 'no capo' : `capo ${String(capo)}`} · ${String(frets)} frets · ${String(scaleLengthMm)} mm`;
  }

  private choose(value: string) {
    if (value === own) return;
    this.fields =
      value === asTheGroup
        ? fieldsOf(this.ofGroup ?? standardGuitar.id, this.naming)
        : fieldsOf(value, this.naming);
    this.settle();
  }

  private type(change: Partial<InstrumentFields>) {
    this.fields = { ...this.fields, ...change };
    this.settle();
  }

  private settle() {
    const read = instrumentIn(this.fields, this.naming);
    this.dispatchEvent(new UnreadEvent(read.ok ? '' : read.error));
    if (!read.ok || read.value === this.value) return;
    this.value = read.value;
    this.dispatchEvent(new InstrumentEvent(read.value));
  }
}

function nameOf(id: InstrumentId, naming: NoteNaming): string {
  return instrumentName(instrumentById(id) ?? standardGuitar, naming);
}

function textOf(event: Event): string {
  const { target } = event;
  return target instanceof HTMLSelectElement || target instanceof HTMLInputElement ? target.value : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-instrument-picker': DeskInstrumentPicker;
  }
}
