import type { MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent, ListenFor } from './events.ts';
import type { Net } from './net.ts';

export interface EarSettings {
  /** Samples a second. */
  readonly sampleRate: number;
  /** The lowest note of the instrument, which sets how long a look has to be. */
  readonly lowest: MidiNote;
  /** Absent while only single notes or tuning are listened for. */
  readonly net: Net | null;
}

/** Listens to sound, chunk by chunk, and says what it hears: pure, without clock or browser. */
export class Ear {
  readonly #settings: EarSettings;
  #mode: ListenFor = 'line';

  constructor(settings: EarSettings) {
    this.#settings = settings;
  }

  listenFor(mode: ListenFor): void {
    this.#mode = mode;
  }

  /** The device itself sounds from `from` to `to`, in seconds: nothing counts then. */
  deafBetween(_from: number, _to: number): void {
    // Comes with the ear.
  }

  /** Takes in the next samples, of any number. */
  feed(_samples: Float32Array): readonly EarEvent[] {
    return this.#mode === 'line' && this.#settings.net === null ? [] : [];
  }
}
