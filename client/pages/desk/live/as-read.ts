import type { DeskView } from '../../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';

/** The view with notes named as the teacher reads them; the same view stays the same object. */
export class AsRead {
  #sent: DeskView | null = null;
  #view: DeskView | null = null;

  of(sent: DeskView, naming: NoteNaming): DeskView {
    if (this.#view === null || this.#sent !== sent || this.#view.naming !== naming) {
      this.#sent = sent;
      this.#view = naming === sent.naming ? sent : { ...sent, naming };
    }
    return this.#view;
  }
}
