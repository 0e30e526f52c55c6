import type { Instrument, StringNumber } from '../../shared/theory/fretboard.ts';
import type { MidiNote } from '../../shared/theory/pitch.ts';
import type { MidiEvent } from './midi-events.ts';
import { readMessage } from './midi-message.ts';
import { ChannelStrings } from './midi-strings.ts';

/** One instrument's messages, turned into what it plays. */
export class MidiReader {
  readonly #strings: ChannelStrings;
  readonly #sounding = new Map<string, { readonly channel: number; readonly pitch: MidiNote }>();
  #known: ReadonlyMap<number, StringNumber> = new Map();

  constructor(instrument: Instrument) {
    this.#strings = new ChannelStrings(instrument);
  }

  read(bytes: Uint8Array, at: number): readonly MidiEvent[] {
    const message = readMessage(bytes);
    if (!message) return [];
    const { channel } = message;
    if (message.kind === 'all-off') return this.#end(at, (note) => note.channel === channel);
    const { pitch } = message;
    if (message.kind === 'off')
      return this.#end(at, (note) => note.channel === channel && note.pitch === pitch);
    this.#strings.on(channel, pitch);
    this.#sounding.set(keyOf(channel, pitch), { channel, pitch });
    const before = this.#known;
    this.#known = this.#strings.strings;
    const string = this.#known.get(channel);
    const on = { ...message, at, ...(string !== undefined && { string }) };
    const isNews = this.#known.size !== before.size || this.#known.get(channel) !== before.get(channel);
    return isNews ? [{ kind: 'strings', at, strings: this.#known }, on] : [on];
  }

  /** The instrument is gone, and with it what it sounded. */
  unplug(at: number): readonly MidiEvent[] {
    return this.#end(at, () => true);
  }

  #end(
    at: number,
    ends: (note: { readonly channel: number; readonly pitch: MidiNote }) => boolean,
  ): readonly MidiEvent[] {
    const ended = [...this.#sounding.values()].filter(ends);
    return ended.map(({ channel, pitch }) => {
      this.#sounding.delete(keyOf(channel, pitch));
      this.#strings.off(channel, pitch);
      return { kind: 'off', at, channel, pitch };
    });
  }
}

function keyOf(channel: number, pitch: MidiNote): string {
  return `${String(channel)} ${String(pitch)}`;
}
