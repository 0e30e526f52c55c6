import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { DeskCommand, StandCommand } from '../../shared/protocol/commands.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { Snapshot } from '../../shared/protocol/events.ts';
import type { ClassId, SeatId, StudentId, Time } from '../../shared/protocol/ids.ts';
import type { BoardView, DeskView, StandOwnView, StandSharedView } from '../../shared/protocol/views.ts';
import { decideForDesk, decideTimeUp, type DeskContext } from '../classroom/desk-commands.ts';
import { reduce } from '../classroom/reduce.ts';
import { nextDeadline } from '../classroom/round.ts';
import type { Change, ClassState } from '../classroom/state.ts';
import { decideForStudent, isLateSend, type Decision } from '../classroom/student-commands.ts';
import { boardView } from '../classroom/view-board.ts';
import type { Presence } from '../classroom/view-common.ts';
import { deskView } from '../classroom/view-desk.ts';
import { standOwnView, standSharedView } from '../classroom/view-stand.ts';
import type { AnswerStore } from '../store/store.ts';
import type { Clock, Log, Publisher } from './ports.ts';

export type { DeskContext };

/** Screens get at most one snapshot in so many milliseconds, whatever happens meanwhile. */
const publishInterval = 100;

/** How long a store that failed is left alone before the hold is tried again. Milliseconds. */
const retryAfter = 1000;

/** The longest delay that a Node timer takes. */
const longestDelay = 2 ** 31 - 1;

export interface ClassTools {
  readonly store: AnswerStore;
  readonly publisher: Publisher;
  readonly clock: Clock;
  readonly log: Log;
  /** The address that the Board shows. */
  readonly address: () => string;
}

/**
 * One class that is being held. Decisions are taken one after another on the state in memory, which runs ahead of
 * the store by the commits under way; nothing is acknowledged or published before its commit is durable.
 */
export class RunningClass {
  readonly id: ClassId;
  /** What decisions are taken on. */
  #state: ClassState;
  /** What screens are told of. */
  #durable: ClassState;
  readonly #tools: ClassTools;
  readonly #seats = new Map<SeatId, number>();
  #boards = 0;
  #desks = 0;
  #revision = 0;
  #reloads = 0;
  #lastCommit: Promise<void> = Promise.resolve();
  #stopPublishTimer: (() => void) | undefined;
  #stopDeadline: (() => void) | undefined;
  #publishAgain = false;
  readonly #sent = new Map<string, string>();
  /** Whose own view may differ from what was sent. */
  #touched: Set<StudentId> | 'all' = new Set();

  constructor(state: ClassState, tools: ClassTools) {
    this.id = state.id;
    this.#state = state;
    this.#durable = state;
    this.#tools = tools;
    this.#watchDeadline();
  }

  get state(): ClassState {
    return this.#state;
  }

  /** True while a screen is connected. */
  get watched(): boolean {
    return this.#seats.size + this.#boards + this.#desks > 0;
  }

