import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Answers, Ask, AskOf } from './asks.ts';

interface Reply {
  readonly id: number;
  readonly kind: Ask['kind'];
  readonly answer: Answers[Ask['kind']];
}

/** Sends questions to the worker as long as its element is there; of each kind only the newest is answered. */
export class Finder implements ReactiveController {
  #worker: Worker | null = null;
  #asked = 0;
  readonly #waiting = new Map<Ask['kind'], (reply: Reply) => void>();

  constructor(host: ReactiveControllerHost) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  find<Kind extends Ask['kind']>(ask: AskOf<Kind>, take: (answer: Answers[Kind]) => void): void {
    this.#asked += 1;
    const id = this.#asked;
    this.#waiting.set(ask.kind, (reply) => {
      // The answer to a question is of its kind.
      if (reply.id === id) take(reply.answer as Answers[Kind]);
    });
    this.#worker ??= this.#start();
    this.#worker.postMessage({ id, ask });
  }

  #start(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Reply>) =>
      this.#waiting.get(data.kind)?.(data),
    );
    return worker;
  }
}
