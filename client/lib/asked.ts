/** Those who want to hear of something. */
export class Listeners<Event = void> {
  readonly #all = new Set<(event: Event) => void>();

  /** Returns its end. */
  add(listener: (event: Event) => void): () => void {
    this.#all.add(listener);
    return () => this.#all.delete(listener);
  }

  tell(event: Event): void {
    for (const listener of this.#all) listener(event);
  }
}

export interface Asking<State> {
  /** What stands in the way before anything is asked; null where nothing does. */
  readonly obstacle: () => State | null;
  /** Why it was not given, by the browser's error. */
  readonly stateOf: (error: unknown) => State;
}

/** Something of this device that its person is asked for, such as the microphone: asked at a start, given up at a stop. */
export abstract class Asked<State extends string> {
  readonly #asking: Asking<State>;
  readonly #onState = new Listeners();
  #state: State | 'off' | 'asking';
  /** Each start and end is another; what comes late from an earlier one is let go. */
  #turn = 0;

  constructor(asking: Asking<State>) {
    this.#asking = asking;
    this.#state = asking.obstacle() ?? 'off';
  }

  get state(): State | 'off' | 'asking' {
    return this.#state;
  }

  /** Called with each change of state; returns its end. */
  onState(listener: () => void): () => void {
    return this.#onState.add(listener);
  }

  /** To be called at a press: the browser may ask the person. */
  async start(): Promise<void> {
    if (this.#state === 'asking' || this.isOpen) return;
    const hindrance = this.#asking.obstacle();
    if (hindrance) return this.become(hindrance);
    this.#turn += 1;
    const turn = this.#turn;
    const isWanted = () => turn === this.#turn;
    this.become('asking');
    try {
      await this.open(isWanted);
    } catch (error) {
      if (isWanted()) this.end(this.#asking.stateOf(error));
    }
  }

  stop(): void {
    this.end(this.#asking.obstacle() ?? 'off');
  }

  protected abstract get isOpen(): boolean;
  /** Asks and opens, and says how it stands then; gives back at once what is not wanted any more when it comes. */
  protected abstract open(isWanted: () => boolean): Promise<void>;
  /** Gives back whatever is open. */
  protected abstract release(): void;

  protected end(state: State | 'off'): void {
    this.#turn += 1;
    this.release();
    this.become(state);
  }

  protected become(state: State | 'off' | 'asking'): void {
    if (state === this.#state) return;
    this.#state = state;
    this.#onState.tell();
  }
}
