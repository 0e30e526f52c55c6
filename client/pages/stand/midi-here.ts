import type { Heard, Playing } from '../../../shared/exercise/heard.ts';
import { standardGuitar, type Instrument, type Place } from '../../../shared/theory/fretboard.ts';
import type { Gathered } from '../../midi/gather.ts';
import type { MidiEvent, MidiState } from '../../midi/midi-events.ts';
import type { MidiListening } from '../../midi/midi-input.ts';
import { mostPitches } from './play-draft.ts';

/** What an instrument played so far: its places, where it tells its strings. */
export type OnMidi = (places: readonly Place[] | null, heard: Heard) => void;

/** The instruments that one screen hears by MIDI, while it is wanted. */
export class MidiHere {
  state: MidiState = 'off';

  readonly #onNews: () => void;
  readonly #onPlayed: OnMidi;
  #midi: MidiListening | null = null;
  #gathered: Gathered = [];
  #as: Playing['as'] = 'line';
  #instrument = standardGuitar;
  #ends: (() => void)[] = [];
  /** Each opening is another; one that was given up meanwhile ends. */
  #turn = 0;

  /** `onNews`: something that is drawn has changed. */
  constructor(onNews: () => void, onPlayed: OnMidi) {
    this.#onNews = onNews;
    this.#onPlayed = onPlayed;
  }

  listenFor(as: Playing['as'], instrument: Instrument): void {
    this.#as = as;
    this.#instrument = instrument;
    if (this.#midi) this.#midi.instrument = instrument;
  }

  /** What was played so far belongs to no answer any more. */
  forget(): void {
    this.#gathered = [];
  }

  async open(): Promise<void> {
    const turn = this.#turn;
    try {
      const [{ MidiListening }, { gather, placesPlayed, asHeard }] = await Promise.all([
        import('../../midi/midi-input.ts'),
        import('../../midi/gather.ts'),
      ]);
      if (turn !== this.#turn) return;
      const midi = new MidiListening();
      this.#midi = midi;
      const onPlayed = (event: MidiEvent) => {
        const as = this.#as;
        if (event.kind === 'on' && as === 'line' && this.#gathered.length >= mostPitches) return;
        this.#gathered = gather(this.#gathered, event, as);
        if (event.kind === 'off' || this.#gathered.length === 0) return;
        this.#onPlayed(placesPlayed(this.#gathered, this.#instrument), asHeard(this.#gathered, as));
      };
      this.#ends = [midi.onState(() => this.#become(midi.state)), midi.onPlayed(onPlayed)];
      midi.instrument = this.#instrument;
      this.#become(midi.state);
      await midi.start();
    } catch {
      if (turn === this.#turn) this.#become('unsupported');
    }
  }

  close(): void {
    this.#turn += 1;
    for (const end of this.#ends) end();
    this.#ends = [];
    this.#midi?.stop();
    this.#midi = null;
    this.#become('off');
  }

  #become(state: MidiState): void {
    if (state === this.state) return;
    this.state = state;
    this.#onNews();
  }
}
