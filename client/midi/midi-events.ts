import type { StringNumber } from '../../shared/theory/fretboard.ts';
import type { MidiNote } from '../../shared/theory/pitch.ts';

/** How MIDI stands on this device; `none`: allowed, with nothing plugged in. */
export type MidiState = 'off' | 'asking' | 'connected' | 'none' | 'refused' | 'unsupported' | 'insecure';

/** What an instrument plays; `at` in milliseconds of the page's clock. */
export type MidiEvent =
  | {
      readonly kind: 'on';
      readonly at: number;
      readonly channel: number;
      readonly pitch: MidiNote;
      /** Where the instrument tells it: a guitar with a channel for each string. */
      readonly string?: StringNumber;
      /** 0 to 1. */
      readonly velocity: number;
    }
  | { readonly kind: 'off'; readonly at: number; readonly channel: number; readonly pitch: MidiNote }
  /**
   * By now it is known which string a channel is, and so of notes that came before; or, with none, that it is not a
   * guitar after all.
   */
  | { readonly kind: 'strings'; readonly at: number; readonly strings: ReadonlyMap<number, StringNumber> };
