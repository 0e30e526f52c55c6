import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  pitchClassAt,
  stringNumbers,
  type FretRange,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { octave, pitchClass, type PitchClass } from '../../../shared/theory/pitch.ts';
import { usualNames } from '../../../shared/exercise/usual-roots.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import type { PlaceToggledEvent } from '../../fretboard/events.ts';
import { roundStyle } from '../stand/round-style.ts';
import { ExploringEvent } from './events.ts';
import { exploreStyles } from './explore-style.ts';
import { field } from './field.ts';
import { exploreHeader } from './header.ts';
import type { Settings } from './settings.ts';
import { noteText, placeWords } from './words.ts';
import './wood.ts';

const sounds = Array.from({ length: octave }, (_, sounding) => pitchClass(sounding));

/** Where the root is chosen: on the neck of wood, or by note, string and fret. */
@customElement('explore-root')
export class ExploreRoot extends LitElement {
  static override readonly styles = [
    ...exploreStyles,
    roundStyle,
    css`
      .fields {
        display: grid;
        gap: var(--space-2);
        grid-area: keys;
        grid-template-columns: minmax(0, 5fr) minmax(0, 3fr) minmax(0, 3fr);
        padding: var(--space-2) var(--margin);
      }
      @media (min-aspect-ratio: 6/5) {
        .fields {
          align-content: center;
          grid-template-columns: minmax(0, 1fr);
          padding: 0 0 0 var(--space-4);
          width: 8.5rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) settings: Settings | null = null;
  @property({ attribute: false }) place: Place | null = null;
  @state() private string = 2 as StringNumber;

  protected override render(): TemplateResult {
    const { settings, place } = this;
    if (!settings) return html``;
    const { instrument, naming } = settings;
    const range: FretRange | null = place && place.fret > 0 ? { low: place.fret, high: place.fret } : null;
    return html`<div class="round">
      ${exploreHeader()}
      <div class="task">
        <h1 tabindex="-1">Choose a root</h1>
        <p class="soft">
          ${place ? placeWords(instrument, place, naming) : 'Tap it on the neck, or choose it by name.'}
        </p>
      </div>
      <explore-wood
        .instrument=${instrument}
        .places=${place ? [place] : []}
        .range=${range}
        .leftHanded=${settings.leftHanded}
        label="Neck: choose a root"
        @place-toggled=${this.#onPlace}
      ></explore-wood>
      <div class="fields">${this.#fields(settings)}</div>
      <div class="bar">
        <button type="button" class="primary" ?disabled=${place === null} @click=${this.#onGo}>
          See what lies around it
        </button>
      </div>
    </div>`;
  }

  #fields({ instrument, naming }: Settings): TemplateResult {
    const { place } = this;
    const sounding = place ? pitchClassAt(instrument, place) : null;
    const string = place?.string ?? this.#stringHere(instrument.openStrings.length);
    const frets = sounding === null ? [] : this.#placesOf(sounding, string);
    return html`${field({
      label: 'Note',
      choices: [
        ...(sounding === null ? [['', 'Choose'] as const] : []),
        ...sounds.map((sound) => [String(sound), noteText(sound, naming)] as const),
      ],
      chosen: sounding === null ? '' : String(sounding),
      choose: (value) => {
        if (value !== '') this.#choose(this.#placesOf(pitchClass(Number(value)), string)[0]);
      },
    })}
    ${field({
      label: 'String',
      choices: stringNumbers(instrument).map((number) => [String(number), String(number)]),
      chosen: String(string),
      choose: (value) => {
        this.string = Number(value) as StringNumber;
        if (sounding !== null) this.#choose(this.#placesOf(sounding, this.string)[0]);
      },
    })}
    ${field({
      label: 'Fret',
      choices:
        frets.length === 0
          ? [['', '–']]
          : frets.map(({ fret }) => [String(fret), fret === 0 ? 'open' : String(fret)]),
      chosen: String(place?.fret ?? ''),
      choose: (value) => this.#choose(frets.find(({ fret }) => String(fret) === value)),
    })}`;
  }

  #stringHere(strings: number): StringNumber {
    return Math.min(this.string, strings) as StringNumber;
  }

  #placesOf(sounding: PitchClass, string: StringNumber): readonly Place[] {
    const [name] = usualNames(sounding);
    return (this.settings && name && everyString(this.settings.instrument, name)[string - 1]) ?? [];
  }

  #choose(place: Place | undefined): void {
    const { settings } = this;
    if (place && settings)
      this.dispatchEvent(
        new ExploringEvent({ place }, placeWords(settings.instrument, place, settings.naming)),
      );
  }

  readonly #onPlace = ({ place }: PlaceToggledEvent): void => {
    this.#choose(place);
  };

  readonly #onGo = (): void => {
    this.dispatchEvent(new ExploringEvent({ stage: 'see' }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'explore-root': ExploreRoot;
  }
}
