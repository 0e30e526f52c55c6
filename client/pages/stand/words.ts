import { assertNever } from '../../../shared/lib/assert.ts';
import { isEmpty, type Answer } from '../../../shared/exercise/answer.ts';
import type { PlayedTap, Playing } from '../../../shared/exercise/heard.ts';
import type { Input } from '../../../shared/exercise/input.ts';
import { levelName, type Level } from '../../../shared/exercise/levels.ts';
import { list } from '../../../shared/exercise/phrases.ts';
import type { StandOwnView, StandStage } from '../../../shared/protocol/views.ts';
import { holds, type FretRange, type Place } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { ordinal, type PlacesInput } from '../../fretboard/placing.ts';
import { placeName } from '../../fretboard/state.ts';
import { nextTap } from './heard-answer.ts';

/** How far what is placed has come. */
export type Standing = 'nothing' | 'placed' | 'kept' | 'safe' | 'late';

/** One word, beside its sign. */
export const standingWord: Readonly<Record<Standing, string>> = {
  nothing: '',
  placed: 'placed',
  kept: 'kept',
  safe: 'safe',
  late: 'late',
};

/** The same as a sentence: read aloud, and shown where there is room. */
export function standingWords(standing: Standing): string {
  switch (standing) {
    case 'nothing':
      return '';
    case 'placed':
      return 'Placed.';
    case 'kept':
      return 'Kept on this phone. It goes out when the network is back.';
    case 'safe':
      return 'Safe. Yours to change until the hold.';
    case 'late':
      return 'Late. Your teacher decides whether it counts.';
    default:
      return assertNever(standing);
  }
}

/** What follows the hold, or the end of the time, under its own word. */
export function heldWords(standing: Standing, input: Input['kind'], { heard }: Answer): string {
  const given = heard ? 'played' : input === 'name' ? 'named' : 'placed';
  switch (standing) {
    case 'nothing':
      return `Nothing is ${given} this time.`;
    case 'kept':
      return 'Kept on this phone until the network is back.';
    case 'late':
      return 'Yours came late. Your teacher decides.';
    case 'placed':
    case 'safe':
      return `What you ${given} last counts.`;
    default:
      return assertNever(standing);
  }
}

/** While another level is looked at, and nothing is given there. */
export function countingWords(counting: Level, input: Input['kind']): string {
  return `Your ${levelName(counting).toLowerCase()} level counts until you ${input === 'name' ? 'name' : 'place'} something here.`;
}

/** Which of several levels it is; nothing where there is only one. */
export function levelWords(level: Level, count: number): string {
  return count > 1 ? `${levelName(level)} level. ` : '';
}

/** What the exercise asks for besides the notes, and the answer doesn't hold yet: "the root and its finger". */
export function openWords(input: Input, answer: Answer): string {
  if (input.kind === 'name' || isEmpty(answer)) return '';
  const taps = nextTap(answer, input.playing)
    ? (input.playing?.taps.slice(answer.places.length) ?? []).map((tap) => tapName[tap])
    : [];
  const root = input.marksRoot && !answer.root && !answer.heard ? ['the root'] : [];
  const finger =
    input.asksFinger && !answer.finger ? [root.length > 0 ? 'its finger' : 'the finger on the root'] : [];
  return list([...taps, ...root, ...finger]);
}

const tapName: Readonly<Record<PlayedTap, string>> = {
  root: 'a tap on your root',
  lowest: 'a tap on your lowest note',
};

/** What a screen reader hears of a tap for what was heard. */
export function tapForHeardWords(before: Answer, after: Answer, place: Place, { taps }: Playing): string {
  if (after === before) return 'What was heard is enough: no tap is asked for.';
  if (after.places.length < before.places.length || !holds(after.places, place))
    return `Taken back ${placeName(place)}.`;
  const tap = taps[after.places.length - 1] === 'lowest' ? 'Lowest note' : 'Root';
  return `${tap}: ${placeName(place)}.`;
}

/** What a screen reader hears of a tap: where, in an order also when, never which note. */
export function tapWords(before: Answer, after: Answer, place: Place, { ordered }: PlacesInput): string {
  const taken = after.places.length < before.places.length || !holds(after.places, place);
  if (!ordered) return `${taken ? 'Taken back' : 'Placed'} ${placeName(place)}.`;
  const at = ordinal(taken ? before.places.length : after.places.length);
  return `${taken ? 'Taken back, ' : ''}${at}: ${placeName(place)}.`;
}

/** What to do while the root is being marked. Two short lines at most: the neck above must not move. */
export function markingWords({ root }: Answer): string {
  return root ? 'Marked. A second tap takes it back.' : 'Tap the placed note that is the root.';
}

/** What a screen reader hears of a root mark that was set, taken away, or refused where no note is. */
export function rootWords(before: Answer, after: Answer): string {
  if (after === before) return 'Only a placed note can be the root.';
  return after.root ? `Root marked: ${placeName(after.root)}.` : 'The root mark is gone.';
}

export function fingerWords({ finger }: Answer): string {
  return finger ? `Finger ${String(finger)} on the root.` : 'No finger on the root.';
}

/** `timeWords(90)` is "1 minute 30 seconds". */
export function timeWords(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  return [counted(minutes, 'minute'), counted(seconds % 60, 'second')].filter(Boolean).join(' ');
}

function counted(count: number, unit: string): string {
  if (count === 0) return '';
  return count === 1 ? `1 ${unit}` : `${String(count)} ${unit}s`;
}

/** `windowWords` of frets 8 to 17 is "Frets 8–17". */
export function windowWords(window: FretRange): string {
  return `Frets ${String(window.low)}–${String(window.high)}`;
}

/** What comes next and who is here, as far as it is known. */
export function restWords(
  next: { readonly number: number; readonly of: number } | null,
  here: number,
): string {
  const coming = next ? `Exercise ${String(next.number)} of ${String(next.of)} is next. ` : '';
  return coming + (here === 1 ? 'You are the first here.' : `${String(here)} are here.`);
}

/** Why a device is not in the class, in two steps: what happened, and what to do. */
export function goneWords(reason: StandOwnView['reason']): readonly [string, string] {
  switch (reason) {
    case 'moved':
      return ['You moved to another device', 'This one is free. Join again here if that was not you.'];
    case 'refused':
      return [
        'Not in this class',
        'This device has no seat in the class now. Ask your teacher, or join under another name.',
      ];
    case 'left':
    case 'new':
    case 'move':
    case null:
      return ['This device is free', 'Join again with the code on the board.'];
    default:
      return assertNever(reason);
  }
}

/** What a screen reader hears when the class moves on. */
export function stageWords(stage: StandStage, naming: NoteNaming): string {
  switch (stage.kind) {
    case 'rest':
      return 'Rest. The next exercise comes here by itself.';
    case 'show': {
      if (stage.show.kind !== 'chart') return 'Your teacher shows places on the neck.';
      const { title, detail } = stage.show.wording[naming];
      return `Your teacher shows ${title}. ${detail}`;
    }
    case 'open': {
      const { title, detail } = stage.task.wording[naming];
      return `${title}. ${detail}${stage.seconds === null ? '' : ` ${timeWords(stage.seconds)}.`}`;
    }
    case 'held':
      return 'Held. Eyes up.';
    case 'revealed':
      // Read with the explanation, by the screen that holds it.
      return '';
    case 'over':
      return 'This class is over.';
    default:
      return assertNever(stage);
  }
}
