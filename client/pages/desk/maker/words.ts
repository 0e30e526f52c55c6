import type {
  ExerciseKind,
  Finger,
  NameExercise,
  ScaleOrder,
  Strictness,
} from '../../../../shared/exercise/exercise.ts';
import type { Letter, NoteName } from '../../../../shared/theory/pitch.ts';

/** What the exercise maker calls its choices. */
export const kindWords: Readonly<Record<ExerciseKind, string>> = {
  find: 'Find',
  name: 'Name',
  build: 'Build',
  scale: 'Scale',
};

export const namedWords: Readonly<Record<NameExercise['wanted'], string>> = {
  note: 'its note',
  interval: 'its interval above a root',
  degree: 'its degree above a root',
};

export const strictnessWords: Readonly<Record<Strictness, string>> = {
  place: 'This place',
  string: 'This string, at any fret',
  range: 'This fret range, on any string',
  anywhere: 'Anywhere on the neck',
};

export const orderWords: Readonly<Record<ScaleOrder, string>> = {
  up: 'in order, up',
  down: 'in order, down',
  'up-and-down': 'in order, up and down',
};

export const fingers: readonly Finger[] = [1, 2, 3, 4];

/** Time limits to choose from, in seconds. */
export const limits: readonly number[] = [15, 30, 45, 60, 90, 120, 180, 300];

export function limitWords(seconds: number | null): string {
  if (seconds === null) return 'No time limit';
  if (seconds < 60) return `${String(seconds)} seconds`;
  const minutes = seconds / 60;
  return minutes === 1 ? '1 minute' : `${String(minutes)} minutes`;
}

/** The roots that music is usually written with: naturals, and sharps and flats but E♯, B♯, C♭, F♭. */
export const usualRoots: readonly NoteName[] = [
  ...'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B'.split(' '),
].map((text) => ({
  letter: text.slice(0, 1) as Letter,
  alteration: text.endsWith('#') ? 1 : text.endsWith('b') ? -1 : 0,
}));
