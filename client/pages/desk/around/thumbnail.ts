import { html, type TemplateResult } from 'lit';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { KeyNote } from '../../../../shared/exercise/verdict.ts';
import { instrumentById, standardGuitar } from '../../../../shared/theory/fretboard.ts';
import { keyNote, silentStrings } from '../../../fretboard/key-notes.ts';
import '../../../fretboard/neck.ts';
import { chartView } from '../chart-notes.ts';
import { placesInWords } from '../charts.ts';

/**
 * A chart whose notes are known already: working out the key of every card again would hold the page up. Its place is
 * kept until it is drawn.
 */
export function thumbnail(
  exercise: Exercise,
  key: readonly KeyNote[],
  name: string,
  drawn: boolean,
): TemplateResult {
  const neck = instrumentById(exercise.instrument) ?? standardGuitar;
  const notes = [...key.map(keyNote), ...silentStrings(neck, exercise, key)];
  const view = chartView(notes);
  if (!drawn) return html`<div class=${view}></div>`;
  return html`<rootcall-neck
    class=${view}
    material="ink"
    .view=${view}
    .instrument=${neck}
    .notes=${notes}
    .label=${`Chart: ${name}. ${placesInWords(key.map(({ place }) => place))}`}
  ></rootcall-neck>`;
}
