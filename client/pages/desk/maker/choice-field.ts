import { html, type TemplateResult } from 'lit';
import { valueOf } from './field-value.ts';

/** A value and what it is called. */
export type Choice = readonly [value: string, words: string];

export interface ChoiceGroup {
  readonly words: string;
  readonly choices: readonly Choice[];
}

/** A select with its label; groups come after the choices that stand alone. */
export function choiceField(
  label: string,
  { choices, groups = [] }: { readonly choices: readonly Choice[]; readonly groups?: readonly ChoiceGroup[] },
  chosen: string,
  choose: (value: string) => void,
): TemplateResult {
  const option = ([value, words]: Choice) =>
    html`<option value=${value} .selected=${value === chosen}>${words}</option>`;
  return html`<label
    >${label}
    <select @change=${(event: Event) => choose(valueOf(event))}>
      ${choices.map(option)}
      ${groups.map((group) => html`<optgroup label=${group.words}>${group.choices.map(option)}</optgroup>`)}
    </select></label
  >`;
}

/** A row of buttons of which one is on; styled by `makerStyles`. */
export function segments(
  legend: string,
  name: string,
  choices: readonly Choice[],
  chosen: string,
  choose: (value: string) => void,
): TemplateResult {
  return html`<fieldset class="segments">
    <legend class="visually-hidden">${legend}</legend>
    ${choices.map(
      ([value, words]) =>
        html`<label
          ><input
            type="radio"
            name=${name}
            .checked=${value === chosen}
            @change=${() => choose(value)}
          /><span>${words}</span></label
        >`,
    )}
  </fieldset>`;
}
