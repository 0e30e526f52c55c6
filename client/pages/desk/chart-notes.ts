import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { instrumentById, samePlace, standardGuitar, type Place } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { keyNote, namedNote, silentStrings } from '../../fretboard/key-notes.ts';
import type { NeckNote, NeckView } from '../../fretboard/state.ts';

/** The answer key as a chart: what sounds, and for a chord what stays silent. */
export function keyChart(exercise: Exercise, naming: NoteNaming): readonly NeckNote[] {
  if (exercise.kind === 'name') return [namedNote(exercise, naming)];
  const key = answerKey(exercise);
  const neck = instrumentById(exercise.instrument) ?? standardGuitar;
  return [...key.map(keyNote), ...silentStrings(neck, exercise, key)];
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
    return note ? keyNote(note) : { place: at, look: 'filled' };
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
      return note ? { ...keyNote(note), look: 'expected' } : { place: at, look: 'expected' };
    });
  return [...given, ...expected];
}

/** Upright as a chord chart, unless it would be too long for that. */
export function chartView(notes: readonly NeckNote[]): NeckView {
  const frets = notes.filter((note) => note.look !== 'muted').map((note) => note.place.fret);
  return Math.max(...frets, 0) - Math.min(...frets, 36) > 7 ? 'lying' : 'upright';
}
