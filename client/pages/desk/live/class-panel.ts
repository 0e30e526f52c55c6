import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { ClassSettings } from '../../../../shared/protocol/commands.ts';
import type { PlanId } from '../../../../shared/protocol/ids.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import type { SwitchTurnedEvent } from '../../../components/switch.ts';
import '../../../components/switch.ts';
import { api, type Plan } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { namingField } from '../naming-field.ts';
import { groupPath } from '../routes.ts';
import { CommandEvent, PanelEvent } from './events.ts';
import './invite.ts';
import './key-letters.ts';
import type { LettersEvent } from './key-letters.ts';
import { usualKeys, type KeySettings } from './keys.ts';

/** The teacher turned the keys on or off. */
export class KeySettingsEvent extends Event {
  static readonly kind = 'desk-keys';
  readonly keys: KeySettings;
  constructor(keys: KeySettings) {
    super(KeySettingsEvent.kind);
    this.keys = keys;
  }
}

const scoreWords: Readonly<Record<ClassSettings['score'], string>> = {
  class: 'the class with its own last time',
  teams: 'teams, by share right',
  off: 'nothing',
};

const playingWords: Readonly<Record<NonNullable<ClassSettings['playing']>, string>> = {
  off: 'off: guitars sound in one room',
  turns: 'by turns: one after another in one room',
  on: 'on: everybody alone, as on a call',
};

/** Everything about the class that isn't a round: the way in, settings, keys, the end. */
@customElement('desk-class-panel')
export class DeskClassPanel extends LitElement {
  static override styles = [
    deskStyles,
    css`
      .head {
        display: flex;
        gap: var(--space-4);
        justify-content: space-between;
      }
      section {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ attribute: false }) keys: KeySettings = usualKeys;
  @state() private plans: readonly Plan[] = [];
  @state() private closing = false;
  @query('dialog') private dialog?: HTMLDialogElement;

  override firstUpdated() {
    this.dialog?.showModal();
    void this.loadPlans();
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    return html`<dialog
      aria-labelledby="class-title"
      @close=${() => this.dispatchEvent(new PanelEvent(null))}
    >
      <div class="stack">
        <div class="head">
          <h2 id="class-title">Class of <bdi>${view.group}</bdi></h2>
          <button @click=${() => this.dialog?.close()}>Back</button>
        </div>
        ${view.closed ? nothing : this.wayIn(view)} ${view.closed ? nothing : this.settings(view)}
        ${this.keySettings()} ${view.closed ? nothing : this.end()}
        <p><a href=${groupPath(view.groupId)}>To the group’s page</a></p>
      </div>
    </dialog>`;
  }

  private wayIn(view: DeskView) {
    return html`<section aria-label="The way in">
      <desk-invite .code=${view.code}></desk-invite>
      <p>
        <a href=${`/board/${view.code}`} target="_blank" rel="noopener">Open the Board in a new window</a>
      </p>
    </section>`;
  }

  private settings(view: DeskView) {
    const { settings } = view;
    return html`<hr />
      <section aria-label="Settings of this class">
        <label
          >Plan
          <select @change=${this.usePlan}>
            <option value="" .selected=${view.plan === null}>No plan</option>
            ${this.plans.map(
              (plan) =>
                html`<option value=${plan.id} .selected=${plan.id === view.plan?.id}>${plan.title}</option>`,
            )}
          </select></label
        >
        <label
          >The Board’s score compares
          <select
            @change=${(event: Event) => this.set({ ...settings, score: valueOf(event) as ClassSettings['score'] })}
          >
            ${Object.entries(scoreWords).map(
              ([score, words]) =>
                html`<option value=${score} .selected=${score === settings.score}>${words}</option>`,
            )}
          </select></label
        >
        <label
          >Answering by playing
          <select
            @change=${(event: Event) =>
              this.set({ ...settings, playing: valueOf(event) as keyof typeof playingWords })}
          >
            ${Object.entries(playingWords).map(
              ([playing, words]) =>
                html`<option value=${playing} .selected=${playing === (settings.playing ?? 'off')}>
                  ${words}
                </option>`,
            )}
          </select>
          <span class="soft small"
            >A microphone hears every guitar in the room. What it hears stays on the student’s device; only
            notes are sent. An instrument on MIDI may always play.</span
          ></label
        >
        <rootcall-switch
          .on=${settings.locked ?? false}
          @switch-turned=${(event: SwitchTurnedEvent) => this.set({ ...settings, locked: event.on })}
          >Lock the class: nobody new comes in or asks to; who is in may come back</rootcall-switch
        >
        <rootcall-switch
          .on=${settings.autoAdmit}
          @switch-turned=${(event: SwitchTurnedEvent) => this.set({ ...settings, autoAdmit: event.on })}
          >Let in new names without asking me</rootcall-switch
        >
        <rootcall-switch
          .on=${settings.ranking}
          @switch-turned=${(event: SwitchTurnedEvent) => this.set({ ...settings, ranking: event.on })}
          >At the end list individuals, by the alias they chose</rootcall-switch
        >
      </section>`;
  }

  private keySettings() {
    return html`<hr />
      <section aria-label="This Desk">${namingField()}</section>
      <hr />
      <section aria-label="Keys">
        <rootcall-switch
          .on=${this.keys.letters}
          @switch-turned=${(event: SwitchTurnedEvent) => this.setKeys({ ...this.keys, letters: event.on })}
          >Single keys</rootcall-switch
        >
        <desk-key-letters
          .letters=${this.keys.letterOf}
          @desk-letters=${(event: LettersEvent) => this.setKeys({ ...this.keys, letterOf: event.letters })}
        ></desk-key-letters>
        <rootcall-switch
          .on=${this.keys.pedal}
          @switch-turned=${(event: SwitchTurnedEvent) => this.setKeys({ ...this.keys, pedal: event.on })}
          >Page Up and Page Down, as a page-turn pedal sends them</rootcall-switch
        >
        <p class="soft small">
          Page Down does the filled step. Page Up goes one step back and never takes answers away: a held
          round opens again, a revealed one is asked again, at rest the plan goes one back.
        </p>
      </section>`;
  }

  private end() {
    return html`<hr />
      <section aria-label="The end">
        ${
          this.closing
            ? html`<p role="alert">
                  Close the class for everybody? The code stops working; all answers are kept.
                </p>
                <div class="row">
                  <button class="primary" @click=${this.close}>Close the class</button>
                  <button @click=${() => (this.closing = false)}>Keep it open</button>
                </div>`
            : html`<div><button @click=${() => (this.closing = true)}>Close the class…</button></div>`
        }
      </section>`;
  }

  private async loadPlans() {
    const reply = this.view && (await api.group(this.view.groupId));
    if (reply?.ok) this.plans = reply.value.plans;
  }

  private usePlan(event: Event) {
    const value = valueOf(event);
    this.send({ kind: 'use-plan', planId: value === '' ? null : (value as PlanId) });
  }

  private set(settings: ClassSettings) {
    this.send({ kind: 'set-class', settings });
  }

  private setKeys(keys: KeySettings) {
    this.dispatchEvent(new KeySettingsEvent(keys));
  }

  private close() {
    this.send({ kind: 'close' });
    this.dialog?.close();
  }

  private send(command: CommandEvent['command']) {
    this.dispatchEvent(new CommandEvent(command));
  }
}

function valueOf(event: Event): string {
  return event.target instanceof HTMLSelectElement ? event.target.value : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-class-panel': DeskClassPanel;
  }
}
