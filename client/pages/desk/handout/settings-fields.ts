import { html, nothing, type TemplateResult } from 'lit';
import type { InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import '../instrument/instrument-picker.ts';
import type { InstrumentEvent } from '../instrument/instrument-picker.ts';
import { choiceField, segments } from '../maker/choice-field.ts';
import { blankLimits, choices, perPages, type ChoiceField, type SwitchField } from './settings.ts';
import type { SheetKind, SheetSettings } from './sheet.ts';

export type Change = (change: Partial<SheetSettings>) => void;

/** Which kind of sheet. */
export function kindField({ kind }: SheetSettings, change: Change): TemplateResult {
  return segments('Kind of sheet', 'kind', Object.entries(choices.kind), kind, (chosen) =>
    change({ kind: chosen as SheetKind }),
  );
}

/** The rest: what applies to this kind of sheet. */
export function settingsFields(settings: SheetSettings, change: Change): TemplateResult {
  const { kind } = settings;
  const choice = (label: string, field: ChoiceField) =>
    choiceField(label, { choices: Object.entries(choices[field]) }, settings[field], (chosen) =>
      change({ [field]: chosen }),
    );
  const tick = (label: string, field: SwitchField) =>
    html`<label class="tick"
      ><input
        type="checkbox"
        .checked=${settings[field]}
        @change=${({ target }: Event) =>
          change({ [field]: target instanceof HTMLInputElement && target.checked })}
      />${label}</label
    >`;
  const perPage = choiceField(
    'On each page',
    {
      choices: perPages.map((count) => [String(count), count === 1 ? '1 chart' : `${String(count)} charts`]),
    },
    String(settings.perPage),
    (chosen) => change({ perPage: perPages.find((count) => String(count) === chosen) ?? settings.perPage }),
  );
  return html`<div class="fields">
    ${choice('Paper', 'paper')} ${choice('Page', 'orientation')} ${kind === 'quiz' ? nothing : perPage}
    ${choice('Hands', 'hands')}
    ${kind === 'charts' ? html`${choice('In the marks', 'marks')} ${choice('Charts', 'view')}` : nothing}
    ${
      kind === 'blank'
        ? html`${choice('Charts', 'blankView')}
          ${numberField('First fret', settings.blankFrom, blankLimits.from, (blankFrom) => change({ blankFrom }))}
          ${numberField('Frets', settings.blankFrets, blankLimits.frets, (blankFrets) => change({ blankFrets }))}`
        : choice('Note names', 'naming')
    }
    ${kind === 'quiz' ? nothing : tick('Lines for notes', 'notes')}
    ${
      kind === 'charts'
        ? html`${tick('A sentence below each chart', 'explained')} ${tick('Tablature below scales', 'tab')}`
        : nothing
    }
  </div>`;
}

function numberField(
  label: string,
  value: number,
  [least, most]: readonly [number, number],
  choose: (value: number) => void,
): TemplateResult {
  const numbers = Array.from({ length: most - least + 1 }, (_, index) => String(least + index));
  return choiceField(label, { choices: numbers.map((number) => [number, number]) }, String(value), (chosen) =>
    choose(Number(chosen)),
  );
}

/** What empty charts are drawn for. */
export function blankInstrument(
  value: InstrumentId,
  ofGroup: InstrumentId,
  naming: NoteNaming,
  choose: (instrument: InstrumentId) => void,
): TemplateResult {
  return html`<desk-instrument-picker
    .value=${value}
    .ofGroup=${ofGroup}
    .naming=${naming}
    @desk-instrument=${({ instrument }: InstrumentEvent) => choose(instrument)}
  ></desk-instrument-picker>`;
}
