import { pitchClassAt, place, stringNumbers } from '../theory/fretboard.ts';
import { intervalName } from '../theory/interval-names.ts';
import { degreeSign, formatName, type NoteNaming } from '../theory/naming.ts';
import type { Answer, Named } from './answer.ts';
import type { NameExercise } from './exercise.ts';
import { say, type MessageKey } from './messages.ts';
import { fretText, placeText } from './phrases.ts';
import { pitchClassNamed } from './right.ts';
import { toneAt, instrumentOf } from './roots.ts';
import type { Words } from './slip-details.ts';
import { slotsOf } from './slots.ts';
import type { SlipVerdict } from './verdict.ts';

/** "F♯", "minor third" or "♭3". */
export function namedText(named: Named, wanted: NameExercise['wanted'], naming: NoteNaming): string {
  if (named.kind === 'note') return formatName(named.note, naming);
  return wanted === 'interval' ? intervalName(named.degree) : degreeSign(named.degree);
}

/** The right name of the place. */
export function rightName(exercise: NameExercise): Named {
  if (exercise.wanted === 'note') return { kind: 'note', note: exercise.root };
  return { kind: 'degree', degree: toneAt(exercise, exercise.place) ?? '1' };
}

/** Why the place got another name, and its right one. */
export function nameWords(
  exercise: NameExercise,
  answer: Answer,
  verdict: SlipVerdict,
  naming: NoteNaming,
): Words {
  const place = placeText(exercise.place);
  const { wanted } = exercise;
  const name = namedText(rightName(exercise), exercise.wanted, naming);
  const slots = {
    ...slotsOf(exercise, naming),
    fret: fretText(exercise.place),
    other: answer.named ? otherString(exercise, answer.named, verdict) : '',
  };
  return {
    text: say(nameKey(verdict, answer, wanted), slots),
    tryThis: say(wanted === 'note' ? 'name-try' : `name-try-${wanted}`, { ...slots, place, name }),
  };
}

function nameKey({ cause }: SlipVerdict, { named }: Answer, wanted: NameExercise['wanted']): MessageKey {
  switch (cause) {
    case 'low-string-map':
    case 'strings-reversed':
    case 'next-string':
      return 'name-map';
    case 'letters-two-frets':
      return 'letters-two-frets';
    case 'sharp-for-flat':
      return 'name-turned';
    case 'major-for-minor':
      return 'name-third-major';
    case 'minor-for-major':
      return 'name-third-minor';
    case 'one-fret-off':
      return 'name-beside';
    default:
      return named ? `name-other-${wanted}` : 'name-unsaid';
  }
}

/** The string on which the same fret has the name that was given. */
function otherString(exercise: NameExercise, named: Named, { cause }: SlipVerdict): number {
  const instrument = instrumentOf(exercise);
  const last = stringNumbers(instrument).length;
  const { string, fret } = exercise.place;
  if (cause === 'low-string-map') return last;
  if (cause === 'strings-reversed') return last + 1 - string;
  const sounds = (other: number) =>
    other >= 1 &&
    other <= last &&
    pitchClassAt(instrument, place(other, fret)) === pitchClassNamed(exercise, named);
  return [string + 1, string - 1].find(sounds) ?? last;
}

/** For a whole class: "string 3, fret 5 is C." */
export function nameForClass(exercise: NameExercise, naming: NoteNaming): string {
  return say(exercise.wanted === 'note' ? 'name-class' : `name-class-${exercise.wanted}`, {
    place: placeText(exercise.place),
    name: namedText(rightName(exercise), exercise.wanted, naming),
    root: formatName(exercise.root, naming),
  });
}
