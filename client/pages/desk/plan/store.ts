import type { PlanContent } from '../../../../shared/plans/plan.ts';
import { applyEdits, inPartOrder, type PlanEdit } from '../../../../shared/plans/edit.ts';
import type { ErrorCode } from '../../../../shared/protocol/errors.ts';
import type { Answered, Plan } from '../api.ts';
import { clashesOf, contentOf, keepingSame, sameContent } from './compared.ts';
import { Steps, type Step } from './steps.ts';

/** The way to the server's plan, and to what comes later. */
export interface PlanWire {
  readonly read: () => Answered<Plan>;
  readonly write: (plan: PlanContent & Pick<Plan, 'revision'>) => Answered<Pick<Plan, 'revision'>>;
  /** Does it after so many milliseconds; gives what stops it. */
  readonly later: (wait: number, act: () => void) => () => void;
}

/** `gone`: another Desk deleted the plan. */
export type Saving = 'saved' | 'saving' | 'not-saved' | 'gone';

const firstWait = 2000;
const longestWait = 30_000;
/** The server won't ever take these: what was sent is put back. */
const refusing: readonly ErrorCode[] = ['exercise-refused', 'malformed', 'too-long'];
const goneFor: readonly ErrorCode[] = ['not-found', 'not-allowed'];

/**
 * A plan that is being edited. An edit shows at once and is saved by itself, one save after another; where another
 * Desk came first, what is not saved yet is made again on what it left.
 */
export class PlanStore {
  readonly #wire: PlanWire;
  readonly #changed: () => void;
  readonly #steps = new Steps();
  #saved: Plan;
  #shown: PlanContent;
  #unsaved: readonly Step[] = [];
  #saving: Saving = 'saved';
  #news = '';
  #wait = firstWait;
  #stopWaiting: () => void = () => undefined;

  constructor(plan: Plan, wire: PlanWire, changed: () => void) {
    this.#wire = wire;
    this.#changed = changed;
    this.#saved = plan;
    this.#shown = { ...contentOf(plan), exercises: inPartOrder(plan.exercises) };
  }

  get plan(): PlanContent {
    return this.#shown;
  }
  get saving(): Saving {
    return this.#saving;
  }
  /** What another Desk, or the server, did to what was edited; empty where nothing. */
  get news(): string {
    return this.#news;
  }
  /** What would be undone and redone, in words; null where nothing. */
  get undoes(): string | null {
    return this.#steps.undoes;
  }
  get redoes(): string | null {
    return this.#steps.redoes;
  }

  /** Makes the edits, of which `words` say what they do ("take out Find D"); whether any was made. */
  edit(words: string, edits: readonly PlanEdit[]): boolean {
    this.#news = '';
    const step = this.#make(words, edits);
    if (step) this.#steps.add(step);
    return step !== null;
  }

  /** What was undone, in words; null where it can't be. */
  undo(): string | null {
    return this.#back(this.#steps.takeBack(), (step) => this.#steps.addUndone(step));
  }

  redo(): string | null {
    return this.#back(this.#steps.takeUndone(), (step) => this.#steps.addAgain(step));
  }

