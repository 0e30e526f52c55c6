import { html, nothing, type TemplateResult } from 'lit';
import { cautionWords } from '../../components/sound/words.ts';
import '../../components/switch.ts';
import type { SwitchTurnedEvent } from '../../components/switch.ts';
import { whyListen } from './play-words.ts';

/** Beats a minute to choose from. */
const tempi = [50, 60, 70, 80, 90, 100, 120, 140] as const;

export const soundCheckLink = html`<a href="/sound">Sound check</a>`;

/** At the first wish: why, what travels, how to play in health. `turn`: whose turn it is, or ''. */
export function whyCard(turn: string, listen: (on: boolean) => void): TemplateResult {
  return html`<section class="why" aria-label="Before you play">
    ${turn === '' ? nothing : html`<p><strong>${turn}</strong></p>`}
    <p>${whyListen}</p>
    <p class="soft">${cautionWords}</p>
    <div class="choice">
      <rootcall-switch .on=${false} @switch-turned=${({ on }: SwitchTurnedEvent) => listen(on)}
        >Listen</rootcall-switch
      >
      ${soundCheckLink}
    </div>
  </section>`;
}

/** The level, from 0 to 1, stands in the switch: one sees that it hears. */
export function listenSwitch(
  on: boolean,
  level: number,
  disabled: boolean,
  listen: (on: boolean) => void,
): TemplateResult {
  return html`<button
    type="button"
    class="listen"
    role="switch"
    aria-checked=${on ? 'true' : 'false'}
    ?disabled=${disabled}
    @click=${() => listen(!on)}
  >
    Listen
    <span class="level"><span .style=${`transform: scaleX(${level.toFixed(2)})`}></span></span>
  </button>`;
}

/** For scales: in time with a click, if the student likes; `tempo` 0 is none. */
export function clickChoice(
  tempo: number,
  disabled: boolean,
  choose: (tempo: number) => void,
): TemplateResult {
  const onChange = ({ target }: Event) => {
    if (target instanceof HTMLSelectElement) choose(Number(target.value));
  };
  return html`<select class="click" aria-label="Click" @change=${onChange} ?disabled=${disabled}>
    <option value="0" .selected=${tempo === 0}>No click</option>
    ${tempi.map((each) => html`<option value=${each} .selected=${each === tempo}>Click ${each}</option>`)}
  </select>`;
}
