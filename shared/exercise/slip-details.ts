import { assertNever } from '../lib/assert.ts';
import { holds, place, type Place } from '../theory/fretboard.ts';
import type { NoteNaming } from '../theory/naming.ts';
import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { say, type MessageKey } from './messages.ts';
import { nameWords } from './name-slip-words.ts';
import { fretText, placeText, stringsText } from './phrases.ts';
import { extraWords, lowStringMapWords, missingWords, otherPlaceWords, thirdWords } from './slip-places.ts';
import { stepWords } from './step-words.ts';
import { toneAt } from './roots.ts';
import { slotsOf } from './slots.ts';
import { targetsOf } from './targets.ts';
import type { SlipVerdict } from './verdict.ts';

/** One answer that slipped, and its reader. */
export interface Slipped {
  readonly exercise: Exercise;
  readonly answer: Answer;
  readonly verdict: SlipVerdict;
  readonly naming: NoteNaming;
}

/** What a Stand reads of one slip. */
export interface Words {
  readonly text: string;
  readonly tryThis: string;
}

/** The slip and why, and what to try. */
export function causeWords(slipped: Slipped): Words {
  const { exercise, answer, verdict, naming } = slipped;
  if (exercise.kind === 'name') return nameWords(exercise, answer, verdict, naming);
  const [first] = verdict.corrections;
  const slots = {
    ...slotsOf(exercise, naming),
    fret: first ? fretText(first.to) : '',
    given: answer.finger ?? '',
  };
  const { cause } = verdict;
  const isFind = exercise.kind === 'find';
  const isHigh = direction(verdict) === 'high';
  const words = (text: MessageKey, tryThis: MessageKey | ''): Words => ({
    text: say(text, slots),
    tryThis: tryThis === '' ? '' : say(tryThis, slots),
  });
  const tryFirst = correctionText(verdict);
  switch (cause) {
    case 'low-string-map':
      return lowStringMapWords(slipped, slots);
    case 'low-string-box':
      return words('low-string-box', 'low-string-box-try');
    case 'short-step':
      return stepWords(slipped);
    case 'major-for-minor':
    case 'minor-for-major':
      return thirdWords(slipped, tryFirst);
    case 'letters-two-frets':
      return { text: say('letters-two-frets', slots), tryThis: tryFirst };
    case 'nut-as-one':
      return words('nut-as-one', isFind ? 'try-fret' : 'move-up-fret');
    case 'mark-drift':
      return words(
        isHigh ? 'mark-drift-high' : 'mark-drift-low',
        isFind ? 'try-fret' : isHigh ? 'move-down-fret' : 'move-up-fret',
      );
    case 'sharp-for-flat':
      return {
        text: say(exercise.root.alteration < 0 ? 'sharp-for-flat' : 'flat-for-sharp'),
        tryThis: tryFirst,
      };
    case 'relative-root':
      return isAllRight(verdict)
        ? words('relative-root-mark', 'root-mark-try')
        : { text: say('relative-root', { ...slots, shape: shapeWord(exercise) }), tryThis: tryFirst };
    case 'tuning-ignored':
    case 'capo-ignored':
      return { text: say(cause), tryThis: tryFirst };
    case 'strings-reversed':
    case 'frets-mirrored':
      return words(cause, `${cause}-try`);
    case 'next-string':
      return words('next-string', 'move-over');
    case 'right-note-wrong-string':
      return words(isFind ? 'right-note-wrong-string' : 'right-notes-wrong-string', 'look-on-string');
    case 'wrong-octave':
      return isFind
        ? words(isHigh ? 'octave-high' : 'octave-low', 'try-fret')
        : words(isHigh ? 'octaves-high' : 'octaves-low', isHigh ? 'move-down-octave' : 'move-up-octave');
    case 'outside-range':
      return outsideWords(slipped, words);
    case 'wrong-form':
      if (isOnStrings(exercise, verdict)) return { text: say('wrong-stack', slots), tryThis: tryFirst };
      return exercise.kind === 'build' && exercise.voicing.kind !== 'form'
        ? words('wrong-strings', 'wrong-strings-try')
        : { text: say('wrong-form', slots), tryThis: tryFirst };
    case 'wrong-bass':
      return words('wrong-bass', 'wrong-bass-try');
    case 'wrong-order':
      return words('order-up', orderTry(exercise, answer));
    case 'wrong-root-mark':
      return words(answer.root ? 'root-mark-elsewhere' : 'root-unmarked', 'root-mark-try');
    case 'wrong-finger':
      return words(answer.finger === undefined ? 'finger-unsaid' : 'finger-other', 'finger-try');
    case 'untapped':
      return words('untapped-root', 'untapped-root-try');
    case 'muted-string-sounded':
      return stringsWords(
        verdict.marks.filter((mark) => !mark.right).map((mark) => mark.place),
        'muted-string',
        say('muted-try'),
      );
    case 'sounding-string-muted':
      return stringsWords(verdict.missing, 'silent-string', tryFirst);
    case 'missing-tone':
      return missingWords(slipped, tryFirst);
    case 'extra-tone':
      return extraWords(slipped, verdict.corrections.length > 0 ? tryFirst : say('leave-out'));
    case 'one-fret-off':
      return besideWords(slipped, words);
    case 'other-place':
    case 'other-name':
      return otherPlaceWords(slipped, tryFirst);
    default:
      return assertNever(cause);
  }
}

