import type { Heard, HeardTone } from '../../shared/exercise/heard.ts';
import type { MidiNote } from '../../shared/theory/pitch.ts';

/** What the ear listens for: notes one after another, tones together, or the tuning of one string. */
export type ListenFor = Heard['kind'] | 'tuning';

/** What was heard; `at` and `onset` in seconds of sound since listening began, by the audio clock. */
export type EarEvent =
  /** Some ten times a second. Loudness in dB of full scale; `floor` is the room's own noise. */
  | {
      readonly kind: 'level';
      readonly at: number;
      readonly loudness: number;
      readonly floor: number;
      readonly clipped: boolean;
    }
  /** Something was struck: what, isn't known yet. */
  | { readonly kind: 'struck'; readonly at: number; readonly onset: number }
  | {
      readonly kind: 'note';
      readonly at: number;
      readonly onset: number;
      readonly pitch: MidiNote;
      /** How far it is off, in hundredths of a semitone. */
      readonly cents: number;
      /** 0 to 1. */
      readonly confidence: number;
    }
  /** `isFinal`: the verdict 400 ms after the first string; before it comes a hint at 250 ms. */
  | {
      readonly kind: 'chord';
      readonly at: number;
      readonly onset: number;
      readonly isFinal: boolean;
      readonly tones: readonly HeardTone[];
      /** Others that may be there all the same. */
      readonly faint: readonly HeardTone[];
      /** A tone that may be there or not: better heard again. */
      readonly isDoubtful: boolean;
    }
  /** While tuning: the string's frequency in hertz, several times a second. */
  | { readonly kind: 'tuning'; readonly at: number; readonly frequency: number; readonly clarity: number };

/** How a device's microphone stands; each but the first three is told in plain words. */
export type MicrophoneState =
  | 'off'
  | 'asking'
  | 'listening'
  /** The browser was told not to. */
  | 'refused'
  | 'missing'
  /** Another program holds it. */
  | 'busy'
  /** Plain HTTP: browsers give a microphone to HTTPS and localhost only. */
  | 'insecure'
  | 'unsupported'
  /** It was there and is gone: unplugged, or the permission was taken back. */
  | 'ended';
