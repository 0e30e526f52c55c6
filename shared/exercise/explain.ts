import { assertNever } from '../lib/assert.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import { place, pitchClassAt, type Place } from '../theory/fretboard.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { instrumentOf, rootsOn, targetsOf } from './targets.ts';
import type { Correction, SlipCause, SlipVerdict, Verdict } from './verdict.ts';
import { list, qualityWords, scaleWords } from './wording.ts';

/** What a Stand says of an answer: what is right and the slip in `text`, what to try in `tryThis`. */
export interface Explanation {
  readonly heading: string;
  readonly text: string;
  /** Empty where there is nothing to try. */
  readonly tryThis: string;
}

const names: Readonly<Record<SlipCause, string>> = {
  'string-6-map': 'String-6 map',
  'string-3-to-2-step': 'String-3-to-2 step',
  'major-for-minor': 'Major for minor',
  'minor-for-major': 'Minor for major',
  'right-note-wrong-string': 'Right note, another string',
  'wrong-octave': 'Another octave',
  'strings-reversed': 'Strings reversed',
  'missing-tone': 'Missing tone',
  'extra-tone': 'Extra tone',
  'outside-range': 'Outside the range',
  'wrong-form': 'Another form',
  'one-fret-off': 'One fret off',
  'other-place': 'Another place',
};

/** The slip's name, for the Desk: a Stand says it in plain words. */
export function slipName(cause: SlipCause): string {
  return names[cause];
}

const headings: Readonly<Record<SlipCause, string>> = {
  'string-6-map': 'The fret of another string',
  'string-3-to-2-step': 'The short step, string 3 to 2',
  'major-for-minor': 'The major third came in',
  'minor-for-major': 'The minor third came in',
  'right-note-wrong-string': 'The right note, on another string',
  'wrong-octave': 'The right note, an octave away',
  'strings-reversed': 'The strings, counted from the other side',
  'missing-tone': 'Not all of it yet',
  'extra-tone': 'One note more',
  'outside-range': 'Right notes, other frets',
  'wrong-form': 'The right notes, another form',
  'one-fret-off': 'One fret beside',
  'other-place': 'It lies elsewhere',
};

/** Words for one answer, in the reader's own note names; text and try together stay under 25 words (SPEC MSG). */
export function explain(
  exercise: Exercise,
  answer: Answer,
  verdict: Verdict,
  naming: NoteNaming,
): Explanation {
  switch (verdict.kind) {
    case 'right':
      return { heading: rightHeading(exercise, answer), text: `${subject(exercise, naming)}.`, tryThis: '' };
    case 'unclear':
      return {
        heading: 'Two explanations fit',
        text: 'Two explanations fit.',
        tryThis: openQuestion(verdict.marks, verdict.missing),
      };
    case 'slip':
      return { heading: headings[verdict.cause], ...slipWords(exercise, answer, verdict, naming) };
    default:
      return assertNever(verdict);
  }
}

function rightHeading(exercise: Exercise, answer: Answer): string {
  if (exercise.kind === 'find')
    return answer.places.length > 1 ? 'All of them are right' : 'That is the place';
  if (exercise.kind === 'scale') return 'Every note is right';
  const words = ['', 'It is', 'Both are', 'All three are', 'All four are', 'All five are', 'All six are'];
  return `${words[answer.places.length] ?? 'All are'} right`;
}

function subject(exercise: Exercise, naming: NoteNaming): string {
  const root = formatName(exercise.root, naming);
  switch (exercise.kind) {
    case 'find':
      return root;
    case 'build':
      return `${root} ${qualityWords[exercise.quality]}`;
    case 'scale':
      return `${root} ${scaleWords[exercise.scale]}`;
  }
}

function openQuestion(marks: SlipVerdict['marks'], missing: readonly Place[]): string {
  const spot = marks.find((mark) => !mark.right)?.place ?? missing[0];
  return spot ? `Say where string ${String(spot.string)} should be.` : 'Say where the root is.';
}

type Words = Pick<Explanation, 'text' | 'tryThis'>;