/** "Try string 2, fret 5.", else what to add. */
function correctionText({ corrections: [first], missing: [lost] }: SlipVerdict): string {
  if (first) return say('try', { place: placeText(first.to) });
  return lost ? say('add', { place: placeText(lost) }) : '';
}

function outsideWords(
  { exercise, answer }: Slipped,
  words: (text: MessageKey, tryThis: MessageKey | '') => Words,
): Words {
  if (exercise.kind === 'find')
    return words(answer.places.length === 1 ? 'outside-find-one' : 'outside-find-many', 'look-in');
  return exercise.strictness === 'string'
    ? words('outside-root', 'look-for-in')
    : words('outside-notes', 'stay-in');
}

function orderTry(exercise: Exercise, { places: [first] }: Answer): MessageKey {
  if (exercise.kind !== 'scale') return 'order-up-try';
  const isFromRoot = first !== undefined && toneAt(exercise, first) === '1';
  if (exercise.coverage === 'every-tone' && !isFromRoot) return 'order-from-root-try';
  return `order-${exercise.order ?? 'up'}-try`;
}

function stringsWords(
  spots: readonly Place[],
  key: 'muted-string' | 'silent-string',
  tryThis: string,
): Words {
  const isMany = new Set(spots.map((spot) => spot.string)).size > 1;
  return { text: say(isMany ? `${key}s` : key, { strings: stringsText(spots) }), tryThis };
}

function besideWords(
  { exercise, verdict }: Slipped,
  words: (text: MessageKey, tryThis: MessageKey | '') => Words,
): Words {
  const side = direction(verdict);
  if (isWholeShift(exercise, verdict))
    return words(`whole-${shapeWord(exercise)}-${side}`, side === 'high' ? 'move-down-fret' : 'move-up-fret');
  const spots = verdict.corrections.map(({ from }) => from);
  const isMany = new Set(spots.map((spot) => spot.string)).size > 1;
  const [first] = verdict.corrections;
  return {
    text: say(`beside-${side}-${isMany ? 'many' : 'one'}`, { strings: stringsText(spots) }),
    tryThis: first ? say('try-fret', { fret: fretText(first.to) }) : '',
  };
}

export function shapeWord(exercise: Exercise): 'form' | 'shape' | 'pattern' {
  if (exercise.kind === 'scale') return 'pattern';
  return exercise.kind === 'build' && exercise.voicing.kind !== 'form' ? 'shape' : 'form';
}

/** Whether the whole answer is a right one, moved along the neck by the same number of frets. */
export function isWholeShift(exercise: Exercise, { marks, corrections }: SlipVerdict): boolean {
  const [first] = corrections;
  if (!first || marks.length < 2) return false;
  const frets = first.to.fret - first.from.fret;
  return targetsOf(exercise).some(({ accepted }) =>
    marks.every(({ place: spot }) => holds(accepted, place(spot.string, spot.fret + frets))),
  );
}

/** Whether every place, or every note heard, is right, and only what was asked besides isn't. */
export function isAllRight({ marks, heard }: SlipVerdict): boolean {
  if (heard?.kind === 'chord') return heard.missing.length === 0 && heard.foreign.length === 0;
  if (heard) return heard.expected === undefined && heard.sounded === undefined;
  return marks.every(({ right }) => right);
}

/** Whether the answer lies on exactly the strings that a stacked chord is asked on. */
export function isOnStrings(exercise: Exercise, { marks }: SlipVerdict): boolean {
  if (exercise.kind !== 'build' || exercise.voicing.kind !== 'family') return false;
  const { strings } = exercise.voicing;
  return marks.length === strings.length && marks.every(({ place: spot }) => strings.includes(spot.string));
}

export function direction({ corrections: [first] }: SlipVerdict): 'low' | 'high' {
  return first && first.from.fret < first.to.fret ? 'low' : 'high';
}
