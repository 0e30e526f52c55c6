import type { StackedFamily } from '../theory/families.ts';
import { stringNumbers, type StringNumber } from '../theory/fretboard.ts';
import { instrumentName } from '../theory/instrument.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import { octave, pitchClassOf, type NoteName } from '../theory/pitch.ts';
import { formRow } from '../theory/shape.ts';
import { isReentrant } from '../theory/string-steps.ts';
import { chordNames } from '../theory/tables/chord-names.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { FormId } from '../theory/tables/forms.ts';
import { scaleNames } from '../theory/tables/scale-names.ts';
import { arpeggioChord, isArpeggio, type ToneSetId } from '../theory/tone-sets.ts';
import type { BuildExercise, Exercise, NameExercise, ScaleExercise, ScaleOrder } from './exercise.ts';
import { capital, list, numberText, placeText, rangeText } from './phrases.ts';
import { acceptedRoots, instrumentOf, isRootBound } from './roots.ts';

export const formWords: Readonly<Record<FormId, string>> = {
  E: 'E form',
  A: 'A form',
  G: 'G form',
  C: 'C form',
  D: 'D form',
  'triad-321': 'close triad on strings 3, 2 and 1',
  'triad-432': 'close triad on strings 4, 3 and 2',
};

export const familyWords: Readonly<Record<StackedFamily, string>> = {
  triad: 'close triad',
  shell: 'shell',
  'drop-2': 'drop-2 voicing',
  'drop-3': 'drop-3 voicing',
};

/** Qualities that are said rather than written: "E minor", and not "Em". */
const saidQualities: ReadonlySet<ChordQuality> = new Set<ChordQuality>(['major', 'minor', 'dim', 'aug', '5']);

/** "E minor", and a symbol without a gap, "Em7"; a syllable keeps the gap, "mi m7". A bass stands behind a stroke. */
export function chordName(
  root: NoteName,
  quality: ChordQuality,
  naming: NoteNaming,
  bass: NoteName | undefined = undefined,
): string {
  const over = bass && pitchClassOf(bass) !== pitchClassOf(root) ? `/${formatName(bass, naming)}` : '';
  const isSaid = saidQualities.has(quality) && over === '';
  const { words, symbol } = chordNames[quality];
  const kind = isSaid ? words : symbol;
  const gap = kind === '' || (!isSaid && naming !== 'solfege') ? '' : ' ';
  return formatName(root, naming) + gap + kind + over;
}

/** "E minor pentatonic", "Em7 arpeggio". */
export function scaleName(root: NoteName, scale: ToneSetId, naming: NoteNaming): string {
  return isArpeggio(scale)
    ? `${chordName(root, arpeggioChord(scale), naming)} arpeggio`
    : `${formatName(root, naming)} ${scaleNames[scale]}`;
}

/** What the exercise asks for: "D", "E minor", "E minor pentatonic". */
export function subjectOf(exercise: Exercise, naming: NoteNaming): string {
  switch (exercise.kind) {
    case 'find':
      return formatName(exercise.root, naming);
    case 'name':
      return placeText(exercise.place);
    case 'build':
      return chordName(exercise.root, exercise.quality, naming, exercise.bass);
    case 'scale':
      return scaleName(exercise.root, exercise.scale, naming);
  }
}

/** What is asked, so that the words alone say what is accepted (SPEC WORD); never the fret to be found. */
export interface Wording {
  readonly title: string;
  readonly detail: string;
}

/** The words in every naming, for readers who may differ in theirs. */
export type Wordings = Readonly<Record<NoteNaming, Wording>>;

/** `wordingsOf(exercise).german` is what a German reader is asked. */
export function wordingsOf(exercise: Exercise): Wordings {
  return inEveryNaming((naming) => wordingOf(exercise, naming));
}

/** The same words made for each naming. */
export function inEveryNaming(words: (naming: NoteNaming) => Wording): Wordings {
  return { english: words('english'), german: words('german'), solfege: words('solfege') };
}

/** "Find D", "On string 2 (second thinnest), any fret." */
export function wordingOf(exercise: Exercise, naming: NoteNaming): Wording {
  const subject = subjectOf(exercise, naming);
  const root = formatName(exercise.root, naming);
  const detail = (text: string) => [text, ...instrumentDetail(exercise, naming)].join(' ');
  switch (exercise.kind) {
    case 'find':
      return exercise.wanted === 'every'
        ? { title: `Find every ${subject}`, detail: detail(`${capital(whereOf(exercise))}. All of them.`) }
        : { title: `Find ${subject}`, detail: detail(`${capital(whereOf(exercise))}.`) };
    case 'name':
      return {
        title: 'Name this place',
        detail: detail(`${capital(subject)}. ${nameDetail(exercise, root)}`),
      };
    case 'build':
      return { title: `Build ${subject}`, detail: detail(buildDetail(exercise, naming)) };
    case 'scale':
      return { title: subject, detail: detail(scaleDetail(exercise)) };
  }
}

function nameDetail({ wanted }: NameExercise, root: string): string {
  switch (wanted) {
    case 'note':
      return 'Which note is it?';
    case 'interval':
      return `Which interval above ${root} is it?`;
    case 'degree':
      return `Which degree is it, with ${root} as the root?`;
  }
}

