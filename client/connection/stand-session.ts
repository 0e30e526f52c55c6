import { answerOf, type Answer } from '../../shared/exercise/answer.ts';
import { levelOf, type Level } from '../../shared/exercise/levels.ts';
import type { CommandReply } from '../../shared/protocol/events.ts';
import { errorReply, type ErrorReply } from '../../shared/protocol/errors.ts';
import type { RoundId, SendId } from '../../shared/protocol/ids.ts';
import type { StandOwnView, StandSharedView } from '../../shared/protocol/views.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import type { KeyStore } from '../lib/key-store.ts';
import { randomId } from '../lib/random-id.ts';
import type { ConnectionState } from './class-connection.ts';
import { Device, leftHandedKey, namingKey, seatKey, wayKey } from './device.ts';
import { requestSeat } from './join.ts';
import { LevelChoice, levelKey } from './level-choice.ts';
import { Outbox, type Draft } from './outbox.ts';
import { connectStand, type StandConnection } from './socket.ts';

/** After these the token is worth nothing: the student gives code and name again. */
const unseated: ReadonlySet<string> = new Set(['seat-unknown', 'not-found', 'malformed']);

/** All that one student's device knows: its seat, its line to the class, and what is not delivered yet. */
export class StandSession {
  readonly #device: Device;
  readonly #outbox: Outbox;
  readonly #levels: LevelChoice;
  readonly #changed: () => void;
  #connection: StandConnection | null = null;
  #unsubscribe: () => void = () => undefined;
  #refusal: ErrorReply | null = null;
  /** What was acted on already, so that each change is acted on once. */
  #wasLive = false;
  #settled: StandOwnView | null = null;
  #stage = '';

