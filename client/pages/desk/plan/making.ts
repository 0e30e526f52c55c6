import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { levelName, levelsOf, type Level } from '../../../../shared/exercise/levels.ts';
import type { PlanEdit } from '../../../../shared/plans/edit.ts';
import type { Part, PlannedExercise } from '../../../../shared/plans/plan.ts';
import { standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import '../around/around.ts';
import { deskStyles } from '../desk-styles.ts';
import type { TakeEvent } from '../five/events.ts';
import '../five/make-five.ts';
import { onInstrument } from '../maker/changed.ts';
import { draftOf } from '../maker/draft-of.ts';
import { firstDraft, type Draft } from '../maker/draft.ts';
import '../maker/maker.ts';
import type { MadeEvent } from '../maker/maker.ts';
import { planned } from '../planned.ts';
import { titleOf } from './words.ts';

/** What is being made: new ones in a way, or one level of an exercise. */
export type Making =
  | { readonly kind: 'five' | 'around' | 'hand' }
  | { readonly kind: 'level'; readonly id: string; readonly level: Level };

/** Edits that a teacher made in the dialog, and what they do in words; prevented where they can't be made. */
export class EditsEvent extends Event {
  static readonly kind = 'desk-edits';
  readonly words: string;
  readonly edits: readonly PlanEdit[];
  constructor(words: string, edits: readonly PlanEdit[]) {
    super(EditsEvent.kind, { cancelable: true });
    this.words = words;
    this.edits = edits;
  }
}

/** The dialog in which exercises of a plan are made and changed. Whoever shows it takes it away on `close`. */
@customElement('desk-plan-making')
export class DeskPlanMaking extends LitElement {
  static override styles = [
    deskStyles,
    css`
      .five {
        max-width: min(60rem, calc(100vw - 2 * var(--space-2)));
      }
      /* It grows as cards come: what stands above them keeps its place. */
      .around {
        margin-top: var(--space-3);
        max-width: min(76rem, calc(100vw - 2 * var(--space-2)));
      }
    `,
  ];

  @property({ attribute: false }) making: Making = { kind: 'hand' };
  @property({ attribute: false }) exercises: readonly PlannedExercise[] = [];
  @property() instrument: InstrumentId = standardGuitar.id;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @query('dialog') private dialog?: HTMLDialogElement;
  /** Worked out once: the maker keeps what the teacher does to it. */
  private from: Draft | null = null;

  override firstUpdated() {
    this.dialog?.showModal();
  }

  override render() {
    return html`<dialog
      class=${this.making.kind}
      aria-labelledby="making"
      @close=${() => this.dispatchEvent(new Event('close'))}
    >
      <div class="stack">
        <h2 id="making">${this.heading()}</h2>
        ${this.content()}
      </div>
    </dialog>`;
  }

  private heading(): string {
    switch (this.making.kind) {
      case 'five':
        return 'Make me five';
      case 'around':
        return 'From a root';
      case 'hand':
        return 'Add an exercise';
      case 'level': {
        const { level } = this.making;
        const own = this.own();
        if (level === 1 || !own) return 'Change the exercise';
        return `${levelName(level)} level of ${titleOf(own, this.naming)}`;
      }
    }
  }

  private content(): TemplateResult {
    // From a root several are taken one after the other: nothing is left there.
    const leave = html`<button type="button" @click=${() => this.dialog?.close()}>
      ${this.making.kind === 'around' ? 'Back to the plan' : 'Leave it'}
    </button>`;
    switch (this.making.kind) {
      case 'five':
        return html`<desk-make-five
          .instrument=${this.instrument}
          .naming=${this.naming}
          .planned=${true}
          .existing=${this.exercises}
          @desk-take=${(event: TakeEvent) => this.take(event)}
        >
          ${leave}
        </desk-make-five>`;
      case 'around':
        return html`<desk-around
          .from=${this.start()}
          .naming=${this.naming}
          .take=${(exercises: readonly Exercise[]) => Promise.resolve(this.add(exercises, 'new'))}
        >
          ${leave}
        </desk-around>`;
      default:
        return html`<desk-maker
          .from=${this.start()}
          .ofGroup=${this.instrument}
          .naming=${this.naming}
          .words=${this.keepWords()}
          .timed=${this.making.kind !== 'level' || this.making.level === 1}
          @desk-made=${this.made}
        >
          ${leave}
        </desk-maker>`;
    }
  }

  private own(): PlannedExercise | undefined {
    const { making } = this;
    return making.kind === 'level' ? this.exercises.find(({ id }) => id === making.id) : undefined;
  }

  private keepWords(): string {
    const { making } = this;
    if (making.kind !== 'level') return 'Add to the plan';
    const own = this.own();
    return own && making.level > levelsOf(own).length ? 'Add the level' : 'Keep the change';
  }

  /** A level from what it is, a harder one from the first, a new exercise from the last one. */
  private start(): Draft {
    if (this.from) return this.from;
    const { making } = this;
    const own = this.own();
    const last = this.exercises.at(-1);
    if (own && making.kind === 'level') {
      const level = levelsOf(own)[making.level - 1] ?? own.exercise;
      return (this.from = draftOf(level, own.seconds));
    }
    return (this.from = last
      ? onInstrument(draftOf(last.exercise, last.seconds), this.instrument)
      : firstDraft(this.instrument));
  }

  private readonly made = ({ exercise, seconds }: MadeEvent): void => {
    const { making } = this;
    const own = this.own();
    if (making.kind !== 'level') {
      const made = planned(exercise, { seconds });
      this.send(`add ${titleOf(made, this.naming)}`, [{ kind: 'insert', planned: made, before: null }]);
    } else if (!own) {
      // Taken out at another Desk meanwhile: the plan says so.
      this.send('change the exercise', [{ kind: 'change', id: making.id, to: { exercise } }]);
    } else {
      const title = titleOf(own, this.naming);
      const { id, harder } = own;
      const { level } = making;
      if (level === 1) this.send(`change ${title}`, [{ kind: 'change', id, to: { exercise, seconds } }]);
      else {
        const to = { harder: [...harder.slice(0, level - 2), exercise, ...harder.slice(level - 1)] };
        const what = level - 2 < harder.length ? 'change' : 'add';
        this.send(`${what} the ${levelName(level).toLowerCase()} level of ${title}`, [
          { kind: 'change', id, to },
        ]);
      }
    }
    this.dialog?.close();
  };

  private take({ exercises, part, harderFor }: TakeEvent) {
    if (harderFor.length === 0) this.add(exercises, part);
    else {
      const edits = harderFor.flatMap(({ id, harder }, index): readonly PlanEdit[] => {
        const exercise = exercises[index];
        return exercise ? [{ kind: 'change', id, to: { harder: [...harder, exercise] } }] : [];
      });
      this.send(`add a harder level to ${counted(edits.length)}`, edits);
    }
    this.dialog?.close();
  }

  private add(exercises: readonly Exercise[], part: Part): boolean {
    const made = exercises.map((exercise) => planned(exercise, { part }));
    const [only] = made.length === 1 ? made : [];
    return this.send(
      `add ${only ? titleOf(only, this.naming) : counted(made.length)}`,
      made.map((one) => ({ kind: 'insert', planned: one, before: null })),
    );
  }

  private send(words: string, edits: readonly PlanEdit[]): boolean {
    return this.dispatchEvent(new EditsEvent(words, edits));
  }
}

function counted(count: number): string {
  return `${String(count)} ${count === 1 ? 'exercise' : 'exercises'}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-making': DeskPlanMaking;
  }
}
