import type { Fret, Place, StringNumber } from '../../shared/theory/fretboard.ts';
import type { NeckFrame } from './geometry.ts';
import { fretsShown } from './state.ts';

/** Keys and fingers → places. Knows nothing of the page, so it is tested without one. */

/** A step on the neck: along by shown frets, or over to another string. */
interface Step {
  readonly along: number;
  readonly string: number;
}

/** Arrows go where they point on the screen, however the neck is turned or mirrored. */
function stepOf(frame: NeckFrame, key: string): Step | null {
  const mirror = frame.leftHanded ? -1 : 1;
  const upright = frame.view === 'upright';
  switch (key) {
    case 'ArrowUp':
      return upright ? { along: -1, string: 0 } : { along: 0, string: -1 };
    case 'ArrowDown':
      return upright ? { along: 1, string: 0 } : { along: 0, string: 1 };
    case 'ArrowLeft':
      return upright ? { along: 0, string: mirror } : { along: -mirror, string: 0 };
    case 'ArrowRight':
      return upright ? { along: 0, string: -mirror } : { along: mirror, string: 0 };
    case 'Home':
      return { along: -Infinity, string: 0 };
    case 'End':
      return { along: Infinity, string: 0 };
    default:
      return null;
  }
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** The place that a key leads to; null if the key does not move. At an edge one stays. */
export function moved(frame: NeckFrame, from: Place, key: string): Place | null {
  const step = stepOf(frame, key);
  if (step === null) return null;
  const frets = fretsShown(frame.window);
  const index = within(Math.max(0, frets.indexOf(from.fret)) + step.along, 0, frets.length - 1);
  return {
    string: within(from.string + step.string, 1, frame.strings) as StringNumber,
    fret: frets[index] ?? (0 as Fret),
  };
}

/** The same place if the window shows it, else the nearest one on its string. */
export function heldIn(frame: NeckFrame, place: Place): Place {
  const string = within(place.string, 1, frame.strings) as StringNumber;
  if (place.fret === 0) return { string, fret: place.fret };
  return { string, fret: within(place.fret, frame.window.low, frame.window.high) as Fret };
}

/** Whether a key acts on the place that has the focus. */
export function isActKey(key: string): boolean {
  return key === 'Enter' || key === ' ';
}

/**
 * Fingers on the neck. What counts is where one lifts: it may slide to another place first, and one that slid
 * off the neck, or that the browser took away for a zoom, does nothing.
 */
export class Fingers {
  readonly #under = new Map<number, Place | null>();

  down(finger: number, place: Place | null): void {
    this.#under.set(finger, place);
  }

  move(finger: number, place: Place | null): void {
    if (this.#under.has(finger)) this.#under.set(finger, place);
  }

  /** The place to act on, if any. */
  lift(finger: number): Place | null {
    const place = this.#under.get(finger) ?? null;
    this.#under.delete(finger);
    return place;
  }

  cancel(finger: number): void {
    this.#under.delete(finger);
  }

  cancelAll(): void {
    this.#under.clear();
  }

  /** Places under fingers. */
  get places(): readonly Place[] {
    return [...this.#under.values()].filter((place) => place !== null);
  }
}
