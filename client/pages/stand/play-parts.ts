import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Answer } from '../../../shared/exercise/answer.ts';
import type { TaskView } from '../../../shared/protocol/views.ts';
import { instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';
import type { HeardMark } from '../../fretboard/state.ts';
import type { HeardHere } from './heard-here.ts';
import type { heardOnNeck as toHeardOnNeck } from './heard-on-neck.ts';

/** What playing needs besides the Stand: it comes once it is wanted, not with the first look. */
export class PlayParts implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  #heardOnNeck: typeof toHeardOnNeck | null = null;
  #isFetching = false;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    // Nothing is opened before it is wanted.
  }

  /** If the network fails them, the next news asks again; tapping goes on. */
  async want(): Promise<void> {
    if (this.#isFetching || this.#heardOnNeck) return;
    this.#isFetching = true;
    try {
      const [{ heardOnNeck }] = await Promise.all([import('./heard-on-neck.ts'), import('./playing.ts')]);
      this.#heardOnNeck = heardOnNeck;
      this.#host.requestUpdate();
    } catch {
      this.#isFetching = false;
    }
  }

  /** What is drawn on the neck of what was heard. */
  marks({ input, instrument, wording }: TaskView, answer: Answer, { hint }: HeardHere): readonly HeardMark[] {
    if (input.kind !== 'places' || !input.playing || !this.#heardOnNeck) return [];
    const neck = instrumentById(instrument) ?? standardGuitar;
    return this.#heardOnNeck(neck, answer, hint, input.playing, wording.english.title);
  }
}
