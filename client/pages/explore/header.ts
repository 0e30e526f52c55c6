import { html, type nothing, type TemplateResult } from 'lit';
import '../../components/mark.ts';
import { ExploringEvent } from './events.ts';

/** The way home, where one is, and the settings. */
export function exploreHeader(right: TemplateResult | typeof nothing = settingsButton()): TemplateResult {
  return html`<header>
    <a href="/" aria-label="Rootcall"><rootcall-mark></rootcall-mark><span>Rootcall</span></a>
    <span class="where">The neck</span>
    ${right}
  </header>`;
}

function settingsButton(): TemplateResult {
  return html`<button
    type="button"
    class="plain"
    @click=${(event: Event) => event.target?.dispatchEvent(new ExploringEvent({ stage: 'settings' }))}
  >
    Settings
  </button>`;
}
