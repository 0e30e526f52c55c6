import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { instrumentName } from '../../../shared/theory/instrument.ts';
import { instrumentById, standardGuitar, type Instrument } from '../../../shared/theory/fretboard.ts';
import { tuningIds, tuningRow } from '../../../shared/theory/instrument-id.ts';
import '../../components/mark.ts';
import '../../components/sound/sound-check.ts';
import { Device } from '../../connection/device.ts';
import { browserStore } from '../../lib/key-store.ts';
import { baseStyle } from '../../styles/base.ts';
import { readingPageStyle } from '../../styles/reading-page.ts';

const storage = browserStore(() => localStorage);
/** Together with the page for exploring. */
const instrumentKey = 'rootcall.explore.instrument';

/** Sound check: before a class that is answered by playing, and whenever a guitar wants tuning. */
@customElement('rootcall-sound')
export class SoundPage extends LitElement {
  static override readonly styles = [
    baseStyle,
    readingPageStyle,
    css`
      label {
        display: grid;
        gap: var(--space-1);
        max-width: 26rem;
      }
      select {
        font-weight: var(--weight-text);
        min-width: 0;
        width: 100%;
      }
      nav {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-5);
      }
      nav a {
        align-items: center;
        color: inherit;
        display: inline-flex;
        min-height: var(--target);
      }
    `,
  ];

  @state() private instrument: Instrument = asked() ?? standardGuitar;
  readonly #naming = new Device(storage).naming ?? 'english';

  protected override render(): TemplateResult {
    return html`<header>
        <a href="/"><rootcall-mark></rootcall-mark>Rootcall</a>
      </header>
      <main>
        <h1>Sound check</h1>
        <hr />
        <label
          >Instrument and tuning
          <select @change=${this.#onInstrument}>
            ${choices(this.instrument).map(
              ([id, name]) =>
                html`<option value=${id} .selected=${id === this.instrument.id}>${name}</option>`,
            )}
          </select></label
        >
        <rootcall-sound-check .instrument=${this.instrument} .naming=${this.#naming}></rootcall-sound-check>
        <nav aria-label="Elsewhere">
          <a href="/check">Check this network</a>
          <a href="/explore">Explore the neck</a>
        </nav>
      </main>`;
  }

  readonly #onInstrument = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    const chosen = instrumentById(event.target.value);
    if (!chosen) return;
    this.instrument = chosen;
    storage.set(instrumentKey, chosen.id);
  };
}

/** That of the class one comes from, as in `/sound?instrument=ukulele`, or the last one that was chosen here. */
function asked(): Instrument | undefined {
  const inAddress = new URLSearchParams(location.search).get('instrument');
  return instrumentById(inAddress ?? '') ?? instrumentById(storage.get(instrumentKey) ?? '');
}

function choices(instrument: Instrument): readonly (readonly [string, string])[] {
  const table = tuningIds.map((id) => [id, tuningRow(id).name] as const);
  const isOfTable = table.some(([id]) => id === instrument.id);
  return isOfTable ? table : [[instrument.id, instrumentName(instrument)], ...table];
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-sound': SoundPage;
  }
}