function slipWords(exercise: Exercise, answer: Answer, verdict: SlipVerdict, naming: NoteNaming): Words {
  const right = rightPart(exercise, verdict);
  const root = formatName(exercise.root, naming);
  const [first] = verdict.corrections;
  const toTry = first ? `Try ${placeWords(first.to)}.` : '';
  switch (verdict.cause) {
    case 'string-6-map':
      return stringSixWords(exercise, answer, verdict, root);
    case 'string-3-to-2-step': {
      const moved = movedStrings(verdict.corrections);
      return {
        text: `${right}${moved} one fret ${direction(first)}: string 3 to 2 is four frets, not five.`,
        tryThis:
          verdict.corrections.length === 1 && first ? `Try fret ${String(first.to.fret)}.` : moveBack(first),
      };
    }
    case 'major-for-minor':
    case 'minor-for-major': {
      const played = verdict.cause === 'major-for-minor' ? 'major' : 'minor';
      return {
        text: `${right}This sounds ${played}: the third is one fret ${played === 'major' ? 'high' : 'low'}.`,
        tryThis: toTry,
      };
    }
    case 'right-note-wrong-string':
      return {
        text:
          exercise.kind === 'find'
            ? `This is ${root}.`
            : `The notes are right; the root ${root} lies on another string.`,
        tryThis: `Look for ${root} on string ${String(exercise.rootString)}.`,
      };
    case 'wrong-octave':
      return { text: 'The notes are right, twelve frets from what is asked.', tryThis: toTry };
    case 'strings-reversed':
      return {
        text: 'The frets are right, on the opposite strings: string 1 is the thinnest.',
        tryThis: toTry,
      };
    case 'missing-tone':
      return { text: `${right}${missingWords(verdict.missing)}`, tryThis: addWords(verdict.missing) };
    case 'extra-tone': {
      const extra = verdict.marks.find((mark) => !mark.right)?.place;
      const spot = extra ? `${capital(placeWords(extra))} is` : 'One note is';
      return {
        text: `${spot} not part of ${subject(exercise, naming)}.`,
        tryThis: first ? toTry : 'Leave it out.',
      };
    }
    case 'outside-range':
      return {
        text: `The notes are right. Not all lie in ${rangeWords(exercise)}.`,
        tryThis: `Stay in ${rangeWords(exercise)}.`,
      };
    case 'wrong-form':
      return {
        text: `The notes are ${subject(exercise, naming)}, in another form.`,
        tryThis: toTry || addWords(verdict.missing),
      };
    case 'one-fret-off': {
      const whole = verdict.marks.every((mark) => !mark.right) && verdict.marks.length > 1;
      if (whole)
        return { text: `The form is right, one fret ${direction(first)}.`, tryThis: moveBack(first) };
      return {
        text: `${right}${movedStrings(verdict.corrections)} one fret ${direction(first)}.`,
        tryThis: first ? `Try fret ${String(first.to.fret)}.` : '',
      };
    }
    case 'other-place':
      return otherPlaceWords(exercise, answer, verdict, right, root);
    default:
      return assertNever(verdict.cause);
  }
}

/** "Strings 2 and 1 are right. "; for a scale, how many notes are. */
function rightPart(exercise: Exercise, verdict: SlipVerdict): string {
  const right = verdict.marks.filter((mark) => mark.right);
  if (right.length === 0 || exercise.kind === 'find') return '';
  if (exercise.kind === 'scale') return `${String(right.length)} notes are right. `;
  const strings = [...new Set(right.map((mark) => mark.place.string))].sort((a, b) => b - a);
  return strings.length === 1 ? `String ${list(strings)} is right. ` : `Strings ${list(strings)} are right. `;
}

function movedStrings(corrections: readonly Correction[]): string {
  const strings = [...new Set(corrections.map(({ from }) => from.string))].sort((a, b) => b - a);
  return strings.length === 1 ? `String ${list(strings)} is` : `Strings ${list(strings)} are`;
}

function direction(correction: Correction | undefined): string {
  return correction && correction.from.fret < correction.to.fret ? 'low' : 'high';
}

