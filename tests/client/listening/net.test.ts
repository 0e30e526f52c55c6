import { readFileSync } from 'node:fs';
import { brotliCompressSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { binCount, loadNet, noteCount } from '../../../client/listening/net.ts';

function ours(): ArrayBuffer {
  const { buffer, byteOffset, byteLength } = readFileSync(
    new URL('../../../client/listening/weights.bin', import.meta.url),
  );
  return buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer;
}

/** A file of one layer in which output `row` is `biases[row]` and `weight` times input `row`. */
function written(weight: number, biases: (row: number) => number): ArrayBuffer {
  const [inputs, outputs] = [binCount, noteCount + 12];
  const bytes = new ArrayBuffer(8 + 4 + 8 + outputs * (8 + inputs));
  const view = new DataView(bytes);
  [...'RCEAR001'].forEach((letter, at) => view.setUint8(at, letter.charCodeAt(0)));
  [2, inputs, outputs].forEach((value, at) => view.setUint32(8 + 4 * at, value, true));
  for (let row = 0; row < outputs; row += 1) {
    view.setFloat32(20 + 4 * row, weight / 100, true);
    view.setFloat32(20 + 4 * (outputs + row), biases(row), true);
    view.setInt8(20 + 8 * outputs + row * inputs + row, 100);
  }
  return bytes;
}

describe('the net', () => {
  it('a file says what the net computes', () => {
    const net = loadNet(written(2, (row) => (row === 3 ? -1 : 0)));
    const bins = new Float32Array(binCount);
    bins[3] = 1;
    bins[noteCount + 7] = 0.5;
    const { notes, tones } = net.hear(bins);
    const sigmoid = (logit: number) => 1 / (1 + Math.exp(-logit));
    expect(notes.length).toBe(noteCount);
    expect(tones.length).toBe(12);
    expect(notes[3]).toBeCloseTo(sigmoid(2 - 1));
    expect(tones[7]).toBeCloseTo(sigmoid(2 * 0.5));
    expect(tones[0]).toBeCloseTo(0.5);
  });

  it('the weights of the repository load, and hear nothing in silence', () => {
    const { notes, tones } = loadNet(ours()).hear(new Float32Array(binCount));
    expect(Math.max(...notes, ...tones)).toBeLessThan(0.1);
  });

  it('the weights are no larger than 118,000 bytes, 99 kB compressed', () => {
    expect(ours().byteLength).toBeLessThanOrEqual(118_000);
    expect(brotliCompressSync(ours()).length).toBeLessThanOrEqual(99_000);
  });

  it('bytes that are something else are refused with the reason', () => {
    const foreign = new TextEncoder().encode('<!doctype html><title>Not found</title>').buffer;
    expect(() => loadNet(foreign)).toThrow('not the weights of the ear: they begin with another mark');
    expect(() => loadNet(new ArrayBuffer(3))).toThrow('the file is too short');
    expect(() => loadNet(ours().slice(0, -1))).toThrow(/bytes were expected/);
    const others = written(1, () => 0);
    new DataView(others).setUint32(12, 100, true);
    expect(() => loadNet(others)).toThrow('another number of values, 100 → 61');
  });
});
