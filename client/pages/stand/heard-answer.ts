import type { Answer } from '../../../shared/exercise/answer.ts';
import type { PlayedTap, Playing } from '../../../shared/exercise/heard.ts';
import { samePlace, type Place } from '../../../shared/theory/fretboard.ts';

/** An answer that was heard, and the taps that go with it. */

/** What was tapped or named by itself: without what was heard and the taps for it, and without the way it came. */
export function tapsAlone({ heard, way: _way, ...rest }: Answer): Answer {
  return heard ? { ...rest, places: [] } : rest;
}

/** The tap that what was played still needs. */
export function nextTap({ heard, places }: Answer, playing: Playing | null): PlayedTap | undefined {
  return heard && playing?.taps[places.length];
}

/** After a tap for what was heard: one that is there goes, with those after it; one too many takes the last one's place. */
export function tappedFor(answer: Answer, spot: Place, { taps }: Playing): Answer {
  const { places } = answer;
  const at = places.findIndex((other) => samePlace(other, spot));
  if (at >= 0) return { ...answer, places: places.slice(0, at) };
  if (taps.length === 0) return answer;
  return { ...answer, places: [...places.slice(0, taps.length - 1), spot] };
}

/** How many notes or tones were heard. */
export function heardCount({ heard }: Answer): number {
  return heard?.kind === 'line' ? heard.pitches.length : (heard?.tones.length ?? 0);
}
