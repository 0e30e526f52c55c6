/** Commands that were taken and are not answered yet, by class: a bounded queue, and what a stop waits for. */
export class UnderWay {
  readonly #most: number;
  readonly #counts = new Map<string, number>();
  readonly #idle: (() => void)[] = [];
  #ending = false;

  constructor(most: number) {
    this.#most = most;
  }

  get ending(): boolean {
    return this.#ending;
  }

  /** False where the class has as many waiting as it may, or nothing is taken any more. */
  enter(classId: string): boolean {
    const count = this.#counts.get(classId) ?? 0;
    if (this.#ending || count >= this.#most) return false;
    this.#counts.set(classId, count + 1);
    return true;
  }

  leave(classId: string): void {
    const count = (this.#counts.get(classId) ?? 1) - 1;
    if (count > 0) this.#counts.set(classId, count);
    else this.#counts.delete(classId);
    if (this.#counts.size > 0) return;
    for (const resolve of this.#idle.splice(0)) resolve();
  }

  /** Takes nothing more; resolves once nothing is under way. */
  end(): Promise<void> {
    this.#ending = true;
    if (this.#counts.size === 0) return Promise.resolve();
    return new Promise((resolve) => this.#idle.push(resolve));
  }
}
