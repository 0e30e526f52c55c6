import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { StandSession } from '../connection/stand-session.ts';
import { browserStore } from '../lib/key-store.ts';
import type { ErrorReply } from '../../shared/protocol/errors.ts';
import type { ShowView, StandOwnView, StandSharedView } from '../../shared/protocol/views.ts';
import { atLevel } from '../../shared/exercise/levels.ts';
import type { Verdict } from '../../shared/exercise/verdict.ts';
import { assertNever } from '../../shared/lib/assert.ts';
import { instrumentById, standardGuitar } from '../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import type { SwitchTurnedEvent } from '../components/switch.ts';
import { baseStyle } from '../styles/base.ts';
import { stepText } from '../lib/step-text.ts';
import { revealedChart, shownChart, tappedChart } from './stand/chart.ts';
import type { AliasEvent, AnswerEvent, JoinEvent, LevelEvent, NamingEvent } from './stand/events.ts';
import './stand/join-form.ts';
import './stand/paper.ts';
import './stand/programme.ts';
import './stand/rest.ts';
import './stand/round.ts';
import type { RoundStage } from './stand/round.ts';
import type { ListenEvent, SaidEvent, WayEvent } from './stand/play-events.ts';
import { answerTo, stageAt, type StandAnswer } from './stand/answer.ts';
import { explanationOf, fetchExplanations, type RevealedStage } from './stand/explanation.ts';
import { Announcer } from './stand/announcer.ts';
import { goneWords, levelWords, standingWords } from './stand/words.ts';

/** A code in the page's address: /join/CODE. */
function codeInAddress(): string {
  return /^\/join\/([a-z]{1,12})\/?$/i.exec(location.pathname)?.[1]?.toUpperCase() ?? '';
}

/** How long the line may be lost before the page speaks of it, in milliseconds. */
const lostFor = 1500;
/** How long the first look at a class has the network to itself, in milliseconds. */
const firstLook = 500;

/** A student's screen. */
@customElement('rootcall-stand')
export class Stand extends LitElement {
  static override readonly styles = [
    baseStyle,
    css`
      :host {
        display: grid;
        grid-template: minmax(0, 1fr) / minmax(0, 1fr);
        height: 100vh;
        height: 100dvh;
        position: relative;
      }
      .screen {
        min-height: 0;
        overflow: hidden auto;
      }
      .network {
        align-items: center;
        background: var(--brass-wash);
        color: var(--ink);
        display: flex;
        font-size: var(--text-small);
        inset: 0 0 auto;
        justify-content: center;
        line-height: 1.2;
        min-height: 2.25rem;
        padding: 2px var(--margin);
        position: absolute;
        text-align: center;
        text-wrap: balance;
        z-index: 1;
      }
      @media (min-width: 360px) {
        .network {
          min-height: 2.625rem;
        }
      }
      /* Wide, the top row is full: the line goes below, and nothing above it moves. */
      @media (min-aspect-ratio: 6/5) {
        :host {
          grid-template-rows: minmax(0, 1fr) auto;
        }
        .network {
          min-height: 1.75rem;
          position: static;
        }
      }
      stand-paper {
        animation: print var(--crossfade) ease-out;
      }
      @keyframes print {
        from {
          opacity: 0;
        }
      }
    `,
  ];

  @state() private busy = false;
  @state() private joinRefusal: ErrorReply | null = null;
  @state() private lost = false;
  @state() private spoken = '';
  @state() private voided = false;
  /** Said on this page, and not kept: who opens it anew is asked before anything is heard. */
  @state() private listens = false;

