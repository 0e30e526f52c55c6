import { html, type TemplateResult } from 'lit';
import type { Draft } from './draft.ts';
import { isOn } from './field-value.ts';

/** What else the answer of a chord or scale may carry. */
export function extraFields(draft: Draft, change: (change: Partial<Draft>) => void): TemplateResult {
  const tick = (words: string, field: 'marksRoot' | 'asksFinger') =>
    html`<label class="tick"
      ><input
        type="checkbox"
        .checked=${draft[field]}
        @change=${(event: Event) => change({ [field]: isOn(event) })}
      />${words}</label
    >`;
  return html`<fieldset>
    <legend>Ask for more than the notes</legend>
    ${tick('Which of them is the root', 'marksRoot')} ${tick('Which finger takes the root', 'asksFinger')}
  </fieldset>`;
}
