import { formatName, type NoteNaming } from '../theory/naming.ts';
import type { Answer } from './answer.ts';
import type { NameExercise } from './exercise.ts';
import { say, type MessageKey } from './messages.ts';
import { stringNamed } from './name-strings.ts';
import { namedText, rightName } from './name-words.ts';
import { fretText, placeText } from './phrases.ts';
import type { Words } from './slip-details.ts';
import { slotsOf } from './slots.ts';
import type { SlipVerdict } from './verdict.ts';

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
    other: (answer.named && stringNamed(exercise, answer.named, verdict.cause)) ?? '',
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

/** For a whole class: "string 3, fret 5 is C." */
export function nameForClass(exercise: NameExercise, naming: NoteNaming): string {
  return say(exercise.wanted === 'note' ? 'name-class' : `name-class-${exercise.wanted}`, {
    place: placeText(exercise.place),
    name: namedText(rightName(exercise), exercise.wanted, naming),
    root: formatName(exercise.root, naming),
  });
}