  /** `code`: the one in the page's address, or ''. A seat in another class than that is given up. */
  constructor(storage: KeyStore, code: string, changed: () => void) {
    this.#device = new Device(storage);
    this.#levels = new LevelChoice(storage);
    this.#changed = changed;
    this.#outbox = new Outbox({
      storage,
      send: (send) => this.#send({ kind: 'place', ...send }),
      newSendId: () => randomId() as SendId,
      after: (milliseconds, task) => {
        const timer = setTimeout(task, milliseconds);
        return () => {
          clearTimeout(timer);
        };
      },
      changed,
    });
    addEventListener('storage', this.#onStorage);
    addEventListener('pagehide', this.#onHide);
    document.addEventListener('visibilitychange', this.#onHide);
    const seat = this.#device.seat;
    if (seat && (code === '' || code === seat.code)) this.#connect(seat.token);
  }

  /** Whether the device has a seat, or asks for one; otherwise it stands at the door. */
  get seated(): boolean {
    return this.#connection !== null;
  }

  get state(): ConnectionState {
    return this.#connection?.state ?? 'connecting';
  }

  /** Why the class ended for this device, or why it stands at the door again. */
  get refusal(): ErrorReply | null {
    return this.#refusal;
  }

  /** Why the line is lost, where the server said so. */
  get absence(): ErrorReply | null {
    return this.#connection?.absence ?? null;
  }

  get shared(): StandSharedView | null {
    return this.#connection?.view('stand:shared') ?? null;
  }

  get own(): StandOwnView | null {
    return this.#connection?.view('stand:own') ?? null;
  }

  get name(): string {
    return this.#device.name;
  }

  get code(): string {
    return this.#device.seat?.code ?? '';
  }

  get leftHanded(): boolean {
    return this.#device.leftHanded;
  }

  set leftHanded(on: boolean) {
    this.#device.leftHanded = on;
    this.#changed();
  }

  /** The student's own note names; null where they are the class's. */
  get naming(): NoteNaming | null {
    return this.#device.naming;
  }

  set naming(naming: NoteNaming | null) {
    this.#device.naming = naming;
    this.#changed();
  }

  /** How the student likes to answer. */
  get way(): Device['way'] {
    return this.#device.way;
  }

  set way(way: Device['way']) {
    this.#device.way = way;
    this.#changed();
  }

  get wantsMidi(): boolean {
    return this.#device.wantsMidi;
  }

  draftFor(roundId: RoundId): Draft | null {
    return this.#outbox.draftFor(roundId);
  }

  /** The level that this Stand shows of so many while the round is open; `answer` is the newest there is. */
  levelIn(roundId: RoundId, answer: Answer | null, count: number): Level {
    return this.#levels.levelIn(roundId, answer, count);
  }

  /** Another level: what was placed there is sent; where nothing is, what was sent before stands. */
  chooseLevel(roundId: RoundId, level: Level): void {
    const { own } = this;
    const newest = this.draftFor(roundId) ?? (own?.answer?.roundId === roundId ? own.answer : null);
    // It may have been placed on another device.
    if (newest) this.#levels.place(roundId, answerOf(newest), this.#levelCount);
    this.#levels.choose(roundId, level);
    const placed = this.#levels.placedAt(roundId, level);
    if (placed && newest && levelOf(newest) !== level) this.#outbox.place(roundId, placed, false);
    else this.#changed();
  }

  place(roundId: RoundId, answer: Answer, done: boolean): void {
    if (this.#levelCount > 1) this.#levels.place(roundId, answer, this.#levelCount);
    this.#outbox.place(roundId, answer, done);
  }

  async join(code: string, name: string): Promise<ErrorReply | null> {
    const seat = await requestSeat(code, name);
    if (!seat.ok) return seat.error;
    this.#outbox.clear();
    this.#levels.clear();
    this.#device.name = name;
    this.#device.seat = { token: seat.value, code };
    this.#connect(seat.value);
    return null;
  }

  setAlias(alias: string | null): Promise<CommandReply> {
    return this.#send({ kind: 'set-alias', alias });
  }

  /** "Not me": gives the seat back, so that the device is free for the next student. */
  async leave(): Promise<void> {
    await this.#send({ kind: 'leave' });
    this.#device.name = '';
    this.giveUpSeat();
  }

  /** Back to the door. The server is not asked. */
  giveUpSeat(refusal: ErrorReply | null = null): void {
    this.#device.seat = null;
    this.#outbox.clear();
    this.#levels.clear();
    this.#disconnect();
    this.#refusal = refusal;
    this.#changed();
  }

  close(): void {
    removeEventListener('storage', this.#onStorage);
    removeEventListener('pagehide', this.#onHide);
    document.removeEventListener('visibilitychange', this.#onHide);
    this.#outbox.close();
    this.#disconnect();
  }

  get #levelCount(): number {
    const stage = this.shared?.stage;
    return stage && 'harder' in stage ? stage.harder.length + 1 : 1;
  }

  #connect(token: string): void {
    this.#disconnect();
    this.#refusal = null;
    this.#connection = connectStand(token);
    this.#unsubscribe = this.#connection.subscribe(() => {
      this.#onNews();
    });
    this.#changed();
  }

  #disconnect(): void {
    this.#unsubscribe();
    this.#connection?.close();
    this.#connection = null;
    this.#wasLive = false;
    this.#settled = null;
    this.#stage = '';
  }

  #send(command: unknown): Promise<CommandReply> {
    return (
      this.#connection?.send(command) ?? Promise.resolve({ ok: false, error: errorReply('seat-unknown') })
    );
  }

  #onNews(): void {
    const { refusal } = this.#connection ?? {};
    if (refusal && unseated.has(refusal.code)) {
      this.giveUpSeat(refusal);
      return;
    }
    this.#refusal = refusal ?? null;
    const { own, shared } = this;
    if (own !== this.#settled) {
      this.#settled = own;
      this.#outbox.settle(own?.answer ?? null);
    }
    const stage = shared?.stage.kind ?? '';
    const live = this.state === 'live';
    // The server still takes, for a moment after the hold, what was on its way.
    if (live && (!this.#wasLive || (stage === 'held' && this.#stage !== 'held'))) this.#outbox.flush();
    this.#wasLive = live;
    this.#stage = stage;
    this.#changed();
  }

  readonly #onHide = (): void => {
    if (document.visibilityState === 'hidden') this.#outbox.flush();
  };

  /** Another tab joined, left, placed or changed a setting: two tabs are one student. */
  readonly #onStorage = ({ key, newValue }: StorageEvent): void => {
    if (key === seatKey) {
      const { seat } = this.#device;
      if (seat) this.#connect(seat.token);
      else this.giveUpSeat();
    } else if ([leftHandedKey, namingKey, wayKey, levelKey].includes(key ?? '')) this.#changed();
    else if (key !== null) this.#outbox.storageChanged(key, newValue);
  };
}
