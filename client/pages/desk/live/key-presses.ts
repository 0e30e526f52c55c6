import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { keyActionOf, pressOf, type KeyAction, type KeySettings } from './keys.ts';

interface Ear {
  readonly settings: () => KeySettings;
  /** Whether something else has the keyboard to itself. */
  readonly isCovered: () => boolean;
  readonly press: (action: KeyAction, at: number) => void;
}

/** Hears the Desk's keys, wherever the focus is, while its page is there. */
export class KeyPresses implements ReactiveController {
  readonly #ear: Ear;

  constructor(host: ReactiveControllerHost, ear: Ear) {
    this.#ear = ear;
    host.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('keydown', this.#onKey);
  }

  hostDisconnected(): void {
    document.removeEventListener('keydown', this.#onKey);
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    const action = keyActionOf(pressOf(event), this.#ear.settings());
    const inDialog = event.composedPath().some((target) => target instanceof HTMLDialogElement);
    if (action === null || inDialog || this.#ear.isCovered()) return;
    event.preventDefault();
    this.#ear.press(action, event.timeStamp);
  };
}
