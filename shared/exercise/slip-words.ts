import type { Exercise } from './exercise.ts';
import { say } from './messages.ts';
import { capital, numberText, stringsText, wordCount } from './phrases.ts';
import { causeWords, isWholeShift, type Slipped, type Words } from './slip-details.ts';
import type { PlaceMark, SlipCause } from './verdict.ts';

/** Text and try together stay below this (SPEC MSG-1). */
export const wordLimit = 25;

/** What is right, the slip and why, what to try: in that order, cut from the front where it would be too long. */
export function slipWords(slipped: Slipped): Words {
  const { text, tryThis } = causeWords(slipped);
  const fitting = rightParts(slipped).find(
    (right) => wordCount(right) + wordCount(text) + wordCount(tryThis) < wordLimit,
  );
  return { text: [fitting, text].filter(Boolean).join(' '), tryThis };
}

/** What is right, and shorter ways to say it; nothing where the slip says it itself. */
function rightParts({ exercise, verdict }: Slipped): readonly string[] {
  const isSaid = saysWhatIsRight.has(verdict.cause) || isWholeShift(exercise, verdict);
  return isSaid ? [] : rightSentences(exercise, verdict.marks);
}

/** "Strings 2 and 1 are right.", and shorter ways to say it; none where nothing is, or it is one place alone. */
export function rightSentences(exercise: Exercise, marks: readonly PlaceMark[]): readonly string[] {
  const right = marks.filter((mark) => mark.right).map((mark) => mark.place);
  if (right.length === 0 || exercise.kind === 'find' || exercise.kind === 'name') return [];
  if (exercise.kind === 'scale')
    return [
      right.length === 1
        ? say('right-note')
        : say('right-notes', { count: capital(numberText(right.length)) }),
    ];
  const strings = stringsText(right);
  const count = new Set(right.map((spot) => spot.string)).size;
  if (count === 1) return [say('right-string', { strings })];
  return [say('right-strings', { strings }), say('right-count', { count: capital(numberText(count)) })];
}

const saysWhatIsRight: ReadonlySet<SlipCause> = new Set<SlipCause>([
  'low-string-map',
  'low-string-box',
  'nut-as-one',
  'mark-drift',
  'sharp-for-flat',
  'relative-root',
  'tuning-ignored',
  'capo-ignored',
  'strings-reversed',
  'frets-mirrored',
  'next-string',
  'right-note-wrong-string',
  'wrong-octave',
  'outside-range',
  'wrong-form',
  'wrong-bass',
  'wrong-order',
  'wrong-root-mark',
  'wrong-finger',
  'extra-tone',
]);
