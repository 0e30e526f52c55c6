import type { Click } from '../../listening/click.ts';

/** The click of one screen. */
export class ClickHere {
  /** In beats a minute; 0 while it is silent. */
  tempo = 0;
  #click: Click | null = null;

  /** To be called at a press, where browsers let sound begin. */
  async play(tempo: number): Promise<void> {
    if (tempo === 0) return this.stop();
    this.tempo = tempo;
    if (this.#click) {
      this.#click.bpm = tempo;
      return;
    }
    const { Click } = await import('../../listening/click.ts');
    // It was stopped meanwhile, or another press came first.
    if (this.tempo === 0 || this.#click) return;
    this.#click = new Click(this.tempo);
  }

  stop(): void {
    this.#click?.stop();
    this.#click = null;
    this.tempo = 0;
  }
}
