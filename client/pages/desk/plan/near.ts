import type { LitElement, ReactiveController } from 'lit';

/** How far beyond the window counts as near: what is drawn is there before it is scrolled to. */
const margin = '600px';
const hosts = new WeakMap<Element, () => void>();
let observer: IntersectionObserver | undefined;

function observe(host: Element, came: () => void): void {
  hosts.set(host, came);
  observer ??= new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries) if (isIntersecting) hosts.get(target)?.();
    },
    { rootMargin: `${margin} 0px` },
  );
  observer.observe(host);
}

/** Whether its element has come near the window; once it has, it stays so. */
export class Near implements ReactiveController {
  readonly #host: LitElement;
  now = false;

  constructor(host: LitElement) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    if (this.now) return;
    observe(this.#host, () => {
      this.now = true;
      observer?.unobserve(this.#host);
      this.#host.requestUpdate();
    });
  }

  hostDisconnected(): void {
    observer?.unobserve(this.#host);
  }
}
