import { standardGuitar, type Instrument } from '../../shared/theory/fretboard.ts';
import type { MidiEvent, MidiState } from './midi-events.ts';
import { MidiReader } from './midi-reader.ts';

/** Linux shows this port where nothing is plugged in; it gives back what programs send. */
const isThrough = ({ name }: MIDIInput) => /^midi through/i.test(name ?? '');

/** The instruments that are plugged into this device by MIDI, also those plugged in later. */
export class MidiListening {
  #state: MidiState = obstacle() ?? 'off';
  #instrument: Instrument = standardGuitar;
  #access: MIDIAccess | null = null;
  readonly #plugged = new Map<MIDIInput, MidiReader>();
  /** Each start and stop is another; a permission that comes after a stop is let go. */
  #turn = 0;
  readonly #onState = new Set<() => void>();
  readonly #onPlayed = new Set<(event: MidiEvent) => void>();

  get state(): MidiState {
    return this.#state;
  }

  /** Called with each change of state; returns its end. */
  onState(listener: () => void): () => void {
    this.#onState.add(listener);
    return () => this.#onState.delete(listener);
  }

  /** Called at once with what is played; returns its end. */
  onPlayed(listener: (event: MidiEvent) => void): () => void {
    this.#onPlayed.add(listener);
    return () => this.#onPlayed.delete(listener);
  }

  /** Of which instrument a channel may be a string. */
  set instrument(instrument: Instrument) {
    if (instrument === this.#instrument) return;
    this.#instrument = instrument;
    for (const input of this.#plugged.keys()) this.#plugged.set(input, new MidiReader(instrument));
  }

  /** Asks for MIDI: to be called at a press, for the browser may ask the person. */
  async start(): Promise<void> {
    if (this.#state === 'asking' || this.#access) return;
    const hindrance = obstacle();
    if (hindrance) return this.#become(hindrance);
    this.#turn += 1;
    const turn = this.#turn;
    this.#become('asking');
    try {
      const access = await navigator.requestMIDIAccess({ sysex: false });
      if (turn !== this.#turn) return;
      this.#access = access;
      access.onstatechange = () => this.#plug(access);
      this.#plug(access);
    } catch (error) {
      if (turn === this.#turn) this.#become(stateOf(error));
    }
  }

  stop(): void {
    this.#turn += 1;
    if (this.#access) this.#access.onstatechange = null;
    this.#access = null;
    for (const input of this.#plugged.keys()) this.#unplug(input);
    this.#become(obstacle() ?? 'off');
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
    this.#become(there.length > 0 ? 'connected' : 'none');
  }

  #unplug(input: MIDIInput): void {
    input.onmidimessage = null;
    this.#tell(this.#plugged.get(input)?.unplug(performance.now()) ?? []);
    this.#plugged.delete(input);
    void input.close().catch(() => undefined);
  }

  #tell(events: readonly MidiEvent[]): void {
    for (const event of events) for (const listener of this.#onPlayed) listener(event);
  }

  #become(state: MidiState): void {
    if (state === this.#state) return;
    this.#state = state;
    for (const listener of this.#onState) listener();
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
