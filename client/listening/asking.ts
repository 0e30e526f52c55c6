import type { MicrophoneState } from './events.ts';

/** Whatever a device does to please ears on a call would spoil what is measured. */
const asWeHear = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };

export const wanted: MediaStreamConstraints = { audio: asWeHear, video: false };

/** Whether a track does any of what it was asked not to; a key that is absent is not known. */
export function isAltered(settings: Pick<MediaTrackSettings, keyof typeof asWeHear>): boolean {
  // Newer browsers name the kind of echo cancellation instead of saying true.
  const { echoCancellation, noiseSuppression, autoGainControl } = settings;
  return [echoCancellation, noiseSuppression, autoGainControl].some((does) => Boolean(does));
}

/** Why the microphone was not given, by the name of the browser's error (Media Capture and Streams, 10.2). */
export function stateOf(error: unknown): MicrophoneState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'refused';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'missing';
    case 'NotReadableError':
    case 'AbortError':
      return 'busy';
    default:
      return 'unsupported';
  }
}

/** What stands in the way before anything is asked; null where nothing does. */
export function obstacle(): MicrophoneState | null {
  if (!isSecureContext) return 'insecure';
  // Older browsers lack what the types promise.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  return devices && 'AudioWorkletNode' in window && 'Worker' in window ? null : 'unsupported';
}

/** The browser's permission to use the microphone; null where it can't be asked. */
export async function permission(): Promise<PermissionStatus | null> {
  try {
    return await navigator.permissions.query({ name: 'microphone' });
  } catch {
    return null;
  }
}
