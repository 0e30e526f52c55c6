import { html, nothing, type TemplateResult } from 'lit';
import { list } from '../../../../shared/exercise/phrases.ts';
import { familyWords, formWords } from '../../../../shared/exercise/wording.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { formatNoteName, parseNoteName } from '../../../../shared/theory/pitch.ts';
import { formTable, type FormId } from '../../../../shared/theory/tables/forms.ts';
import { familiesFor, formsFor } from './changed.ts';
import { choiceField, type Choice } from './choice-field.ts';
import { instrumentOf, type Draft } from './draft.ts';
import { isOn } from './field-value.ts';
import { noteChoices } from './root-field.ts';
import { stringField } from './string-field.ts';

type Change = (change: Partial<Draft>) => void;

/** How a chord is played: its form or strings, and what sounds lowest. */
export function chordFields(draft: Draft, naming: NoteNaming, change: Change): TemplateResult {
  const families = familiesFor(draft);
  const chosen =
    draft.voicing === 'form' ? draft.form : draft.voicing === 'family' ? familyKey(draft) : draft.voicing;
  const row = formTable.find(({ form, quality }) => form === draft.form && quality === draft.quality);
  return html`${choiceField(
    'Way of playing it',
    {
      choices: [
        ...formsFor(draft).map((form) => [form, formWords[form]] as const),
        ['strings', 'any shape on these strings'],
        ['any', 'any shape'],
      ],
      groups: [
        {
          words: 'Stacked',
          choices: families.map((one): Choice => [
            familyKey(one),
            `${familyWords[one.family]} on strings ${list(one.strings)}`,
          ]),
        },
      ].filter((group) => group.choices.length > 0),
    },
    chosen,
    (value) => {
      const stacked = families.find((one) => familyKey(one) === value);
      if (stacked)
        change({ voicing: 'family', family: stacked.family, strings: stacked.strings, strictness: 'place' });
      else if (value === 'strings' || value === 'any') change({ voicing: value, strictness: 'string' });
      else change({ voicing: 'form', form: value as FormId, strictness: 'place' });
    },
  )}
  ${
    draft.voicing === 'form' && row && row.optionalStrings.length > 0
      ? html`<label class="tick"
          ><input
            type="checkbox"
            .checked=${draft.full}
            @change=${(event: Event) => change({ full: isOn(event) })}
          />The full form, with the notes a small hand may leave out</label
        >`
      : nothing
  }
  ${
    draft.voicing === 'strings'
      ? stringField('Exactly these strings', instrumentOf(draft), draft.strings, 'many', (string) => {
          const others = draft.strings.filter((other) => other !== string);
          const strings = others.length < draft.strings.length ? others : [...others, string];
          change({ strings: [...strings].sort((a, b) => b - a) });
        })
      : nothing
  }
  ${lowestField(draft, naming, change)}`;
}

function familyKey({ family, strings }: Pick<Draft, 'family' | 'strings'>): string {
  return `${family} ${strings.join('-')}`;
}

function lowestField({ bass, root }: Draft, naming: NoteNaming, change: Change): TemplateResult {
  const rootText = formatNoteName(root);
  return choiceField(
    'Lowest note',
    {
      choices: [
        ['', 'any note of the chord'],
        [rootText, 'the root'],
      ],
      groups: [
        {
          words: 'Slash bass',
          choices: noteChoices(naming, bass).filter(([text]) => text !== rootText),
        },
      ],
    },
    bass ? formatNoteName(bass) : '',
    (text) => change({ bass: parseNoteName(text) ?? null }),
  );
}
