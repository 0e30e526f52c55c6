import { slipName } from '../../../../shared/exercise/slip-names.ts';
import type { Answer } from '../../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { heardWords } from '../../../../shared/exercise/heard-words.ts';
import { inputOf } from '../../../../shared/exercise/input.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import { namedText } from '../../../../shared/exercise/name-words.ts';
import { placeText, uncapital } from '../../../../shared/exercise/phrases.ts';
import type { Verdict } from '../../../../shared/exercise/verdict.ts';
import {
  instrumentById,
  standardGuitar,
  type Instrument,
  type Place,
} from '../../../../shared/theory/fretboard.ts';
import { degreeSign, type NoteNaming } from '../../../../shared/theory/naming.ts';

/** The words beside a student's name: the slip, or what to know of a right answer. */
export function verdictNote(verdict: Verdict, instrument: Instrument): string {
  switch (verdict.kind) {
    case 'right':
      return verdict.inversion === undefined ? '' : `inverted (${degreeSign(verdict.inversion)} lowest)`;
    case 'unclear':
      return 'two explanations';
    case 'unnamed':
      return 'not yet';
    case 'slip':
      return uncapital(slipName(verdict.cause, instrument));
  }
}

/** The verdict in a sentence. */
export function verdictText(verdict: Verdict, instrument: Instrument): string {
  switch (verdict.kind) {
    case 'right':
      return `Right${verdict.inversion === undefined ? '' : `, ${verdictNote(verdict, instrument)}`}.`;
    case 'unclear': {
      const [one, other] = verdict.causes.map((cause) => uncapital(slipName(cause, instrument)));
      return `Two explanations: ${one ?? ''}, or ${other ?? ''}.`;
    }
    case 'unnamed':
      return 'Not yet, as you marked it.';
    case 'slip':
      return `${slipName(verdict.cause, instrument)}.`;
  }
}

/** What an answer holds besides what the chart shows: how it came, a name, an order, a root, a finger. A sentence each. */
export function answerSentences(exercise: Exercise, answer: Answer, naming: NoteNaming): readonly string[] {
  const { places, heard, way, named, root, finger } = answer;
  const said = way ? [way === 'midi' ? 'By MIDI.' : 'Played.'] : [];
  if (heard) {
    const key = { root: exercise.root, degrees: answerKey(exercise).map(({ degree }) => degree) };
    return [...said, `${heardWords(heard, naming, key)}.`, ...tapSentences(exercise, places)];
  }
  if (named) {
    const wanted = exercise.kind === 'name' ? exercise.wanted : 'degree';
    said.push(`Answered ${namedText(named, wanted, naming)}.`);
  }
  if (exercise.kind === 'scale' && exercise.order !== undefined)
    said.push(`In this order: ${orderText(places)}.`);
  if (root) said.push(`Root marked on ${placeText(root)}.`);
  if (finger !== undefined) said.push(`Finger ${String(finger)} on the root.`);
  return said;
}

/** What was tapped besides what was heard. */
function tapSentences(exercise: Exercise, places: readonly Place[]): readonly string[] {
  const input = inputOf(exercise);
  const taps = input.kind === 'places' ? (input.playing?.taps ?? []) : [];
  return places.map((place, index) => {
    // Of a note to be found the string alone is asked: its fret is heard.
    if (exercise.kind === 'find') return `String ${String(place.string)} tapped.`;
    return `${taps[index] === 'lowest' ? 'Lowest note' : 'Root'} tapped on ${placeText(place)}.`;
  });
}

/** "string 6: 5, 8; string 5: 5, 7", a part for each change of string. */
export function orderText(places: readonly Place[]): string {
  const parts: { readonly string: number; readonly frets: number[] }[] = [];
  for (const { string, fret } of places) {
    const part = parts.at(-1);
    if (part?.string === string) part.frets.push(fret);
    else parts.push({ string, frets: [fret] });
  }
  return parts.map(({ string, frets }) => `string ${String(string)}: ${frets.join(', ')}`).join('; ');
}

/** The instrument that an exercise is on. */
export function neckOf(exercise: Exercise): Instrument {
  return instrumentById(exercise.instrument) ?? standardGuitar;
}
