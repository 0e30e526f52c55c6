import { html, type TemplateResult } from 'lit';
import { valueOf } from '../maker/field-value.ts';

/** How long nothing must be typed before it is read, in milliseconds. */
const settlesAfter = 500;

let settling: ReturnType<typeof setTimeout> | undefined;

/** A text field that says what it holds once that has settled, and beside it why it can't be read. */
export function settledField(
  label: string,
  value: string,
  sentence: string,
  take: (text: string) => void,
): TemplateResult {
  const id = `why-${label.toLowerCase()}`;
  const settled = (text: string) => {
    clearTimeout(settling);
    if (text !== value) take(text);
  };
  const typed = (text: string) => {
    clearTimeout(settling);
    settling = setTimeout(() => settled(text), settlesAfter);
  };
  return html`<div class="settled">
    <label
      >${label}
      <input
        .value=${value}
        maxlength="200"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        aria-invalid=${sentence !== ''}
        aria-describedby=${id}
        @input=${(event: Event) => typed(valueOf(event))}
        @change=${(event: Event) => settled(valueOf(event))}
      />
    </label>
    <p class="refusal" id=${id} role="status">${sentence}</p>
  </div>`;
}
