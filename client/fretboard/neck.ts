import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Correction } from '../../shared/exercise/verdict.ts';
import {
  place as placeOf,
  standardGuitar,
  type FretRange,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../shared/theory/fretboard.ts';
import { PlaceToggledEvent, RootMarkedEvent, TakenBackEvent, WindowsFittedEvent } from './events.ts';
import { placeAt, type NeckFrame } from './geometry.ts';
import { inkFrame, naturalAspect, type InkRequest, type InkRows } from './ink-frame.ts';
import { Scale } from './ink-marks.ts';
import { inkStyle } from './ink-style.ts';
import { Fingers, heldIn, isActKey, moved } from './input.ts';
import { neckStyle } from './neck-style.ts';
import { renderCells } from './render-cells.ts';
import { renderInk, rowsFor } from './render-ink.ts';
import { renderWood } from './render-wood.ts';
import {
  capoWords,
  cropTo,
  markedPlaces,
  placeName,
  type HeardMark,
  type InkMarks,
  type NeckHeat,
  type NeckMaterial,
  type NeckNote,
  type NeckView,
  type WoodMarks,
} from './state.ts';
import { windowsIn, woodFrame, type WoodRequest } from './wood-frame.ts';
import { woodStyle } from './wood-style.ts';

/** A wooden neck's width ÷ height where its box leaves the height open. */
const woodAspect = { upright: 0.585, lying: 2.6 };

function sameWindows(a: readonly FretRange[], b: readonly FretRange[]): boolean {
  return a.length === b.length && a.every(({ low, high }, at) => low === b[at]?.low && high === b[at]?.high);
}

function cellPlace(target: EventTarget | null): Place | null {
  if (!(target instanceof HTMLElement)) return null;
  const { string, fret } = target.dataset;
  return string === undefined || fret === undefined ? null : placeOf(Number(string), Number(fret));
}

/**
 * The neck: of wood to take taps, in ink to inform. Properties down, events up: it holds no answer.
 * It fills its box; where the box has no height of its own, it takes a fitting one.
 */
@customElement('rootcall-neck')
export class Neck extends LitElement {
  static override readonly styles = [neckStyle, woodStyle, inkStyle];

  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property() view: NeckView = 'upright';
  @property({ reflect: true }) material: NeckMaterial = 'wood';
  @property({ type: Boolean, attribute: 'left-handed' }) leftHanded = false;
  /** Null: wood shows its first window, ink crops to its marks. */
  @property({ attribute: false }) window: FretRange | null = null;
  @property() label = 'Neck';
  /** Names for the strings, from string 1, where the setting adds them. */
  @property({ attribute: false }) stringNames: readonly string[] = [];

  /** Wood: what is placed, and whether the class has it. */
  @property({ attribute: false }) places: readonly Place[] = [];
  @property({ type: Boolean }) sent = false;
  @property({ type: Boolean }) disabled = false;
  /** Wood: each place shows when it was visited, counted from 1; one may come twice. */
  @property({ type: Boolean }) ordered = false;
  /** Wood: places that sound what was heard. */
  @property({ attribute: false }) heard: readonly HeardMark[] = [];
  /** Wood: the root may be marked, and which of the places is. */
  @property({ type: Boolean }) marksRoot = false;
  @property({ attribute: false }) root: Place | null = null;
  /** Wood: a place whose name is asked for. The neck is then a picture, and takes no taps. */
  @property({ attribute: false }) asked: Place | null = null;
  /** How a screen reader names a place. Never by its note: it is the answer. */
  @property({ attribute: false }) placeName: (place: Place) => string = placeName;

  /** Ink. */
  @property({ attribute: false }) notes: readonly NeckNote[] = [];
  @property({ attribute: false }) corrections: readonly Correction[] = [];
  @property({ attribute: false }) heat: readonly NeckHeat[] = [];
  @property({ attribute: false }) highlightString: StringNumber | null = null;
  /** Null: the rows beside the frets that its notes need; else those of its neighbours. */
  @property({ attribute: false }) rows: InkRows | null = null;
  /** No text of a chart is smaller than this, in px, as far as its strings leave room. */
  @property({ type: Number, attribute: 'least-text' }) leastText = 12;

  @state() private box: { readonly width: number; readonly height: number } | null = null;
  @state() private cursor: Place = placeOf(1, 0);
  @state() private pressed: readonly Place[] = [];
  @state() private arriving = false;

  readonly #fingers = new Fingers();
  #windows: readonly FretRange[] = [];
  #observer: ResizeObserver | null = null;

  /** The windows through which the whole neck can be reached; empty before the first layout. */
  get windows(): readonly FretRange[] {
    return this.#windows;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.#observe();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer?.disconnect();
    this.#fingers.cancelAll();
  }

  #observe(): void {
    this.#observer ??= new ResizeObserver(() => {
      this.#measure();
    });
    const frame = this.#frame;
    if (frame !== null) this.#observer.observe(frame);
    this.#measure();
  }

  get #frame(): HTMLElement | null {
    return this.renderRoot.querySelector('.frame');
  }

  #measure(): void {
    const { clientWidth: width = 0, clientHeight: height = 0 } = this.#frame ?? {};
    if (width === 0 || height === 0) return;
    if (this.box?.width !== width || this.box.height !== height) this.box = { width, height };
  }

  protected override firstUpdated(): void {
    this.#observe();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('material'))
      this.arriving = changed.get('material') === 'wood' && this.material === 'ink';
    if (changed.has('disabled') && this.disabled) this.#release();
  }

  protected override updated(): void {
    const request = this.#woodRequest();
    if (request === null) return;
    const windows = windowsIn(request);
    if (sameWindows(windows, this.#windows)) return;
    this.#windows = windows;
    this.dispatchEvent(new WindowsFittedEvent(windows));
  }

  protected override render(): TemplateResult {
    const wood = this.material === 'wood';
    const ink = wood ? null : this.#inkRequest();
    const aspect = ink === null ? woodAspect[this.view] : naturalAspect(ink);
    // The frame outlives a change of material: it is what gets measured. `.style` is set by script, so that
    // a content security policy without inline styles lets it through.
    return html`<div
      class=${this.arriving ? 'frame arriving' : 'frame'}
      .style=${`aspect-ratio: ${aspect.toFixed(3)}`}
    >
      ${ink === null ? this.#renderWood() : this.#renderInk(ink)}
    </div>`;
  }

  // --- wood

  #woodRequest(): WoodRequest | null {
    if (this.box === null || this.material !== 'wood') return null;
    return {
      ...this.box,
      view: this.view,
      leftHanded: this.leftHanded,
      strings: this.instrument.openStrings.length,
      fretCount: this.instrument.fretCount,
      named: this.stringNames.length > 0,
    };
  }

  #woodFrame(): NeckFrame | null {
    const request = this.#woodRequest();
    if (request === null) return null;
    const window = this.window ?? windowsIn(request)[0];
    return window === undefined ? null : woodFrame(request, window);
  }

  get #woodMarks(): WoodMarks {
    const { places, heard, ordered, root, asked, sent, stringNames, pressed } = this;
    return { places, heard, ordered, root, asked, sent, stringNames, pressed };
  }

  #renderWood(): TemplateResult | typeof nothing {
    const frame = this.#woodFrame();
    if (frame === null) return nothing;
    const { asked } = this;
    const neck = renderWood(frame, this.instrument, this.#woodMarks);
    if (asked === null) return html`${neck}${this.#renderTaps(frame)}`;
    return html`<div role="img" aria-label=${`${this.#label}: ${this.placeName(asked)}`}>${neck}</div>`;
  }

  /** Frets are counted from a capo, so whoever can't see it must hear of it. */
  get #label(): string {
    return [this.label, capoWords(this.instrument).toLowerCase()].filter(Boolean).join(', ');
  }

  #renderTaps(frame: NeckFrame): TemplateResult {
    return html`<div
      class="taps"
      role="grid"
      aria-label=${this.#label}
      aria-multiselectable="true"
      aria-disabled=${this.disabled ? 'true' : 'false'}
      aria-rowcount=${frame.strings}
      aria-colcount=${this.instrument.fretCount + 1}
      @pointerdown=${this.#onDown}
      @pointermove=${this.#onMove}
      @pointerup=${this.#onUp}
      @pointercancel=${this.#onCancel}
      @click=${this.#onClick}
      @keydown=${this.#onKey}
      @focusin=${this.#onFocus}
    >
      ${renderCells(frame, this.instrument, this.#woodMarks, this.cursor, this.placeName)}
    </div>`;
  }

  #placeUnder(event: PointerEvent): Place | null {
    const frame = this.#woodFrame();
    const box = this.#frame?.getBoundingClientRect();
    if (frame === null || box === undefined) return null;
    return placeAt(frame, { x: event.clientX - box.left, y: event.clientY - box.top });
  }

  readonly #onDown = (event: PointerEvent): void => {
    if (this.disabled || event.button !== 0) return;
    // Captured, so that a finger that slides off the neck is still followed, and lifts to no effect.
    if (event.currentTarget instanceof Element) event.currentTarget.setPointerCapture(event.pointerId);
    this.#fingers.down(event.pointerId, this.#placeUnder(event));
    this.pressed = this.#fingers.places;
  };

  readonly #onMove = (event: PointerEvent): void => {
    if (this.pressed.length === 0 && event.pressure === 0) return;
    this.#fingers.move(event.pointerId, this.#placeUnder(event));
    this.pressed = this.#fingers.places;
  };

  readonly #onUp = (event: PointerEvent): void => {
    this.#fingers.move(event.pointerId, this.#placeUnder(event));
    const place = this.#fingers.lift(event.pointerId);
    this.pressed = this.#fingers.places;
    if (place === null) return;
    this.cursor = place;
    this.#act(place);
  };

  readonly #onCancel = (event: PointerEvent): void => {
    this.#fingers.cancel(event.pointerId);
    this.pressed = this.#fingers.places;
  };

  #release(): void {
    this.#fingers.cancelAll();
    this.pressed = [];
  }

  /** A screen reader moves the focus by itself: keys then act where it is. */
  readonly #onFocus = (event: FocusEvent): void => {
    this.cursor = cellPlace(event.target) ?? this.cursor;
  };

  /** A click without a finger or mouse before it (`detail` 0) is a screen reader's: it acts on the cell it names. */
  readonly #onClick = (event: MouseEvent): void => {
    const place = event.detail === 0 ? cellPlace(event.target) : null;
    if (place === null) return;
    this.cursor = place;
    this.#act(place);
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const frame = this.#woodFrame();
    if (frame === null || event.ctrlKey || event.metaKey || event.altKey) return;
    const from = heldIn(frame, this.cursor);
    if (isActKey(event.key)) {
      event.preventDefault();
      if (!event.repeat) this.#act(from);
      return;
    }
    const extra = this.#extraFor(event.key, from);
    if (extra !== null) {
      // R means something else to a Desk around the neck.
      event.preventDefault();
      event.stopPropagation();
      if (!this.disabled) this.dispatchEvent(extra);
      return;
    }
    const to = moved(frame, from, event.key);
    if (to === null) return;
    event.preventDefault();
    this.cursor = to;
    void this.#focusCursor();
  };

  #extraFor(key: string, at: Place): Event | null {
    if (this.ordered && key === 'Backspace') return new TakenBackEvent();
    return this.marksRoot && key.toLowerCase() === 'r' ? new RootMarkedEvent(at) : null;
  }

  async #focusCursor(): Promise<void> {
    await this.updateComplete;
    // After a tap not every browser would show by itself where the keys have gone.
    this.renderRoot.querySelector<HTMLElement>('.cell[tabindex="0"]')?.focus({ focusVisible: true });
  }

  #act(place: Place): void {
    if (!this.disabled) this.dispatchEvent(new PlaceToggledEvent(place));
  }

  // --- ink

  get #inkMarks(): InkMarks {
    const { notes, corrections, heat, highlightString, stringNames } = this;
    return { notes, corrections, heat, highlightString, stringNames };
  }

  #inkRequest(): InkRequest {
    const marked = markedPlaces(this.#inkMarks);
    const rows = rowsFor(this.notes);
    return {
      openRow: rows.openRow || marked.some(({ fret }) => fret === 0),
      fingerRow: rows.fingerRow,
      ...this.rows,
      view: this.view,
      leftHanded: this.leftHanded,
      strings: this.instrument.openStrings.length,
      window: this.window ?? cropTo(this.instrument, marked),
      named: this.stringNames.length > 0,
      aspect: this.box === null ? null : this.box.width / this.box.height,
    };
  }

  #renderInk(request: InkRequest): TemplateResult {
    const frame = inkFrame(request);
    const scale = new Scale(
      this.leastText,
      this.box === null ? null : Math.min(this.box.width / frame.width, this.box.height / frame.height),
    );
    return html`${renderInk(frame, this.instrument, this.#inkMarks, scale, this.#label)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-neck': Neck;
  }
}
