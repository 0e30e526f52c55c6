import type { Instrument, StringNumber } from '../../shared/theory/fretboard.ts';
import { midiOf, type MidiNote } from '../../shared/theory/pitch.ts';

/** A hand holds frets that lie no further apart; open strings don't count. */
const widestHand = 6;
/** The channel of string 1 in guitar controllers, where what is played leaves it open (common practice, no source). */
const usualFirst = [1, 11];
const channels = 16;

/**
 * Finds out whether an instrument sends each string on a channel of its own: consecutive channels, string 1 on the
 * first. It does if two channels or more are used, no channel sounds two notes at once before that, and all that sounds
 * fits one hand on the neck; what doesn't fit once is a keyboard, or something else, for good. Of a guitar that counts
 * from the last string no string is told.
 */
export class ChannelStrings {
  readonly #instrument: Instrument;
  readonly #held = new Map<number, MidiNote>();
  readonly #used = new Set<number>();
  /** Channels that string 1 may still have. */
  #firsts: readonly number[];
  /** Channels that the last string may have, if channels are counted from there. */
  #turned: readonly number[];

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    const last = channels - instrument.openStrings.length + 1;
    this.#firsts = Array.from({ length: Math.max(0, last) }, (_, index) => index + 1);
    this.#turned = this.#firsts;
  }

  on(channel: number, pitch: MidiNote): void {
    // A guitar that is known as one may slur: the next note of a string begins before the one before it ends.
    if (this.#held.has(channel) && this.#held.get(channel) !== pitch && this.strings.size === 0)
      this.#firsts = [];
    this.#used.add(channel);
    this.#held.set(channel, pitch);
    const { openStrings } = this.#instrument;
    const turned = openStrings.toReversed();
    this.#firsts = this.#firsts.filter((first) => this.#fits(first, openStrings));
    this.#turned = this.#turned.filter((first) => this.#fits(first, turned));
  }

  off(channel: number, pitch?: MidiNote): void {
    if (pitch === undefined || this.#held.get(channel) === pitch) this.#held.delete(channel);
  }

  /** Which string each channel is, as soon as it is known; empty before, and where there are none. */
  get strings(): ReadonlyMap<number, StringNumber> {
    const first = this.#used.size < 2 ? undefined : this.#first;
    if (first === undefined) return new Map();
    return new Map(
      this.#instrument.openStrings.map((_, index) => [first + index, (index + 1) as StringNumber] as const),
    );
  }

  get #first(): number | undefined {
    const [only, ...others] = this.#firsts;
    if (others.length + this.#turned.length === 0) return only;
    return usualFirst.find((first) => this.#firsts.includes(first));
  }

  #fits(first: number, openStrings: Instrument['openStrings']): boolean {
    const { fretCount } = this.#instrument;
    for (const channel of this.#used) if (!openStrings[channel - first]) return false;
    const frets = [...this.#held].map(([channel, pitch]) => {
      const open = openStrings[channel - first];
      return open ? pitch - midiOf(open) : -1;
    });
    const fretted = frets.filter((fret) => fret > 0);
    return (
      frets.every((fret) => fret >= 0 && fret <= fretCount) &&
      (fretted.length === 0 || Math.max(...fretted) - Math.min(...fretted) <= widestHand)
    );
  }
}
