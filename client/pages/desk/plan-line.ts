import { html, nothing, type TemplateResult } from 'lit';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { instrumentById, type InstrumentId } from '../../../shared/theory/fretboard.ts';
import { instrumentName } from '../../../shared/theory/instrument.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import type { PlannedExercise } from '../../../shared/plans/plan.ts';
import './charts.ts';
import { limitWords } from './maker/words.ts';

export interface LineWays {
  readonly move: (from: number, to: number) => void;
  readonly change: (index: number) => void;
  readonly take: (index: number) => void;
}

/** One exercise of a plan: what it asks, where it differs from the group, its key, and what can be done with it. */
export function planLine(
  { exercise, seconds }: PlannedExercise,
  index: number,
  count: number,
  group: { readonly instrument: InstrumentId; readonly naming: NoteNaming },
  { move, change, take }: LineWays,
): TemplateResult {
  const { naming } = group;
  const { title, detail } = wordingOf(exercise, naming);
  const neck = instrumentById(exercise.instrument);
  const apart = [
    seconds === null ? '' : limitWords(seconds),
    neck && exercise.instrument !== group.instrument ? instrumentName(neck, naming) : '',
  ].filter((part) => part !== '');
  return html`<li>
    <span class="soft" aria-hidden="true">${index + 1}</span>
    <div>
      <h2>${title}</h2>
      <p class="soft">${detail}</p>
      ${apart.length === 0 ? nothing : html`<p class="small">${apart.join(' · ')}</p>`}
    </div>
    <desk-key-chart .exercise=${exercise} .naming=${naming}></desk-key-chart>
    <div class="buttons">
      ${arrow('↑', `Move ${title} up`, index > 0, () => move(index, index - 1))}
      ${arrow('↓', `Move ${title} down`, index < count - 1, () => move(index, index + 1))}
      <button @click=${() => change(index)} aria-label=${`Change ${title}`}>Change</button>
      <button @click=${() => take(index)} aria-label=${`Take out ${title}`}>Take out</button>
    </div>
  </li>`;
}

function arrow(words: string, label: string, can: boolean, act: () => void): TemplateResult {
  return html`<button
    class="narrow"
    aria-label=${label}
    aria-disabled=${!can}
    @click=${() => {
      if (can) act();
    }}
  >
    ${words}
  </button>`;
}
