import { describe, expect, it } from 'vitest';
import { binsOf, fineCount, movedBins } from '../../../client/listening/bins.ts';
import { binCount } from '../../../client/listening/net.ts';

/** Sines that begin at a time and end at another, in seconds; 0.5 s stands before the onset. */
function sines(
  sampleRate: number,
  tones: readonly { readonly midi: number; readonly from: number; readonly to: number }[],
) {
  const samples = new Float32Array(Math.round(sampleRate));
  for (const { midi, from, to } of tones) {
    const step = (2 * Math.PI * 440 * 2 ** ((midi - 69) / 12)) / sampleRate;
    for (let at = Math.round(from * sampleRate); at < to * sampleRate; at += 1)
      samples[at] = (samples[at] ?? 0) + 0.3 * Math.sin(at * step);
  }
  return { samples, onsetAt: 0.5 * sampleRate, sampleRate };
}

const strongest = (values: Float32Array) => values.indexOf(Math.max(...values));

describe.each([44_100, 48_000, 22_050, 16_000])('bins at %d samples a second', (sampleRate) => {
  it.each([0.2, 0.25, 0.4])('a sine is strongest in the bin of its pitch, after %d s', (length) => {
    for (const midi of [40, 45, 52, 64, 76, 88]) {
      const bins = binsOf({ ...sines(sampleRate, [{ midi, from: 0.5, to: 1 }]), length });
      expect(bins.length).toBe(binCount);
      expect(strongest(bins.subarray(0, fineCount))).toBe(3 * (midi - 38));
      expect(Math.max(...bins)).toBeCloseTo(1);
    }
  });

  it('what sounded before the onset stands apart, one bin a semitone', () => {
    const sound = sines(sampleRate, [
      { midi: 57, from: 0, to: 0.5 },
      { midi: 64, from: 0.5, to: 1 },
    ]);
    const bins = binsOf({ ...sound, length: 0.4 });
    expect(strongest(bins.subarray(0, fineCount))).toBe(3 * (64 - 38));
    expect(strongest(bins.subarray(fineCount))).toBe(57 - 38);
  });
});

describe('bins', () => {
  it('of silence are all zero', () => {
    const samples = new Float32Array(44_100);
    const bins = binsOf({ samples, onsetAt: 22_050, sampleRate: 44_100, length: 0.4 });
    expect(bins.every((bin) => bin === 0)).toBe(true);
  });

  it('do not depend on how loud the sound is', () => {
    const sound = sines(44_100, [{ midi: 52, from: 0.5, to: 1 }]);
    const soft = { ...sound, samples: sound.samples.map((value) => value / 50) };
    const [loudBins, softBins] = [sound, soft].map((each) => binsOf({ ...each, length: 0.4 }));
    softBins?.forEach((bin, index) => expect(bin).toBeCloseTo(loudBins?.[index] ?? NaN, 3));
  });

  it('sound that ends before the look does counts as silence from there on', () => {
    const sound = sines(44_100, [{ midi: 52, from: 0.5, to: 1 }]);
    const cut = { ...sound, samples: sound.samples.subarray(0, 44_100 * 0.7) };
    const bins = binsOf({ ...cut, length: 0.4 });
    expect(strongest(bins.subarray(0, fineCount))).toBe(3 * (52 - 38));
  });
});

describe('bins moved by a semitone', () => {
  it('are those of the same sound a semitone higher or lower', () => {
    for (const by of [-1, 1]) {
      const played = binsOf({ ...sines(44_100, [{ midi: 60 + by, from: 0.5, to: 1 }]), length: 0.4 });
      const moved = movedBins(
        binsOf({ ...sines(44_100, [{ midi: 60, from: 0.5, to: 1 }]), length: 0.4 }),
        by,
      );
      const own = 3 * (60 + by - 38);
      expect(strongest(moved.subarray(0, fineCount))).toBe(own);
      for (const bin of [own - 1, own, own + 1]) expect(moved[bin]).toBeCloseTo(played[bin] ?? NaN, 1);
    }
  });
});
