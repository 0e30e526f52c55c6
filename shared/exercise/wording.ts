import { stringNumbers } from '../theory/fretboard.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import type { NoteName } from '../theory/pitch.ts';
import { formRow } from '../theory/shape.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { FormId } from '../theory/tables/forms.ts';
import type { ScaleId } from '../theory/tables/scales.ts';
import type { BuildExercise, Exercise, ScaleExercise } from './exercise.ts';
import { capital, list, rangeText } from './phrases.ts';
import { acceptedRoots, instrumentOf } from './targets.ts';

/** Chord qualities as a teacher says them. */
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

const symbols: ReadonlySet<ChordQuality> = new Set(['sus2', 'sus4', '7', 'maj7', 'm7']);

/** "E minor", and a symbol without a gap, "Em7"; a syllable keeps the gap, "mi m7". */
export function chordName(root: NoteName, quality: ChordQuality, naming: NoteNaming): string {
  const gap = symbols.has(quality) && naming !== 'solfege' ? '' : ' ';
  return formatName(root, naming) + gap + qualityWords[quality];
}

/** "E minor pentatonic". */
export function scaleName(root: NoteName, scale: ScaleId, naming: NoteNaming): string {
  return `${formatName(root, naming)} ${scaleWords[scale]}`;
}

/** What the exercise asks for: "D", "E minor", "E minor pentatonic". */
export function subjectOf(exercise: Exercise, naming: NoteNaming): string {
  switch (exercise.kind) {
    case 'find':
      return formatName(exercise.root, naming);
    case 'build':
      return chordName(exercise.root, exercise.quality, naming);
    case 'scale':
      return scaleName(exercise.root, exercise.scale, naming);
  }
}

/** What is asked, so that the words alone say what is accepted (SPEC WORD); never the fret to be found. */
export interface Wording {
  readonly title: string;
  readonly detail: string;
}

/** "Find D", "On string 2 (second thinnest), any fret." */
export function wordingOf(exercise: Exercise, naming: NoteNaming): Wording {
  const subject = subjectOf(exercise, naming);
  switch (exercise.kind) {
    case 'find':
      return { title: `Find ${subject}`, detail: `${capital(whereOf(exercise))}.` };
    case 'build':
      return { title: `Build ${subject}`, detail: buildDetail(exercise) };
    case 'scale':
      return { title: subject, detail: scaleDetail(exercise) };
  }
}

function isRootBound({ strictness }: Exercise): boolean {
  return strictness === 'place' || strictness === 'string';
}

/** Where the root may lie. One place is told by its half of the neck, since its fret is the answer. */
function whereOf(exercise: Exercise): string {
  const { strictness, range } = exercise;
  const string = `on string ${String(exercise.rootString)}${exercise.kind === 'find' ? sideOf(exercise) : ''}`;
  switch (strictness) {
    case 'place':
      return `${string}, ${acceptedRoots(exercise).some((root) => root.fret >= 12) ? 'fret 12 or above' : 'below fret 12'}`;
    case 'string':
      return range ? `${string}, ${rangeText(range)}` : `${string}, any fret`;
    case 'range':
      return `${range ? rangeText(range) : ''}, any string`;
    case 'anywhere':
      return 'anywhere on the neck';
  }
}

const ranks = ['', 'second ', 'third ', 'fourth ', 'fifth '];

/** The string's place for somebody who can't count them yet; the thicker half is counted from the thick side. */
function sideOf(exercise: Exercise): string {
  const count = stringNumbers(instrumentOf(exercise)).length;
  const { rootString } = exercise;
  const fromThin = rootString - 1;
  const fromThick = count - rootString;
  const [rank, side] = fromThin <= fromThick ? [ranks[fromThin], 'thinnest'] : [ranks[fromThick], 'thickest'];
  return rank === undefined ? '' : ` (${rank}${side})`;
}

function buildDetail(exercise: BuildExercise): string {
  const where = isRootBound(exercise) ? `Root ${whereOf(exercise)}` : capital(whereOf(exercise));
  const { voicing } = exercise;
  switch (voicing.kind) {
    case 'form':
      return `${formWhere(exercise)}. ${capital(formWords[voicing.form])}${optionalText(exercise)}.`;
    case 'strings':
      return `${where}. Exactly strings ${list([...voicing.strings].sort((a, b) => b - a))}.`;
    case 'any':
      return `${where}. Any voicing.`;
  }
}

/** A form has its root on one string, whatever the strictness; a range then holds every note. */
function formWhere(exercise: BuildExercise): string {
  const { strictness, range, rootString } = exercise;
  if (isRootBound(exercise)) return `Root ${whereOf(exercise)}`;
  const inRange = strictness === 'range' && range ? `, all of it in ${rangeText(range)}` : ', any fret';
  return `Root on string ${String(rootString)}${inRange}`;
}

/** Which strings of a form may stay silent. */
function optionalText({ voicing, quality, rootString }: BuildExercise): string {
  if (voicing.kind !== 'form') return '';
  if (voicing.full) return ', every string of it and no other';
  const strings = formRow(voicing.form, quality, rootString)?.optionalStrings ?? [];
  return strings.length === 0
    ? ''
    : `; string${strings.length === 1 ? '' : 's'} ${list(strings)} may stay silent`;
}

function scaleDetail(exercise: ScaleExercise): string {
  const where = whereOf(exercise);
  const { strictness, coverage, rootFinger } = exercise;
  if (coverage === 'every-tone')
    return `${isRootBound(exercise) ? `A root ${where}` : capital(where)}. Each note name at least once.`;
  if (strictness === 'range') return `${capital(where)}. Every note of the scale there.`;
  return `Root ${where}, under finger ${String(rootFinger)}. Every note under the hand, on all strings.`;
}
