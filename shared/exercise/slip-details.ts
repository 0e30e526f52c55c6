import { degreeAt, neededDegrees, scaleDegrees } from '../theory/chord.ts';
import { noteOnDegree, type Degree } from '../theory/interval.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import { midiAt, pitchClassAt, place, type Place } from '../theory/fretboard.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import type { Exercise } from './exercise.ts';
import { twinScales } from './hypotheses.ts';
import { capital, fretText, list, placeText, rangeText, stringsText } from './phrases.ts';
import { degreesAsked, instrumentOf, rootsOn, targetsOf } from './targets.ts';
import type { SlipVerdict } from './verdict.ts';
import { scaleName, subjectOf } from './wording.ts';

/** One answer that slipped, and its reader. */
export interface Slipped {
  readonly exercise: Exercise;
  readonly places: readonly Place[];
  readonly verdict: SlipVerdict;
  readonly naming: NoteNaming;
}

/** What a Stand reads of one slip. */
export interface Words {
  readonly text: string;
  readonly tryThis: string;
}

/** "Add string 3, fret 5." */
export function addText({ missing: [first] }: SlipVerdict): string {
  return first ? `Add ${placeText(first)}.` : '';
}

/** The fret is the one of the lowest string. */
export function stringSixWords({ exercise, places, verdict }: Slipped, root: string): Words {
  const lowest = instrumentOf(exercise).openStrings.length;
  const { rootString } = exercise;
  const played = places.find((spot) => spot.string === rootString)?.fret;
  const mapped = rootsOn(exercise, place(lowest, 0).string).find((spot) => spot.fret === played);
  const there = verdict.corrections.find(
    ({ from }) => from.string === rootString && from.fret === played,
  )?.to;
  const roots = targetsOf(exercise)
    .flatMap((target) => target.notes)
    .filter((note) => note.degree === '1' && note.place.string === rootString);
  const expected = there ?? roots[0]?.place;
  return {
    text: mapped
      ? `${capital(fretText(mapped))} is the ${root} of string ${String(lowest)}.`
      : `This hangs on the ${root} of string ${String(lowest)}.`,
    tryThis: expected ? `On string ${String(expected.string)} it is ${fretText(expected)}.` : '',
  };
}

/** The other third came in. */
export function thirdWords({ exercise, verdict, naming }: Slipped, tryFirst: string): Words {
  const isMajor = verdict.cause === 'major-for-minor';
  if (exercise.kind !== 'scale')
    return {
      text: `This sounds ${isMajor ? 'major' : 'minor'}: the third is one fret ${isMajor ? 'high' : 'low'}.`,
      tryThis: tryFirst,
    };
  const twin = scaleName(exercise.root, twinScales[exercise.scale], naming);
  return {
    text: `This is ${twin}: its third is one fret ${isMajor ? 'higher' : 'lower'}.`,
    tryThis: `${isMajor ? 'Lower' : 'Raise'} the third by one fret.`,
  };
}

/** Where tones may lie anywhere they are missed by name, else by place. */
export function missingWords({ exercise, places, verdict, naming }: Slipped): Words {
  if (places.length === 0) return { text: 'Nothing is placed yet.', tryThis: addText(verdict) };
  const isFree =
    (exercise.kind === 'scale' && exercise.coverage === 'every-tone') ||
    (exercise.kind === 'build' && exercise.voicing.kind === 'any');
  const lost = isFree ? missingDegrees(exercise, places) : [];
  if (lost.length > 0) {
    const notes = lost
      .map((degree) => noteOnDegree(exercise.root, degree))
      .filter((note) => note !== undefined);
    const text = `${list(notes.map((note) => formatName(note, naming)))} ${notes.length === 1 ? 'is' : 'are'} missing.`;
    const spot = verdict.missing.find((missing) =>
      lost.some((degree) => degree === degreeOf(exercise, missing)),
    );
    return { text, tryThis: spot ? `Add ${placeText(spot)}.` : '' };
  }
  const count = verdict.missing.length;
  const text =
    count === 1
      ? 'One note is missing.'
      : count === 0
        ? 'A note is missing.'
        : `${String(count)} notes are missing.`;
  return { text, tryThis: addText(verdict) };
}

