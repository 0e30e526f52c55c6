import { html, nothing, type TemplateResult } from 'lit';
import type { Strictness } from '../../../../shared/exercise/exercise.ts';
import type { Fret } from '../../../../shared/theory/fretboard.ts';
import { placesToChoose } from './changed.ts';
import { choiceField } from './choice-field.ts';
import { instrumentOf, type Draft } from './draft.ts';
import { isOn } from './field-value.ts';
import { rangeField } from './range-field.ts';
import { strictnessWords } from './words.ts';

type Change = (change: Partial<Draft>) => void;

/** What counts as right, and the frets that go with it. */
export function strictnessField(draft: Draft, change: Change): TemplateResult {
  return html`<fieldset>
    <legend>What counts as right</legend>
    ${(Object.keys(strictnessWords) as Strictness[]).map(
      (strictness) =>
        html`<label class="tick"
            ><input
              type="radio"
              name="strictness"
              .checked=${strictness === draft.strictness}
              @change=${() => change({ strictness })}
            />${strictnessWords[strictness]}</label
          >
          ${strictness === draft.strictness ? frets(draft, change) : nothing}`,
    )}
  </fieldset>`;
}

function frets(draft: Draft, change: Change) {
  const range = () =>
    rangeField(draft.range, instrumentOf(draft).fretCount, (next) => change({ range: next }));
  switch (draft.strictness) {
    case 'place':
      return html`<div class="inner">
        ${choiceField(
          'Root at',
          { choices: placesToChoose(draft).map((fret) => [String(fret), fretWords(fret)]) },
          String(draft.rootFret),
          (value) => change({ rootFret: Number(value) as Fret }),
        )}
      </div>`;
    case 'string':
      return html`<div class="inner">
        <label class="tick"
          ><input
            type="checkbox"
            .checked=${draft.narrow}
            @change=${(event: Event) => change({ narrow: isOn(event) })}
          />only between two frets</label
        >
        ${draft.narrow ? range() : nothing}
      </div>`;
    case 'range':
      return html`<div class="inner">${range()}</div>`;
    case 'anywhere':
      return nothing;
  }
}

export function fretWords(fret: number): string {
  return fret === 0 ? 'open' : `fret ${String(fret)}`;
}
