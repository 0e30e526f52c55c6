import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import { likelySlips, type LikelySlip } from '../../../../shared/exercise/likely.ts';
import { fretText, list, placeText, uncapital } from '../../../../shared/exercise/phrases.ts';
import { slipName } from '../../../../shared/exercise/slip-names.ts';
import {
  instrumentById,
  samePlace,
  standardGuitar,
  type Place,
} from '../../../../shared/theory/fretboard.ts';

/** More than this nobody reads. */
const mostSpots = 4;
const mostNames = 3;

/**
 * Where somebody who slips would land; empty where no slip is likelier than others. A note by its fret: "The likely
 * slips land on fret 8, fret 2 and fret 1 of string 3.", those on the root's own string first. A chord or scale by
 * the slip's name, and its place where only one note is astray.
 */
export function likelyText(exercise: Exercise): string {
  const slips = likelySlips(exercise).map((slip) => ({ slip, astray: astrayIn(slip, exercise) }));
  return exercise.kind === 'find'
    ? spotsText(
        exercise,
        slips.flatMap(({ astray }) => astray),
      )
    : namesText(exercise, slips);
}

function spotsText({ rootString }: Exercise, spots: readonly Place[]): string {
  const onString = (spot: Place) => spot.string === rootString;
  const ordered = [...spots.filter(onString), ...spots.filter((spot) => !onString(spot))];
  const words = ordered.map((spot) => {
    const string = String(spot.string);
    if (onString(spot)) return fretText(spot);
    return spot.fret === 0 ? `open string ${string}` : `${fretText(spot)} of string ${string}`;
  });
  const said = [...new Set(words)].slice(0, mostSpots);
  return said.length === 0 ? '' : `The likely slips land on ${list(said)}.`;
}

function namesText(
  exercise: Exercise,
  slips: readonly { readonly slip: LikelySlip; readonly astray: readonly Place[] }[],
): string {
  const neck = instrumentById(exercise.instrument) ?? standardGuitar;
  const said = new Map<string, string>();
  for (const { slip, astray } of [...slips].sort((a, b) => a.astray.length - b.astray.length)) {
    const name = uncapital(slipName(slip.cause, neck));
    const [first, ...more] = astray;
    // A slip of several answers is said once, with its place where one of them has only one note astray.
    if (!said.has(name)) said.set(name, first && more.length === 0 ? `${name} (${placeText(first)})` : name);
  }
  const words = [...said.values()].slice(0, mostNames);
  return words.length === 0 ? '' : `Likely slips: ${list(words)}.`;
}

/** What of the slip is not in the key. */
export function astrayIn({ places }: LikelySlip, exercise: Exercise): readonly Place[] {
  const key = answerKey(exercise);
  return places.filter((spot) => !key.some((note) => samePlace(note.place, spot)));
}
