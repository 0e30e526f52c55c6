import { describe, expect, it } from 'vitest';
import type { MidiEvent } from '../../../client/midi/midi-events.ts';
import { MidiReader } from '../../../client/midi/midi-reader.ts';
import { instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { known } from '../../../shared/lib/assert.ts';

// No MIDI instrument was there when this was written: the streams are made from MIDI 1.0 and from what manuals of
// guitar controllers commonly say of a channel for each string (common practice, no source).

function on(channel: number, pitch: number): readonly number[] {
  return [0x90 + channel - 1, pitch, 100];
}
function off(channel: number, pitch: number): readonly number[] {
  return [0x80 + channel - 1, pitch, 0];
}

/** All that a reader tells of a stream, one message each millisecond. */
function read(
  stream: readonly (readonly number[])[],
  reader = new MidiReader(standardGuitar),
): readonly MidiEvent[] {
  return stream.flatMap((bytes, at) => reader.read(Uint8Array.from(bytes), at));
}

/** Pitch and string of each note that begins. */
function notes(events: readonly MidiEvent[]): readonly (readonly [number, number | undefined])[] {
  return events.flatMap((event) => (event.kind === 'on' ? [[event.pitch, event.string] as const] : []));
}

/** E minor at the nut, strings 6 to 1: standard tuning is 40 45 50 55 59 64 (E2 A2 D3 G3 B3 E4). */
const eMinor = [40, 47, 52, 55, 59, 64];

describe('what a MIDI instrument plays', () => {
  it.each([1, 11])('tells the strings of a guitar with a channel for each, from channel %d on', (first) => {
    const events = read(eMinor.map((pitch, index) => on(first + 5 - index, pitch)));
    expect(notes(events)).toEqual([
      // One channel alone may be anything.
      [40, undefined],
      [47, 5],
      [52, 4],
      [55, 3],
      [59, 2],
      [64, 1],
    ]);
    const told = events.find((event) => event.kind === 'strings');
    expect(told?.kind === 'strings' && told.strings.get(first + 5)).toBe(6);
  });

  it('tells them of any first channel, once nothing else fits', () => {
    // Six channels in use leave one first channel only.
    const events = read([...eMinor.map((pitch, index) => on(8 - index, pitch)), on(3, 65)]);
    expect(notes(events).at(-1)).toEqual([65, 1]);
  });

  it('tells pitches only of a keyboard, whatever it plays', () => {
    const chord = [48, 52, 55, 60].map((pitch) => on(1, pitch));
    const line = [60, 62, 64].flatMap((pitch) => [on(1, pitch), off(1, pitch)]);
    for (const event of read([...line, ...chord, ...line])) expect(event).not.toHaveProperty('string');
  });

  it.each([
    ['a keyboard split over two channels', [on(1, 72), on(1, 76), on(2, 36), on(2, 43)]],
    ['low notes on the channel of string 1', [on(1, 45), on(2, 64)]],
    ['notes that no hand spans', [on(2, 60), on(3, 64), on(4, 67)]],
    ['more channels than strings', [40, 41, 42, 43, 44, 45, 46].map((pitch, index) => on(index + 2, pitch))],
  ])('takes no guitar for %s', (_, stream) => {
    for (const [, string] of notes(read(stream))) expect(string).toBeUndefined();
  });

  it.each([1, 11])(
    'tells no string of a guitar that counts from string 6 on, from channel %d on',
    (first) => {
      // A minor pentatonic on strings 6 and 5 from fret 5, then E minor at the nut.
      const line = [
        [0, 45],
        [0, 48],
        [1, 50],
        [1, 52],
      ].flatMap(([channel = 0, pitch = 0]) => [on(first + channel, pitch), off(first + channel, pitch)]);
      const strum = eMinor.map((pitch, index) => on(first + index, pitch));
      for (const [, string] of notes(read([...line, ...strum]))) expect(string).toBeUndefined();
    },
  );

  it('takes back that it is a guitar when something is played that no guitar can', () => {
    const reader = new MidiReader(standardGuitar);
    expect(notes(read([on(2, 60), on(1, 64)], reader)).at(-1)).toEqual([64, 1]);
    const events = read([on(3, 96)], reader);
    expect(events[0]).toMatchObject({ kind: 'strings', strings: new Map() });
    expect(notes(events)).toEqual([[96, undefined]]);
  });

  it('knows the strings of other instruments and tunings', () => {
    const bass = known(instrumentById('bass-4'), 'a bass');
    // Strings 4 and 3 at fret 3: G1 and C2 (open E1 A1 D2 G2 are 28 33 38 43).
    const events = read([on(4, 31), on(3, 36)], new MidiReader(bass));
    expect(notes(events)).toEqual([
      [31, undefined],
      [36, 3],
    ]);
  });

  it('follows a slur, where a string’s next note begins before the last one ends', () => {
    const stream = [on(2, 60), on(3, 57), on(3, 59), off(3, 57), on(3, 60)];
    expect(notes(read(stream)).map(([, string]) => string)).toEqual([undefined, 3, 3, 3]);
  });

  it('ends what sounded when all notes are ended, or it is unplugged', () => {
    const reader = new MidiReader(standardGuitar);
    read([on(1, 64), on(2, 60), on(2, 60)], reader);
    expect(read([[0xb1, 123, 0]], reader)).toEqual([{ kind: 'off', at: 0, channel: 2, pitch: 60 }]);
    expect(reader.unplug(7)).toEqual([{ kind: 'off', at: 7, channel: 1, pitch: 64 }]);
    expect(reader.unplug(8)).toEqual([]);
  });
});
