import type { MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent, ListenFor } from './events.ts';
import { gathererName, type FromWorker, type ToWorker } from './wire.ts';
import workletUrl from './worklet.ts?worker&url';

/** What is still ringing in the room, and the device's unknown delay, in seconds. */
const tail = 0.12;

/** Sound's way from a microphone's stream through the audio thread into the worker; what was heard comes back. */
export class LineIn {
  readonly #context: AudioContext;
  readonly #stream: MediaStream;
  readonly #worker: Worker;
  /** Settled once the first sound was heard, be it silence. */
  readonly begun: Promise<void>;

  private constructor(context: AudioContext, stream: MediaStream, worker: Worker) {
    this.#context = context;
    this.#stream = stream;
    this.#worker = worker;
    this.begun = new Promise((resolve) => {
      worker.addEventListener('message', () => resolve(), { once: true });
    });
  }

  static async open(
    context: AudioContext,
    stream: MediaStream,
    { mode, lowest }: { readonly mode: ListenFor; readonly lowest: MidiNote },
    { hear, fail }: { readonly hear: (events: readonly EarEvent[]) => void; readonly fail: () => void },
  ): Promise<LineIn> {
    await context.audioWorklet.addModule(workletUrl);
    const gatherer = new AudioWorkletNode(context, gathererName, {
      channelCount: 1,
      channelCountMode: 'explicit',
    });
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => hear(data);
    worker.onerror = fail;
    const { port1, port2 } = new MessageChannel();
    const line = new LineIn(context, stream, worker);
    line.#tell({ kind: 'open', samples: port1, sampleRate: context.sampleRate, mode, lowest }, [port1]);
    gatherer.port.postMessage(port2, [port2]);
    // It puts out silence; without a way out some browsers would not call it.
    context.createMediaStreamSource(stream).connect(gatherer).connect(context.destination);
    return line;
  }

  listenFor(mode: ListenFor, lowest: MidiNote): void {
    this.#tell({ kind: 'listen-for', mode, lowest });
  }

  deafFor(milliseconds: number, later: number): void {
    const { currentTime, outputLatency } = this.#context;
    const from = currentTime + later / 1000;
    // Not every browser tells how long sound is under way, out or in.
    const out = Number.isFinite(outputLatency) ? outputLatency : 0;
    this.#tell({ kind: 'deaf', from, to: from + milliseconds / 1000 + out + latencyOf(this.#stream) + tail });
  }

  close(): void {
    this.#worker.terminate();
  }

  #tell(message: ToWorker, transfer: readonly Transferable[] = []): void {
    this.#worker.postMessage(message, [...transfer]);
  }
}

function latencyOf(stream: MediaStream): number {
  const { latency } = (stream.getAudioTracks()[0]?.getSettings() ?? {}) as { readonly latency?: number };
  return latency ?? 0;
}
