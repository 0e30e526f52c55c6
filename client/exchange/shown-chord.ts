import { checkExercise } from '../../shared/exercise/check.ts';
import type { BuildExercise } from '../../shared/exercise/exercise.ts';
import { answerKey } from '../../shared/exercise/key.ts';
import { capital, list, placeText } from '../../shared/exercise/phrases.ts';
import { builtAt, voicingOf } from '../../shared/exercise/proposals.ts';
import { chordName } from '../../shared/exercise/wording.ts';
import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { NamedChord } from '../../shared/theory/chord-name.ts';
import { chordSounds } from '../../shared/theory/chord-rule.ts';
import { chordDegrees, degreeAt } from '../../shared/theory/chord.ts';
import {
  isOnNeck,
  midiAt,
  pitchClassAt,
  samePlace,
  type Fret,
  type Instrument,
  type Place,
} from '../../shared/theory/fretboard.ts';
import { degreeSign, formatName, type NoteNaming } from '../../shared/theory/naming.ts';
import { pitchClass, pitchClassOf } from '../../shared/theory/pitch.ts';
import { sameNotes } from '../../shared/theory/shape.ts';
import { shapesFrom } from '../../shared/theory/shapes.ts';
import { spellIn } from '../../shared/theory/spelling.ts';
import { formTable } from '../../shared/theory/tables/forms.ts';

/** A place that a chart shows, and its finger where it has one. */
export interface ShownNote {
  readonly place: Place;
  readonly finger?: number | undefined;
}

/** A chord as a chart of another program shows it. */
export interface ShownChord extends NamedChord {
  readonly instrument: Instrument;
  readonly notes: readonly ShownNote[];
  /** The root that the exercise is to go out from, where the file says one. */
  readonly rootPlace?: Place | undefined;
}

/** The exercise whose key is this chart, fingers too where there is one; the failure says why there is none. */
export function exerciseShowing(chord: ShownChord, naming: NoteNaming): Result<BuildExercise, string> {
  const problem = problemOf(chord, naming);
  if (problem !== undefined) return failure(problem);
  const roots = rootsOf(chord);
  if (roots.length === 0)
    return failure('No string of the chart sounds the root, from which an exercise is asked.');
  let otherFingers: BuildExercise | undefined;
  for (const exercise of candidates(chord, roots)) {
    if (!checkExercise(exercise).ok || !sameNotes(answerKey(exercise), chord.notes)) continue;
    if (hasFingers(exercise, chord.notes)) return success(exercise);
    otherFingers ??= exercise;
  }
  return otherFingers
    ? success(otherFingers)
    : failure('The chord is right, but no exercise here asks for exactly these frets.');
}

/** What is wrong with the chart as the chord that it is called. */
function problemOf(chord: ShownChord, naming: NoteNaming): string | undefined {
  const { instrument, notes, root, quality, bass } = chord;
  const name = chordName(root, quality, naming, bass);
  const off = notes.find(({ place }) => !isOnNeck(instrument, place));
  if (off) return `The instrument has no ${placeText(off.place)}.`;
  const strings = notes.map(({ place }) => place.string);
  if (new Set(strings).size < strings.length) return 'A string has two places.';
  const degrees = chordDegrees(quality);
  const sounding = notes.map(({ place }) => degreeAt(root, degrees, pitchClassAt(instrument, place)));
  const lowest = lowestOf(chord);
  const isBass = (place: Place) => bass && pitchClassAt(instrument, place) === pitchClassOf(bass);
  const foreign = notes.find(({ place }, index) => sounding[index] === undefined && !isBass(place));
  if (foreign) {
    const note = spellIn({ root, degrees }, pitchClassAt(instrument, foreign.place));
    return `${capital(placeText(foreign.place))} is ${formatName(note, naming)}, which ${name} doesn’t have.`;
  }
  if (bass && pitchClass(lowest) !== pitchClassOf(bass))
    return `The lowest note is not the bass, ${formatName(bass, naming)}.`;
  const sound = chordSounds(
    quality,
    sounding.flatMap((degree) => degree ?? []),
    { bass: degreeAt(root, degrees, pitchClass(lowest)) },
  );
  return sound.ok ? undefined : `${name} needs its ${list(sound.missing.map(degreeWord))} too.`;
}

function degreeWord(degree: string): string {
  return degree === '1' ? 'root' : degreeSign(degree);
}

function lowestOf({ instrument, notes }: ShownChord): number {
  return Math.min(...notes.map(({ place }) => midiAt(instrument, place)));
}

/** The root that the file says before others, then from the lowest up. */
function rootsOf({ instrument, notes, root, rootPlace }: ShownChord): readonly Place[] {
  const isSaid = (place: Place) => (rootPlace && samePlace(place, rootPlace) ? 0 : 1);
  return notes
    .map(({ place }) => place)
    .filter((place) => pitchClassAt(instrument, place) === pitchClassOf(root))
    .sort((a, b) => isSaid(a) - isSaid(b) || midiAt(instrument, a) - midiAt(instrument, b));
}

/** From what says most about the shape to what leaves it open. */
function* candidates(chord: ShownChord, roots: readonly Place[]): Generator<BuildExercise> {
  const { instrument, root, quality, bass, notes } = chord;
  const strings = notes.map(({ place }) => place.string).sort((a, b) => b - a);
  const frets = notes.map(({ place }) => place.fret as number);
  const range = { low: Math.min(...frets) as Fret, high: Math.max(...frets) as Fret };
  const wanted = bass ? { bass } : {};
  for (const place of roots) {
    const at = { instrument, root, place };
    if (!bass) {
      for (const { form, quality: own, rootStrings } of formTable)
        if (own === quality && rootStrings.includes(place.string))
          yield builtAt(at, quality, { kind: 'form', form, full: false });
      for (const shape of shapesFrom(instrument, chord, place))
        if (sameNotes(shape.notes, notes)) yield builtAt(at, quality, voicingOf(shape));
    }
    for (const voicing of [{ kind: 'strings', strings } as const, { kind: 'any' } as const]) {
      const exercise = { ...builtAt(at, quality, voicing), ...wanted };
      yield exercise;
      yield { ...exercise, strictness: 'range', range };
    }
  }
}

/** A chart without fingers leaves them to us. */
function hasFingers(exercise: BuildExercise, notes: readonly ShownNote[]): boolean {
  if (notes.every(({ finger }) => finger === undefined)) return true;
  const key = answerKey(exercise);
  return notes.every(
    ({ place, finger }) => key.find((note) => samePlace(note.place, place))?.finger === finger,
  );
}
