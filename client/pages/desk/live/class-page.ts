import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { DeskCommand } from '../../../../shared/protocol/commands.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { ConnectionController } from '../../../connection/connection-controller.ts';
import { connectDesk } from '../../../connection/socket.ts';
import { deskStyles } from '../desk-styles.ts';
import { NamingHere } from '../naming-here.ts';
import { homePath } from '../routes.ts';
import { AsRead } from './as-read.ts';
import './asking.ts';
import './bar.ts';
import './class-panel.ts';
import type { KeySettingsEvent } from './class-panel.ts';
import { classPageStyles } from './class-page-styles.ts';
import { DeskDrawer } from './drawer.ts';
import { PanelEvent, type CommandEvent, type Panel, type StepEvent } from './events.ts';
import './header.ts';
import type { DeskHeader } from './header.ts';
import { KeyPresses } from './key-presses.ts';
import { pedalPause, type KeyAction } from './keys.ts';
import './make-dialog.ts';
import './plan-column.ts';
import { loadPreferences, savePreferences, type Preferences } from './preferences.ts';
import './rest-centre.ts';
import './round-centre.ts';
import './shown.ts';
import { StepLine } from './step-line.ts';
import { actionOf, currentRound, nextStep, stepBack, type Step, type StepAction } from './steps.ts';
import './summary.ts';
import './turn-line.ts';
import { goesByTurns, nextTurn } from './turns.ts';

/** What has the keyboard to itself while it is open. */
const dialogs: ReadonlySet<Panel | null> = new Set<Panel>(['make', 'change', 'chart', 'class']);

/**
 * The live Desk. It owns the line to the class and what is open beside the round; its parts get the view and say
 * what they want.
 */
@customElement('desk-class')
export class DeskClass extends LitElement {
  static override styles = [deskStyles, classPageStyles];

  @property() classId = '';
  @state() private panel: Panel | null = null;
  /** What the maker starts from. */
  @state() private start: Exercise | null = null;
  @state() private drawerOpen = false;
  /** Why the last command was refused. */
  @state() private refusal = '';
  @state() private preferences: Preferences = loadPreferences();

  @query('desk-header') private header?: DeskHeader;

  private readonly live = new ConnectionController<'desk:view'>(this);
  /** Server time minus this device's, taken with each new view; and the view it was taken with. */
  private offset = 0;
  private timed: DeskView | null = null;
  private readonly naming = new NamingHere(this);
  private readonly asRead = new AsRead();
  private readonly line = new StepLine();
  private pedalAt = -Infinity;

  constructor() {
    super();
    new KeyPresses(this, {
      settings: () => this.preferences.keys,
      isCovered: () => this.view === null || dialogs.has(this.panel),
      press: (action, at) => this.follow(action, at),
    });
  }

  protected override willUpdate(properties: PropertyValues<this>) {
    if (properties.has('classId')) this.live.use(connectDesk(this.classId));
    const { view } = this;
    if (view && view !== this.timed) {
      // The summary is what counts at the end.
      if (view.closed && this.timed?.closed === false) this.drawerOpen = false;
      this.timed = view;
      this.offset = view.now - Date.now();
    }
  }

  protected override updated() {
    const { view } = this;
    if (!view) return;
    for (let step = this.line.next(view); step !== null; step = this.line.next(view)) this.take(step);
  }

  private get view(): DeskView | null {
    const sent = this.live.connection?.view('desk:view');
    return sent ? this.asRead.of(sent, this.naming.of(sent.naming)) : null;
  }

  override render() {
    const { view } = this;
    const refused = this.live.connection?.refusal;
    // A screen that was signed out shows nothing of the class any more.
    if (!view || refused)
      return html`<main class="opening">
        <h1>${refused ? 'This class can’t be opened' : 'Opening the class'}</h1>
        ${refused ? html`<p>${refused.message}</p>` : nothing}
        ${refused?.code === 'not-signed-in' ? html`<p><a href=${location.pathname} target="_self">Sign in</a></p>` : nothing}
        ${refused ? html`<p><a href=${homePath} target="_self">To your groups</a></p>` : nothing}
      </main>`;
    const { keys, hiding } = this.preferences;
    return html`
      <header>
        <desk-header
          .view=${view}
          .keys=${keys}
          .hiding=${hiding}
          .drawerOpen=${this.drawerOpen}
          @desk-panel=${this.onPanel}
          @desk-hide=${this.turnHiding}
        ></desk-header>
        ${this.notices()}
      </header>
      <div
        class=${classMap({ columns: true, 'with-drawer': this.drawerOpen })}
        @desk-command=${this.onCommand}
        @desk-panel=${this.onPanel}
      >
        <aside class=${classMap({ plan: true, over: this.panel === 'plan' })} aria-label="Plan">
          <div class="close"><button @click=${() => (this.panel = null)}>Close</button></div>
          <desk-plan-column .view=${view}></desk-plan-column>
        </aside>
        <main tabindex="0">${this.middle(view)}</main>
        ${
          this.drawerOpen
            ? html`<aside class="students" aria-label="Students">
                <desk-drawer .view=${view} .hiding=${hiding} .keys=${keys}></desk-drawer>
              </aside>`
            : nothing
        }
        ${this.dialog(view)}
      </div>
      ${
        view.closed
          ? nothing
          : html`<section aria-label="Steps of the round">
              <desk-bar
                .view=${view}
                .keys=${keys}
                @desk-step=${(event: StepEvent) => this.take(event.step)}
              ></desk-bar>
            </section>`
      }
    `;
  }

