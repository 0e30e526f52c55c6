import { assertNever } from '../lib/assert.ts';
import { place, samePlace } from '../theory/fretboard.ts';
import { formatName } from '../theory/naming.ts';
import type { Exercise } from './exercise.ts';
import { fretText, list, placeText, stringsText, wordCount } from './phrases.ts';
import {
  addText,
  extraWords,
  missingWords,
  otherPlaceWords,
  outsideWords,
  stringSixWords,
  thirdWords,
  type Slipped,
  type Words,
} from './slip-details.ts';
import { targetsOf } from './targets.ts';
import type { SlipVerdict } from './verdict.ts';
import { subjectOf } from './wording.ts';

/** Text and try together stay below this (SPEC MSG-1). */
const wordLimit = 25;

/** What is right, the slip and why, what to try: in that order, cut from the front where it would be too long. */
export function slipWords(slipped: Slipped): Words {
  const { text, tryThis } = causeWords(slipped);
  const fitting = rightParts(slipped).find(
    (right) => wordCount(right) + wordCount(text) + wordCount(tryThis) < wordLimit,
  );
  return { text: [fitting, text].filter(Boolean).join(' '), tryThis };
}

const counts = [
  '',
  'One string is',
  'Two strings are',
  'Three strings are',
  'Four strings are',
  'Five strings are',
];

/** "Strings 2 and 1 are right.", and shorter ways to say it; nothing where the slip says it itself. */
function rightParts({ exercise, verdict }: Slipped): readonly string[] {
  const right = verdict.marks.filter((mark) => mark.right).map((mark) => mark.place);
  const isSaid = saysWhatIsRight.has(verdict.cause) || isWholeShift(exercise, verdict);
  if (right.length === 0 || exercise.kind === 'find' || isSaid) return [];
  if (exercise.kind === 'scale')
    return [`${String(right.length)} ${right.length === 1 ? 'note is' : 'notes are'} right.`];
  const strings = new Set(right.map((spot) => spot.string)).size;
  return [
    `${stringsText(right)} ${strings === 1 ? 'is' : 'are'} right.`,
    `${counts[strings] ?? 'Some are'} right.`,
  ];
}

const saysWhatIsRight: ReadonlySet<SlipVerdict['cause']> = new Set([
  'string-6-map',
  'right-note-wrong-string',
  'wrong-octave',
  'strings-reversed',
  'outside-range',
  'wrong-form',
  'extra-tone',
]);

function causeWords(slipped: Slipped): Words {
  const { exercise, verdict, naming } = slipped;
  const root = formatName(exercise.root, naming);
  const { cause, corrections } = verdict;
  const [first] = corrections;
  const tryFirst = first ? `Try ${placeText(first.to)}.` : addText(verdict);
  switch (cause) {
    case 'string-6-map':
      return stringSixWords(slipped, root);
    case 'string-3-to-2-step':
      return {
        text: `${moved(verdict)} one fret ${direction(verdict)}: string 3 to 2 is four frets, not five.`,
        tryThis:
          corrections.length === 1 && first ? `Try ${fretText(first.to)}.` : `One fret ${back(verdict)}.`,
      };
    case 'major-for-minor':
    case 'minor-for-major':
      return thirdWords(slipped, tryFirst);
    case 'right-note-wrong-string':
      return {
        text:
          exercise.kind === 'find'
            ? `This is ${root}, on another string.`
            : 'The notes are right, with the root on another string.',
        tryThis: `Look for ${root} on string ${String(exercise.rootString)}.`,
      };
    case 'wrong-octave': {
      const far = `twelve frets ${direction(verdict) === 'high' ? 'above' : 'below'}`;
      return exercise.kind === 'find'
        ? {
            text: `This is ${root}, ${far} the one asked for.`,
            tryThis: first ? `Try ${fretText(first.to)}.` : '',
          }
        : {
            text: `The notes are right, ${far} those asked for.`,
            tryThis: `Move ${back(verdict)} twelve frets.`,
          };
    }
    case 'strings-reversed':
      return {
        text: 'The frets are right, on the opposite strings.',
        tryThis: 'String 1 is the thinnest: count from there.',
      };
    case 'missing-tone':
      return missingWords(slipped);
    case 'extra-tone':
      return extraWords(slipped, first ? tryFirst : 'Leave it out.');
    case 'outside-range':
      return outsideWords(slipped, root);
    case 'wrong-form':
      return exercise.kind === 'build' && exercise.voicing.kind === 'strings'
        ? {
            text: `The notes are ${subjectOf(exercise, naming)}, on other strings.`,
            tryThis: `Use strings ${list([...exercise.voicing.strings].sort((a, b) => b - a))}.`,
          }
        : { text: `The notes are ${subjectOf(exercise, naming)}, in another form.`, tryThis: tryFirst };
    case 'one-fret-off':
      if (isWholeShift(exercise, verdict)) {
        const whole =
          exercise.kind === 'build' && exercise.voicing.kind !== 'form' ? 'shape' : shapeWord(exercise);
        return {
          text: `The ${whole} is right, one fret ${direction(verdict)}.`,
          tryThis: `Move ${back(verdict)} one fret.`,
        };
      }
      return {
        text: `${moved(verdict)} one fret ${direction(verdict)}.`,
        tryThis: first ? `Try ${fretText(first.to)}.` : '',
      };
    case 'other-place':
      return otherPlaceWords(slipped, root, tryFirst);
    default:
      return assertNever(cause);
  }
}

function shapeWord(exercise: Exercise): string {
  return exercise.kind === 'scale' ? 'pattern' : 'form';
}

/** Whether the whole answer is a right one, moved along the neck by the same number of frets. */
function isWholeShift(exercise: Exercise, { marks, corrections }: SlipVerdict): boolean {
  const [first] = corrections;
  if (!first || marks.length < 2) return false;
  const frets = first.to.fret - first.from.fret;
  return targetsOf(exercise).some(({ accepted }) =>
    marks.every(({ place: spot }) =>
      accepted.some((other) => samePlace(other, place(spot.string, spot.fret + frets))),
    ),
  );
}

export function moved({ corrections }: SlipVerdict): string {
  const spots = corrections.map(({ from }) => from);
  return `${stringsText(spots)} ${new Set(spots.map((spot) => spot.string)).size === 1 ? 'is' : 'are'}`;
}

export function direction({ corrections: [first] }: SlipVerdict): 'low' | 'high' {
  return first && first.from.fret < first.to.fret ? 'low' : 'high';
}

function back(verdict: SlipVerdict): 'up' | 'down' {
  return direction(verdict) === 'low' ? 'up' : 'down';
}
