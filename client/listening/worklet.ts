import { gathererName, samplesAPost, type FromAudioThread } from './wire.ts';

// The audio thread's own globals, which the page's types lack.
declare const currentTime: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Frames that the audio thread takes at a time. */
const quantum = 128;

/** Gathers samples and posts them to the worker: nothing else is done in the audio thread. */
class Gatherer extends AudioWorkletProcessor {
  #to: MessagePort | null = null;
  #buffer = new Float32Array(samplesAPost);
  #filled = 0;
  /** Buffers that came back: the audio thread makes no new ones while the worker keeps up. */
  readonly #spare: Float32Array<ArrayBuffer>[] = [];

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort>) => {
      data.onmessage = (back: MessageEvent<Float32Array<ArrayBuffer>>) => this.#spare.push(back.data);
      post(data, currentTime);
      this.#to = data;
    };
  }

  process([input]: readonly (readonly Float32Array[])[]): boolean {
    if (!this.#to) return true;
    const samples = input?.[0];
    const length = samples?.length ?? quantum;
    // A microphone that gives nothing is silent: the clock goes on.
    if (samples) this.#buffer.set(samples, this.#filled);
    else this.#buffer.fill(0, this.#filled, this.#filled + length);
    this.#filled += length;
    if (this.#filled >= samplesAPost) {
      post(this.#to, this.#buffer);
      this.#buffer = this.#spare.pop() ?? new Float32Array(samplesAPost);
      this.#filled = 0;
    }
    return true;
  }
}

function post(to: MessagePort, what: FromAudioThread): void {
  to.postMessage(what, typeof what === 'number' ? [] : [what.buffer]);
}

registerProcessor(gathererName, Gatherer);
