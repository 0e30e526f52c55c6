import { html, nothing, type TemplateResult } from 'lit';
import { levelName, levelsUpTo, type Level } from '../../../shared/exercise/levels.ts';

/** The levels side by side, one press each; nothing where there is only one. */
export function levelRow(
  shown: Level,
  count: number,
  disabled: boolean,
  choose: (level: Level) => void,
): TemplateResult | typeof nothing {
  if (count < 2) return nothing;
  return html`<div class="levels" role="group" aria-label="Level">
    ${levelsUpTo(count).map(
      (level) =>
        html`<button
          type="button"
          aria-pressed=${level === shown ? 'true' : 'false'}
          ?disabled=${disabled}
          @click=${() => {
            if (level !== shown) choose(level);
          }}
        >
          ${levelName(level)}
        </button>`,
    )}
  </div>`;
}
