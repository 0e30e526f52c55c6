import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hearChord } from '../../../client/listening/chord-ear.ts';
import { loadNet, lowestNote } from '../../../client/listening/net.ts';
import { Random } from '../../support/random.ts';
import { evenHand, line, strum } from '../../support/sound/mix.ts';
import { mutedStrums } from '../../support/sound/muted.ts';
import { inRoom } from '../../support/sound/rooms.ts';
import { guitarNames, loadGuitars, sampleRate, type GuitarName } from '../../support/sound/samples.ts';
import { speech, voices } from '../../support/sound/speech.ts';

const { buffer, byteOffset, byteLength } = readFileSync(
  new URL('../../../client/listening/weights.bin', import.meta.url),
);
const net = loadNet(buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer);
const onset = 0.5;

const guitars = await loadGuitars();

const struckAt = (samples: Float32Array, at: number) => ({
  samples,
  onsetAt: Math.round(at * sampleRate),
  sampleRate,
  net,
});

function heard(name: GuitarName, pitches: readonly number[], length: 0.25 | 0.4) {
  const { samples } = strum(guitars[name], pitches, evenHand(new Random(3)), { before: onset });
  return hearChord({ ...struckAt(samples, onset), length });
}

const classes = (pitches: readonly number[]) =>
  [...new Set(pitches.map((pitch) => pitch % 12))].sort((a, b) => a - b);

/** Open and barred chords that everybody learns, as MIDI notes (common practice, no source). */
const chords = {
  'E major': [40, 47, 52, 56, 59, 64],
  'A minor': [45, 52, 57, 60, 64],
  'D major': [50, 57, 62, 66],
  'F major, barred': [41, 48, 53, 57, 60, 65],
  'B♭ minor, barred': [46, 53, 58, 61, 65],
  'E without its third': [40, 47, 52, 59, 64],
};

/** The open E major chord with its third a fret too high. */
const oneFretOff = { 'E with a fourth': [40, 47, 52, 57, 59, 64] };

describe.each(guitarNames)('a chord on a guitar that the net has not met: %s', (name) => {
  it('what is heard is the tones that were played and no other', () => {
    const wrong = Object.entries({ ...chords, ...oneFretOff }).filter(([, pitches]) => {
      const { tones, isChord } = heard(name, pitches, 0.4);
      return !isChord || tones.map(({ pitchClass }) => pitchClass).join() !== classes(pitches).join();
    });
    expect(wrong.map(([called]) => called)).toEqual([]);
  });

  it('one note alone is no chord', () => {
    expect(heard(name, [57], 0.4).isChord).toBe(false);
  });

  it('a note struck while others ring on is the one that is named', () => {
    const { samples } = line(guitars[name], [45, 52, 57, 60], evenHand(new Random(3)), {
      before: onset,
      ringing: 1,
    });
    const { notes } = hearChord({ ...struckAt(samples, onset + 3 * 0.25), length: 0.25 });
    const sure = [...notes.keys()].filter((index) => (notes[index] ?? 0) >= 0.5);
    expect(sure.map((index) => lowestNote + index)).toEqual([60]);
  });
});

describe('what is no chord', () => {
  it('silence', () => {
    const silence = new Float32Array(sampleRate);
    expect(hearChord({ ...struckAt(silence, onset), length: 0.4 })).toMatchObject({
      tones: [],
      isChord: false,
    });
  });

  it('damped strings: hardly one stroke in twenty', () => {
    const { samples } = mutedStrums(guitars.acoustic, 20, 4, 2);
    const noisy = inRoom(samples, 'microphone-like', 4);
    // Where its strokes are, each some half second apart; looking everywhere covers them.
    expect(chordsIn(noisy)).toBeLessThanOrEqual(3);
  });

  it('speech, wherever in it a look begins: hardly ever', async () => {
    const [voice] = voices;
    const said = await speech(voice);
    expect(chordsIn(inRoom(said, 'microphone-like', 2))).toBeLessThanOrEqual(said.length / sampleRate / 10);
  });
});

/** Of looks every quarter of a second, how many hear a chord. */
function chordsIn(samples: Float32Array): number {
  let count = 0;
  for (let at = 0.5; at < samples.length / sampleRate - 0.5; at += 0.25) {
    const from = Math.round((at - 0.45) * sampleRate);
    const part = samples.subarray(from, from + Math.round(0.9 * sampleRate));
    if (hearChord({ ...struckAt(part, 0.45), length: 0.4 }).isChord) count += 1;
  }
  return count;
}
