import { html, nothing, type TemplateResult } from 'lit';
import type { Chart } from '../../../../shared/exercise/chart.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { usualSettings } from '../../../charts/chart-marks.ts';
import '../../../charts/chart-save.ts';
import { noWays, type Ways } from './events.ts';

/** What can be done with one card. */
export function cardButtons(
  exercise: Exercise,
  name: string,
  naming: NoteNaming,
  { ask, show, take, takeWords, keyHidden }: Ways,
): TemplateResult {
  const button = (words: string, act: () => void) =>
    html`<button type="button" aria-label=${`${words}: ${name}`} @click=${act}>${words}</button>`;
  return html`<div class="buttons">
    ${ask ? button('Ask', () => ask(exercise)) : nothing}
    ${show ? button('Show', () => show([exercise])) : nothing}
    ${take ? button(takeWords, () => take([exercise], name)) : nothing}
    ${keyHidden ? nothing : saveMenu([exercise], name, naming)}
  </div>`;
}

/** The charts as a file. */
export function saveMenu(charts: readonly Chart[], name: string, naming: NoteNaming): TemplateResult {
  return html`<rootcall-chart-save
    .charts=${charts}
    .settings=${{ ...usualSettings, naming }}
    .name=${name}
  ></rootcall-chart-save>`;
}

interface Walk {
  /** What is shown, and what goes into the plan, in the words that go on after the buttons' own. */
  readonly shown: string;
  readonly taken?: string;
  readonly show: (() => void) | null;
  readonly take?: (() => void) | null;
  readonly takeWords?: string;
  /** The first button is filled where it is the next step. */
  readonly filled?: boolean;
}

/** What can be done with several charts. */
export function walkButtons({
  shown,
  taken = shown,
  show,
  take,
  takeWords = noWays.takeWords,
  filled = false,
}: Walk): TemplateResult {
  const filledIf = (isFirst: boolean) => (filled && isFirst ? 'primary' : '');
  return html`<div class="buttons">
    ${show ? html`<button type="button" class=${filledIf(true)} @click=${show}>Show ${shown}</button>` : nothing}
    ${
      take
        ? html`<button
            type="button"
            class=${filledIf(show === null)}
            aria-label=${`${takeWords}: ${taken}`}
            @click=${take}
          >
            ${takeWords}
          </button>`
        : nothing
    }
  </div>`;
}

/** The charts that can be asked: all but a map. */
export function exercisesOf(charts: readonly Chart[]): readonly Exercise[] {
  return charts.flatMap((chart) => (chart.kind === 'map' ? [] : [chart]));
}
