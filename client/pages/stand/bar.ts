import { html, nothing, type TemplateResult } from 'lit';
import { isEmpty, type Answer } from '../../../shared/exercise/answer.ts';
import type { Input } from '../../../shared/exercise/input.ts';
import type { Level } from '../../../shared/exercise/levels.ts';
import { sign } from '../../components/signs.ts';
import { heardCount } from './heard-answer.ts';
import { countingWords, heldWords, markingWords, openWords, standingWord, type Standing } from './words.ts';

/** What lies under the thumb while a round is open, and what stands there instead when it is not. */
export interface Bar {
  readonly input: Input;
  readonly answer: Answer;
  /** Playing is what it waits for: what is heard is counted, from none on. */
  readonly playing: boolean;
  readonly standing: Standing;
  /** The level whose answer counts while nothing is given at this one. */
  readonly counting: Level | null;
  /** `reminded`: Done was pressed while something that is asked for is missing. */
  readonly state: 'open' | 'marking' | 'reminded' | 'done' | 'held' | 'time-up';
  readonly onClear: () => void;
  readonly onAgain: () => void;
  readonly onTakeBack: () => void;
  readonly onDone: () => void;
  readonly onChange: () => void;
}

export function roundBar(bar: Bar): TemplateResult {
  switch (bar.state) {
    case 'open':
      return openBar(bar);
    case 'marking':
      return html`<span class="report-sign">${sign('lozenge')}</span>
        <p class="report">${markingWords(bar.answer)}</p>
        <button type="button" class="primary" @click=${bar.onDone}>Done</button>`;
    case 'reminded':
      // Says what is still open, and stops nobody.
      return html`<p class="report"><b>Still open:</b> ${openWords(bar.input, bar.answer)}.</p>
        <button type="button" class="primary" @click=${bar.onDone}>Done anyway</button>`;
    case 'done':
      return doneBar(bar);
    case 'held':
    case 'time-up':
      return html`<span class="report-sign">${sign('fermata')}</span>
        <p class="report">
          <b>${bar.state === 'held' ? 'Held. Eyes up.' : 'Time is up.'}</b>
          ${heldWords(bar.standing, bar.input.kind, bar.answer)}
        </p>`;
  }
}

function openBar(bar: Bar): TemplateResult {
  const { input, answer, standing, counting, onClear, onAgain, onTakeBack, onDone } = bar;
  const isPlaces = input.kind === 'places';
  const isHeard = answer.heard !== undefined;
  const count = answer.places.length;
  const counted =
    isHeard || (bar.playing && count === 0)
      ? `${String(heardCount(answer))} heard`
      : `${String(count)} placed`;
  return html`${
      isHeard
        ? html`<button type="button" @click=${onAgain}>Again</button>`
        : counting === null
          ? html`<button type="button" ?disabled=${isEmpty(answer) && !answer.finger} @click=${onClear}>
              Clear
            </button>`
          : html`<p class="report">${countingWords(counting, input.kind)}</p>`
    }
    ${
      isPlaces && input.ordered && counting === null && !isHeard
        ? html`<button type="button" class="take-back" ?disabled=${count === 0} @click=${onTakeBack}>
            Take back
          </button>`
        : nothing
    }
    ${
      standing === 'nothing'
        ? nothing
        : html`<span class="standing">
            ${sign(standing === 'placed' || standing === 'kept' ? 'placed' : 'sent')}
            ${standing === 'placed' && isHeard ? 'heard' : standing === 'placed' && !isPlaces ? 'named' : standingWord[standing]}
          </span>`
    }
    <button type="button" class="primary" ?disabled=${isEmpty(answer)} @click=${onDone}>
      Done ${isPlaces ? html`<span class="soft">${counted}</span>` : nothing}
    </button>`;
}

function doneBar({ standing, onChange }: Bar): TemplateResult {
  const unsent = standing === 'placed' || standing === 'kept';
  return html`<span class="report-sign">${sign(unsent ? 'placed' : 'sent')}</span>
    <p class="report">
      <b>${standing === 'safe' ? 'Done and safe.' : 'Done.'}</b>
      <span class="more">
        ${standing === 'kept' ? 'Kept on this phone.' : 'Yours to change until the hold.'}
      </span>
    </p>
    <button type="button" class="change" @click=${onChange}>Change</button>`;
}
