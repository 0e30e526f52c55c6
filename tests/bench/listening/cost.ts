import FFT from 'fft.js';
import { PitchDetector } from 'pitchy';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync } from 'node:zlib';
import { build, type Rolldown } from 'vite';
import { Random } from '../../support/random.ts';
import { evenHand, joined, line, strum } from '../../support/sound/mix.ts';
import { inRoom } from '../../support/sound/rooms.ts';
import { loadGuitars, sampleRate } from '../../support/sound/samples.ts';
import { hear, weightsFile } from './hearing.ts';

/** Processor time as shares of the time that the sound lasts. */
export interface Load {
  readonly line: number;
  readonly chord: number;
  /** The raw parts underneath over the same sound: a spectrum each hop, and a pitch each hop. */
  readonly spectrum: number;
  readonly pitch: number;
}

/** A minute of playing, with a bar of rest now and then. */
export async function load(): Promise<Load> {
  const { electric } = await loadGuitars();
  const hand = evenHand(new Random(1));
  const melody = line(electric, [52, 55, 57, 59, 62, 64, 62, 59], hand, { gap: 0.25, ring: 2, ringing: 0.3 });
  const chord = strum(electric, [45, 52, 57, 61, 64], hand, { ring: 1.5 });
  const samples = inRoom(
    joined(Array.from({ length: 10 }, () => [melody, chord]).flat()).samples,
    'microphone-like',
    1,
  );
  const seconds = samples.length / sampleRate;
  const share = (work: () => void) => {
    work();
    const { user, system } = process.cpuUsage();
    work();
    const used = process.cpuUsage({ user, system });
    return (used.user + used.system) / 1e6 / seconds;
  };
  return {
    line: share(() => hear(samples, 'line')),
    chord: share(() => hear(samples, 'chord')),
    spectrum: share(() => spectra(samples)),
    pitch: share(() => pitches(samples)),
  };
}

const hop = 256;

function spectra(samples: Float32Array): void {
  const size = 1024;
  const fft = new FFT(size);
  const out = new Float32Array(2 * size);
  for (let at = 0; at + size <= samples.length; at += hop)
    fft.realTransform(out, samples.subarray(at, at + size));
}

function pitches(samples: Float32Array): void {
  const size = 2048;
  const detector = PitchDetector.forFloat32Array(size);
  for (let at = 0; at + size <= samples.length; at += hop)
    detector.findPitch(samples.subarray(at, at + size), sampleRate);
}

export interface Sizes {
  /** Kilobytes, compressed. */
  readonly code: number;
  readonly weights: number;
}

/** What a page loads when listening is wanted: everything that `microphone.ts` brings with it. */
export async function sizes(): Promise<Sizes> {
  const root = join(dirname(fileURLToPath(weightsFile)), '..');
  const built = (await build({
    configFile: false,
    root,
    logLevel: 'silent',
    worker: { format: 'es' },
    build: {
      write: false,
      assetsInlineLimit: 0,
      rolldownOptions: { input: join(root, 'listening/microphone.ts'), preserveEntrySignatures: 'strict' },
    },
  })) as Rolldown.RolldownOutput;
  const bytes = (content: string | Uint8Array) => brotliCompressSync(content).length / 1000;
  const code = built.output
    .map((file) =>
      file.type === 'chunk'
        ? { name: file.fileName, content: file.code }
        : { name: file.fileName, content: file.source },
    )
    .filter(({ name }) => name.endsWith('.js'))
    .reduce((sum, { content }) => sum + bytes(content), 0);
  return { code, weights: bytes(readFileSync(weightsFile)) };
}
