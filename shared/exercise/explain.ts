import { assertNever } from '../lib/assert.ts';
import { degreeSign, type NoteNaming } from '../theory/naming.ts';
import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { placesHeard } from './heard-note.ts';
import { heardCauseWords, type HeardAnswer } from './heard-slip-words.ts';
import { heardStepSlots } from './heard-step.ts';
import { heardHeading, withHeard } from './heard-words.ts';
import { say } from './messages.ts';
import { nameForClass } from './name-slip-words.ts';
import { namedText, rightName } from './name-words.ts';
import { list, numberText, placeText, stringsText, uncapital } from './phrases.ts';
import { isAllRight, isOnStrings } from './slip-details.ts';
import { slipHeadings } from './slip-names.ts';
import { mappedRoot } from './slip-places.ts';
import { rightSentences, slipWords } from './slip-words.ts';
import { slipIn } from './slips.ts';
import { slotsOf } from './slots.ts';
import { stepForClass } from './step-words.ts';
import type { RightVerdict, SlipVerdict, UnclearVerdict, Verdict } from './verdict.ts';
import { subjectOf } from './wording.ts';

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
  if (answer.heard) return explainHeard(exercise, { ...answer, heard: answer.heard }, verdict, naming);
  switch (verdict.kind) {
    case 'right':
      return {
        heading: rightHeading(exercise, answer),
        text: rightText(exercise, answer, verdict, naming),
        tryThis: '',
      };
    case 'unclear':
      return {
        heading: say('unclear-heading'),
        text: rightSentences(exercise, verdict.marks)[0] ?? say('unclear'),
        tryThis: separatingQuestion(exercise, verdict),
      };
    case 'unnamed':
      return { heading: say('unnamed-heading'), text: say('unnamed'), tryThis: '' };
    case 'slip':
      return {
        heading: slipHeadings[verdict.cause],
        ...slipWords({ exercise, answer, verdict, naming }),
      };
    default:
      return assertNever(verdict);
  }
}

/** What was heard, then what a placed answer would be told, by ear where no tap says where it lay (SPEC HEARD-10). */
function explainHeard(
  exercise: Exercise,
  answer: HeardAnswer,
  verdict: Verdict,
  naming: NoteNaming,
): Explanation {
  const { heard } = answer;
  const spots =
    exercise.kind === 'find' && heard.kind === 'line'
      ? placesHeard(
          exercise,
          answer,
          heard.pitches.map(({ pitch }) => pitch),
        )
      : undefined;
  if (spots && verdict.kind !== 'unnamed') {
    const placed = { places: spots };
    const judged = verdict.kind === 'right' ? verdict : slipIn(exercise, placed);
    return withHeard(exercise, heard, naming, explain(exercise, placed, judged, naming));
  }
  switch (verdict.kind) {
    case 'right': {
      const text =
        exercise.kind === 'find'
          ? say('right-subject', { subject: subjectOf(exercise, naming) })
          : rightText(exercise, answer, verdict, naming);
      return withHeard(exercise, heard, naming, { heading: heardHeading(exercise), text, tryThis: '' });
    }
    case 'unclear':
      return withHeard(exercise, heard, naming, {
        heading: say('unclear-heading'),
        text: say('unclear'),
        tryThis: separatingQuestion(exercise, verdict),
      });
    case 'unnamed':
      return { heading: say('unnamed-heading'), text: say('unnamed'), tryThis: '' };
    case 'slip':
      return withHeard(exercise, heard, naming, {
        heading: slipHeadings[verdict.cause],
        ...heardCauseWords({ exercise, answer, verdict, naming }),
      });
  }
}

/** Places that are told one by one. */
const mostListed = 3;

/** "String 2, fret 3 is D."; a chord or scale by its name, and its lowest tone where it is inverted. */
function rightText(
  exercise: Exercise,
  { places }: Answer,
  { inversion }: RightVerdict,
  naming: NoteNaming,
): string {
  const subject = subjectOf(exercise, naming);
  if (exercise.kind === 'name')
    return say(exercise.wanted === 'note' ? 'right-place' : `right-${exercise.wanted}`, {
      ...slotsOf(exercise, naming),
      place: placeText(exercise.place),
      subject: namedText(rightName(exercise), exercise.wanted, naming),
    });
  if (exercise.kind === 'find' && places.length > mostListed)
    return say('right-many', { count: numberText(places.length), subject });
  if (exercise.kind === 'find')
    return say(places.length === 1 ? 'right-place' : 'right-places', {
      place: list(places.map(placeText)),
      subject,
    });
  return inversion
    ? say('right-inverted', { subject, lowest: degreeSign(inversion) })
    : say('right-subject', { subject });
}

