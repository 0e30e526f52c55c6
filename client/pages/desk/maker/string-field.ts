import { html, type TemplateResult } from 'lit';
import { stringNumbers, type Instrument, type StringNumber } from '../../../../shared/theory/fretboard.ts';

/** Circled numbers, the thickest string first, as a neck held upright has them. */
export function stringField(
  legend: string,
  neck: Instrument,
  chosen: readonly StringNumber[],
  how: 'one' | 'many',
  choose: (string: StringNumber) => void,
): TemplateResult {
  const numbers = stringNumbers(neck);
  const hint = (string: StringNumber) =>
    string === 1 ? ', thinnest' : string === numbers.length ? ', thickest' : '';
  return html`<fieldset class="strings">
    <legend>${legend}</legend>
    <div>
      ${[...numbers]
        .reverse()
        .map(
          (string) =>
            html`<label
              ><input
                type=${how === 'one' ? 'radio' : 'checkbox'}
                name=${legend}
                aria-label=${`String ${String(string)}${hint(string)}`}
                .checked=${chosen.includes(string)}
                @change=${() => choose(string)}
              /><span aria-hidden="true">${string}</span></label
            >`,
        )}
    </div>
  </fieldset>`;
}
