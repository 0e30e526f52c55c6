import { formatName, type NoteNaming } from '../theory/naming.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { FormId } from '../theory/tables/forms.ts';
import type { ScaleId } from '../theory/tables/scales.ts';
import type { BuildExercise, Exercise, ScaleExercise } from './exercise.ts';
import { acceptedRoots } from './targets.ts';

/** Chord qualities as a teacher says them after the root. */
export const qualityWords: Readonly<Record<ChordQuality, string>> = {
  major: 'major',
  minor: 'minor',
  dim: 'diminished',
  aug: 'augmented',
  sus2: 'sus2',
  sus4: 'sus4',
  '5': 'power chord',
  '7': '7',
  maj7: 'maj7',
  m7: 'm7',
};

export const scaleWords: Readonly<Record<ScaleId, string>> = {
  major: 'major scale',
  'natural-minor': 'natural minor scale',
  'major-pentatonic': 'major pentatonic',
  'minor-pentatonic': 'minor pentatonic',
};

export const formWords: Readonly<Record<FormId, string>> = {
  E: 'E form',
  A: 'A form',
  G: 'G form',
  C: 'C form',
  D: 'D form',
  'triad-321': 'close triad on strings 3, 2 and 1',
  'triad-432': 'close triad on strings 4, 3 and 2',
};

/** What is asked, so that the words alone say what is accepted (SPEC WORD); never the fret to be found. */
export interface Wording {
  readonly title: string;
  readonly detail: string;
}

/** Find D · on string 2. Build E minor · root on string 2, close triad on strings 3, 2 and 1. */
export function wordingOf(exercise: Exercise, naming: NoteNaming): Wording {
  const root = formatName(exercise.root, naming);
  switch (exercise.kind) {
    case 'find':
      return { title: `Find ${root}`, detail: `${capital(whereOf(exercise))}.` };
    case 'build':
      return { title: `Build ${root} ${qualityWords[exercise.quality]}`, detail: buildDetail(exercise) };
    case 'scale':
      return { title: `${root} ${scaleWords[exercise.scale]}`, detail: scaleDetail(exercise) };
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Where the root may lie. One place is told by its half of the neck, since its fret is the answer. */
function whereOf(exercise: Exercise): string {
  const { strictness, rootString, range } = exercise;
  const string = `on string ${String(rootString)}`;
  const frets = range ? `frets ${String(range.low)} to ${String(range.high)}` : '';
  switch (strictness) {
    case 'place':
      return `${string}, ${acceptedRoots(exercise).some((root) => root.fret >= 12) ? 'fret 12 or above' : 'below fret 12'}`;
    case 'string':
      return range ? `${string}, ${frets}` : `${string}, any fret`;
    case 'range':
      return `${frets}, any string`;
    case 'anywhere':
      return 'anywhere on the neck';
  }
}

function buildDetail(exercise: BuildExercise): string {
  const { voicing, strictness } = exercise;
  const rootBound = strictness === 'place' || strictness === 'string';
  const where = rootBound ? `Root ${whereOf(exercise)}` : capital(whereOf(exercise));
  switch (voicing.kind) {
    case 'form': {
      const full = voicing.full ? ', every string of it' : '';
      return `${rootBound ? where : `Root on string ${String(exercise.rootString)}. ${where}`}. ${capital(formWords[voicing.form])}${full}.`;
    }
    case 'strings':
      return `${where}. Exactly strings ${list([...voicing.strings].sort((a, b) => b - a))}.`;
    case 'any':
      return `${where}. Any voicing.`;
  }
}

function scaleDetail(exercise: ScaleExercise): string {
  const { strictness, coverage, rootFinger } = exercise;
  if (coverage === 'every-tone') {
    const rootBound = strictness === 'place' || strictness === 'string';
    return `${rootBound ? `A root ${whereOf(exercise)}` : capital(whereOf(exercise))}. Each note name at least once.`;
  }
  if (strictness === 'range') return `${capital(whereOf(exercise))}. Every note of the scale there.`;
  return `Root ${whereOf(exercise)}, under finger ${String(rootFinger)}. Every note under the hand, on all strings.`;
}

/** `list([3, 2, 1])` is "3, 2 and 1". */
export function list(items: readonly (string | number)[]): string {
  const last = String(items.at(-1) ?? '');
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}