  /** Decides on the present state and resolves once the outcome is durable. */
  async execute(decide: (state: ClassState) => Decision): Promise<Result<readonly Change[], ErrorCode>> {
    const decision = decide(this.#state);
    if (!decision.ok) return decision;
    const changes = decision.value;
    if (changes.length > 0) {
      this.#state = reduce(this.#state, changes);
      this.#lastCommit = this.#tools.store.commit(this.id, changes);
    }
    // A resend changes nothing, yet is acknowledged no earlier than what it repeats.
    const commit = this.#lastCommit;
    const decided = this.#state;
    try {
      await commit;
    } catch (error) {
      this.#tools.log.error({ error, classId: this.id }, 'commit failed');
      await this.reload();
      return failure('store-failed');
    }
    if (changes.length > 0) {
      // Commits end in the order in which they began. What was decided on top of one that failed is taken from the store.
      if (this.#reloads === 0) this.#durable = decided;
      this.#touch(changes);
      this.#publishSoon();
    }
    return success(changes);
  }

  seatByToken(tokenHash: string): SeatId | undefined {
    for (const seat of this.#state.seats.values()) {
      if (seat.tokenHash === tokenHash && seat.status !== 'gone') return seat.id;
    }
    return undefined;
  }

  /** True where what a student sent came too late to count. */
  async forStudent(seatId: SeatId, command: StandCommand, now: Time): Promise<Result<boolean, ErrorCode>> {
    const done = await this.execute((state) => decideForStudent(state, seatId, command, now));
    if (!done.ok || command.kind !== 'place') return done.ok ? success(false) : done;
    return success(isLateSend(this.#state, seatId, command.roundId, command.sendId));
  }

  forDesk(command: DeskCommand, context: DeskContext): Promise<Result<unknown, ErrorCode>> {
    return this.execute((state) => decideForDesk(state, command, context));
  }

  /** Takes the state from the store again, e.g. after the register was edited. */
  async reload(): Promise<void> {
    this.#reloads += 1;
    let commit: Promise<void>;
    let stored: ClassState | undefined;
    do {
      commit = this.#lastCommit;
      await commit.catch(() => undefined);
      stored = await this.#tools.store.load(this.id).catch(() => undefined);
    } while (commit !== this.#lastCommit);
    this.#lastCommit = Promise.resolve();
    this.#reloads -= 1;
    // Where even reading fails, what was not kept must not pass for a resend of something kept.
    this.#state = this.#durable = stored ?? this.#durable;
    this.changed();
  }

  connectStand(seatId: SeatId): () => void {
    this.#seats.set(seatId, (this.#seats.get(seatId) ?? 0) + 1);
    this.#publishSoon();
    return () => {
      const left = (this.#seats.get(seatId) ?? 1) - 1;
      if (left > 0) this.#seats.set(seatId, left);
      else this.#seats.delete(seatId);
      this.#sent.delete(`seat:${seatId}`);
      this.#publishSoon();
    };
  }

  connectBoard(): () => void {
    this.#boards += 1;
    this.#publishSoon();
    return () => {
      this.#boards -= 1;
      this.#publishSoon();
    };
  }

  connectDesk(): () => void {
    this.#desks += 1;
    return () => {
      this.#desks -= 1;
    };
  }

  sharedSnapshot(): Snapshot<StandSharedView> {
    return { revision: this.#revision, view: standSharedView(this.#durable, this.#presence()) };
  }

  ownSnapshot(seatId: SeatId): Snapshot<StandOwnView> {
    return { revision: this.#revision, view: standOwnView(this.#durable, seatId, this.#tools.clock.now()) };
  }

  boardSnapshot(): Snapshot<BoardView> {
    return {
      revision: this.#revision,
      view: boardView(this.#durable, this.#presence(), this.#tools.address()),
    };
  }

  deskSnapshot(): Snapshot<DeskView> {
    return {
      revision: this.#revision,
      view: deskView(this.#durable, this.#presence(), this.#tools.clock.now()),
    };
  }

  /** Tells every screen, soon. */
  changed(): void {
    this.#touched = 'all';
    this.#publishSoon();
  }

  /** Now if the last time is long enough ago, else when it is. */
  #publishSoon(): void {
    this.#watchDeadline();
    if (this.#stopPublishTimer) {
      this.#publishAgain = true;
      return;
    }
    this.#publish();
    this.#stopPublishTimer = this.#tools.clock.after(publishInterval, () => {
      this.#stopPublishTimer = undefined;
      if (!this.#publishAgain) return;
      this.#publishAgain = false;
      this.#publishSoon();
    });
  }

  stop(): void {
    this.#stopDeadline?.();
    this.#stopPublishTimer?.();
    this.#stopPublishTimer = undefined;
  }

  /** An answer is its student's own; anything else may show on every Stand. */
  #touch(changes: readonly Change[]): void {
    for (const change of changes) {
      if (change.kind !== 'answer') this.#touched = 'all';
      else if (this.#touched !== 'all') this.#touched.add(change.studentId);
    }
  }

  #isTouched(seatId: SeatId): boolean {
    if (this.#touched === 'all') return true;
    const studentId = this.#durable.seats.get(seatId)?.studentId;
    return Boolean(studentId && this.#touched.has(studentId));
  }

  #presence(): Presence {
    const students = new Set<StudentId>();
    for (const seatId of this.#seats.keys()) {
      const seat = this.#durable.seats.get(seatId);
      if (seat?.status === 'in' && seat.studentId) students.add(seat.studentId);
    }
    return { students, boards: this.#boards };
  }

  #publish(): void {
    this.#revision += 1;
    const { publisher } = this.#tools;
    this.#ifNew('stands', this.sharedSnapshot(), (snapshot) => publisher.toStands(this.id, snapshot));
    this.#ifNew('boards', this.boardSnapshot(), (snapshot) => publisher.toBoards(this.id, snapshot));
    for (const seatId of this.#seats.keys()) {
      if (!this.#isTouched(seatId)) continue;
      this.#ifNew(`seat:${seatId}`, this.ownSnapshot(seatId), (snapshot) =>
        publisher.toSeat(this.id, seatId, snapshot),
      );
    }
    this.#touched = new Set();
    if (this.#desks > 0) publisher.toDesks(this.id, this.deskSnapshot());
  }

  #ifNew<View>(channel: string, snapshot: Snapshot<View>, publish: (snapshot: Snapshot<View>) => void): void {
    const text = JSON.stringify(snapshot.view);
    if (this.#sent.get(channel) === text) return;
    this.#sent.set(channel, text);
    publish(snapshot);
  }

  #watchDeadline(): void {
    this.#stopDeadline?.();
    this.#stopDeadline = undefined;
    const now = this.#tools.clock.now();
    const deadline = nextDeadline(this.#state, now);
    if (deadline === null) return;
    const delay = Math.min(Math.max(0, deadline - now), longestDelay);
    this.#stopDeadline = this.#tools.clock.after(delay, () => void this.#timeUp());
  }

  /** Somebody's time is up: their Stand must hear of it, and the round is held after the last. */
  async #timeUp(): Promise<void> {
    const done = await this.execute((state) => success(decideTimeUp(state, this.#tools.clock.now())));
    if (done.ok && done.value.length === 0) this.changed();
    if (done.ok) return;
    this.#stopDeadline?.();
    this.#stopDeadline = this.#tools.clock.after(retryAfter, () => void this.#timeUp());
  }
}
