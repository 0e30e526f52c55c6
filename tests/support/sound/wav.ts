import { sampleRate } from './samples.ts';

/** A WAV file of one channel, 16 bits a sample (RIFF WAVE, format 1: PCM). */
export function wav(samples: Float32Array): Uint8Array {
  const bytes = Buffer.alloc(44 + 2 * samples.length);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + 2 * samples.length, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(sampleRate, 24);
  bytes.writeUInt32LE(2 * sampleRate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((value, at) => {
    bytes.writeInt16LE(Math.round(32767 * Math.min(1, Math.max(-1, value))), 44 + 2 * at);
  });
  return bytes;
}
