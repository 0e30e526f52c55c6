import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { samePlace, type Place } from '../theory/fretboard.ts';
import { slipCauses } from './slip-names.ts';
import type { SlipVerdict, Verdict } from './verdict.ts';

/** What the class compares with its own last time: the kind of exercise and its root string. */
export function scoreKeyOf(exercise: Exercise): string {
  return `${exercise.kind}:${String(exercise.rootString)}`;
}

/** Advice for the teacher, never acted on by itself (SPEC SCORE-2). */
export type Advice = 'none' | 'go-on' | 'compare' | 'show-again' | 'look-at-exercise';

/** From 80 % go on, from 40 % let neighbours compare, below show it again; below 20 % of 8 or more, look at it. */
export function adviceFor(right: number, answered: number): Advice {
  if (answered === 0) return 'none';
  const share = right / answered;
  if (share >= 0.8) return 'go-on';
  if (share >= 0.4) return 'compare';
  return share < 0.2 && answered >= 8 ? 'look-at-exercise' : 'show-again';
}

export interface HeatSpot {
  readonly place: Place;
  readonly count: number;
  /** Of the answers, 0 to 1. */
  readonly share: number;
}

/** How many answers hold each place. */
export function heatOf(answers: readonly Answer[]): readonly HeatSpot[] {
  const spots: { place: Place; count: number }[] = [];
  for (const spot of answers.flatMap((answer) => answer.places)) {
    const known = spots.find((other) => samePlace(other.place, spot));
    if (known) known.count += 1;
    else spots.push({ place: spot, count: 1 });
  }
  return spots.map((spot) => ({ ...spot, share: spot.count / answers.length }));
}

/** The slips of the commonest cause, none where nobody slipped; of equals, a cause that says why goes first (SPEC SCORE-3). */
export function commonestSlip(verdicts: readonly Verdict[]): readonly SlipVerdict[] {
  const slips = verdicts.filter((verdict) => verdict.kind === 'slip');
  return slipCauses
    .map((cause) => slips.filter((slip) => slip.cause === cause))
    .reduce((most, some) => (some.length > most.length ? some : most), []);
}
