import type { MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent, ListenFor, MicrophoneState } from './events.ts';
import type { Listening } from './listening.ts';

/** The device's microphone, its samples gathered in the audio thread and heard in a worker. */
export class MicrophoneListening implements Listening {
  readonly state: MicrophoneState = 'unsupported';
  readonly device = '';

  onState(_listener: () => void): () => void {
    return () => undefined;
  }

  onHeard(_listener: (event: EarEvent) => void): () => void {
    return () => undefined;
  }

  async start(): Promise<void> {
    // Comes with the microphone.
  }

  listenFor(_mode: ListenFor, _lowest: MidiNote): void {
    // Comes with the microphone.
  }

  deafFor(_milliseconds: number): void {
    // Comes with the microphone.
  }

  stop(): void {
    // Comes with the microphone.
  }
}