function moveBack(correction: Correction | undefined): string {
  return `Move ${direction(correction) === 'low' ? 'up' : 'down'} one fret.`;
}

function placeWords({ string, fret }: Place): string {
  return fret === 0 ? `string ${String(string)}, open` : `string ${String(string)}, fret ${String(fret)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function missingWords(missing: readonly Place[]): string {
  return missing.length === 1 ? 'One note is missing.' : `${String(missing.length)} notes are missing.`;
}

function addWords(missing: readonly Place[]): string {
  return missing[0] ? `Add ${placeWords(missing[0])}.` : '';
}

function rangeWords({ range }: Exercise): string {
  return range ? `frets ${String(range.low)} to ${String(range.high)}` : 'the frets asked for';
}

function stringSixWords(exercise: Exercise, answer: Answer, verdict: SlipVerdict, root: string): Words {
  const instrument = instrumentOf(exercise);
  const lowest = instrument.openStrings.length;
  const expected = targetsOf(exercise)[0]?.notes.find(
    (note) => note.degree === '1' && note.place.string === exercise.rootString,
  );
  const played = answer.places.find((spot) => spot.string === exercise.rootString)?.fret;
  const mapped = rootsOn(exercise, place(lowest, 0).string).find((spot) => spot.fret === played);
  const there = mapped
    ? `Fret ${String(mapped.fret)} is the ${root} of string ${String(lowest)}`
    : `This hangs on string ${String(lowest)}'s ${root}`;
  const to = verdict.corrections[0]?.to.fret ?? expected?.place.fret;
  const fret = exercise.kind === 'find' ? to : expected?.place.fret;
  const spot = fret === 0 ? 'open' : `fret ${String(fret)}`;
  return {
    text: `${there}.`,
    tryThis: `On string ${String(exercise.rootString)} it is ${spot === 'open' ? 'the open string' : spot}.`,
  };
}

function otherPlaceWords(
  exercise: Exercise,
  answer: Answer,
  verdict: SlipVerdict,
  right: string,
  root: string,
): Words {
  const [first] = verdict.corrections;
  const [given] = answer.places;
  if (exercise.kind === 'find' && given) {
    const isRoot = pitchClassAt(instrumentOf(exercise), given) === pitchClassOf(exercise.root);
    const expected = targetsOf(exercise)[0]?.notes[0]?.place;
    const text = isRoot ? `One of these is not ${root}.` : `${capital(placeWords(given))} is another note.`;
    return { text, tryThis: expected ? `${root} is ${placeWords(expected)}.` : '' };
  }
  return {
    text: `${right}${first ? `String ${String(first.from.string)} lies elsewhere.` : 'The rest lies elsewhere.'}`,
    tryThis: first ? `Try ${placeWords(first.to)}.` : addWords(verdict.missing),
  };
}

/** One sentence on a slip for the whole class, on the Board after the reveal. */
export function explainForClass(exercise: Exercise, cause: SlipCause, naming: NoteNaming): string {
  const root = formatName(exercise.root, naming);
  const string = String(exercise.rootString);
  const lowest = String(instrumentOf(exercise).openStrings.length);
  const sentences: Readonly<Record<SlipCause, string>> = {
    'string-6-map': `the fret was ${root}'s on string ${lowest}. On string ${string} it lies elsewhere.`,
    'string-3-to-2-step': 'one fret beside. From string 3 to string 2 is four frets, not five.',
    'major-for-minor': 'the third was one fret high, which makes it major.',
    'minor-for-major': 'the third was one fret low, which makes it minor.',
    'right-note-wrong-string': `the note was right, on another string than string ${string}.`,
    'wrong-octave': 'the right notes, twelve frets away.',
    'strings-reversed': 'strings counted from the thick side. String 1 is the thinnest.',
    'missing-tone': 'not every note was there yet.',
    'extra-tone': 'one note more than belongs to it.',
    'outside-range': `right notes outside ${rangeWords(exercise)}.`,
    'wrong-form': 'the right notes, in another form.',
    'one-fret-off': 'one fret beside the place.',
    'other-place': 'the notes lie elsewhere.',
  };
  return sentences[cause];
}
