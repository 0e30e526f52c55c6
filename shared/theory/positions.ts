import {
  pitchClassAt,
  place,
  stringNumbers,
  type FretRange,
  type Instrument,
  type Place,
} from './fretboard.ts';
import type { Degree } from './interval.ts';
import { liesBy, type Lies } from './lies.ts';
import { pitchClass, type NoteName } from './pitch.ts';
import { handAt, handFrets, positionAt, reachOf, type Position } from './position.ts';
import { everyString, isRootAt } from './root-places.ts';
import {
  formsAlongNeck,
  positionRoots,
  type PositionForm,
  type RootFinger,
} from './tables/position-names.ts';
import { toneDegrees, type ToneSetId } from './tone-sets.ts';

/** A position and its name: the form where the strings are a guitar's, and the root's string and finger. */
export interface NamedPosition extends Position {
  /** Undefined on any other instrument. */
  readonly form: PositionForm | undefined;
  readonly rootPlace: Place;
  readonly rootFinger: number;
  /** The frets under the hand; a stretch lies one outside. */
  readonly frets: FretRange;
}

export interface PositionFrom extends NamedPosition {
  /** By the middle of the hand; within half a fret of the root it lies around it. */
  readonly lies: Lies;
}

/** A position before it is laid on the neck: every root that lies under its hand, the one that names it first. */
interface Name {
  readonly form: PositionForm | undefined;
  readonly roots: readonly [RootFinger, ...RootFinger[]];
}

/** The fingers on a root where no form says it. */
const rootFingers = [1, 2, 4] as const;

/**
 * The positions of a scale or arpeggio, each once, where it lies lowest on the neck, from the nut on: on a guitar five,
 * so that `positionsOf(standardGuitar, e, 'minor-pentatonic').map((position) => position.form)` is D, C, A, G, E.
 * Any other instrument has one for each string and finger on the root, and none for a hand that another one names.
 */
export function positionsOf(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
): readonly NamedPosition[] {
  const onString = everyString(instrument, root);
  const laid = namesOf(instrument, tones).flatMap(({ form, roots: [[string, finger]] }) => {
    const lowest = onString[string - 1]?.find((spot) => handAt(instrument, spot, finger).low >= 1);
    return lowest ? laidAt(instrument, root, tones, lowest, finger, form) : [];
  });
  const isFirst = ({ frets }: NamedPosition, index: number) =>
    laid.findIndex((other) => other.frets.low === frets.low) === index;
  return laid.filter(isFirst).sort((a, b) => a.frets.low - b.frets.low);
}

/**
 * Every position that has the root at this place under the hand, from the nut to the bridge: from a root on string 2
 * of a guitar the D form, then the C form. None where the place sounds another note, or the hand finds no room.
 */
export function positionsFrom(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  rootPlace: Place,
): readonly PositionFrom[] {
  if (!isRootAt(instrument, root, rootPlace)) return [];
  return namesOf(instrument, tones)
    .flatMap(({ form, roots }) =>
      roots
        .filter(([string]) => string === rootPlace.string)
        .flatMap(([, finger]) => laidAt(instrument, root, tones, rootPlace, finger, form)),
    )
    .sort((a, b) => a.frets.low - b.frets.low)
    .map((position) => {
      const { low, high } = position.frets;
      return { ...position, lies: liesBy((low + high) / 2 - rootPlace.fret) };
    });
}

/**
 * The number of a position for a teacher who counts the forms along the neck from one of them:
 * `positionNumber('C', 'E')` is 3.
 */
export function positionNumber(form: PositionForm, first: PositionForm): number {
  const steps = formsAlongNeck.indexOf(form) - formsAlongNeck.indexOf(first);
  return ((steps + formsAlongNeck.length) % formsAlongNeck.length) + 1;
}

function laidAt(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  rootPlace: Place,
  rootFinger: number,
  form: PositionForm | undefined,
): readonly NamedPosition[] {
  const position = positionAt(instrument, root, tones, rootPlace, rootFinger);
  if (!position) return [];
  return [{ ...position, form, rootPlace, rootFinger, frets: handAt(instrument, rootPlace, rootFinger) }];
}

/** By form where each form has two roots under one hand, as on a guitar or in drop D; else by string and finger. */
function namesOf(instrument: Instrument, tones: ToneSetId): readonly Name[] {
  const rows = positionRoots[thirdIn(toneDegrees(tones))];
  const byForm = formsAlongNeck.flatMap((form): readonly Name[] => {
    const [first, second, ...more] = underOneHand(instrument, rows[form]);
    return first && second ? [{ form, roots: [first, second, ...more] }] : [];
  });
  if (byForm.length === formsAlongNeck.length) return byForm;
  return [...stringNumbers(instrument)]
    .reverse()
    .flatMap((string) => rootFingers.map((finger): Name => ({ form: undefined, roots: [[string, finger]] })));
}

/** Most schools put a finger on the root by the third; without one as in major. */
function thirdIn(degrees: readonly Degree[]): 'major' | 'minor' {
  return degrees.includes('b3') && !degrees.includes('3') ? 'minor' : 'major';
}

/** As many of the roots as one hand has under these fingers in this tuning. */
function underOneHand(instrument: Instrument, roots: readonly RootFinger[]): readonly RootFinger[] {
  const frets = handFrets(instrument);
  const indexFret = ([string, finger]: RootFinger) =>
    pitchClass(-pitchClassAt(instrument, place(string, 0)) - reachOf(finger, frets));
  const here = roots.filter(([string]) => string <= instrument.openStrings.length);
  const together = here.map((one) => here.filter((other) => indexFret(other) === indexFret(one)));
  return together.sort((a, b) => b.length - a.length)[0] ?? [];
}
