import type { Instrument, StringNumber } from './fretboard.ts';
import { midiOf } from './pitch.ts';

/** How far two neighbouring strings are apart. */
export interface NeighbourStep {
  /** The string with the smaller number. */
  readonly upper: StringNumber;
  readonly lower: StringNumber;
  /** Frets that `lower` needs to sound `upper` open: 5 is a fourth; negative where `lower` sounds higher. */
  readonly frets: number;
}

/** The steps from string 1 on: on a guitar 5 4 5 5 5 frets, the 4 between strings 2 and 3. */
export function neighbourSteps(instrument: Instrument): readonly NeighbourStep[] {
  const open = instrument.openStrings.map(midiOf);
  return open.slice(1).map((lower, index) => ({
    upper: (index + 1) as StringNumber,
    lower: (index + 2) as StringNumber,
    frets: (open[index] ?? lower) - lower,
  }));
}

/** The commonest step, the first of equals; undefined where none comes twice: 5 on a guitar, 7 on a mandolin. */
export function usualStep(steps: readonly NeighbourStep[]): number | undefined {
  const count = (frets: number) => steps.filter((step) => step.frets === frets).length;
  const most = Math.max(...steps.map((step) => count(step.frets)));
  return most < 2 ? undefined : steps.find((step) => count(step.frets) === most)?.frets;
}

/** Whether some string sounds no lower than the one with the next smaller number, as string 4 of a ukulele. */
export function isReentrant(instrument: Instrument): boolean {
  return neighbourSteps(instrument).some((step) => step.frets <= 0);
}
