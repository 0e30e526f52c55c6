import { answerOf, type Answer } from '../../shared/exercise/answer.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { CommandReply } from '../../shared/protocol/events.ts';
import type { RoundId, SendId } from '../../shared/protocol/ids.ts';
import type { OwnAnswerView } from '../../shared/protocol/views.ts';
import type { KeyStore } from '../lib/key-store.ts';
import { readAnswer } from './stored-answer.ts';

/** What the student gave, as it goes to the server. A newer send of the same round replaces it. */
export interface Send extends Answer {
  readonly roundId: RoundId;
  readonly sendId: SendId;
  readonly done: boolean;
}

/** `unsent`: on this device alone · `safe`: the server has it · `late`: it has it, from after the hold. */
export interface Draft extends Send {
  readonly fate: 'unsent' | 'safe' | 'late';
}

export interface OutboxPorts {
  readonly storage: KeyStore;
  readonly send: (send: Send) => Promise<CommandReply>;
  readonly newSendId: () => SendId;
  /** Runs a task after so many milliseconds; returns how to call it off. */
  readonly after: (milliseconds: number, task: () => void) => () => void;
  readonly changed: () => void;
}

/** Taps come in groups: what is placed goes out after this pause, in milliseconds. */
const pause = 400;
/** Between two tries where the server had trouble, in milliseconds. */
const retryAfter = 2000;
const prefix = 'rootcall.unsent.';

/** Refusals that no other try can change: what was refused is let go. After any other it is kept and sent again. */
const final: ReadonlySet<ErrorCode> = new Set([
  'round-voided',
  'round-unknown',
  'class-closed',
  'seat-unknown',
  'off-the-neck',
  'level-unknown',
  'malformed',
]);

/**
 * Keeps what a student placed until the server has it: across reloads, sleep and lost networks. Two tabs share
 * the storage, and either may deliver: each send carries its own id, so the server counts it once.
 */
export class Outbox {
  readonly #ports: OutboxPorts;
  readonly #inFlight = new Set<SendId>();
  #draft: Draft | null = null;
  #cancel: () => void = () => undefined;

  constructor(ports: OutboxPorts) {
    this.#ports = ports;
  }

  /** What this device knows of the round and the server may not; null where the server's own view says it all. */
  draftFor(roundId: RoundId): Draft | null {
    if (this.#draft?.roundId === roundId) return this.#draft;
    const stored = this.#stored(roundId);
    return stored && { ...stored, fate: 'unsent' };
  }

  /** Takes what is given now; it goes out after a pause, and at once when the student is done. */
  place(roundId: RoundId, answer: Answer, done: boolean): void {
    const send: Send = { roundId, sendId: this.#ports.newSendId(), ...answerOf(answer), done };
    this.#ports.storage.set(prefix + roundId, JSON.stringify(send));
    this.#draft = { ...send, fate: 'unsent' };
    this.#ports.changed();
    if (done) this.flush();
    else this.#flushAfter(pause);
  }

  /** Sends whatever is unsent, now. */
  flush(): void {
    this.#cancel();
    for (const send of this.#allStored()) void this.#deliver(send);
  }

  /** The server's own view: where it holds what this device sent, or something later, the draft has done its work. */
  settle(answer: OwnAnswerView | null): void {
    if (answer && this.#stored(answer.roundId)?.sendId === answer.sendId) this.#forget(answer.roundId);
    const draft = this.#draft;
    if (!draft) return;
    const arrived = draft.fate !== 'unsent' || draft.sendId === answer?.sendId;
    if (arrived) this.#draft = null;
  }

  /** Another tab of the same student wrote to the storage they share. */
  storageChanged(key: string, value: string | null): void {
    if (!key.startsWith(prefix)) return;
    const draft = this.#draft;
    const send = value === null ? null : parse(value);
    if (send) {
      this.#draft = { ...send, fate: 'unsent' };
      this.#flushAfter(pause);
    } else if (draft && key === prefix + draft.roundId && draft.fate === 'unsent') {
      this.#draft = { ...draft, fate: 'safe' };
    }
    this.#ports.changed();
  }

  /** Forgets everything: the device is another student's now. */
  clear(): void {
    this.close();
    this.#draft = null;
    for (const { roundId } of this.#allStored()) this.#forget(roundId);
  }

  close(): void {
    this.#cancel();
  }

  async #deliver(send: Send): Promise<void> {
    if (this.#inFlight.has(send.sendId)) return;
    this.#inFlight.add(send.sendId);
    const reply = await this.#ports.send(send);
    this.#inFlight.delete(send.sendId);
    if (!reply.ok && !final.has(reply.error.code)) {
      this.#flushAfter(retryAfter);
      return;
    }
    if (this.#stored(send.roundId)?.sendId === send.sendId) this.#forget(send.roundId);
    const draft = this.#draft;
    if (draft?.sendId === send.sendId)
      this.#draft = reply.ok ? { ...draft, fate: reply.late ? 'late' : 'safe' } : null;
    this.#ports.changed();
  }

  #flushAfter(milliseconds: number): void {
    this.#cancel();
    this.#cancel = this.#ports.after(milliseconds, () => {
      this.flush();
    });
  }

  #stored(roundId: RoundId): Send | null {
    const text = this.#ports.storage.get(prefix + roundId);
    return text === null ? null : parse(text);
  }

  #allStored(): readonly Send[] {
    const keys = this.#ports.storage.keys().filter((key) => key.startsWith(prefix));
    return keys
      .map((key) => this.#stored(key.slice(prefix.length) as RoundId))
      .filter((send) => send !== null);
  }

  #forget(roundId: RoundId): void {
    this.#ports.storage.remove(prefix + roundId);
  }
}

/** Our own text read back; whatever is not ours any more counts as nothing. */
function parse(text: string): Send | null {
  try {
    const { roundId, sendId, done, ...stored } = JSON.parse(text) as Send;
    const answer = readAnswer(stored);
    if (typeof roundId !== 'string' || typeof sendId !== 'string' || answer === null) return null;
    return { roundId, sendId, ...answer, done: Boolean(done) };
  } catch {
    return null;
  }
}
