/**
 * So far must a guitar stand out from the room, in dB. Measured with sampled guitars in pink noise: at 15 dB single notes
 * and chords are heard nearly as in quiet, at 12 dB a third of the notes is missed.
 */
const standsOut = 15;
/** A guitar an arm's length from a device without gain control, in dB of full scale (common practice, no source). */
const usualGuitar = -30;
/** Quieter sound is heard less surely, in dB of full scale. */
const quiet = -48;
/** A string that is heard at all is so much louder than the room, in dB. */
const audible = 9;

export type Level = 'silent' | 'quiet' | 'good' | 'clipped';

/** What the loudest sound of the last moments was, over the room's own noise. */
export function levelOf(
  loudest: { readonly loudness: number; readonly clipped: boolean },
  floor: number,
): Level {
  if (loudest.clipped) return 'clipped';
  if (loudest.loudness < floor + audible) return 'silent';
  return loudest.loudness < quiet ? 'quiet' : 'good';
}

/** Whether the room drowns a guitar: one that was heard, or as loud as one usually is. All in dB of full scale. */
export function isTooLoud(floor: number, guitar = usualGuitar): boolean {
  return floor > Math.max(guitar, usualGuitar) - standsOut;
}