  #session: StandSession | null = null;
  #lostTimer: ReturnType<typeof setTimeout> | undefined;
  #wordsTimer: ReturnType<typeof setTimeout> | undefined;
  readonly #announcer = new Announcer();
  #stageBefore: StandSharedView['stage'] | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    const storage = browserStore(() => localStorage);
    this.#session = new StandSession(storage, codeInAddress(), () => {
      this.#onNews();
    });
    this.#onNews();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#lostTimer);
    clearTimeout(this.#wordsTimer);
    this.#wordsTimer = undefined;
    this.#session?.close();
    this.#session = null;
  }

  protected override render(): TemplateResult {
    return html`<main class="screen">${this.#screen()}</main>
      ${this.lost ? html`<p class="network" role="status">${this.#networkWords()}</p>` : ''}
      <p class="visually-hidden" aria-live="polite">${this.spoken}</p>`;
  }

  #screen(): TemplateResult {
    const session = this.#session;
    if (!session?.seated)
      return html`<stand-join
        .code=${codeInAddress() || (session?.code ?? '')}
        .name=${session?.name ?? ''}
        .refusal=${this.joinRefusal ?? session?.refusal ?? null}
        .busy=${this.busy}
        @stand-join=${this.#onJoin}
      ></stand-join>`;
    const { own, shared, refusal } = session;
    if (refusal?.code === 'class-closed') return this.#over(shared);
    if (refusal) return this.#away('This device is not in the class', refusal.message);
    if (!own || (own.seat === 'in' && !shared)) return this.#away('One moment', 'Coming in.', false);
    switch (own.seat) {
      case 'asking':
        return this.#asking(own, shared);
      case 'gone':
        return this.#away(...goneWords(own.reason));
      case 'in':
        return shared ? this.#inClass(session, shared, own) : html``;
      default:
        return assertNever(own.seat);
    }
  }

  #inClass(session: StandSession, shared: StandSharedView, own: StandOwnView): TemplateResult {
    const { stage } = shared;
    switch (stage.kind) {
      case 'rest':
        return html`<stand-rest
          .shared=${shared}
          .own=${own}
          .leftHanded=${session.leftHanded}
          .naming=${session.naming}
          .voided=${this.voided}
          .way=${session.way}
          @stand-way=${this.#onWay}
          @switch-turned=${this.#onLeftHanded}
          @stand-naming=${this.#onNaming}
          @stand-leave=${this.#onLeave}
          @stand-alias=${this.#onAlias}
        ></stand-rest>`;
      case 'show':
        return this.#shown(session, shared, own, stage.show);
      case 'open':
      case 'held':
        return this.#round(session, shared, own, stage);
      case 'revealed':
        return this.#revealed(session, shared, own, stage);
      case 'over':
        return this.#over(shared);
      default:
        return assertNever(stage);
    }
  }

  #shown(session: StandSession, shared: StandSharedView, own: StandOwnView, show: ShowView): TemplateResult {
    const isChart = show.kind === 'chart';
    const instrument = instrumentById(isChart ? show.instrument : shared.instrument) ?? standardGuitar;
    const wording = isChart ? show.wording[this.#naming] : { title: 'On the neck now', detail: '' };
    return html`<stand-paper
      .group=${shared.group}
      .student=${own.name}
      .heading=${wording.title}
      .words=${wording.detail}
      .above=${isChart && show.step ? stepText(show.step) : ''}
      .chart=${isChart ? shownChart(show.notes, show.silent) : tappedChart(instrument, show.places)}
      .instrument=${instrument}
      .leftHanded=${session.leftHanded}
    ></stand-paper>`;
  }

  #revealed(
    session: StandSession,
    shared: StandSharedView,
    own: StandOwnView,
    stage: RevealedStage,
  ): TemplateResult {
    const { answer, level } = answerTo(session, own, stage);
    const { task, reveal } = stageAt(stage, level);
    const verdict: Verdict | null = own.accepted ? { kind: 'right' } : own.verdict;
    const instrument = instrumentById(task.instrument) ?? standardGuitar;
    const words = explanationOf(reveal, answer, own, this.#naming);
    const { title, detail } = task.wording[this.#naming];
    return html`<stand-paper
      .group=${shared.group}
      .student=${own.name}
      .above=${`${levelWords(level, stage.harder.length + 1)}${title}. ${detail}`}
      .heading=${words.heading}
      .words=${words.text}
      .tryThis=${words.tryThis}
      .right=${verdict?.kind === 'right'}
      .chart=${revealedChart(instrument, reveal, answer, verdict, this.#naming)}
      .instrument=${instrument}
      .leftHanded=${session.leftHanded}
    ></stand-paper>`;
  }

  #round(
    session: StandSession,
    shared: StandSharedView,
    own: StandOwnView,
    stage: RoundStage,
  ): TemplateResult {
    const { answer, done, standing, level, counting } = answerTo(session, own, stage);
    return html`<stand-round
      .group=${shared.group}
      .student=${own.name}
      .stage=${{ ...stageAt(stage, level), seconds: own.seconds ?? stage.seconds }}
      .level=${level}
      .counting=${counting}
      .answer=${answer}
      .naming=${this.#naming}
      .done=${done}
      .standing=${standing}
      .timeUp=${own.timeUp}
      .leftHanded=${session.leftHanded}
      .way=${session.way}
      .may=${own.playing}
      .listens=${this.listens}
      .wantsMidi=${session.wantsMidi}
      @stand-way=${this.#onWay}
      @stand-said=${(event: SaidEvent) => (this.spoken = event.words)}
      @stand-listen=${(event: ListenEvent) => (this.listens = event.on)}
      @stand-answer=${(event: AnswerEvent) => {
        // What is heard is said once it has come to an end.
        if (event.words !== '') this.spoken = event.words;
        session.place(stage.roundId, atLevel(event.answer, level), event.done);
      }}
      @stand-level=${(event: LevelEvent) => {
        session.chooseLevel(stage.roundId, event.level);
      }}
    ></stand-round>`;
  }

  #asking(own: StandOwnView, shared: StandSharedView | null): TemplateResult {
    return html`<stand-programme
      resting
      .group=${shared?.group ?? 'Rootcall'}
      .school=${shared?.school ?? ''}
      .heading=${`One moment,\n${own.name}`}
      .words=${
        own.reason === 'move'
          ? 'This name is in use on another device. Your teacher can move it here.'
          : 'Your teacher will let you in.'
      }
    >
      <button type="button" @click=${this.#onLeave}>Another name</button>
    </stand-programme>`;
  }

  #over(shared: StandSharedView | null): TemplateResult {
    return this.#away('The class is over', 'Thank you for playing.', true, shared);
  }

  #away(
    heading: string,
    words: string,
    canJoin = true,
    shared: StandSharedView | null = null,
  ): TemplateResult {
    return html`<stand-programme
      .group=${shared?.group ?? 'Rootcall'}
      .school=${shared?.school ?? ''}
      .heading=${heading}
      .words=${words}
    >
      ${shared ? html`<a class="button" href=${`/charts/${shared.classId}`}>The charts of this class</a>` : ''}
      ${
        canJoin
          ? html`<button type="button" @click=${() => this.#session?.giveUpSeat()}>Join a class</button>`
          : ''
      }
    </stand-programme>`;
  }

  #networkWords(): string {
    const answer = this.#answer();
    return answer?.standing === 'kept'
      ? standingWords('kept')
      : (this.#session?.absence?.message ?? 'The network is away. This page comes back by itself.');
  }

  /** The student's own note names, else the class's. */
  get #naming(): NoteNaming {
    return this.#session?.naming ?? this.#session?.shared?.naming ?? 'english';
  }

  #answer(): StandAnswer | null {
    const { own, shared } = this.#session ?? {};
    const stage = shared?.stage;
    if (!this.#session || !own || (stage?.kind !== 'open' && stage?.kind !== 'held')) return null;
    return answerTo(this.#session, own, stage);
  }

  #onNews(): void {
    const session = this.#session;
    const lost = session?.seated === true && session.state === 'lost' && session.refusal === null;
    if (!lost) {
      clearTimeout(this.#lostTimer);
      this.#lostTimer = undefined;
      this.lost = false;
    } else {
      this.#lostTimer ??= setTimeout(() => {
        this.lost = true;
      }, lostFor);
    }
    this.#follow();
    if (session?.shared) this.#fetchWords(session.shared);
    this.requestUpdate();
  }

  /** What a reveal says comes after the first look, unless it is wanted now. If it fails, the next news asks again. */
  #fetchWords({ stage }: StandSharedView): void {
    this.#wordsTimer ??= setTimeout(
      async () => {
        if (await fetchExplanations()) this.#onNews();
        else this.#wordsTimer = undefined;
      },
      stage.kind === 'revealed' ? 0 : firstLook,
    );
  }

  /** Speaks of what has changed, and marks a void: from open, nothing else leads to the rest. */
  #follow(): void {
    const { own = null, shared = null } = this.#session ?? {};
    const stage = shared?.stage ?? null;
    if (stage !== this.#stageBefore) {
      this.voided = stage?.kind === 'rest' && (this.voided || this.#stageBefore?.kind === 'open');
      this.#stageBefore = stage;
    }
    this.spoken =
      (this.#session && this.#announcer.next(this.#session, shared, own, this.#naming)) ?? this.spoken;
  }

  readonly #onJoin = async (event: JoinEvent): Promise<void> => {
    if (this.busy) return;
    this.busy = true;
    this.joinRefusal = null;
    this.joinRefusal = (await this.#session?.join(event.code, event.name)) ?? null;
    this.busy = false;
  };

  readonly #onLeave = (): void => {
    void this.#session?.leave();
  };

  readonly #onAlias = (event: AliasEvent): void => {
    void this.#session?.setAlias(event.alias);
  };

  readonly #onWay = ({ way }: WayEvent): void => {
    if (this.#session) this.#session.way = way;
  };

  readonly #onLeftHanded = (event: SwitchTurnedEvent): void => {
    if (this.#session) this.#session.leftHanded = event.on;
  };

  readonly #onNaming = (event: NamingEvent): void => {
    if (this.#session) this.#session.naming = event.naming;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-stand': Stand;
  }
}