function degreeOf(exercise: Exercise, spot: Place): Degree | undefined {
  return degreeAt(exercise.root, degreesAsked(exercise), pitchClassAt(instrumentOf(exercise), spot));
}

function missingDegrees(exercise: Exercise, places: readonly Place[]): readonly Degree[] {
  const needed =
    exercise.kind === 'build'
      ? neededDegrees(exercise.quality)
      : exercise.kind === 'scale'
        ? scaleDegrees(exercise.scale)
        : [];
  return needed.filter((degree) => !places.some((spot) => degreeOf(exercise, spot) === degree));
}

/** One note too many: on a taken string, foreign, or a tone that is not asked for here. */
export function extraWords({ exercise, places, verdict, naming }: Slipped, tryThis: string): Words {
  const subject = subjectOf(exercise, naming);
  const twice = places.find(
    (spot, index) =>
      exercise.kind === 'build' && places.findIndex((other) => other.string === spot.string) < index,
  );
  if (twice)
    return {
      text: `String ${String(twice.string)} holds two notes, and one of them sounds.`,
      tryThis: 'Keep one of them.',
    };
  const extra = verdict.marks.find((mark) => !mark.right)?.place;
  if (!extra) return { text: `One note more than ${subject} has.`, tryThis };
  const spot = capital(placeText(extra));
  if (exercise.kind === 'find') return { text: `${spot} is another note than ${subject}.`, tryThis };
  return degreeOf(exercise, extra) === undefined
    ? { text: `${spot} is not part of ${subject}.`, tryThis }
    : { text: `${spot} belongs to ${subject}, but is not asked for here.`, tryThis };
}

/** Right tones, outside the frets asked for. */
export function outsideWords({ exercise, places }: Slipped, root: string): Words {
  const range = exercise.range ? rangeText(exercise.range) : 'the frets asked for';
  if (exercise.kind === 'find')
    return {
      text:
        places.length === 1
          ? `This is ${root}, outside ${range}.`
          : `These are ${root}, not all in ${range}.`,
      tryThis: `Look in ${range}.`,
    };
  return exercise.strictness === 'string'
    ? {
        text: `The notes are right. The root lies outside ${range}.`,
        tryThis: `Look for ${root} in ${range}.`,
      }
    : { text: `The notes are right. Not all lie in ${range}.`, tryThis: `Stay in ${range}.` };
}

/** The last resort: where it lies. */
export function otherPlaceWords(
  { exercise, places, verdict }: Slipped,
  root: string,
  tryFirst: string,
): Words {
  const [first] = verdict.corrections;
  const instrument = instrumentOf(exercise);
  if (exercise.kind === 'find') {
    const other = places.find((spot) => pitchClassAt(instrument, spot) !== pitchClassOf(exercise.root));
    const expected = first?.to ?? nearest(exercise, other);
    const text = other
      ? `${capital(placeText(other))} is another note.`
      : `Not every place here is asked for.`;
    return { text, tryThis: expected ? `${root} is at ${placeText(expected)}.` : '' };
  }
  const astray = verdict.marks.filter((mark) => !mark.right).map((mark) => mark.place);
  if (exercise.kind === 'scale' && astray.length > 1)
    return { text: `${String(astray.length)} notes lie elsewhere.`, tryThis: tryFirst };
  if (astray.length === 0) return { text: 'The notes lie elsewhere.', tryThis: tryFirst };
  const verb = new Set(astray.map((spot) => spot.string)).size === 1 ? 'lies' : 'lie';
  return { text: `${stringsText(astray)} ${verb} elsewhere.`, tryThis: tryFirst };
}

/** The right place whose pitch is nearest. */
function nearest(exercise: Exercise, from: Place | undefined): Place | undefined {
  const instrument = instrumentOf(exercise);
  const spots = targetsOf(exercise).flatMap((target) => target.notes.map((note) => note.place));
  if (!from) return spots[0];
  const distance = (spot: Place) => Math.abs(midiAt(instrument, spot) - midiAt(instrument, from));
  return spots.sort((a, b) => distance(a) - distance(b))[0];
}
