import { describe, expect, it } from 'vitest';
import { readMessage } from '../../../client/midi/midi-message.ts';

// Status bytes and data: MIDI 1.0 Detailed Specification, tables I to IV. Middle C is 60 there.
describe('a MIDI message', () => {
  it.each([
    ['a note begins, on channel 1', [0x90, 60, 127], { kind: 'on', channel: 1, pitch: 60, velocity: 1 }],
    ['a note begins, on channel 16', [0x9f, 40, 127], { kind: 'on', channel: 16, pitch: 40, velocity: 1 }],
    ['a note ends', [0x80, 60, 64], { kind: 'off', channel: 1, pitch: 60 }],
    ['a note begins at velocity 0, which ends it', [0x92, 60, 0], { kind: 'off', channel: 3, pitch: 60 }],
    ['all notes off', [0xb0, 123, 0], { kind: 'all-off', channel: 1 }],
    ['all sound off', [0xb4, 120, 0], { kind: 'all-off', channel: 5 }],
    ['mono mode on, which implies all notes off', [0xb1, 126, 1], { kind: 'all-off', channel: 2 }],
  ])('reads that %s', (_, bytes, message) => {
    expect(readMessage(Uint8Array.from(bytes))).toEqual(message);
  });

  it.each([
    ['the sustain pedal', [0xb0, 64, 127]],
    ['a bend of the pitch', [0xe0, 0, 64]],
    ['pressure on a key', [0xa0, 60, 90]],
    ['another program', [0xc0, 24]],
    ['the clock', [0xf8]],
    ['active sensing', [0xfe]],
    ['a system exclusive message', [0xf0, 0x7e, 0x7f, 6, 1, 0xf7]],
    ['half a message', [0x90, 60]],
    ['two bytes that are no data', [0x90, 0x90, 60]],
    ['nothing', []],
  ])('passes over %s', (_, bytes) => {
    expect(readMessage(Uint8Array.from(bytes))).toBeNull();
  });
});
