import { html, nothing, type TemplateResult } from 'lit';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import '../charts.ts';
import { likelyText } from './likely-text.ts';

interface LineWays {
  readonly keyHidden: boolean;
  /** Null where nothing can be asked at once. */
  readonly ask: (() => void) | null;
  readonly replace: () => void;
  readonly leaveOut: () => void;
}

/** One made exercise: what it asks, where slips would land, its key, and what can be done with it. */
export function fiveLine(exercise: Exercise, naming: NoteNaming, ways: LineWays): TemplateResult {
  const { title, detail } = wordingOf(exercise, naming);
  const likely = ways.keyHidden ? '' : likelyText(exercise);
  const button = (words: string, label: string, act: () => void) =>
    html`<button type="button" aria-label=${label} @click=${act}>${words}</button>`;
  return html`<li>
    <div>
      <h3>${title}</h3>
      <p class="soft small">${detail}</p>
      ${likely === '' ? nothing : html`<p class="small">${likely}</p>`}
    </div>
    ${
      ways.keyHidden
        ? html`<span></span>`
        : html`<desk-key-chart .exercise=${exercise} .naming=${naming}></desk-key-chart>`
    }
    <div class="buttons">
      ${ways.ask ? button('Ask it now', `Ask it now: ${title}`, ways.ask) : nothing}
      ${button('Another', `Another for ${title}`, ways.replace)}
      ${button('Leave out', `Leave out ${title}`, ways.leaveOut)}
    </div>
  </li>`;
}