  /** Tries at once what is not saved yet, else looks whether another Desk changed the plan. */
  async refresh(): Promise<void> {
    if (this.#unsaved.length > 0) return this.#save();
    const reply = await this.#wire.read();
    if (!reply.ok && goneFor.includes(reply.error.code)) return this.#say('gone');
    if (!reply.ok || this.#unsaved.length > 0 || reply.value.revision <= this.#saved.revision) return;
    this.#takeNewest(reply.value);
    this.#news = 'Another Desk changed this plan. It is shown as it is now.';
    this.#changed();
  }

  #back(from: Step | undefined, keep: (step: Step) => void): string | null {
    this.#news = '';
    const step = from && this.#make(from.words, from.inverse);
    if (step) keep(step);
    return step?.words ?? null;
  }

  #make(words: string, edits: readonly PlanEdit[]): Step | null {
    const { plan, inverse, refused } = applyEdits(this.#shown, edits);
    if (refused.length > 0) this.#news = notDone(words, refused);
    const step = inverse.length > 0 ? { words, edits, inverse } : null;
    if (step) {
      this.#shown = plan;
      this.#unsaved = [...this.#unsaved, step];
    }
    this.#changed();
    void this.#save();
    return step;
  }

  /** Saves until nothing is left to save, or the server can't be reached. Never twice at the same time. */
  async #save(): Promise<void> {
    if (this.#saving === 'saving' || this.#saving === 'gone') return;
    this.#stopWaiting();
    while (this.#unsaved.length > 0) {
      this.#say('saving');
      const sending = this.#unsaved;
      const sent = this.#shown;
      const reply = await this.#wire.write({ ...sent, revision: this.#saved.revision });
      if (reply.ok) this.#took(sending, { ...this.#saved, ...sent, ...reply.value });
      else if (reply.error.code === 'plan-changed') {
        const newest = await this.#wire.read();
        if (!newest.ok) return this.#fail(newest.error.code);
        // The server had what was sent, and its word for it was lost on the way.
        if (sameContent(newest.value, sent)) this.#took(sending, newest.value);
        else this.#takeNewest(newest.value);
      } else if (refusing.includes(reply.error.code)) {
        this.#put(sending, reply.error.message);
      } else return this.#fail(reply.error.code);
    }
    this.#wait = firstWait;
    this.#say('saved');
  }

  #took(sent: readonly Step[], saved: Plan): void {
    this.#saved = saved;
    this.#unsaved = this.#unsaved.filter((step) => !sent.includes(step));
  }

  /** Makes what is not saved yet again on what another Desk left. */
  #takeNewest(newest: Plan): void {
    const before = this.#saved;
    const said: string[] = [];
    this.#saved = newest;
    this.#again(this.#unsaved, (step, refused) => {
      if (refused.length > 0) said.push(notDone(step.words, refused));
      else if (clashesOf(step.edits, before, newest))
        said.push(`Both changed the same: yours stands (${step.words}). Undo brings theirs back.`);
    });
    this.#news = ['Another Desk changed this plan; both changes are in it.', ...said].join(' ');
  }

  /** Puts the plan back to what is saved, without what the server refused. */
  #put(refused: readonly Step[], sentence: string): void {
    this.#steps.drop(refused);
    this.#again(
      this.#unsaved.filter((step) => !refused.includes(step)),
      () => undefined,
    );
    this.#news = `Not saved: ${sentence}`;
  }

  /** The steps once more, on what is saved. */
  #again(steps: readonly Step[], made: (step: Step, refused: readonly string[]) => void): void {
    const content = contentOf(this.#saved);
    let shown: PlanContent = { ...content, exercises: inPartOrder(content.exercises) };
    const kept: Step[] = [];
    for (const step of steps) {
      const { plan, inverse, refused } = applyEdits(shown, step.edits);
      shown = plan;
      made(step, refused);
      step.inverse = inverse;
      if (inverse.length > 0) kept.push(step);
    }
    this.#steps.drop(steps.filter((step) => !kept.includes(step)));
    this.#unsaved = kept;
    this.#shown = keepingSame(shown, this.#shown);
  }

  #fail(code: ErrorCode): void {
    if (goneFor.includes(code)) return this.#say('gone');
    this.#say('not-saved');
    this.#stopWaiting = this.#wire.later(this.#wait, () => void this.#save());
    this.#wait = Math.min(longestWait, this.#wait * 2);
  }

  #say(saving: Saving): void {
    this.#saving = saving;
    this.#changed();
  }
}

function notDone(words: string, reasons: readonly string[]): string {
  return `Not done: ${words}. ${reasons.join(' ')}`;
}
