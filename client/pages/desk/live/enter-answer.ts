import { LitElement, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { placesPerString } from '../../../../shared/exercise/input.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { StudentId } from '../../../../shared/protocol/ids.ts';
import type { Place } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { toggled } from '../../../fretboard/state.ts';
import type { PlaceToggledEvent } from '../../../fretboard/events.ts';
import { deskStyles } from '../desk-styles.ts';
import '../tap-neck.ts';
import { CommandEvent } from './events.ts';

/** The dialog has done its work, or was left. */
export class EnteredEvent extends Event {
  static readonly kind = 'desk-entered';
  constructor() {
    super(EnteredEvent.kind);
  }
}

/** The teacher enters what a student without a device shows on the neck. */
@customElement('desk-enter-answer')
export class DeskEnterAnswer extends LitElement {
  static override styles = deskStyles;

  @property({ attribute: false }) exercise: Exercise | null = null;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @property({ attribute: false }) studentId: StudentId | null = null;
  @property() shownName = '';
  @property({ attribute: false }) places: readonly Place[] = [];
  @query('dialog') private dialog?: HTMLDialogElement;

  override firstUpdated() {
    this.dialog?.showModal();
  }

  override render() {
    const { exercise } = this;
    if (!exercise) return nothing;
    const { title, detail } = wordingOf(exercise, this.naming);
    return html`<dialog aria-labelledby="entering" @close=${() => this.dispatchEvent(new EnteredEvent())}>
      <div class="stack">
        <div>
          <h2 id="entering">${this.shownName}: ${title}</h2>
          <p class="soft">${detail}</p>
        </div>
        <desk-tap-neck
          .instrument=${exercise.instrument}
          .places=${this.places}
          @place-toggled=${(event: PlaceToggledEvent) => {
            this.places = toggled(this.places, event.place, placesPerString(exercise));
          }}
        ></desk-tap-neck>
        <div class="row">
          <button class="primary" aria-disabled=${this.places.length === 0} @click=${this.enter}>
            Enter this answer
          </button>
          <button @click=${() => (this.places = [])}>Clear</button>
          <button @click=${() => this.dialog?.close()}>Leave it</button>
        </div>
      </div>
    </dialog>`;
  }

  private enter() {
    if (this.places.length === 0 || !this.studentId) return;
    this.dispatchEvent(
      new CommandEvent({ kind: 'enter', studentId: this.studentId, places: [...this.places] }),
    );
    this.dialog?.close();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-enter-answer': DeskEnterAnswer;
  }
}
