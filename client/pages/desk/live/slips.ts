import { explainForClass } from '../../../../shared/exercise/explain.ts';
import { exerciseFor, levelName } from '../../../../shared/exercise/levels.ts';
import { uncapital } from '../../../../shared/exercise/phrases.ts';
import { slipName } from '../../../../shared/exercise/slip-names.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import { commonestSlip, heatOf, type HeatSpot } from '../../../../shared/exercise/score.ts';
import { targetsOf } from '../../../../shared/exercise/targets.ts';
import { hasGivenShape, type Exercise } from '../../../../shared/exercise/exercise.ts';
import type { Correction, KeyNote, SlipCause, SlipVerdict } from '../../../../shared/exercise/verdict.ts';
import { samePlace } from '../../../../shared/theory/fretboard.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import type { NeckHeat } from '../../../fretboard/state.ts';
import { neckOf } from './answer-text.ts';
import { levelsOfRound, viewAtLevel } from './at-level.ts';
import { isRight, settledAnswers } from './figures.ts';
import { isKnownInPart, placesKnown } from './played.ts';
import { currentRound } from './steps.ts';

export interface CommonSlip {
  readonly cause: SlipCause;
  readonly name: string;
  /** One sentence on it. */
  readonly line: string;
  readonly count: number;
  /** Where those answers were and where they should have been, each once. */
  readonly corrections: readonly Correction[];
}

/** The slip that most settled answers show; with several levels, of one of them. */
export function commonSlip(view: DeskView): CommonSlip | null {
  const round = currentRound(view);
  if (!round) return null;
  const ofLevels = levelsOfRound(round).map((level) => {
    const slip = commonSlip(viewAtLevel(view, level));
    return slip && { ...slip, name: `${levelName(level)}: ${uncapital(slip.name)}` };
  });
  if (ofLevels.length > 0)
    return ofLevels.reduce((most, slip) => ((slip?.count ?? 0) > (most?.count ?? 0) ? slip : most));
  const slipped = settledAnswers(view).filter((answer) => !isRight(answer));
  // A tapped answer shows where it went otherwise (SPEC TURN-6).
  const tappedFirst = slipped.sort((a, b) => Number(Boolean(a.heard)) - Number(Boolean(b.heard)));
  const verdicts = commonestSlip(tappedFirst.map((answer) => answer.verdict));
  const [first] = verdicts;
  if (!first) return null;
  return {
    cause: first.cause,
    name: slipName(first.cause, neckOf(round.exercise)),
    line: explainForClass(round.exercise, first, view.naming),
    count: verdicts.length,
    corrections: commonestCorrections(verdicts),
  };
}

/** Of these slips' corrections, those that most of them share: one slur for a place, or the map fills up. */
function commonestCorrections(verdicts: readonly SlipVerdict[]): readonly Correction[] {
  const counted: { readonly correction: Correction; count: number }[] = [];
  for (const correction of verdicts.flatMap((verdict) => verdict.corrections)) {
    const known = counted.find(
      (one) => samePlace(one.correction.from, correction.from) && samePlace(one.correction.to, correction.to),
    );
    if (known) known.count += 1;
    else counted.push({ correction, count: 1 });
  }
  const most = Math.max(0, ...counted.map(({ count }) => count));
  return counted.filter(({ count }) => count === most).map(({ correction }) => correction);
}

/**
 * Everybody's settled answers on one neck; what is expected is on it even where nobody placed it. Of several levels
 * together nothing is expected: each has its own key.
 */
export function heatMap(view: DeskView): readonly NeckHeat[] {
  const round = currentRound(view);
  if (!round) return [];
  const { instrument } = round.exercise;
  const onNeck = settledAnswers(view)
    .filter((answer) => exerciseFor(round, answer).instrument === instrument)
    .map((answer) => ({ places: placesKnown(exerciseFor(round, answer), answer) }))
    .filter(({ places }) => places.length > 0);
  const spots = heatOf(onNeck);
  if (round.harder.length > 0) return spots.map((spot) => ({ ...spot, expected: false, root: false }));
  const key = expectedNotes(round.exercise, spots);
  const empty = key
    .filter((note) => !spots.some((spot) => samePlace(spot.place, note.place)))
    .map((note) => ({ place: note.place, count: 0, share: 0 }));
  return [...spots, ...empty].map((spot) => {
    const note = key.find((one) => samePlace(one.place, spot.place));
    return { ...spot, expected: note !== undefined, root: note?.degree === '1' };
  });
}

/** How many played answers the map shows in part or not at all (SPEC TURN-5). */
export function partlyShown(view: DeskView): number {
  const round = currentRound(view);
  if (!round) return 0;
  return settledAnswers(view).filter((answer) => isKnownInPart(exerciseFor(round, answer), answer)).length;
}

/** The answer key, in each octave where somebody looked for it. */
function expectedNotes(
  exercise: Exercise,
  spots: readonly HeatSpot[],
): readonly Pick<KeyNote, 'place' | 'degree'>[] {
  const isFixed = exercise.kind !== 'build' || hasGivenShape(exercise);
  const looked = targetsOf(exercise).filter(({ notes }) =>
    notes.some((note) => spots.some((spot) => samePlace(spot.place, note.place))),
  );
  return isFixed && looked.length > 0 ? looked.flatMap(({ notes }) => notes) : answerKey(exercise);
}