/** A tuning or capo that can't be seen is said: frets are counted from the capo. */
function instrumentDetail(exercise: Exercise, naming: NoteNaming): readonly string[] {
  const instrument = instrumentOf(exercise);
  const isUnusual = instrument.homeStrings !== undefined || typeof instrument.spec.tuning !== 'string';
  return isUnusual ? [`${instrumentName(instrument, naming)}.`] : [];
}

/** What the answer must hold besides the notes. */
function extrasText(exercise: BuildExercise | ScaleExercise): string {
  const root = exercise.marksRoot ? ' Mark the root.' : '';
  const finger = exercise.asksFinger
    ? ` Say which finger takes the root on string ${String(exercise.rootString)}.`
    : '';
  return root + finger;
}

/** Where the root may lie. One place is told by its half of the neck, since its fret is the answer. */
function whereOf(exercise: Exercise): string {
  const { strictness, range } = exercise;
  const string = `on string ${String(exercise.rootString)}${exercise.kind === 'find' ? sideOf(exercise) : ''}`;
  switch (strictness) {
    case 'place':
      return `${string}, ${octaveText(exercise)}`;
    case 'string':
      return range ? `${string}, ${rangeText(range)}` : `${string}, any fret`;
    case 'range':
      return `${range ? rangeText(range) : ''}, any string`;
    case 'anywhere':
      return 'anywhere on the neck';
  }
}

/** The octave of the neck that holds the place: in each every note lies once on a string. */
function octaveText(exercise: Exercise): string {
  const [root] = acceptedRoots(exercise);
  const from = octave * Math.floor((root?.fret ?? 0) / octave);
  const to = from + octave - 1;
  if (from === 0) return `below fret ${String(octave)}`;
  const isLast = to >= instrumentOf(exercise).fretCount;
  return isLast ? `fret ${String(from)} or above` : `frets ${String(from)} to ${String(to)}`;
}

const ranks = ['', 'second ', 'third ', 'fourth ', 'fifth '];

/**
 * The string's place for somebody who can't count them yet; the thicker half is counted from the thick side. Where
 * the tuning doesn't fall from string to string thickness says nothing.
 */
function sideOf(exercise: Exercise): string {
  const instrument = instrumentOf(exercise);
  const count = stringNumbers(instrument).length;
  const { rootString } = exercise;
  if (isReentrant(instrument)) return ` of ${String(count)}`;
  const fromThin = rootString - 1;
  const fromThick = count - rootString;
  const [rank, side] = fromThin <= fromThick ? [ranks[fromThin], 'thinnest'] : [ranks[fromThick], 'thickest'];
  return rank === undefined ? '' : ` (${rank}${side})`;
}

function buildDetail(exercise: BuildExercise, naming: NoteNaming): string {
  const where = isRootBound(exercise) ? `Root ${whereOf(exercise)}` : capital(whereOf(exercise));
  const { voicing, bass } = exercise;
  const lowest = bass ? ` ${formatName(bass, naming)} sounds lowest.` : '';
  const extras = lowest + extrasText(exercise);
  switch (voicing.kind) {
    case 'form':
      return `${formWhere(exercise)}. ${capital(formWords[voicing.form])}${optionalText(exercise)}.${extras}`;
    case 'family':
      return `${where}. ${capital(familyWords[voicing.family])} on strings ${list(fromLow(voicing.strings))}.${extras}`;
    case 'strings':
      return `${where}. Exactly strings ${list(fromLow(voicing.strings))}.${extras}`;
    case 'any':
      return `${where}. Any voicing.${extras}`;
  }
}

function fromLow(strings: readonly StringNumber[]): readonly StringNumber[] {
  return strings.toSorted((a, b) => b - a);
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
  const row = formRow(voicing.form, quality, rootString);
  const strings = (row?.optionalStrings ?? []).filter((string) => string !== rootString);
  return strings.length === 0
    ? ''
    : `; string${strings.length === 1 ? '' : 's'} ${list(strings)} may stay silent`;
}

function scaleDetail(exercise: ScaleExercise): string {
  const where = whereOf(exercise);
  const { strictness, range, rootString, coverage, rootFinger, perString, oneString } = exercise;
  const extras = orderText(exercise) + extrasText(exercise);
  if (coverage === 'every-tone')
    return `${isRootBound(exercise) ? `A root ${where}` : capital(where)}. Each note name at least once.${extras}`;
  if (oneString && range)
    return `On string ${String(rootString)} alone, ${rangeText(range)}. Every note of it there.${extras}`;
  if (strictness === 'range') return `${capital(where)}. Every note of it there.${extras}`;
  if (perString) {
    const count = numberText(perString.notes);
    return `Root ${where}. ${capital(count)} notes on every string, the root the ${ordinals[perString.rootAt - 1] ?? ''} of its ${count}.${extras}`;
  }
  return `Root ${where}, under finger ${String(rootFinger)}. Every note from the lowest to the highest under the hand, stretches included.${extras}`;
}

export const ordinals = ['first', 'second', 'third', 'fourth'];

const orders: Readonly<Record<ScaleOrder, string>> = {
  up: ' In order, upwards.',
  down: ' In order, downwards.',
  'up-and-down': ' In order, up and back down the same way.',
};
const ordersFromRoot: Readonly<Record<ScaleOrder, string>> = {
  up: ' In order, upwards from a root.',
  down: ' In order, downwards from a root.',
  'up-and-down': ' In order, from a root up and back down the same way.',
};

function orderText({ order, coverage }: ScaleExercise): string {
  if (order === undefined) return '';
  return (coverage === 'every-tone' ? ordersFromRoot : orders)[order];
}
