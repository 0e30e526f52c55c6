import type { MidiNote } from '../../shared/theory/pitch.ts';

/** What of MIDI is needed here; channels from 1 to 16. */
export type MidiMessage =
  | { readonly kind: 'on'; readonly channel: number; readonly pitch: MidiNote; readonly velocity: number }
  | { readonly kind: 'off'; readonly channel: number; readonly pitch: MidiNote }
  /** Every note of the channel ends. */
  | { readonly kind: 'all-off'; readonly channel: number };

const noteOff = 0x80;
const noteOn = 0x90;
const controlChange = 0xb0;
/** Controllers that end what sounds: All Sound Off, and All Notes Off with the mode messages that imply it. */
const allSoundOff = 120;
const allNotesOff = 123;

/**
 * Reads one whole message, as Web MIDI gives them (without running status); null for whatever is not a note's begin or
 * end. Status bytes, the velocity 0 that means an end, and channel modes: MIDI 1.0 Detailed Specification, tables I–IV.
 */
export function readMessage(bytes: Uint8Array): MidiMessage | null {
  const [status = 0, first = 0, second = 0] = bytes;
  if (bytes.length !== 3 || first > 127 || second > 127) return null;
  const channel = (status & 0x0f) + 1;
  const pitch = first as MidiNote;
  switch (status & 0xf0) {
    case noteOn:
      return second === 0
        ? { kind: 'off', channel, pitch }
        : { kind: 'on', channel, pitch, velocity: second / 127 };
    case noteOff:
      return { kind: 'off', channel, pitch };
    case controlChange:
      return first === allSoundOff || first >= allNotesOff ? { kind: 'all-off', channel } : null;
    default:
      return null;
  }
}
