import type { MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent, ListenFor, MicrophoneState } from './events.ts';

/** What a page needs of listening: made by `openListening`, which loads the rest only then. */
export interface Listening {
  readonly state: MicrophoneState;
  /** The device's name for the microphone; '' where it is not told. */
  readonly device: string;
  /**
   * The device says that it alters the sound (echo, noise or loudness), though it was asked not to; false also where it
   * doesn't say.
   */
  readonly isAltered: boolean;
  /** Called with each change of state; returns its end. */
  onState(listener: () => void): () => void;
  /** Called with what is heard; returns its end. */
  onHeard(listener: (event: EarEvent) => void): () => void;
  /** Asks for the microphone, and listens: to be called at a press, where browsers let sound begin. */
  start(): Promise<void>;
  listenFor(mode: ListenFor, lowest: MidiNote): void;
  /** The device itself sounds for so many milliseconds, from now or so many later on: nothing counts meanwhile. */
  deafFor(milliseconds: number, later?: number): void;
  stop(): void;
}

/** Listening through this device's microphone. Sound is analysed here and never leaves the device. */
export async function openListening(): Promise<Listening> {
  const { MicrophoneListening } = await import('./microphone.ts');
  return new MicrophoneListening();
}
