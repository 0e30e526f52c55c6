import type { Clock } from '../../server/live/ports.ts';
import type { Time } from '../../shared/protocol/ids.ts';

/** A clock that stands still until it is turned by hand. */
export class HandClock implements Clock {
  #now: number;
  #alarms: { readonly at: number; readonly run: () => void }[] = [];

  constructor(now: Time) {
    this.#now = now;
  }

  now(): Time {
    return this.#now as Time;
  }

  after(milliseconds: number, run: () => void): () => void {
    const alarm = { at: this.#now + milliseconds, run };
    this.#alarms.push(alarm);
    return () => {
      this.#alarms = this.#alarms.filter((other) => other !== alarm);
    };
  }

  /** How much is still to be run. */
  get waiting(): number {
    return this.#alarms.length;
  }

  turn(milliseconds: number): void {
    const end = this.#now + milliseconds;
    for (;;) {
      const [next] = this.#alarms.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at);
      if (!next) break;
      this.#alarms = this.#alarms.filter((alarm) => alarm !== next);
      this.#now = Math.max(this.#now, next.at);
      next.run();
    }
    this.#now = end;
  }
}
