import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Size } from './paper.ts';

/**
 * Tells the printer how large the paper is, while its host is on the page. A constructed style sheet: the content
 * security policy refuses styles in the document. No margins: the pages have their own, and the browser then adds no
 * address or date.
 */
export class PrintSize implements ReactiveController {
  readonly #sheet = new CSSStyleSheet();

  constructor(host: ReactiveControllerHost) {
    host.addController(this);
  }

  set({ width, height }: Size): void {
    this.#sheet.replaceSync(`@page { size: ${String(width)}mm ${String(height)}mm; margin: 0; }`);
  }

  hostConnected(): void {
    document.adoptedStyleSheets.push(this.#sheet);
  }

  hostDisconnected(): void {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== this.#sheet);
  }
}
