import type { MidiNote } from '../../shared/theory/pitch.ts';
import { Ear } from './ear.ts';
import type { EarEvent, ListenFor } from './events.ts';
import { loadNet, type Net } from './net.ts';
import type { FromAudioThread, FromWorker, ToWorker } from './wire.ts';

/** Hears what the audio thread posts, away from the page, and tells the page what was heard. */
class EarAtWork {
  readonly #sampleRate: number;
  #net: Net | null = null;
  #ear: Ear;
  #mode: ListenFor;
  #lowest: MidiNote;
  /** The context's time at the first sample. */
  #began = 0;
  #samplesHeard = 0;
  /** How long was listened before this ear, in seconds. */
  #before = 0;

  constructor({ samples, sampleRate, mode, lowest }: ToWorker & { readonly kind: 'open' }) {
    this.#sampleRate = sampleRate;
    this.#mode = mode;
    this.#lowest = lowest;
    this.#ear = this.#newEar();
    samples.onmessage = ({ data }: MessageEvent<FromAudioThread>) => {
      if (typeof data === 'number') this.#began = data;
      else {
        this.#hear(data);
        samples.postMessage(data, [data.buffer]);
      }
    };
  }

  set net(net: Net) {
    this.#net = net;
    this.#ear = this.#newEar();
  }

  listenFor(mode: ListenFor, lowest: MidiNote): void {
    this.#mode = mode;
    if (lowest === this.#lowest) return this.#ear.listenFor(mode);
    this.#lowest = lowest;
    this.#ear = this.#newEar();
  }

  deafBetween(from: number, to: number): void {
    const since = this.#began + this.#before;
    this.#ear.deafBetween(from - since, to - since);
  }

  #newEar(): Ear {
    this.#before = this.#samplesHeard / this.#sampleRate;
    const ear = new Ear({ sampleRate: this.#sampleRate, lowest: this.#lowest, net: this.#net });
    ear.listenFor(this.#mode);
    return ear;
  }

  #hear(samples: Float32Array): void {
    const heard = this.#ear.feed(samples);
    this.#samplesHeard += samples.length;
    if (heard.length > 0)
      self.postMessage(heard.map((event) => later(event, this.#before)) satisfies FromWorker);
  }
}

function later(event: EarEvent, seconds: number): EarEvent {
  const at = event.at + seconds;
  return 'onset' in event ? { ...event, at, onset: event.onset + seconds } : { ...event, at };
}

let work: EarAtWork | undefined;

/** Without its weights the ear hears single notes and tuning; a network that fails is tried again. */
async function weights(): Promise<ArrayBuffer> {
  for (;;) {
    try {
      const response = await fetch(new URL('./weights.bin', import.meta.url));
      if (response.ok) return await response.arrayBuffer();
    } catch {
      // Tried again below.
    }
    await new Promise((resolve) => setTimeout(resolve, untilTriedAgain));
  }
}

const untilTriedAgain = 5000;

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  switch (data.kind) {
    case 'open':
      open(data);
      break;
    case 'listen-for':
      work?.listenFor(data.mode, data.lowest);
      break;
    case 'deaf':
      work?.deafBetween(data.from, data.to);
      break;
  }
};

function open(message: ToWorker & { readonly kind: 'open' }): void {
  const opened = new EarAtWork(message);
  work = opened;
  void weights().then((bytes) => {
    opened.net = loadNet(bytes);
  });
}