  private notices() {
    const { connection } = this.live;
    const lost = connection?.state === 'lost';
    const why = connection?.absence?.message ?? 'Out of touch. Trying again.';
    return html`<div role="status">${lost ? html`<p class="notice">${why}</p>` : nothing}</div>
      <div role="alert">
        ${
          this.refusal === ''
            ? nothing
            : html`<p class="notice refused">
                ${this.refusal} <button @click=${() => (this.refusal = '')}>Put away</button>
              </p>`
        }
      </div>`;
  }

  private middle(view: DeskView) {
    const { hiding } = this.preferences;
    if (view.closed) return html`<desk-summary .view=${view}></desk-summary>`;
    return html`
      <desk-asking .asking=${view.asking} .hiding=${hiding}></desk-asking>
      <desk-turn-line .view=${view} .hiding=${hiding} .keys=${this.preferences.keys}></desk-turn-line>
      <desk-shown .view=${view} .tapping=${this.panel === 'taps'}></desk-shown>
      ${
        currentRound(view)
          ? html`<desk-round-centre
              .view=${view}
              .hiding=${hiding}
              .offset=${this.offset}
            ></desk-round-centre>`
          : html`<desk-rest-centre .view=${view} .hiding=${hiding}></desk-rest-centre>`
      }
    `;
  }

  private dialog(view: DeskView) {
    switch (this.panel) {
      case 'make':
      case 'change':
      case 'chart':
        return html`<desk-make-dialog
          .view=${view}
          .purpose=${this.panel}
          .start=${this.start}
          .hiding=${this.preferences.hiding}
        ></desk-make-dialog>`;
      case 'class':
        return html`<desk-class-panel
          .view=${view}
          .keys=${this.preferences.keys}
          @desk-keys=${(event: KeySettingsEvent) => this.remember({ keys: event.keys })}
        ></desk-class-panel>`;
      case 'plan':
      case 'students':
      case 'taps':
      case null:
        return nothing;
    }
  }

  private readonly onPanel = ({ panel, start }: PanelEvent): void => {
    this.start = start;
    if (panel === 'students') this.turnDrawer();
    else this.panel = panel;
  };

  private turnDrawer() {
    this.panel = null;
    this.drawerOpen = !this.drawerOpen;
    const focused = this.shadowRoot?.activeElement;
    if (!this.drawerOpen && focused instanceof DeskDrawer) this.header?.focusStudents();
  }

  private readonly turnHiding = (): void => {
    this.remember({ hiding: !this.preferences.hiding });
  };

  private remember(change: Partial<Preferences>) {
    this.preferences = { ...this.preferences, ...change };
    savePreferences(this.preferences);
  }

  private readonly onCommand = ({ command }: CommandEvent): void => void this.send(command);

  private async send(command: DeskCommand): Promise<boolean> {
    const reply = await this.live.connection?.send(command);
    if (reply) this.refusal = reply.ok ? '' : reply.error.message;
    return reply?.ok ?? false;
  }

  /** A step by its name: now, or on the view that the step before it leads to. */
  private take(step: Step) {
    const { view } = this;
    if (!view) return;
    if (this.line.isFree(performance.now())) void this.act(step, actionOf(step, view), view);
    else this.line.wait(step);
  }

  private async act(step: Step | 'back', action: StepAction, view: DeskView): Promise<void> {
    if (action.kind === 'make') this.onPanel(new PanelEvent('make'));
    if (action.kind !== 'command') return;
    this.line.start(step, view);
    this.line.replied(await this.send(action.command), performance.now());
    // The view may have come before the answer.
    this.requestUpdate();
  }

  private follow(action: KeyAction, at: number) {
    const { view } = this;
    if (!view) return;
    switch (action) {
      case 'students':
        this.turnDrawer();
        return;
      case 'hide':
        this.turnHiding();
        return;
      case 'turn':
        if (goesByTurns(view)) void this.send({ kind: 'give-turn', studentId: nextTurn(view) });
        return;
      case 'sensible':
      case 'back': {
        // What a pedal means depends on the view: while a step is under way, a press belongs to that step.
        if (at - this.pedalAt < pedalPause || !this.line.isFree(performance.now())) return;
        this.pedalAt = at;
        const step = nextStep(view);
        if (action === 'back') void this.act('back', stepBack(view), view);
        else if (step) this.take(step);
        return;
      }
      default:
        this.take(action);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-class': DeskClass;
  }
}
