import type { Fret, StringNumber } from '../theory/fretboard.ts';
import { noteOnDegree, type Degree } from '../theory/interval.ts';
import type { NoteName } from '../theory/pitch.ts';
import type { NameExercise } from './exercise.ts';
import { fretsOf, hardnessOf, spotsOf, type Candidate, type Ground } from './ladder-ground.ts';
import { usualRoots } from './usual-roots.ts';

const single: readonly Degree[] = ['1'];

/** _Find_ each root on each string. */
export function notes(ground: Ground): readonly Candidate[] {
  return spotsOf(ground, single).map(({ task, hardness }) => ({
    exercise: { kind: 'find', ...task },
    flavour: 'find',
    hardness,
  }));
}

/** _Name_ the note of each place, which is one question however the note is spelled. */
export function namedNotes(ground: Ground): readonly Candidate[] {
  const asked = new Set<number>();
  return spotsOf(ground, single).flatMap(({ task: { root, rootString }, frets }) =>
    frets.flatMap((fret): Candidate[] => {
      const id = rootString * 100 + fret;
      if (asked.has(id)) return [];
      asked.add(id);
      const flavour = root.alteration === 0 ? 'natural' : 'accidental';
      const exercise = nameExercise(ground, root, rootString, fret, 'note');
      return [{ exercise, flavour, hardness: hardnessOf(root, fret) }];
    }),
  );
}

/** The intervals that the first chords are made of. */
const firstIntervals: readonly Degree[] = ['b3', '3', '4', '5', 'b7'];

/** _Name_ how far a place lies above a root: a few, for whoever names notes already. */
export function namedIntervals(ground: Ground): readonly Candidate[] {
  const natural = usualRoots(single).filter((root) => root.alteration === 0);
  const roots = ground.roots.length > 0 ? ground.roots : natural;
  return roots.flatMap((root) =>
    ground.strings.flatMap((string) =>
      firstIntervals.flatMap((degree): Candidate[] => {
        const note = noteOnDegree(root, degree);
        const [fret] = note ? fretsOf(ground, note, string) : [];
        if (fret === undefined) return [];
        const exercise = nameExercise(ground, root, string, fret, 'interval');
        return [{ exercise, flavour: 'interval', hardness: 2 + hardnessOf(root, fret) }];
      }),
    ),
  );
}

function nameExercise(
  { instrument }: Ground,
  root: NoteName,
  rootString: StringNumber,
  at: number,
  wanted: NameExercise['wanted'],
): NameExercise {
  const fret = at as Fret;
  return {
    kind: 'name',
    instrument: instrument.id,
    root,
    rootString,
    strictness: 'place',
    range: { low: fret, high: fret },
    place: { string: rootString, fret },
    wanted,
  };
}
