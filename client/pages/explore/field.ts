import { html, type TemplateResult } from 'lit';
import type { Choice, ChoiceGroup } from '../desk/maker/choice-field.ts';

interface Field {
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly groups?: readonly ChoiceGroup[];
  readonly chosen: string;
  readonly choose: (value: string) => void;
  /** Its place says what it is: the words are read aloud only. */
  readonly bare?: boolean;
}

/** A select under its words. */
export function field({ label, choices, groups = [], chosen, choose, bare }: Field): TemplateResult {
  const option = ([value, words]: Choice) =>
    html`<option value=${value} .selected=${value === chosen}>${words}</option>`;
  return html`<label class="field"
    ><span class=${bare ? 'visually-hidden' : ''}>${label}</span>
    <select
      @change=${(event: Event) => {
        if (event.target instanceof HTMLSelectElement) choose(event.target.value);
      }}
    >
      ${choices.map(option)}
      ${groups.map((group) => html`<optgroup label=${group.words}>${group.choices.map(option)}</optgroup>`)}
    </select></label
  >`;
}
