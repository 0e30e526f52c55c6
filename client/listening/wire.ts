import type { MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent, ListenFor } from './events.ts';

/** What the page tells the worker; times in seconds of the audio context's clock. */
export type ToWorker =
  | {
      readonly kind: 'open';
      /** From here the samples come, straight from the audio thread. */
      readonly samples: MessagePort;
      readonly sampleRate: number;
      readonly mode: ListenFor;
      readonly lowest: MidiNote;
    }
  | { readonly kind: 'listen-for'; readonly mode: ListenFor; readonly lowest: MidiNote }
  | { readonly kind: 'deaf'; readonly from: number; readonly to: number };

/** What the worker tells the page: never sound. */
export type FromWorker = readonly EarEvent[];

/**
 * What the audio thread posts to the worker: first the time of its first sample, then the samples. A buffer that was
 * heard goes back to be filled again.
 */
export type FromAudioThread = number | Float32Array<ArrayBuffer>;

/** Samples in one post: some 11 milliseconds. */
export const samplesAPost = 512;
export const gathererName = 'rootcall-gatherer';
