import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { instrumentById } from '../../../shared/theory/fretboard.ts';
import { tuningIds, tuningRow } from '../../../shared/theory/instrument-id.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import '../../components/switch.ts';
import type { SwitchTurnedEvent } from '../../components/switch.ts';
import { ExploringEvent, SettingsEvent, type Stage } from './events.ts';
import { exploreStyles } from './explore-style.ts';
import { field } from './field.ts';
import { exploreHeader } from './header.ts';
import type { Settings } from './settings.ts';

const namings: readonly (readonly [NoteNaming, string])[] = [
  ['english', 'C D E … B'],
  ['german', 'C D E … H (German)'],
  ['solfege', 'do re mi'],
];

/** Instrument, hand, note names: kept on this device. */
@customElement('explore-settings')
export class ExploreSettings extends LitElement {
  static override readonly styles = [
    ...exploreStyles,
    css`
      .settings {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr) auto;
        min-height: 100%;
      }
      .matter {
        align-content: safe center;
        display: grid;
        gap: var(--space-4);
        justify-self: center;
        max-width: 26rem;
        padding: var(--space-3) var(--margin);
        width: 100%;
      }
      .bar {
        bottom: 0;
        justify-content: center;
        position: sticky;
      }
      .bar .primary {
        max-width: 26rem;
      }
    `,
  ];

  @property({ attribute: false }) settings: Settings | null = null;
  /** Where one came from. */
  @property() back: Stage = 'root';

  protected override render(): TemplateResult | typeof nothing {
    const { settings } = this;
    if (!settings) return nothing;
    return html`<div class="settings">
      ${exploreHeader(nothing)}
      <div class="matter">
        <h1 tabindex="-1">Settings</h1>
        <hr />
        ${field({
          label: 'Instrument and tuning',
          choices: tuningIds.map((id) => [id, tuningRow(id).name]),
          chosen: settings.instrument.id,
          choose: (id) => {
            const instrument = instrumentById(id);
            if (instrument) this.#set({ instrument });
          },
        })}
        ${field({
          label: 'Note names',
          choices: namings,
          chosen: settings.naming,
          choose: (value) => {
            const [naming] = namings.find(([other]) => other === value) ?? ['english'];
            this.#set({ naming });
          },
        })}
        ${field({
          label: 'In the marks of a chart',
          choices: [
            ['degrees', 'degrees: R ♭3 5'],
            ['notes', 'note names'],
          ],
          chosen: settings.labels,
          choose: (value) => this.#set({ labels: value === 'notes' ? 'notes' : 'degrees' }),
        })}
        <rootcall-switch
          .on=${settings.leftHanded}
          @switch-turned=${({ on }: SwitchTurnedEvent) => this.#set({ leftHanded: on })}
          >Left-handed neck</rootcall-switch
        >
        <p class="small soft">Kept on this device.</p>
      </div>
      <div class="bar">
        <button
          type="button"
          class="primary"
          @click=${() => this.dispatchEvent(new ExploringEvent({ stage: this.back }))}
        >
          Back
        </button>
      </div>
    </div>`;
  }

  #set(change: Partial<Settings>): void {
    this.dispatchEvent(new SettingsEvent(change));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'explore-settings': ExploreSettings;
  }
}
