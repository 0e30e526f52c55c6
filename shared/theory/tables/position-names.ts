import type { FormId } from './forms.ts';

/** The forms that name positions. */
export type PositionForm = Extract<FormId, 'E' | 'D' | 'C' | 'A' | 'G'>;

/** In the order in which one follows the other towards the bridge; after the last comes the first, twelve frets up. */
export const formsAlongNeck: readonly PositionForm[] = ['E', 'D', 'C', 'A', 'G'];

/** A root under the hand: its string and the finger on it. */
export type RootFinger = readonly [string: number, finger: number];

/** The roots of each position, the one that names it first (common practice; strings as on a guitar). */
export const positionRoots: Readonly<
  Record<'major' | 'minor', Readonly<Record<PositionForm, readonly RootFinger[]>>>
> = {
  major: {
    E: [
      [6, 2],
      [4, 4],
      [1, 2],
    ],
    D: [
      [4, 1],
      [2, 4],
    ],
    C: [
      [2, 2],
      [5, 4],
    ],
    A: [
      [5, 2],
      [3, 4],
    ],
    G: [
      [6, 4],
      [3, 1],
      [1, 4],
    ],
  },
  minor: {
    E: [
      [6, 1],
      [4, 3],
      [1, 1],
    ],
    D: [
      [4, 1],
      [2, 4],
    ],
    C: [
      [2, 1],
      [5, 3],
    ],
    A: [
      [5, 1],
      [3, 3],
    ],
    G: [
      [3, 1],
      [6, 4],
      [1, 4],
    ],
  },
};
