import { html, nothing, type TemplateResult } from 'lit';
import { chartWordings } from '../../../../shared/exercise/chart.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { explanationOf } from './explanation.ts';
import type { SheetItem } from './sheet.ts';

/** A sentence of the teacher's own is no longer than fits below a chart. */
const longestLine = 140;

export interface ItemsField {
  readonly items: readonly SheetItem[];
  readonly naming: NoteNaming;
  /** Whether sentences stand on the sheet, and can be changed here. */
  readonly explained: boolean;
  readonly change: (id: string, change: Partial<Pick<SheetItem, 'chosen' | 'line'>>) => void;
}

/** What stands on the sheet: each can be left out, and have a sentence of the teacher's own. */
export function itemsField(field: ItemsField): TemplateResult {
  return html`<ul class="items">
    ${field.items.map((item) => html`<li>${itemField(item, field)}</li>`)}
  </ul>`;
}

function itemField({ id, number, chart, chosen, line }: SheetItem, field: ItemsField): TemplateResult {
  const { naming, explained, change } = field;
  const title = chart.kind === 'map' ? chartWordings(chart)[naming].title : wordingOf(chart, naming).title;
  const name = [number, title].filter(Boolean).join('. ');
  return html`<label class="tick"
      ><input
        type="checkbox"
        .checked=${chosen}
        @change=${(event: Event) => change(id, { chosen: targetOf(event)?.checked === true })}
      />${name}</label
    >
    ${
      explained && chosen
        ? html`<input
            class="own-line"
            aria-label=${`Sentence below ${name}`}
            maxlength=${longestLine}
            .value=${line ?? explanationOf(chart, naming)}
            @change=${(event: Event) => change(id, { line: ownLine(event) })}
          />`
        : nothing
    }`;
}

/** Null brings back the sentence that is made. */
function ownLine(event: Event): string | null {
  const text = targetOf(event)?.value.trim() ?? '';
  return text === '' ? null : text;
}

function targetOf({ target }: Event): HTMLInputElement | null {
  return target instanceof HTMLInputElement ? target : null;
}
