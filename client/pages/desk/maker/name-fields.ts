import { html, type TemplateResult } from 'lit';
import type { NameExercise } from '../../../../shared/exercise/exercise.ts';
import { stringNumbers, type Fret, type StringNumber } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { PlaceToggledEvent } from '../../../fretboard/events.ts';
import '../tap-neck.ts';
import { choiceField } from './choice-field.ts';
import { instrumentOf, namedPlace, type Draft } from './draft.ts';
import { rootField } from './root-field.ts';
import { fretWords } from './strictness-field.ts';
import { namedWords } from './words.ts';

/** A place to be named: tapped on the neck, or by string and fret. */
export function nameFields(
  draft: Draft,
  naming: NoteNaming,
  change: (change: Partial<Draft>) => void,
): TemplateResult {
  const neck = instrumentOf(draft);
  return html`<div class="pair">
      ${choiceField('Ask for', { choices: Object.entries(namedWords) }, draft.named, (value) =>
        change({ named: value as NameExercise['wanted'] }),
      )}
      ${draft.named === 'note' ? '' : rootField('Root', draft.root, naming, (root) => change({ root }))}
    </div>
    <desk-tap-neck
      small
      .instrument=${draft.instrument}
      .places=${[namedPlace(draft)]}
      label="The place to be named"
      @place-toggled=${({ place }: PlaceToggledEvent) =>
        change({ rootString: place.string, namedFret: place.fret })}
    ></desk-tap-neck>
    <div class="pair">
      ${choiceField(
        'String',
        { choices: stringNumbers(neck).map((string) => [String(string), String(string)]) },
        String(draft.rootString),
        (value) => change({ rootString: Number(value) as StringNumber }),
      )}
      ${choiceField(
        'Fret',
        {
          choices: Array.from({ length: neck.fretCount + 1 }, (_, fret) => [String(fret), fretWords(fret)]),
        },
        String(draft.namedFret),
        (value) => change({ namedFret: Number(value) as Fret }),
      )}
    </div>`;
}
