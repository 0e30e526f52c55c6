import { describe, expect, it } from 'vitest';
import { asHeard, gather, nothingPlayed, placesPlayed, type Gathered } from '../../../client/midi/gather.ts';
import { MidiReader } from '../../../client/midi/midi-reader.ts';
import type { Heard } from '../../../shared/exercise/heard.ts';
import { place, standardGuitar } from '../../../shared/theory/fretboard.ts';

/** A message on a channel at a time; velocity 0 ends the note. */
type Played = readonly [at: number, channel: number, pitch: number, velocity?: number];

function gathered(as: Heard['kind'], ...played: readonly Played[]): Gathered {
  const reader = new MidiReader(standardGuitar);
  return played
    .flatMap(([at, channel, pitch, velocity = 90]) =>
      reader.read(Uint8Array.of(0x90 + channel - 1, pitch, velocity), at),
    )
    .reduce((sum, event) => gather(sum, event, as), nothingPlayed);
}

const pitches = (all: Gathered) => all.map(({ pitch }) => pitch);

describe('what is gathered from a MIDI instrument', () => {
  it('takes a strum as one chord, though each string is let go at once', () => {
    const strum = gathered('chord', [0, 1, 48], [10, 1, 48, 0], [60, 1, 52], [65, 1, 52, 0], [110, 1, 55]);
    expect(pitches(strum)).toEqual([48, 52, 55]);
  });

  it('takes tones that are held as one chord, however slowly they come', () => {
    expect(pitches(gathered('chord', [0, 1, 48], [900, 1, 52], [2100, 1, 55]))).toEqual([48, 52, 55]);
  });

  it('begins the next chord when the one before was let go, or a string is struck again', () => {
    const next = gathered('chord', [0, 1, 48], [5, 1, 52], [300, 1, 48, 0], [310, 1, 52, 0], [380, 1, 50]);
    expect(pitches(next)).toEqual([50]);
    expect(pitches(gathered('chord', [0, 1, 48], [20, 1, 52], [700, 1, 48], [720, 1, 53]))).toEqual([48, 53]);
    const strings = gathered('chord', [0, 3, 55], [20, 2, 59], [700, 3, 57], [720, 2, 60]);
    expect(pitches(strings)).toEqual([57, 60]);
  });

  it('is no chord where notes follow each other: none is held, and a strum is faster', () => {
    expect(pitches(gathered('chord', [0, 1, 48], [50, 1, 48, 0], [120, 1, 52]))).toEqual([52]);
  });

  it('keeps all notes of a line in their order, held or not', () => {
    const line = gathered('line', [1000, 1, 60], [1240, 1, 62], [1250, 1, 60, 0], [1500, 1, 60]);
    expect(asHeard(line, 'line')).toEqual({
      kind: 'line',
      pitches: [
        { pitch: 60, at: 0, confidence: 1 },
        { pitch: 62, at: 240, confidence: 1 },
        { pitch: 60, at: 500, confidence: 1 },
      ],
    });
    expect(placesPlayed(line, standardGuitar)).toBeNull();
  });

  it('gives a keyboard’s chord as tones, with the lowest', () => {
    const chord = gathered('chord', [0, 1, 64], [2, 1, 55], [4, 1, 60], [6, 1, 72]);
    expect(asHeard(chord, 'chord')).toEqual({
      kind: 'chord',
      tones: [4, 7, 0].map((pitchClass) => ({ pitchClass, confidence: 1 })),
      lowest: 7,
    });
  });

  it('gives a guitar’s chord as places, the first string too though it was not known as one yet', () => {
    // C major on strings 3 2 1 at frets 5 5 3: open 55 59 64 (G3 B3 E4).
    const chord = gathered('chord', [0, 3, 60], [12, 2, 64], [24, 1, 67]);
    expect(placesPlayed(chord, standardGuitar)).toEqual([place(3, 5), place(2, 5), place(1, 3)]);
  });

  it('gives nothing of nothing', () => {
    expect(placesPlayed(nothingPlayed, standardGuitar)).toEqual([]);
    expect(asHeard(nothingPlayed, 'chord')).toEqual({ kind: 'chord', tones: [] });
  });
});
