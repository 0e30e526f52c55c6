import type { Way } from '../../shared/exercise/heard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import type { KeyStore } from '../lib/key-store.ts';

/** This device's place in a class: the resume token, and the code it was got with. */
export interface Seat {
  readonly token: string;
  readonly code: string;
}

export const seatKey = 'rootcall.seat';
export const leftHandedKey = 'rootcall.left-handed';
export const namingKey = 'rootcall.naming';
export const wayKey = 'rootcall.way';
const midiKey = 'rootcall.midi';
const nameKey = 'rootcall.name';

/** What the device remembers of its student between visits. */
export class Device {
  readonly #storage: KeyStore;

  constructor(storage: KeyStore) {
    this.#storage = storage;
  }

  get seat(): Seat | null {
    try {
      const { token, code } = JSON.parse(this.#storage.get(seatKey) ?? '{}') as Partial<Seat>;
      return typeof token === 'string' && typeof code === 'string' ? { token, code } : null;
    } catch {
      return null;
    }
  }

  set seat(seat: Seat | null) {
    if (seat === null) this.#storage.remove(seatKey);
    else this.#storage.set(seatKey, JSON.stringify(seat));
  }

  get name(): string {
    return this.#storage.get(nameKey) ?? '';
  }

  set name(name: string) {
    if (name === '') this.#storage.remove(nameKey);
    else this.#storage.set(nameKey, name);
  }

  get leftHanded(): boolean {
    return this.#storage.get(leftHandedKey) === 'yes';
  }

  set leftHanded(on: boolean) {
    if (on) this.#storage.set(leftHandedKey, 'yes');
    else this.#storage.remove(leftHandedKey);
  }

  /** The note names that this student reads and writes; null where those of the class will do. */
  get naming(): NoteNaming | null {
    const stored = this.#storage.get(namingKey);
    return (['english', 'german', 'solfege'] as const).find((naming) => naming === stored) ?? null;
  }

  set naming(naming: NoteNaming | null) {
    if (naming === null) this.#storage.remove(namingKey);
    else this.#storage.set(namingKey, naming);
  }

  /** How the student likes to answer, where an exercise allows it. */
  get way(): 'tap' | Way {
    const stored = this.#storage.get(wayKey);
    return (['play', 'midi'] as const).find((way) => way === stored) ?? 'tap';
  }

  set way(way: 'tap' | Way) {
    this.#storage.set(wayKey, way);
    if (way === 'midi') this.#storage.set(midiKey, 'yes');
  }

  /** MIDI was asked for on this device. */
  get wantsMidi(): boolean {
    return this.#storage.get(midiKey) === 'yes';
  }
}
