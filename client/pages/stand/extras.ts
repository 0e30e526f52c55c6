import { html, nothing, type TemplateResult } from 'lit';
import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Finger } from '../../../shared/exercise/exercise.ts';
import { sign } from '../../components/signs.ts';
import type { PlacesInput } from '../../fretboard/placing.ts';

const fingers: readonly Finger[] = [1, 2, 3, 4];

export interface Extras {
  readonly input: PlacesInput;
  readonly answer: Answer;
  /** Taps mark the root instead of placing. */
  readonly marking: boolean;
  readonly disabled: boolean;
  readonly onMark: () => void;
  readonly onFinger: (finger: Finger) => void;
}

/** What an exercise asks for besides the notes: the root marked, the finger on it named. */
export function extrasRow(extras: Extras): TemplateResult | typeof nothing {
  const { input, answer, marking, disabled, onMark, onFinger } = extras;
  if (!input.marksRoot && !input.asksFinger) return nothing;
  return html`<div class="extras">
    ${
      input.marksRoot
        ? html`<button
            type="button"
            class="mark-root"
            aria-pressed=${marking ? 'true' : 'false'}
            ?disabled=${disabled || answer.places.length === 0}
            @click=${onMark}
          >
            ${sign('lozenge')} <span>Mark the root</span>
          </button>`
        : nothing
    }
    ${
      input.asksFinger
        ? html`<div class="fingers" role="group" aria-labelledby="finger-words">
            <span id="finger-words">Finger on the root</span>
            ${fingers.map(
              (finger) =>
                html`<button
                  type="button"
                  aria-label=${`Finger ${String(finger)}`}
                  aria-pressed=${answer.finger === finger ? 'true' : 'false'}
                  ?disabled=${disabled}
                  @click=${() => {
                    onFinger(finger);
                  }}
                >
                  ${finger}
                </button>`,
            )}
          </div>`
        : nothing
    }
  </div>`;
}
