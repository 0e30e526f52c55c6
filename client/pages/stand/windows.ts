import type { Fret, FretRange } from '../../../shared/theory/fretboard.ts';

/**
 * The windows of the neck that this round offers. A range that the exercise states, and that falls between two of
 * them, gets a window of its own. It comes from the words of the task alone, so it tells nothing of the answer.
 */
export function windowsFor(fitted: readonly FretRange[], range: FretRange | null): readonly FretRange[] {
  const [first] = fitted;
  const last = fitted.at(-1);
  if (!first || !last || !range || fitted.some((window) => holdsRange(window, range))) return fitted;
  const count = first.high - first.low + 1;
  // One fret below the range, where there is room for it: its first fret then doesn't look like a nut's.
  const below = range.high - range.low + 1 < count ? 1 : 0;
  const low = Math.min(Math.max(range.low - below, first.low), last.low);
  const own: FretRange = { low: low as Fret, high: (low + count - 1) as Fret };
  return [...fitted, own].sort((a, b) => a.low - b.low);
}

function holdsRange(window: FretRange, range: FretRange): boolean {
  return window.low <= Math.max(range.low, 1) && window.high >= range.high;
}
