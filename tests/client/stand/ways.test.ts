import { describe, expect, it } from 'vitest';
import { memoryStore } from '../../../client/lib/key-store.ts';
import { Device } from '../../../client/connection/device.ts';
import { waysOffered } from '../../../client/pages/stand/ways.ts';
import type { Playing } from '../../../shared/exercise/heard.ts';

const playing: Playing = { as: 'line', taps: [] };

describe('ways to answer', () => {
  it('are taps alone where an exercise can’t be played', () => {
    expect(waysOffered(null, 'on', true, true)).toEqual(['tap']);
  });

  it('are all where everybody plays, and where it is one’s turn', () => {
    for (const may of ['on', 'turn'] as const)
      expect(waysOffered(playing, may, false, true)).toEqual(['tap', 'play', 'midi']);
  });

  it('TURN-1: are taps and MIDI where Stands don’t listen, MIDI only for who wants it', () => {
    for (const may of ['off', 'wait'] as const) {
      expect(waysOffered(playing, may, false, true)).toEqual(['tap']);
      expect(waysOffered(playing, may, true, true)).toEqual(['tap', 'midi']);
    }
  });

  it('have no MIDI in a browser without it', () => {
    expect(waysOffered(playing, 'on', true, false)).toEqual(['tap', 'play']);
    expect(waysOffered(playing, 'off', true, false)).toEqual(['tap']);
  });

  it('are remembered on the device, by tapping at first', () => {
    const storage = memoryStore();
    const device = new Device(storage);
    expect([device.way, device.wantsMidi]).toEqual(['tap', false]);
    device.way = 'midi';
    expect(new Device(storage).way).toBe('midi');
    device.way = 'play';
    expect(new Device(storage).way).toBe('play');
    // It was asked for here once, so it is offered again.
    expect(new Device(storage).wantsMidi).toBe(true);
    storage.set('rootcall.way', 'whistle');
    expect(new Device(storage).way).toBe('tap');
  });
});
