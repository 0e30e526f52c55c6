import { assertNever } from '../../../shared/lib/assert.ts';
import type { Instrument, StringNumber } from '../../../shared/theory/fretboard.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';
import type { MicrophoneState } from '../../listening/events.ts';
import { isTooLoud, type Level } from '../../listening/room.ts';
import { inTune, type Tuned } from './tuning.ts';

export const whyWords =
  'The microphone hears whether your strings are in tune, and what you play where an exercise may be answered by playing.';

export const privacyWords =
  'Sound is analysed on this device and never leaves it; only the notes heard are sent, when you answer.';

/**
 * Where playing is asked for. Pauses of 5 minutes after 25 and stopping at pain: musiciansway.com, July 2011; whoever
 * knows the player knows better.
 */
export const cautionWords =
  'Rest for 5 minutes after 25, and stop if it hurts. With headphones begin with the volume low. Your teacher’s or doctor’s word comes first.';

/** How the microphone stands, and what to do; both '' where nothing hinders. */
export interface StateWords {
  readonly sentence: string;
  readonly help: string;
}

export function stateWords(state: MicrophoneState): StateWords {
  switch (state) {
    case 'off':
    case 'listening':
      return { sentence: '', help: '' };
    case 'asking':
      return { sentence: 'Waiting for the microphone. If the browser asks, allow it.', help: '' };
    case 'refused':
      return {
        sentence: 'This browser keeps the microphone from this page.',
        help: 'Open the page’s settings by the sign beside the address, allow the microphone, and turn Listen on again. If it stays refused, allow the microphone to the browser in the settings of this device.',
      };
    case 'missing':
      return {
        sentence: 'This device shows no microphone.',
        help: 'Plug one in, then turn Listen on again. Taps work without it.',
      };
    case 'busy':
      return {
        sentence: 'Something else holds the microphone, or it is muted.',
        help: 'End the call or program that uses it, or unmute it, then turn Listen off and on.',
      };
    case 'insecure':
      return {
        sentence: 'Browsers give a microphone to https:// addresses only, and this page came by http://.',
        help: 'Whoever runs the server can start it with npm start -- --https. Open the address that it prints then. Taps work without it.',
      };
    case 'unsupported':
      return {
        sentence: 'This browser can’t listen.',
        help: 'A newer browser can. Taps work without it.',
      };
    case 'ended':
      return {
        sentence: 'The microphone is gone: unplugged, or no longer allowed.',
        help: 'Plug it in or allow it again, then turn Listen on.',
      };
    default:
      return assertNever(state);
  }
}

export const alteredWords =
  'This device alters the sound before the page hears it (echo, noise or loudness), so some notes may be missed. Turn such effects off in its settings.';

export const levelWords: Readonly<Record<Level, string>> = {
  silent: 'Play a string',
  quiet: 'Quiet: come closer',
  good: 'Good',
  clipped: 'Too loud: move away, or turn the microphone down',
};

/** Below this the room is called quiet, in dB of full scale. */
const quietRoom = -58;

export const tooLoudWords = 'This room is too loud: answer by tapping.';

export function roomWords(floor: number, guitar?: number): string {
  if (isTooLoud(floor, guitar)) return tooLoudWords;
  return floor < quietRoom ? 'Quiet' : 'Some noise: no matter';
}

/** "E", "Fis", "mi♭": what a string is tuned to. */
export function stringName(instrument: Instrument, string: StringNumber, naming: NoteNaming): string {
  const open = instrument.openStrings[string - 1];
  return open ? formatName(open, naming) : '';
}

/** Where the needle stands, in words. */
export function centsWords(exact: number): string {
  const cents = Math.round(exact);
  const off = Math.abs(cents);
  const way = cents > 0 ? 'sharp' : 'flat';
  if (off <= inTune) return 'In tune';
  if (off >= 100) return `More than a semitone ${way}`;
  return `${String(off)} cents ${way}`;
}

/** What to do about it, as it goes on; '' where it is in tune. */
export function tuneWords(exact: number): string {
  if (Math.abs(Math.round(exact)) <= inTune) return '';
  return exact > 0 ? ': loosen the string' : ': tighten the string';
}

/** "+7 cents", "−1 cent", "0 cents". */
export function centsFigure(exact: number): string {
  const cents = Math.round(exact);
  const sign = cents > 0 ? '+' : cents < 0 ? '−' : '';
  const off = Math.abs(cents);
  return `${sign}${String(off)} ${off === 1 ? 'cent' : 'cents'}`;
}

/** What a screen reader says of a string: "String 6, E: 7 cents flat." */
export function tunedSaid({ string, cents }: Tuned, instrument: Instrument, naming: NoteNaming): string {
  const name = stringName(instrument, string, naming).replace('♭', ' flat').replace('♯', ' sharp');
  return `String ${String(string)}, ${name}: ${centsWords(cents).toLowerCase()}.`;
}