function rightHeading({ kind }: Exercise, { places }: Answer): string {
  if (kind === 'name') return say('right-name-heading');
  if (kind === 'find') return say(places.length > 1 ? 'right-places-heading' : 'right-place-heading');
  if (kind === 'scale') return say('right-scale-heading');
  if (places.length < 3) return say(places.length === 1 ? 'right-one-heading' : 'right-two-heading');
  return say('right-all-heading', { count: numberText(places.length) });
}

/** Where the explanations part: on the one string in doubt, else at the root. */
function separatingQuestion(exercise: Exercise, { marks, missing }: UnclearVerdict): string {
  if (exercise.kind === 'name') return say('unclear-name', { place: placeText(exercise.place) });
  const [place] = missing;
  if (exercise.kind === 'find' && place) return say('try', { place: placeText(place) });
  const astray = marks.filter((mark) => !mark.right).map((mark) => mark.place);
  const inDoubt = astray.length > 0 ? astray : missing;
  const isOneString = new Set(inDoubt.map((spot) => spot.string)).size === 1;
  return isOneString
    ? say('unclear-string', { strings: uncapital(stringsText(inDoubt)) })
    : say('unclear-root', { string: exercise.rootString });
}

/** One sentence on a slip for the whole class, on the Board after the reveal; it goes on after a colon. */
export function explainForClass(exercise: Exercise, verdict: SlipVerdict, naming: NoteNaming): string {
  if (exercise.kind === 'name') return nameForClass(exercise, naming);
  const { cause } = verdict;
  const slots = slotsOf(exercise, naming);
  switch (cause) {
    case 'short-step':
      if (verdict.heard) return say('heard-step-class', heardStepSlots(exercise, verdict.heard));
      return stepForClass(exercise, verdict);
    case 'major-for-minor':
      return say('third-high-class');
    case 'minor-for-major':
      return say('third-low-class');
    case 'sharp-for-flat':
      return uncapital(say(exercise.root.alteration < 0 ? 'sharp-for-flat' : 'flat-for-sharp'));
    case 'right-note-wrong-string':
      return say('right-note-wrong-string-class', slots);
    case 'wrong-octave':
      return say('octave-class');
    case 'outside-range':
      return say('outside-class', slots);
    case 'wrong-form': {
      if (isOnStrings(exercise, verdict)) return say('wrong-stack-class');
      const isForm = exercise.kind === 'build' && exercise.voicing.kind === 'form';
      return say(isForm ? 'wrong-form-class' : 'wrong-strings-class');
    }
    case 'wrong-order':
      return say('order-class');
    case 'wrong-root-mark':
      return say('root-mark-class', slots);
    case 'wrong-finger':
      return say('finger-class', slots);
    case 'untapped':
      return say('untapped-class');
    case 'muted-string-sounded':
      return say('muted-class');
    case 'sounding-string-muted':
      return say('silent-class');
    case 'one-fret-off':
      return say('beside-class');
    case 'extra-tone':
      return say('extra-class');
    case 'missing-tone':
      return say('missing-class');
    case 'other-place':
    case 'other-name':
      return say('elsewhere-class');
    case 'low-string-map': {
      const tap = verdict.heard && verdict.marks[0]?.place;
      const string = (mappedRoot(exercise, verdict)?.to ?? tap)?.string ?? exercise.rootString;
      return say('low-string-map-class', { ...slots, string });
    }
    case 'relative-root':
      return say(isAllRight(verdict) ? 'relative-root-mark-class' : 'relative-root-class', slots);
    case 'low-string-box':
    case 'letters-two-frets':
    case 'nut-as-one':
    case 'mark-drift':
    case 'tuning-ignored':
    case 'capo-ignored':
    case 'strings-reversed':
    case 'frets-mirrored':
    case 'next-string':
    case 'wrong-bass':
      return say(`${cause}-class`, slots);
    default:
      return assertNever(cause);
  }
}
