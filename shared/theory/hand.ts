import { perObject } from '../lib/per-object.ts';
import { fretDistance, type Instrument } from './fretboard.ts';

export type HandSize = 'small' | 'usual' | 'large';

/** 1 is the index, 4 the little finger. */
export type Finger = 1 | 2 | 3 | 4;

export type FingerPair = '1-2' | '1-3' | '1-4' | '2-3' | '2-4' | '3-4';

/** A distance along the neck, from fret wire to fret wire. */
export interface Reach {
  readonly frets: number;
  readonly mm: number;
}

/** How easily a hand spans what it plays; `stretch` is worth a warning. */
export type Ease = 'easy' | 'normal' | 'stretch';

/** What a hand spans. Millimetres go with the hand, whatever the neck; frets go with the neck. */
export interface Hand {
  readonly size: HandSize;
  /** How large it is, the usual hand being 1. */
  readonly share: number;
  /** Up to here it is easy, and up to here normal. */
  readonly easy: Reach;
  readonly normal: Reach;
  /** No two fingers get further apart. */
  readonly reachMm: number;
  /** For two fingers: more frets are a stretch, more millimetres can't be had. */
  readonly pairs: Readonly<Record<FingerPair, Reach>>;
}

/**
 * Measured on the 2,040 sound fingerings of chords-db 0.5.1 at 648 mm: `easy` holds 90 of 100, `normal` 99 of 100, the
 * frets of a pair 99 of 100, its millimetres all of them. 130 mm and the shares of the other hands are ours.
 * `handOf('usual', 1).reachMm` is 130.
 */
export function handOf(size: HandSize, share: number): Hand {
  const reach = (frets: number, mm: number): Reach => ({ frets, mm: mm * share });
  const reachMm = 130;
  return {
    size,
    share,
    easy: reach(2, 77),
    normal: reach(3, 98),
    reachMm: reachMm * share,
    pairs: {
      '1-2': reach(2, 67),
      '1-3': reach(3, 98),
      '1-4': reach(3, reachMm),
      '2-3': reach(2, 67),
      '2-4': reach(2, 98),
      '3-4': reach(2, 67),
    },
  };
}

/** The hands to choose from: `hands.small.reachMm` is 110.5. */
export const hands: Readonly<Record<HandSize, Hand>> = {
  small: handOf('small', 0.85),
  usual: handOf('usual', 1),
  large: handOf('large', 1.15),
};

/** Millimetres from the nut to each fret wire, worked out once. */
export const fretWires = perObject(({ scaleLengthMm, fretCount }: Instrument): readonly number[] =>
  Array.from({ length: fretCount + 1 }, (_, fret) => fretDistance(scaleLengthMm, fret)),
);

/** Millimetres between two fret wires: `between(fretWires(standardGuitar), 12, 0)` is 324. */
export function between(wires: readonly number[], a: number, b: number): number {
  return Math.abs((wires[a] ?? 0) - (wires[b] ?? 0));
}

/** What is known of two fingers, by either and then the other: `pairReaches(hands.usual)[2][1].mm` is 67. */
export const pairReaches = perObject(({ pairs }: Hand): readonly (readonly Reach[])[] => {
  const any: Reach = { frets: Infinity, mm: Infinity };
  return [0, 1, 2, 3, 4].map((a) =>
    [0, 1, 2, 3, 4].map(
      (b) => pairs[`${String(Math.min(a, b))}-${String(Math.max(a, b))}` as FingerPair] ?? any,
    ),
  );
});

/** The same of two: `pairReach(hands.usual, 2, 1).mm` is 67. */
export function pairReach(hand: Hand, a: Finger, b: Finger): Reach {
  return pairReaches(hand)[a]?.[b] ?? hand.pairs['1-4'];
}
