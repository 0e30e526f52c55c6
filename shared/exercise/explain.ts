import { assertNever } from '../lib/assert.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { capital, list, placeText, rangeText, stringsText, uncapital } from './phrases.ts';
import { slipHeadings } from './slip-names.ts';
import { direction, moved, slipWords } from './slip-words.ts';
import { instrumentOf } from './targets.ts';
import type { SlipCause, SlipVerdict, UnclearVerdict, Verdict } from './verdict.ts';
import { subjectOf } from './wording.ts';

export { slipName } from './slip-names.ts';

/** What a Stand says of an answer: what is right and the slip in `text`, what to try in `tryThis`. */
export interface Explanation {
  readonly heading: string;
  readonly text: string;
  /** Empty where there is nothing to try. */
  readonly tryThis: string;
}

/** Words for one answer, in the reader's own note names; text and try together stay under 25 words (SPEC MSG). */
export function explain(
  exercise: Exercise,
  answer: Answer,
  verdict: Verdict,
  naming: NoteNaming,
): Explanation {
  switch (verdict.kind) {
    case 'right':
      return {
        heading: rightHeading(exercise, answer),
        text: rightText(exercise, answer, naming),
        tryThis: '',
      };
    case 'unclear':
      return {
        heading: 'Two explanations fit',
        text: 'Two explanations fit.',
        tryThis: separatingQuestion(exercise, verdict),
      };
    case 'slip':
      return {
        heading: slipHeadings[verdict.cause],
        ...slipWords({ exercise, places: answer.places, verdict, naming }),
      };
    default:
      return assertNever(verdict);
  }
}

/** "String 2, fret 3 is D."; a chord or scale by its name. */
function rightText(exercise: Exercise, { places }: Answer, naming: NoteNaming): string {
  const subject = subjectOf(exercise, naming);
  if (exercise.kind !== 'find') return `${subject}.`;
  return `${capital(list(places.map(placeText)))} ${places.length === 1 ? 'is' : 'are'} ${subject}.`;
}

function rightHeading(exercise: Exercise, { places }: Answer): string {
  if (exercise.kind === 'find') return places.length > 1 ? 'All of them are right' : 'That is the place';
  if (exercise.kind === 'scale') return 'Every note is right';
  const words = ['', 'It is', 'Both are', 'All three are', 'All four are', 'All five are', 'All six are'];
  return `${words[places.length] ?? 'All are'} right`;
}

/** Where the explanations part: on the one string in doubt, else at the root. */
function separatingQuestion(exercise: Exercise, { marks, missing }: UnclearVerdict): string {
  const astray = marks.filter((mark) => !mark.right).map((mark) => mark.place);
  const inDoubt = astray.length > 0 ? astray : missing;
  const isOneString = new Set(inDoubt.map((spot) => spot.string)).size === 1;
  return isOneString
    ? `Say where ${stringsText(inDoubt).toLowerCase()} should be.`
    : `Say where the root on string ${String(exercise.rootString)} should be.`;
}

/** One sentence on a slip for the whole class, on the Board after the reveal. */
export function explainForClass(exercise: Exercise, slip: SlipVerdict, naming: NoteNaming): string {
  const root = formatName(exercise.root, naming);
  const string = String(exercise.rootString);
  const lowest = String(instrumentOf(exercise).openStrings.length);
  const where = uncapital(moved(slip));
  const isForm = exercise.kind === 'build' && exercise.voicing.kind === 'form';
  const range = exercise.range ? rangeText(exercise.range) : 'the frets asked for';
  const sentences: Readonly<Record<SlipCause, string>> = {
    'string-6-map': `that fret is ${root} on string ${lowest}. On string ${string} it lies elsewhere.`,
    'string-3-to-2-step': `${where} one fret ${direction(slip)}. From string 3 to string 2 is four frets, not five.`,
    'major-for-minor': 'the third was one fret high, which makes it major.',
    'minor-for-major': 'the third was one fret low, which makes it minor.',
    'right-note-wrong-string': `the note was right, on another string than string ${string}.`,
    'wrong-octave': 'the right notes, twelve frets away.',
    'strings-reversed': 'strings counted from the thick side. String 1 is the thinnest.',
    'missing-tone': 'not every note was there yet.',
    'extra-tone': 'one note more than is asked for.',
    'outside-range': `right notes outside ${range}.`,
    'wrong-form': isForm ? 'the right notes, in another form.' : 'the right notes, on other strings.',
    'one-fret-off': `${where} one fret ${direction(slip)}.`,
    'other-place': 'the notes lie elsewhere.',
  };
  return sentences[slip.cause];
}
