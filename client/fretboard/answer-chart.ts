import type { Answer } from '../../shared/exercise/answer.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { Correction, KeyNote, Verdict } from '../../shared/exercise/verdict.ts';
import {
  distinct,
  holds,
  pitchClassAt,
  samePlace,
  type Instrument,
  type Place,
} from '../../shared/theory/fretboard.ts';
import type { Degree } from '../../shared/theory/interval.ts';
import { fingersToShow, keyNote, slurs } from './key-notes.ts';
import { visitsTo } from './placing.ts';
import type { NeckNote } from './state.ts';

/** The notes of a chart, and the slurs between them. */
export interface AnswerChart {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
}

/**
 * The places that a student gave, held against the key: what is right in print, a slip struck through, a slur from it
 * to where it should be. Where only the order went otherwise, each note says when it came. Without an answer, the key
 * alone; so too where the answer was heard, with the places that were tapped for it.
 */
export function answerChart(
  instrument: Instrument,
  exercise: Exercise,
  wholeKey: readonly KeyNote[],
  answer: Answer,
  verdict: Verdict | null,
): AnswerChart {
  const key = fingersToShow(exercise, wholeKey);
  const given = distinct(answer.places);
  if (verdict === null || given.length === 0) return { notes: key.map(keyNote), corrections: [] };
  const degreeOf = degreesOf(instrument, key);
  const inPrint = (place: Place): NeckNote => {
    const degree = degreeOf(place);
    const finger = key.find((note) => samePlace(note.place, place))?.finger;
    return degree === undefined ? { place, look: 'filled' } : { ...keyNote({ place, degree }), finger };
  };
  if (answer.heard) return heardChart(key, given, verdict, inPrint);
  if (verdict.kind === 'right') return { notes: given.map(inPrint), corrections: [] };

  const judged = (right: boolean) =>
    distinct(verdict.marks.filter((mark) => mark.right === right).map((mark) => mark.place));
  const right = judged(true);
  const slips = judged(false).filter((place) => !holds(right, place));
  const corrections = verdict.kind === 'slip' ? verdict.corrections : [];
  const wanted = distinct([...corrections.map(({ to }) => to), ...verdict.missing]).filter(
    (place) => !holds(right, place),
  );
  // Where every note is right the slip lies beside them, perhaps in the finger; else fingers would only be in the way.
  const astray = slips.length > 0 || wanted.length > 0;
  const inOrder = verdict.kind === 'slip' && verdict.cause === 'wrong-order';
  const printed = (place: Place): NeckNote => ({
    ...inPrint(place),
    ...(astray ? { finger: undefined } : {}),
    ...(inOrder ? { visits: visitsTo(answer.places, place) } : {}),
  });
  return {
    notes: [
      ...right.map(printed),
      ...wanted.map((place): NeckNote => ({ ...inPrint(place), finger: undefined, look: 'expected' })),
      ...slips.filter((place) => !holds(wanted, place)).map((place): NeckNote => ({ place, look: 'slip' })),
    ],
    corrections: [...slurs(corrections, key), ...(astray ? [] : rootSlur(exercise, key, answer))],
  };
}

/** Where nobody knows on which strings it sounded: the key, and taps that are right elsewhere or lie astray. */
function heardChart(
  key: readonly KeyNote[],
  taps: readonly Place[],
  verdict: Verdict,
  inPrint: (place: Place) => NeckNote,
): AnswerChart {
  const isAstray = (tap: Place) =>
    verdict.kind !== 'right' && verdict.marks.some((mark) => !mark.right && samePlace(mark.place, tap));
  const elsewhere = taps
    .filter((tap) => !key.some(({ place }) => samePlace(place, tap)))
    .map((tap): NeckNote => (isAstray(tap) ? { place: tap, look: 'slip' } : inPrint(tap)))
    // Of a note that is found by ear the tap says the string alone.
    .filter(({ look, label }) => look === 'slip' || label !== undefined);
  return { notes: [...key.map(keyNote), ...elsewhere], corrections: [] };
}

/** From the note that was marked as the root to the root. */
function rootSlur(exercise: Exercise, key: readonly KeyNote[], { root }: Answer): readonly Correction[] {
  const isAsked = (exercise.kind === 'build' || exercise.kind === 'scale') && exercise.marksRoot === true;
  if (!isAsked || !root) return [];
  const right = key.find(({ place, degree }) => degree === '1' && place.string === exercise.rootString);
  return right && !samePlace(right.place, root) ? [{ from: root, to: right.place }] : [];
}

/** A right place need not be in the key (another octave, another voicing), but its tone is. */
function degreesOf(instrument: Instrument, key: readonly KeyNote[]): (place: Place) => Degree | undefined {
  const degrees = new Map<number, Degree>(
    key.map(({ place, degree }) => [pitchClassAt(instrument, place), degree]),
  );
  return (place) => degrees.get(pitchClassAt(instrument, place));
}
