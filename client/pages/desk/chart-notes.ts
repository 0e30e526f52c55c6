import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { placesPerString } from '../../../shared/exercise/input.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { KeyNote, Verdict } from '../../../shared/exercise/verdict.ts';
import {
  instrumentById,
  place,
  samePlace,
  stringNumbers,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { NeckNote, NeckView } from '../../fretboard/state.ts';

/** `♭3` for the storage form `b3`. */
function degreeLabel(note: KeyNote): string {
  return note.degree === '1' ? 'R' : note.degree.replaceAll('b', '♭').replaceAll('#', '♯');
}

function noteOf(note: KeyNote, look: NeckNote['look']): NeckNote {
  return {
    place: note.place,
    look,
    label: degreeLabel(note),
    root: note.degree === '1',
    finger: note.finger,
    optional: note.optional,
  };
}

/** The answer key as a chart: what sounds, and for a chord what stays silent. */
export function keyChart(exercise: Exercise): readonly NeckNote[] {
  const key = answerKey(exercise);
  return [...key.map((note) => noteOf(note, 'filled')), ...mutedStrings(exercise, key)];
}

/** Strings that a chord in one place leaves silent; other exercises say nothing of them. */
function mutedStrings(exercise: Exercise, key: readonly KeyNote[]): readonly NeckNote[] {
  const neck = instrumentById(exercise.instrument);
  if (exercise.kind !== 'build' || !neck || placesPerString(exercise) !== 'one') return [];
  if (exercise.voicing.kind === 'any') return [];
  return stringNumbers(neck)
    .filter((string) => key.every((note) => note.place.string !== string))
    .map((string) => ({ place: place(string, 0), look: 'muted' as const }));
}

/** An answer on the key: right places filled, slips struck through, what was expected in rings. */
export function answerChart(
  exercise: Exercise,
  answer: { readonly places: readonly Place[]; readonly verdict: Verdict },
  withKey: boolean,
): readonly NeckNote[] {
  const key = answerKey(exercise);
  const { verdict, places } = answer;
  if (!withKey) return places.map((at) => ({ place: at, look: 'filled' as const }));
  const slips = verdict.kind === 'right' ? [] : verdict.marks.filter((mark) => !mark.right);
  const given = places.map((at): NeckNote => {
    const slipped = slips.some((mark) => samePlace(mark.place, at));
    const note = key.find((one) => samePlace(one.place, at));
    if (slipped) return { place: at, look: 'slip' };
    return note ? noteOf(note, 'filled') : { place: at, look: 'filled' };
  });
  const wanted = [
    ...(verdict.kind === 'right' ? [] : verdict.missing),
    ...(verdict.kind === 'slip' ? verdict.corrections.map((correction) => correction.to) : []),
  ];
  const expected = wanted
    .filter((at, index) => wanted.findIndex((other) => samePlace(other, at)) === index)
    .filter((at) => !places.some((other) => samePlace(other, at)))
    .map((at): NeckNote => {
      const note = key.find((one) => samePlace(one.place, at));
      return note ? noteOf(note, 'expected') : { place: at, look: 'expected' };
    });
  return [...given, ...expected];
}

/** Upright as a chord chart, unless it would be too long for that. */
export function chartView(notes: readonly NeckNote[]): NeckView {
  const frets = notes.filter((note) => note.look !== 'muted').map((note) => note.place.fret);
  return Math.max(...frets, 0) - Math.min(...frets, 36) > 7 ? 'lying' : 'upright';
}
