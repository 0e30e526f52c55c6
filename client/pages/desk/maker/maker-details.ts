import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Finger, Strictness } from '../../../../shared/exercise/exercise.ts';
import { formWords } from '../../../../shared/exercise/wording.ts';
import {
  instrumentById,
  standardGuitar,
  stringNumbers,
  type Fret,
} from '../../../../shared/theory/fretboard.ts';
import { formTable, type FormId } from '../../../../shared/theory/tables/forms.ts';
import { deskStyles } from '../desk-styles.ts';
import { ChangeEvent } from './change-event.ts';
import { firstDraft, formsFor, placesToChoose, type Draft } from './draft.ts';
import { fingers, limitWords, limits, strictnessWords } from './words.ts';

/** What an exercise has beyond kind, root and string: way of playing, strictness, time. */
@customElement('desk-maker-details')
export class DeskMakerDetails extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
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
    `,
  ];

  @property({ attribute: false }) draft: Draft = firstDraft(standardGuitar.id);
  @property({ type: Boolean }) timed = false;

  override render() {
    return html`${this.way()} ${this.strictness()} ${this.timed ? this.limit() : nothing}`;
  }

  private way() {
    switch (this.draft.kind) {
      case 'find':
        return nothing;
      case 'build':
        return this.voicing();
      case 'scale':
        return this.position();
    }
  }

  private voicing() {
    const { draft } = this;
    const chosen = draft.voicing === 'form' ? draft.form : draft.voicing;
    const forms = formsFor(draft.quality, draft.rootString);
    const row = formTable.find(({ form, quality }) => form === draft.form && quality === draft.quality);
    return html`<label
        >Way of playing it
        <select @change=${(event: Event) => this.chooseVoicing(valueOf(event))}>
          ${forms.map(
            (form) => html`<option value=${form} .selected=${form === chosen}>${formWords[form]}</option>`,
          )}
          <option value="strings" .selected=${chosen === 'strings'}>any shape on these strings</option>
          <option value="any" .selected=${chosen === 'any'}>any shape</option>
        </select></label
      >
      ${
        draft.voicing === 'form' && row && row.optionalStrings.length > 0
          ? html`<label class="tick"
              ><input
                type="checkbox"
                .checked=${draft.full}
                @change=${(event: Event) => this.change({ full: isOn(event) })}
              />The full form, with the notes a small hand may leave out</label
            >`
          : nothing
      }
      ${draft.voicing === 'strings' ? this.stringSet() : nothing}`;
  }

  private chooseVoicing(value: string) {
    if (value === 'strings' || value === 'any') this.change({ voicing: value, strictness: 'string' });
    else this.change({ voicing: 'form', form: value as FormId, strictness: 'place' });
  }

  private stringSet() {
    const neck = instrumentById(this.draft.instrument) ?? standardGuitar;
    return html`<fieldset>
      <legend>Exactly these strings</legend>
      <div class="row">
        ${[...stringNumbers(neck)].reverse().map(
          (string) =>
            html`<label class="tick"
              ><input
                type="checkbox"
                .checked=${this.draft.strings.includes(string)}
                @change=${(event: Event) => {
                  const others = this.draft.strings.filter((other) => other !== string);
                  const strings = isOn(event) ? [...others, string] : others;
                  this.change({ strings: [...strings].sort((a, b) => b - a) });
                }}
              />${string}</label
            >`,
        )}
      </div>
    </fieldset>`;
  }

  private position() {
    const { draft } = this;
    return html`<label
        >Finger on the root
        <select @change=${(event: Event) => this.change({ rootFinger: Number(valueOf(event)) as Finger })}>
          ${fingers.map(
            (finger) =>
              html`<option value=${finger} .selected=${finger === draft.rootFinger}>${finger}</option>`,
          )}
        </select></label
      >
      <label
        >What to place
        <select
          @change=${(event: Event) =>
            this.change({ coverage: valueOf(event) === 'every-tone' ? 'every-tone' : 'every-pitch' })}
        >
          <option value="every-pitch" .selected=${draft.coverage === 'every-pitch'}>
            every note of the position
          </option>
          <option value="every-tone" .selected=${draft.coverage === 'every-tone'}>
            each tone of the scale once
          </option>
        </select></label
      >`;
  }

  private strictness() {
    const all = Object.keys(strictnessWords) as Strictness[];
    return html`<fieldset>
      <legend>What counts as right</legend>
      ${all.map(
        (strictness) =>
          html`<label class="tick"
              ><input
                type="radio"
                name="strictness"
                .checked=${strictness === this.draft.strictness}
                @change=${() => this.change({ strictness })}
              />${strictnessWords[strictness]}</label
            >
            ${strictness === this.draft.strictness ? this.frets() : nothing}`,
      )}
    </fieldset>`;
  }

  private frets() {
    const { draft } = this;
    switch (draft.strictness) {
      case 'place':
        return html`<div class="inner">
          <label
            >Root at
            <select @change=${(event: Event) => this.change({ rootFret: Number(valueOf(event)) as Fret })}>
              ${placesToChoose(draft).map(
                (fret) =>
                  html`<option value=${fret} .selected=${fret === draft.rootFret}>
                    ${fret === 0 ? 'open' : `fret ${String(fret)}`}
                  </option>`,
              )}
            </select></label
          >
        </div>`;
      case 'string':
        return html`<div class="inner">
          <label class="tick"
            ><input
              type="checkbox"
              .checked=${draft.narrow}
              @change=${(event: Event) => this.change({ narrow: isOn(event) })}
            />only between two frets</label
          >
          ${draft.narrow ? this.range() : nothing}
        </div>`;
      case 'range':
        return html`<div class="inner">${this.range()}</div>`;
      case 'anywhere':
        return nothing;
    }
  }

  private range() {
    const { low, high } = this.draft.range;
    const last = (instrumentById(this.draft.instrument) ?? standardGuitar).fretCount;
    const field = (words: string, value: number, choose: (fret: Fret) => void) =>
      html`<label
        >${words}
        <input
          type="number"
          min="0"
          max=${last}
          .value=${String(value)}
          @change=${(event: Event) => {
            const fret = Math.round(Number(valueOf(event)));
            if (fret >= 0 && fret <= last) choose(fret as Fret);
          }}
        />
      </label>`;
    return html`${field('Frets', low, (fret) =>
      this.change({ range: { low: fret, high: Math.max(fret, high) as Fret } }),
    )}
    ${field('to', high, (fret) => this.change({ range: { low: Math.min(fret, low) as Fret, high: fret } }))}`;
  }

  private limit() {
    const { seconds } = this.draft;
    const all = seconds === null || limits.includes(seconds) ? limits : [...limits, seconds];
    return html`<label
      >Time
      <select
        @change=${(event: Event) => {
          const value = valueOf(event);
          this.change({ seconds: value === '' ? null : Number(value) });
        }}
      >
        <option value="" .selected=${seconds === null}>${limitWords(null)}</option>
        ${all.map(
          (limit) =>
            html`<option value=${limit} .selected=${limit === seconds}>${limitWords(limit)}</option>`,
        )}
      </select></label
    >`;
  }

  private change(change: Partial<Draft>) {
    this.dispatchEvent(new ChangeEvent(change));
  }
}

function valueOf(event: Event): string {
  const { target } = event;
  return target instanceof HTMLSelectElement || target instanceof HTMLInputElement ? target.value : '';
}

function isOn(event: Event): boolean {
  return event.target instanceof HTMLInputElement && event.target.checked;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-maker-details': DeskMakerDetails;
  }
}
