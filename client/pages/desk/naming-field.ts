import { html, type TemplateResult } from 'lit';
import { namingWords } from './group/words.ts';
import { chooseNaming, namingChoice, type NamingChoice } from './naming-here.ts';

/** The teacher's own note names; the students' are the group's. */
export function namingField(): TemplateResult {
  const chosen = namingChoice();
  const options: Readonly<Record<NamingChoice, string>> = { group: 'as the group', ...namingWords };
  return html`<label
    >Note names at this Desk
    <select
      @change=${(event: Event) => {
        if (event.target instanceof HTMLSelectElement) chooseNaming(event.target.value as NamingChoice);
      }}
    >
      ${Object.entries(options).map(
        ([choice, words]) => html`<option value=${choice} ?selected=${choice === chosen}>${words}</option>`,
      )}
    </select>
    <span class="soft small">On this device only. Board and Stands keep the group’s.</span></label
  >`;
}
