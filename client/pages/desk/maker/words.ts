import type { ExerciseKind, Finger, Strictness } from '../../../../shared/exercise/exercise.ts';
import type { Letter, NoteName } from '../../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import type { FormId } from '../../../../shared/theory/tables/forms.ts';
import type { ScaleId } from '../../../../shared/theory/tables/scales.ts';

/** What the exercise maker calls its choices. */
export const kindWords: Readonly<Record<ExerciseKind, string>> = {
  find: 'Find a note',
  build: 'Build a chord',
  scale: 'Play a scale',
};

export const qualityWords: Readonly<Record<ChordQuality, string>> = {
  major: 'major',
  minor: 'minor',
  dim: 'diminished',
  aug: 'augmented',
  sus2: 'sus2',
  sus4: 'sus4',
  '5': 'power chord',
  '7': 'dominant 7',
  maj7: 'major 7',
  m7: 'minor 7',
};

export const scaleWords: Readonly<Record<ScaleId, string>> = {
  'minor-pentatonic': 'minor pentatonic',
  'major-pentatonic': 'major pentatonic',
  major: 'major',
  'natural-minor': 'natural minor',
};

export function formWords(form: FormId): string {
  switch (form) {
    case 'triad-321':
      return 'triad on strings 3-2-1';
    case 'triad-432':
      return 'triad on strings 4-3-2';
    default:
      return `${form} form`;
  }
}

export const strictnessWords: Readonly<Record<Strictness, string>> = {
  place: 'This place',
  string: 'This string, at any fret',
  range: 'This fret range, on any string',
  anywhere: 'Anywhere on the neck',
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
