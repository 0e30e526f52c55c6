import { standardGuitar, type Instrument } from '../../shared/theory/fretboard.ts';
import { Asked, Listeners } from '../lib/asked.ts';
import type { MidiEvent, MidiState } from './midi-events.ts';
import { MidiReader } from './midi-reader.ts';

/** Linux shows this port where nothing is plugged in; it gives back what programs send. */
const isThrough = ({ name }: MIDIInput) => /^midi through/i.test(name ?? '');

/** The instruments that are plugged into this device by MIDI, also those plugged in later. */
export class MidiListening extends Asked<MidiState> {
  #instrument: Instrument = standardGuitar;
  #access: MIDIAccess | null = null;
  readonly #plugged = new Map<MIDIInput, MidiReader>();
  readonly #onPlayed = new Listeners<MidiEvent>();

  constructor() {
    super({ obstacle, stateOf });
  }

  /** Called at once with what is played; returns its end. */
  onPlayed(listener: (event: MidiEvent) => void): () => void {
    return this.#onPlayed.add(listener);
  }

  /** Of which instrument a channel may be a string. */
  set instrument(instrument: Instrument) {
    if (instrument === this.#instrument) return;
    this.#instrument = instrument;
    for (const input of this.#plugged.keys()) this.#plugged.set(input, new MidiReader(instrument));
  }

  protected override get isOpen(): boolean {
    return this.#access !== null;
  }

  protected override async open(isWanted: () => boolean): Promise<void> {
    const access = await navigator.requestMIDIAccess({ sysex: false });
    if (!isWanted()) return;
    this.#access = access;
    access.onstatechange = () => this.#plug(access);
    this.#plug(access);
  }

  protected override release(): void {
    if (this.#access) this.#access.onstatechange = null;
    this.#access = null;
    for (const input of this.#plugged.keys()) this.#unplug(input);
  }

  #plug(access: MIDIAccess): void {
    const there = [...access.inputs.values()].filter(
      (input) => input.state === 'connected' && !isThrough(input),
    );
    for (const input of this.#plugged.keys()) if (!there.includes(input)) this.#unplug(input);
    for (const input of there) {
      if (this.#plugged.has(input)) continue;
      this.#plugged.set(input, new MidiReader(this.#instrument));
      input.onmidimessage = ({ data, timeStamp }) => {
        if (data) this.#tell(this.#plugged.get(input)?.read(data, timeStamp) ?? []);
      };
    }
    this.become(there.length > 0 ? 'connected' : 'none');
  }

  #unplug(input: MIDIInput): void {
    input.onmidimessage = null;
    this.#tell(this.#plugged.get(input)?.unplug(performance.now()) ?? []);
    this.#plugged.delete(input);
    void input.close().catch(() => undefined);
  }

  #tell(events: readonly MidiEvent[]): void {
    for (const event of events) this.#onPlayed.tell(event);
  }
}

function obstacle(): MidiState | null {
  if (!isSecureContext) return 'insecure';
  return 'requestMIDIAccess' in navigator ? null : 'unsupported';
}

/** Why MIDI was not given, by the name of the browser's error (Web MIDI API, `requestMIDIAccess`). */
function stateOf(error: unknown): MidiState {
  const { name } = error instanceof Error || error instanceof DOMException ? error : { name: '' };
  return name === 'NotAllowedError' || name === 'SecurityError' ? 'refused' : 'unsupported';
}
